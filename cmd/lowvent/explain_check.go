package main

import (
	"fmt"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// describe tells all that is said of a check.
func describe(p *text.Page, d *check.Descriptor) {
	const labels = 16
	p.Item(text.Strong, 0, 2, d.ID+"  "+string(d.Word))
	field := func(label, content string) {
		if content != "" {
			p.Field(text.Plain, 2, label, labels, text.Plain, content)
		}
	}
	field("asks", d.Asks)
	field("why", d.Why)
	field("leaves out", d.NotCovered)
	field(string(d.Word), "if the answer is no, it "+d.Word.Meaning())
	field("who may act", string(d.MayAct))
	if d.NeverWaive {
		field("never set aside", "no waiver and no local overlay counts against this check")
	}
	limits(p, d)
	reads(p, d)
	surveys(p, d)
	claims(p, d)
	if len(d.Sources) > 0 {
		section(p, "Physics and geometry after")
		for _, each := range d.Sources {
			p.Item(text.Plain, 2, 2, each)
		}
	}
}

func section(p *text.Page, title string) {
	p.Blank()
	p.Para(text.Strong, 0, title)
}

// limits tells each limit in each book that may answer it; a code that is
// silent is named too.
func limits(p *text.Page, d *check.Descriptor) {
	section(p, "Limits that it judges by")
	for _, t := range d.Limits {
		p.Item(text.Plain, 2, 2, t.ID+": "+t.Asks)
		for _, book := range code.Profiles() {
			if book.Book == t.Book {
				limitIn(p, book, t)
			}
		}
	}
}

func limitIn(p *text.Page, book *code.Profile, t *code.Term) {
	e := book.Entry(t)
	if e == nil {
		p.Item(text.Plain, 4, 2, book.ID+": silent; then it is not judged by this code")
		return
	}
	p.Item(text.Plain, 4, 2, book.ID+": "+stated(t, e))
	p.Para(text.Plain, 6, cited(e))
	if e.Note != "" {
		p.Para(text.Plain, 6, "Note: "+e.Note)
	}
}

// cited is where an entry stands and how it came here.
func cited(e *code.Entry) string {
	return strings.TrimPrefix(e.Cite()+edition(e)+"; "+saying.Provenance(report.Provenance(e.Provenance)), "; ")
}

// stated is the rule in words; a duty has none but what its text says.
func stated(t *code.Term, e *code.Entry) string {
	if t.Sense == code.Duty {
		return e.Says
	}
	return ruleWords(t, e) + ". " + e.Says
}

// reads tells what the check may read and how to measure it.
func reads(p *text.Page, d *check.Descriptor) {
	section(p, "What it reads, and how to measure it")
	for _, template := range d.Reads {
		p.Item(text.Plain, 2, 2, template+insteadOf(d, template))
		p.Para(text.Plain, 6, howTo(template))
	}
}

func insteadOf(d *check.Descriptor, template string) string {
	for _, each := range d.Instead {
		if each == template {
			return "  (may be left out; where it is stated it takes another's place)"
		}
	}
	return ""
}

// howTo is the schema's own text on a key, given as a template in which "*"
// stands for any name.
func howTo(template string) string { return layout.Describe(strings.ReplaceAll(template, "*", "any")) }

func surveys(p *text.Page, d *check.Descriptor) {
	if len(d.Surveys)+len(d.Inventory) == 0 {
		return
	}
	section(p, "Lists that must be stated complete before it can be within limit")
	for _, each := range d.Surveys {
		p.Item(text.Plain, 2, 2, fmt.Sprintf("%s, under \"surveyed\" of the spaces, lockers and the outside that it looks at: %s", each,
			layout.Meaning("/spaces/any/surveyed/complete", string(each))))
	}
	for _, each := range d.Inventory {
		p.Item(text.Plain, 2, 2, fmt.Sprintf("%s, under \"surveyedBy\": %s", each, layout.Meaning("/surveyedBy/complete", string(each))))
	}
}

func claims(p *text.Page, d *check.Descriptor) {
	if len(d.Claims) == 0 {
		return
	}
	section(p, "What you can state and only a fitter can prove")
	for _, template := range d.Claims {
		p.Item(text.Plain, 2, 2, template)
	}
}
