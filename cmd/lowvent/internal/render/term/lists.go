package term

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// lists tells what became of the other questions, so that none falls silent. A brief
// report has only those lists that were asked for.
func (p *page) lists(f *report.FileReport) {
	long := !p.view.Brief
	if long || p.view.NotCovered {
		p.notCovered(f)
	}
	if long || p.view.Within {
		p.within(f)
	}
	if long || p.view.NotApplicable {
		p.notApplicable(f)
	}
	if long {
		p.overlay(f.Overlay)
		p.waivers(f)
	}
}

// toProve lists each claim once, those that say the same of several things
// together, with the checks that are within their limit only if it is true.
func (p *page) toProve(f *report.FileReport) {
	if len(f.Claims) == 0 {
		return
	}
	p.heading(fmt.Sprintf("FOR THE FITTER TO PROVE %s: stated, and nobody has shown it; %s within limit rest on it",
		p.number(f, func(f *report.FileReport) int { return len(f.Claims) }), p.bearing(f)))
	var said []string
	for _, c := range f.Claims {
		key := rests(c)
		if slices.Contains(said, key) {
			continue
		}
		said = append(said, key)
		p.Item(text.Plain, 2, 4, strings.Join(subjects(f.Claims, key), "; ")+": "+key)
	}
}

// bearing counts the answers that rest on what is to be proved.
func (p *page) bearing(f *report.FileReport) string {
	shown, all := f.Counts.ToProve, p.whole.Counts.ToProve
	if shown == all {
		return saying.Count(all, "answer")
	}
	return fmt.Sprintf("%d of %s", shown, saying.Count(all, "answer"))
}

// rests tells what a claim says, on what it rests, and what rests on it.
func rests(c report.Claim) string {
	return fmt.Sprintf("%s (%s), for %s", c.States, c.Basis, strings.Join(c.Checks, ", "))
}

func subjects(claims []report.Claim, key string) []string {
	var names []string
	for _, c := range claims {
		if rests(c) == key {
			names = append(names, c.Subject)
		}
	}
	return names
}

func (p *page) askFitter(f *report.FileReport) {
	items := asked(f)
	if len(items) == 0 {
		return
	}
	p.heading(fmt.Sprintf("ASK THE FITTER %s: too little is known of the text to judge by it",
		p.number(f, func(f *report.FileReport) int { return len(asked(f)) })))
	for _, each := range items {
		p.Item(text.Plain, 2, 2, each)
	}
}

// asked lists what all findings leave to the fitter, each question once.
func asked(f *report.FileReport) []string {
	var items []string
	for i := range f.Findings {
		items = append(items, questions(&f.Findings[i])...)
	}
	slices.Sort(items)
	return slices.Compact(items)
}

// questions lists what a finding leaves to the fitter.
func questions(f *report.Finding) []string {
	var asked []string
	for i := range f.Parts {
		if f.Parts[i].Reason == report.AskFitter {
			asked = append(asked, question(f, &f.Parts[i]))
		}
	}
	if f.Reason == report.AskFitter && len(asked) == 0 {
		asked = append(asked, question(f, &report.Part{}))
	}
	return asked
}

func question(f *report.Finding, part *report.Part) string {
	ask := part.Text
	if ask == "" {
		ask = f.Asks
	}
	line := fmt.Sprintf("%s, %s: %s", f.Check, f.Label, ask)
	if part.Source != nil {
		line += " [" + saying.Cite(part.Source) + "]"
	}
	return line
}

func (p *page) overlay(o *report.Overlay) {
	if o == nil {
		return
	}
	p.heading("LOCAL OVERLAY, NOT VERIFIED: for the fitter to confirm")
	p.Item(text.Plain, 2, 2, fmt.Sprintf("%s (%s), over the code %s", o.Title, o.File, o.Over))
	for _, l := range o.Limits {
		p.Item(text.Plain, 4, 2, fmt.Sprintf("%s, %s: %s [%s]", l.Term, l.State, l.Says, l.Document))
		if l.Loosens {
			p.Para(text.Plain, 6, fmt.Sprintf("may ask less than the code: by %s, licence %s, until %s: %s", l.By, l.Licence, l.Until, l.Reason))
		}
	}
}

func (p *page) waivers(f *report.FileReport) {
	if len(f.Waivers) == 0 {
		return
	}
	p.heading(fmt.Sprintf("WAIVERS %d: a waived finding stands, and counts", len(f.Waivers)))
	for _, w := range f.Waivers {
		p.Item(text.Plain, 2, 2, fmt.Sprintf("%s, %s: %s of %s by %s until %s: %s", w.ID, w.State, w.Check, w.Subject, w.DecidedBy, w.Until, w.Reason))
		p.Para(text.Plain, 4, saying.Where(w.Place))
	}
}
