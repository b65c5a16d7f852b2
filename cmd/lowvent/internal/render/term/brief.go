package term

import (
	"cmp"
	"fmt"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// brief tells one finding that is not met in a short block: word, check and subject, what
// was found and needed, and where.
func (p *page) brief(f *report.Finding) {
	p.Field(style(f.Word), 0, string(f.Word), indent, strong, f.Check+", "+f.Label)
	first := report.Part{Place: f.Place}
	if len(f.Parts) > 0 {
		first = f.Parts[0]
	}
	said := cmp.Or(saying.Part(&first), f.Asks+" Not met.")
	if more := failing(f) - 1; more > 0 {
		said += fmt.Sprintf("; %d more not met", more)
	}
	p.Para(text.Plain, indent, said)
	p.Para(text.Plain, indent, saying.Where(f.Place))
	p.waived(f.Waiver)
}

func failing(f *report.Finding) int {
	n := 0
	for i := range f.Parts {
		if f.Parts[i].Outcome == report.NotMet {
			n++
		}
	}
	return n
}

// unknownBriefly tells in one line each of what is not known.
func (p *page) unknownBriefly(f *report.FileReport) {
	for i := range f.Findings {
		if one := &f.Findings[i]; one.Outcome == report.NotKnown {
			p.unknown(one)
		}
	}
}
