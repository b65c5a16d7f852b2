package term

import (
	"cmp"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// compared tells of every answer within its limit what was held against what. It shows
// no more than that: nobody looked.
func (p *page) compared(f *report.FileReport) {
	for i := range f.Findings {
		one := &f.Findings[i]
		if one.Outcome != report.Within {
			continue
		}
		p.Blank()
		p.Item(text.Plain, 2, 2, one.Check+", "+one.Label+": "+standing(one))
		for k := range one.Parts {
			if one.Parts[k].Outcome == report.Within {
				p.comparison(one, k)
			}
		}
	}
}

func standing(f *report.Finding) string {
	if f.Reason == report.ToProve {
		return "within limit, as stated; nobody has shown it, and a fitter must prove it"
	}
	return "within limit, as stated"
}

// comparison tells one part, and its rule and source unless the next part has the same.
func (p *page) comparison(f *report.Finding, k int) {
	part := &f.Parts[k]
	limit, rule := limitOf(part)
	line := strings.TrimPrefix(saying.About(part)+": ", ": ")
	for _, each := range [][2]string{{"found ", saying.Amount(part.Found)}, {"limit ", limit}, {"margin ", margin(part)}} {
		if each[1] != "" {
			line += each[0] + each[1] + "; "
		}
	}
	p.Item(text.Plain, 4, 2, strings.TrimRight(cmp.Or(line, f.Asks), ";: "))
	if next := slices.IndexFunc(f.Parts[k+1:], isWithin); next >= 0 && restsOn(part) == restsOn(&f.Parts[k+1+next]) {
		return
	}
	p.listed("rule", rule)
	p.listed("source", saying.Cite(part.Source))
}

func isWithin(part report.Part) bool { return part.Outcome == report.Within }

// restsOn is what a part rests on, for telling it once.
func restsOn(part *report.Part) string {
	_, rule := limitOf(part)
	return rule + "\n" + saying.Cite(part.Source)
}

// limitOf is what is needed and its rule, which is told once where it lists the same words.
func limitOf(part *report.Part) (limit, rule string) {
	limit, rule = saying.Needed(part)
	if strings.ReplaceAll(rule, ", ", " or ") == limit {
		return rule, ""
	}
	return limit, rule
}

// margin tells how far a found value is on the right side of its limit.
func margin(part *report.Part) string {
	switch {
	case part.Margin == nil:
		return ""
	case *part.Margin == 0:
		return "none, it is just at the limit"
	}
	return percent(*part.Margin) + " of the limit"
}

// listed puts one labelled line below an entry of a list; nothing for an empty text.
func (p *page) listed(label, content string) {
	if content != "" {
		p.Field(text.Plain, 4, label, labels+2, text.Plain, content)
	}
}

// unanswered tells, check by check, of what things a question has no answer, and why.
func (p *page) unanswered(f *report.FileReport, is func(*report.Finding) bool, label string, why func(*report.Finding) []string) {
	told := map[string]bool{}
	for i := range f.Findings {
		one := &f.Findings[i]
		if !is(one) || told[one.Check] {
			continue
		}
		told[one.Check] = true
		p.Blank()
		p.Item(text.Plain, 2, 2, one.Check+": "+one.Asks)
		for _, g := range grouped(f, one.Check, is, why) {
			p.listed("of", strings.Join(g.labels, ", "))
			for k, each := range g.why {
				p.listed([]string{label, ""}[min(k, 1)], each)
			}
		}
	}
}

// group is things of which a check has no answer for the same reason.
type group struct {
	why    []string
	labels []string
}

func grouped(f *report.FileReport, check string, is func(*report.Finding) bool, why func(*report.Finding) []string) []group {
	var groups []group
	for i := range f.Findings {
		one := &f.Findings[i]
		if one.Check != check || !is(one) {
			continue
		}
		reason := why(one)
		k := slices.IndexFunc(groups, func(g group) bool { return slices.Equal(g.why, reason) })
		if k < 0 {
			k = len(groups)
			groups = append(groups, group{why: reason})
		}
		groups[k].labels = append(groups[k].labels, one.Label)
	}
	return groups
}

// because gathers what the parts of a finding say for a reason, each thing once.
func because(f *report.Finding, reason report.Reason) []string {
	var said []string
	for i := range f.Parts {
		if part := &f.Parts[i]; part.Reason == reason && part.Text != "" && !slices.Contains(said, part.Text) {
			said = append(said, part.Text)
		}
	}
	return said
}
