package term

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// Compare writes how a later report differs from an earlier one, the worst first. The
// run holds both, the earlier first. The error is that of the writer.
func Compare(w io.Writer, run *report.Run, changes []report.Change, o Options) error {
	p := newPage(o)
	for _, each := range run.Caution {
		p.Para(strong, 0, each)
	}
	old, later := &run.Files[0], &run.Files[1]
	p.Blank()
	p.Field(text.Plain, 0, "old", indent, strong, title(old))
	if codeID(old) != codeID(later) {
		p.Field(text.Plain, indent, "code", labels, text.Plain, CodeLine(old))
	}
	p.Field(text.Plain, 0, "new", indent, strong, title(later))
	p.judgedBy(later)
	if codeID(old) != codeID(later) {
		p.Para(strong, 0, "The two are judged by unequal codes: what follows comes of both, the codes and the layouts. With --code one code judges both.")
	}
	for _, turn := range report.Turns() {
		p.turned(turn, changes)
	}
	p.Blank()
	p.Para(strong, 0, "Result of this comparison: "+tallied(changes)+". Judged on "+run.On+". What is alike in both is not told, whatever it is: "+
		"check the new file as well. "+report.KeepOff)
	_, err := p.WriteTo(w)
	return err
}

func codeID(f *report.FileReport) string {
	if f.Code == nil {
		return ""
	}
	return f.Code.ID
}

// turned tells of every question that went one way.
func (p *page) turned(turn report.Turn, changes []report.Change) {
	told := false
	for i := range changes {
		c := &changes[i]
		if c.Turn != turn {
			continue
		}
		if !told {
			p.heading(upper(string(turn)) + means(turn))
			told = true
		}
		p.change(c)
	}
}

// means says what a turn is not to be taken for.
func means(turn report.Turn) string {
	switch turn {
	case report.NewlyUnknown:
		return ": what the new file does not state is not known, and never counts as good"
	case report.Unasked:
		return ": not listed any more, or it does not apply, or the code is silent; that mends nothing by itself"
	case report.Better:
		return ", as the new file states it; a licensed gas fitter proves it"
	}
	return ""
}

func (p *page) change(c *report.Change) {
	f := c.Finding()
	p.Field(style(f.Word), 0, string(f.Word), indent, strong, f.Check+", "+f.Label)
	p.Para(text.Plain, indent, f.Asks)
	p.field("old", Ended(c.Old))
	p.field("new", Ended(c.New))
	if c.New != nil {
		p.Para(text.Plain, indent, where(c.New.Place))
	}
}

// Ended tells in one line how a question ended, with what was found or what is missing;
// of nil, that the thing is not listed.
func Ended(f *report.Finding) string {
	if f == nil {
		return "not listed"
	}
	var parts []string
	for i := range f.Parts {
		if part := &f.Parts[i]; part.Outcome == f.Outcome {
			if said := partly(part); said != "" && !slices.Contains(parts, said) {
				parts = append(parts, said)
			}
		}
	}
	words := outcomeWords(f)
	if left := len(parts) - mostParts; left > 0 {
		parts = append(parts[:mostParts], fmt.Sprintf("%d more", left))
	}
	if len(parts) > 0 {
		words += ": " + strings.Join(parts, "; ")
	}
	return words
}

// mostParts bounds how many parts of one question are told.
const mostParts = 3

// partly tells of one part what was compared, or what is missing.
func partly(part *report.Part) string {
	if len(part.Missing) > 0 {
		return Lacking(part.Missing)
	}
	said := about(part)
	if part.Found == nil {
		return said
	}
	found := amount(part.Found)
	switch {
	case part.Outcome == report.NotMet && part.Needed != nil:
		asked, rule := needed(part)
		return strings.TrimPrefix(said+": found "+found+", needed "+cmp.Or(asked, rule), ": ")
	case said == "":
		return found
	}
	return said + " " + found
}

func outcomeWords(f *report.Finding) string {
	switch {
	case f.Reason == report.NotCovered:
		return "the code does not cover it"
	case f.Reason == report.AskFitter:
		return "for the fitter to answer"
	case f.Outcome == report.NotMet:
		return "not met"
	case f.Outcome == report.NotKnown:
		return "not known"
	case f.Outcome == report.Within:
		return "within, as stated"
	}
	return "does not apply"
}

// tallied counts every turn, also those that nothing took.
func tallied(changes []report.Change) string {
	var words []string
	for _, turn := range report.Turns() {
		n := 0
		for i := range changes {
			if changes[i].Turn == turn {
				n++
			}
		}
		words = append(words, fmt.Sprintf("%d %s", n, turn))
	}
	return strings.Join(words, ", ")
}

func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
