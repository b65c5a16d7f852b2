package term

import (
	"fmt"
	"io"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
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
		p.Field(text.Plain, indent, "code", labels, text.Plain, saying.ChosenCode(old))
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
	p.field("old", saying.Ended(c.Old))
	p.field("new", saying.Ended(c.New))
	if c.New != nil {
		p.Para(text.Plain, indent, saying.Where(c.New.Place))
	}
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
