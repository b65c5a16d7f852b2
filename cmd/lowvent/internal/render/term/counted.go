package term

import (
	"fmt"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// The lists of what is neither not met nor not known: counted by check, or told one by
// one where the view asks for that.

func (p *page) notCovered(f *report.FileReport) {
	ids := with(f, uncovered)
	if len(ids) == 0 {
		return
	}
	silent := "no code was chosen that could answer"
	if f.Code != nil {
		silent = "this code is silent, and nothing was taken from another"
	}
	p.heading(fmt.Sprintf("NOT COVERED %s: %s", p.numberOf(f, uncovered), silent))
	if p.view.NotCovered {
		p.unanswered(f, uncovered, "silent on", func(one *report.Finding) []string { return because(one, report.NotCovered) })
		p.Blank()
	} else {
		p.Para(text.Plain, 2, tally(ids))
	}
	if f.Code != nil && len(f.NotCovered) > 0 {
		p.Para(text.Plain, 2, "What else this code does not speak of: lowvent codes show "+f.Code.ID)
	}
}

func (p *page) within(f *report.FileReport) {
	ids := with(f, stands)
	if len(ids) == 0 {
		return
	}
	p.heading(fmt.Sprintf("WITHIN LIMIT, AS STATED %s: what was compared, not what was seen", p.numberOf(f, stands)))
	if p.view.Within {
		p.compared(f)
		return
	}
	p.Para(text.Plain, 2, tally(ids))
}

func (p *page) notApplicable(f *report.FileReport) {
	none, exempt := with(f, absent), with(f, exempted)
	if len(none)+len(exempt) == 0 {
		return
	}
	p.heading(fmt.Sprintf("NOT APPLICABLE %s", p.numberOf(f, func(one *report.Finding) bool { return absent(one) || exempted(one) })))
	if p.view.NotApplicable {
		p.unanswered(f, absent, "because", func(*report.Finding) []string { return []string{"the file states that there is none"} })
		p.unanswered(f, exempted, "because", func(one *report.Finding) []string { return because(one, report.RuleExempts) })
		return
	}
	if len(none) > 0 {
		p.Item(text.Plain, 2, 2, "the file states that there is none: "+tally(none))
	}
	if len(exempt) > 0 {
		p.Item(text.Plain, 2, 2, "the question does not arise: "+tally(exempt))
	}
}

func uncovered(f *report.Finding) bool { return f.Reason == report.NotCovered }
func stands(f *report.Finding) bool    { return f.Outcome == report.Within }
func exempted(f *report.Finding) bool  { return f.Reason == report.RuleExempts }
func absent(f *report.Finding) bool {
	return f.Reason == report.NoSubject && f.Outcome == report.NotApplicable
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

func (p *page) numberOf(f *report.FileReport, so func(*report.Finding) bool) string {
	return p.number(f, func(f *report.FileReport) int { return len(with(f, so)) })
}
