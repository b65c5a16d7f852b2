package term

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// mostOthers bounds how many further failing parts of one finding are told.
const mostOthers = 5

func (p *page) notMet(f *report.FileReport) {
	for i := range f.Findings {
		if one := &f.Findings[i]; one.Outcome == report.NotMet {
			p.Blank()
			p.finding(one)
		}
	}
}

// finding tells one finding that is not met, from what it says down to who may
// mend it.
func (p *page) finding(f *report.Finding) {
	if p.view.Brief {
		p.brief(f)
		return
	}
	p.Field(style(f.Word), 0, string(f.Word), indent, strong, f.Check+", "+f.Label)
	p.Para(text.Plain, indent, f.Asks+" Not met.")
	first := report.Part{Place: f.Place}
	if len(f.Parts) > 0 {
		first = f.Parts[0]
	}
	p.Para(text.Plain, indent, saying.Where(f.Place))
	p.mark(f.Place)
	p.field("about", saying.About(&first))
	p.field("found", saying.Amount(first.Found))
	needed, rule := saying.Needed(&first)
	p.field("needed", needed)
	p.field(short(&first))
	p.field("rule", rule)
	if first.Source != nil {
		p.field("source", saying.Cite(first.Source)+silentToo(f))
	}
	p.field("why", f.Why)
	p.others(f)
	if first.Mend != nil {
		p.field("mend", first.Mend.Text)
	}
	p.field("may act", string(f.MayAct))
	p.waived(f.Waiver)
}

// short tells by how much a limit is missed, and on which side.
func short(part *report.Part) (label, content string) {
	if part.Short == nil {
		return "", ""
	}
	label, content = "short by", part.Short.Text
	found, needed := part.Found, part.Needed
	if found == nil || needed == nil || found.SI == nil || needed.SI == nil {
		return label, content
	}
	if *found.SI > *needed.SI {
		label = "over by"
	}
	if part.Short.SI != nil && *needed.SI > 0 && found.Unit != "K" {
		content += ", " + percent(*part.Short.SI / *needed.SI) + " of the limit"
	}
	return label, content
}

func percent(share float64) string {
	if share < 0.01 {
		return "less than 1 %"
	}
	return fmt.Sprintf("%.0f %%", share*100)
}

// silentToo says that the code has nothing on a finding that another book makes.
func silentToo(f *report.Finding) string {
	if slices.ContainsFunc(f.Parts, func(each report.Part) bool { return each.Reason == report.NotCovered }) {
		return "; the code is silent on this"
	}
	return ""
}

// others tells shortly of the further parts that fail, each with its own mend
// where that is another one.
func (p *page) others(f *report.Finding) {
	told, left := 0, 0
	for i := 1; i < len(f.Parts); i++ {
		switch part := &f.Parts[i]; {
		case part.Outcome != report.NotMet:
		case told == mostOthers:
			left++
		default:
			p.field("also", other(part))
			if part.Mend != nil && (f.Parts[0].Mend == nil || part.Mend.Text != f.Parts[0].Mend.Text) {
				p.field("", "mend: "+part.Mend.Text)
			}
			told++
		}
	}
	if left > 0 {
		p.field("also", fmt.Sprintf("and %d more that are not met", left))
	}
}

func other(part *report.Part) string {
	line := saying.About(part)
	if line == "" && part.Source != nil {
		line = part.Source.Rule
	}
	if part.Found != nil && part.Needed != nil {
		line += fmt.Sprintf(": found %s, needed %s", part.Found.Text, part.Needed.Text)
	}
	return strings.TrimPrefix(line, ": ") + " [" + saying.At(part.Place) + "]"
}

func (p *page) waived(w *report.Waiver) {
	if w != nil {
		p.field("waived", fmt.Sprintf("by %s until %s: %s (the finding stands)", w.DecidedBy, w.Until, w.Reason))
	}
}

// gutter is how far the text of a file stands from the left.
const gutter = indent + 3

// mark shows the line of the file that a place is on, and underlines the place.
func (p *page) mark(place report.Place) {
	if p.excerpt == nil {
		return
	}
	room := p.Width() - gutter
	e := p.excerpt(place, room)
	if text.Width(e.Text) > room { // wide characters
		e = p.excerpt(place, room/2)
	}
	runes := []rune(e.Text)
	if e.Line == 0 || e.From > len(runes) || e.To > len(runes) || e.From >= e.To {
		return
	}
	p.Marked(fmt.Sprintf("%*d | ", indent, e.Line), e.Text, text.Width(string(runes[:e.From])), text.Width(string(runes[e.From:e.To])))
}
