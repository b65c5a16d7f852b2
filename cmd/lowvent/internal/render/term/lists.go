package term

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// lists tells what became of every question that is neither not met nor not
// known, so that none falls silent.
func (p *page) lists(f *report.FileReport) {
	p.toProve(f)
	p.askFitter(f)
	p.notCovered(f)
	p.within(f)
	p.notApplicable(f)
	p.overlay(f.Overlay)
	p.waivers(f)
}

// toProve lists each claim once, those that say the same of several things
// together, with the checks that are within their limit only if it is true.
func (p *page) toProve(f *report.FileReport) {
	if len(f.Claims) == 0 {
		return
	}
	p.heading(fmt.Sprintf("FOR THE FITTER TO PROVE %d: stated, and nobody has shown it; %s within limit rest on it",
		len(f.Claims), Count(f.Counts.ToProve, "answer")))
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
	var items []string
	for i := range f.Findings {
		items = append(items, questions(&f.Findings[i])...)
	}
	if len(items) == 0 {
		return
	}
	slices.Sort(items)
	items = slices.Compact(items)
	p.heading(fmt.Sprintf("ASK THE FITTER %d: too little is known of the text to judge by it", len(items)))
	for _, each := range items {
		p.Item(text.Plain, 2, 2, each)
	}
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
		line += " [" + Cite(part.Source) + "]"
	}
	return line
}

func (p *page) notCovered(f *report.FileReport) {
	ids := with(f, func(one *report.Finding) bool { return one.Reason == report.NotCovered })
	if len(ids) == 0 {
		return
	}
	silent := "no code was chosen that could answer"
	if f.Code != nil {
		silent = "this code is silent, and nothing was taken from another"
	}
	p.heading(fmt.Sprintf("NOT COVERED %d: %s", len(ids), silent))
	p.Para(text.Plain, 2, tally(ids))
	if f.Code != nil && len(f.NotCovered) > 0 {
		p.Para(text.Plain, 2, "What else this code does not speak of: lowvent codes show "+f.Code.ID)
	}
}

func (p *page) within(f *report.FileReport) {
	ids := with(f, func(one *report.Finding) bool { return one.Outcome == report.Within })
	if len(ids) == 0 {
		return
	}
	p.heading(fmt.Sprintf("WITHIN LIMIT, AS STATED %d: what was compared, not what was seen", len(ids)))
	p.Para(text.Plain, 2, tally(ids))
}

func (p *page) notApplicable(f *report.FileReport) {
	none := with(f, func(one *report.Finding) bool {
		return one.Reason == report.NoSubject && one.Outcome == report.NotApplicable
	})
	exempt := with(f, func(one *report.Finding) bool { return one.Reason == report.RuleExempts })
	if len(none)+len(exempt) == 0 {
		return
	}
	p.heading(fmt.Sprintf("NOT APPLICABLE %d", len(none)+len(exempt)))
	if len(none) > 0 {
		p.Item(text.Plain, 2, 2, "the file states that there is none: "+tally(none))
	}
	if len(exempt) > 0 {
		p.Item(text.Plain, 2, 2, "the question does not arise: "+tally(exempt))
	}
}

// with lists the checks of the findings that are so.
func with(f *report.FileReport, so func(*report.Finding) bool) []string {
	var ids []string
	for i := range f.Findings {
		if so(&f.Findings[i]) {
			ids = append(ids, f.Findings[i].Check)
		}
	}
	return ids
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
		p.Para(text.Plain, 4, where(w.Place))
	}
}
