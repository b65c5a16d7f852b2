package term

import (
	"fmt"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// faults tells why a file can't be used. Nothing of it was judged.
func (p *page) faults(f *report.FileReport) {
	p.Item(strong, 0, indent, fmt.Sprintf("UNUSABLE  %s: %s, and so nothing in it was judged", f.File, saying.Count(len(f.Faults), "fault")))
	for i := range f.Faults {
		p.Blank()
		p.fault(&f.Faults[i])
	}
}

func (p *page) fault(f *report.Fault) {
	p.Item(strong, 0, indent, saying.Where(f.Place))
	p.mark(f.Place)
	p.field("what", f.What)
	p.field("expected", f.Expected)
	p.field("mend", f.Mend)
	for _, each := range f.Related {
		p.Field(text.Plain, indent, "see also", labels, text.Plain, saying.Where(each))
		p.mark(each)
	}
}
