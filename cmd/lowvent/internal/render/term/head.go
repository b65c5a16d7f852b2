package term

import (
	"fmt"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// head tells what was judged by what, before what was found.
func (p *page) head(f *report.FileReport) {
	p.Item(strong, 0, indent, title(f))
	p.judgedBy(f)
	p.Field(text.Plain, 0, "asked", indent, text.Plain, fmt.Sprintf("%s, %s", Count(f.Counts.Checks, "check"), Count(f.Counts.Subjects, "subject")))
	if len(f.Waivers) > 0 {
		p.Field(text.Plain, 0, "waivers", indent, strong, fmt.Sprintf("%s written into the file, %d in force; none changes an outcome", Count(len(f.Waivers), "waiver"), f.Counts.Waived))
	}
}

// judgedBy tells of the gas as it is now, and by what the file is judged.
func (p *page) judgedBy(f *report.FileReport) {
	p.Field(text.Plain, 0, "gas now", indent, strong, f.Gas)
	p.Field(text.Plain, 0, "code", indent, text.Plain, CodeLine(f))
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
		p.Field(text.Plain, 0, "overlay", indent, strong, OverlayLine(f.Overlay))
	}
}

// OverlayLine says how much of a local overlay is heeded.
func OverlayLine(o *report.Overlay) string {
	heeded, looser := 0, 0
	for _, l := range o.Limits {
		if l.State != report.LocalInForce {
			continue
		}
		heeded++
		if l.Loosens {
			looser++
		}
	}
	return fmt.Sprintf("%s: %s heeded of %d, of which %d may ask less than the code; nobody has verified them", o.Title, Count(heeded, "local limit"), len(o.Limits), looser)
}

func title(f *report.FileReport) string {
	if f.Title == "" {
		return f.File
	}
	return f.File + ": " + f.Title
}

// CodeLine names the code, or says what a run without one is worth.
func CodeLine(f *report.FileReport) string {
	if f.Code != nil {
		line := f.Code.Title + " [" + f.Code.ID + "]"
		if f.Code.Edition != "" {
			line += "; " + f.Code.Edition
		}
		return line
	}
	line := "none chosen, so only the law on the thing itself, common practice and this program's own rules are judged. "
	if len(f.Candidates) == 0 {
		return line + "No built-in code is shown to be the law for what the file states of the dwelling and where it is used; \"lowvent codes\" lists them."
	}
	var fitting []string
	for _, c := range f.Candidates {
		fitting = append(fitting, fmt.Sprintf("--code %s (%s)", c.ID, c.Title))
	}
	return line + "What the file states fits " + strings.Join(fitting, ", ") + "; or name the code in the file, under /where/code."
}
