package term

import (
	"fmt"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// head tells what was judged by what, before what was found.
func (p *page) head(f *report.FileReport) {
	p.Item(strong, 0, indent, title(f))
	p.judgedBy(f)
	p.Field(text.Plain, 0, "asked", indent, text.Plain, fmt.Sprintf("%s, %s", saying.Count(f.Counts.Checks, "check"), saying.Count(f.Counts.Subjects, "subject")))
	if len(f.Waivers) > 0 {
		p.Field(text.Plain, 0, "waivers", indent, strong, fmt.Sprintf("%s written into the file, %d in force; none changes an outcome", saying.Count(len(f.Waivers), "waiver"), f.Counts.Waived))
	}
}

// judgedBy tells of the gas as it is now, and by what the file is judged.
func (p *page) judgedBy(f *report.FileReport) {
	p.Field(text.Plain, 0, "gas now", indent, strong, f.Gas)
	p.Field(text.Plain, 0, "code", indent, text.Plain, saying.ChosenCode(f))
	if f.Code != nil && !f.Code.Governs {
		p.Para(strong, indent, "Borrowed yardstick: "+f.Code.Borrowed)
	}
	p.unverified(f)
}

// unverified says what was judged by that nobody has verified.
func (p *page) unverified(f *report.FileReport) {
	if f.Code != nil && f.Code.File != "" {
		p.Para(strong, indent, "This code was read from "+f.Code.File+", a file of the user's own: nobody has verified it.")
	}
	if f.Overlay != nil {
		p.Field(text.Plain, 0, "overlay", indent, strong, saying.Overlay(f.Overlay))
	}
}

func title(f *report.FileReport) string {
	if f.Title == "" {
		return f.File
	}
	return f.File + ": " + f.Title
}
