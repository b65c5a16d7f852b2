package term

import (
	"cmp"
	"fmt"
	"slices"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// thing is one part of the installation with what is open of it.
type thing struct {
	pointer, label   string
	word             report.Signal // the worst
	notMet, notKnown []*report.Finding
}

// bySubject tells the findings under each part of the installation, the part with the
// worst word first. How to find out what is not known is told once, below.
func (p *page) bySubject(f *report.FileReport) {
	for _, t := range thingsOf(f.Findings) {
		name := t.label
		if t.pointer != "" {
			name += " (" + t.pointer + ")"
		}
		p.heading(fmt.Sprintf("PART %s: %s at worst; %d not met, %d not known", name, t.word, len(t.notMet), len(t.notKnown)))
		for _, one := range t.notMet {
			p.Blank()
			p.finding(one)
		}
		if len(t.notKnown) > 0 {
			p.Blank()
		}
		for _, one := range t.notKnown {
			p.unknown(one)
		}
	}
}

// thingsOf gathers what is not met and not known by the thing that it is asked of.
func thingsOf(findings []report.Finding) []*thing {
	known := map[[2]string]*thing{}
	var things []*thing
	for i := range findings {
		f := &findings[i]
		if f.Outcome != report.NotMet && f.Outcome != report.NotKnown {
			continue
		}
		key := [2]string{f.Subject, f.Label}
		if known[key] == nil {
			known[key] = &thing{pointer: f.Subject, label: f.Label}
			things = append(things, known[key])
		}
		known[key].add(f)
	}
	slices.SortStableFunc(things, func(a, b *thing) int {
		return cmp.Or(cmp.Compare(b.word.Rank(), a.word.Rank()), cmp.Compare(len(b.notMet), len(a.notMet)), cmp.Compare(a.label, b.label))
	})
	return things
}

func (t *thing) add(f *report.Finding) {
	if f.Outcome == report.NotMet {
		t.notMet = append(t.notMet, f)
	} else {
		t.notKnown = append(t.notKnown, f)
	}
	if f.Word.Rank() > t.word.Rank() {
		t.word = f.Word
	}
}

// unknown tells in one line of a question that waits for something.
func (p *page) unknown(f *report.Finding) {
	var missing []report.Missing
	said := ""
	for i := range f.Parts {
		missing = append(missing, f.Parts[i].Missing...)
		if f.Parts[i].Outcome == report.NotKnown {
			said = cmp.Or(said, saying.About(&f.Parts[i]))
		}
	}
	if lack := saying.Lacking(missing); lack != "" {
		said = "missing " + lack
	}
	p.Field(style(f.Word), 0, string(f.Word), indent, text.Plain, f.Check+", "+f.Label+": not known, "+cmp.Or(said, f.Asks))
}
