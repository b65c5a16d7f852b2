package term

import (
	"fmt"
	"io"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// SweepOptions are what the look of a sweep depends on, and which figures are plotted.
type SweepOptions struct {
	Width  int
	Colour bool

	Plots []int                            // of the sweep's figures
	Plot  func(*text.Page, *report.Course) // draws one
}

// Sweep writes what turns in a sweep, and where. The error is that of the writer.
func Sweep(w io.Writer, s *report.Sweep, o SweepOptions) error {
	p := newPage(Options{Width: o.Width, Colour: o.Colour})
	for _, each := range s.Caution {
		p.Para(strong, 0, each)
	}
	f := &report.FileReport{File: report.TrialName(s.Trial.Of), Title: s.Title, Gas: s.Gas, Code: s.Code, Candidates: s.Fitting, Overlay: s.Overlay}
	p.Blank()
	p.Item(strong, 0, indent, title(f))
	p.judgedBy(f)
	p.Field(text.Plain, 0, "swept", indent, text.Plain, fmt.Sprintf("%s, at %d values from %s to %s; what turns is told to within %s", s.Swept.Pointer, len(s.Values), s.Swept.From, s.Swept.To, s.Swept.Step))
	p.turning(s)
	p.Blank()
	p.Item(text.Plain, 0, indent, fmt.Sprintf("Alike at every value: %d not met, %d not known, %d within, as stated, %d not judged.", s.Steady.NotMet, s.Steady.NotKnown, s.Steady.Within, s.Steady.Others))
	p.swept(s, o)
	p.Blank()
	p.Para(text.Plain, 0, s.Unseen)
	p.Blank()
	p.Para(strong, 0, fmt.Sprintf("Result of this %s, which is no judgement and advises no value: %s. Judged on %s. %s", report.TrialWord, turnWords(s), s.On, report.KeepOff))
	_, err := p.WriteTo(w)
	return err
}

func turnWords(s *report.Sweep) string {
	turns := 0
	for i := range s.Turning {
		turns += len(s.Turning[i].Turns)
	}
	if turns == 0 {
		return "no question was seen to turn between these values"
	}
	if len(s.Turning) == 1 {
		return saying.Count(turns, "turn") + " of 1 question"
	}
	return saying.Count(turns, "turn") + " of " + saying.Count(len(s.Turning), "question")
}

// turning draws a lane for each question that turns, and tells its turns.
func (p *page) turning(s *report.Sweep) {
	if len(s.Turning) == 0 {
		p.heading("No question turns between these values, as far as was seen.")
		return
	}
	p.heading("WHAT TURNS, the worst first. In a lane: X not met, ? not known, . within as stated, - not judged")
	l := newLane(s, p.Width()-indent-2)
	p.Verbatim(indent, l.ends(s.Swept.From, s.Swept.To))
	if here := l.here(s); here != "" {
		p.Verbatim(indent, here)
	}
	for i := range s.Turning {
		p.question(l, &s.Turning[i])
	}
	p.Blank()
	p.Para(strong, 0, s.Edge)
}

func (p *page) question(l lane, q *report.SweptQuestion) {
	p.Blank()
	p.Field(style(q.Word), 0, string(q.Word), indent, strong, q.Check+", "+q.Label)
	p.Para(text.Plain, indent, q.Asks)
	p.Verbatim(indent, "|"+l.draw(q.Ended)+"|")
	for i := range q.Turns {
		t := &q.Turns[i]
		p.field("turns", fmt.Sprintf("between %s (%s) and %s (%s)", t.Below.Written, t.Below.Ended.Words(), t.Above.Written, t.Above.Ended.Words()))
		p.limits(t)
	}
	p.field("may act", string(q.MayAct))
}

// mostLimits bounds how many limits of one turn are told.
const mostLimits = 3

// limits tells which limits decide on a turn, with their text. A limit is told with what
// was found where it is not met, never with what would meet it.
func (p *page) limits(t *report.SweptTurn) {
	for i := range t.Limits {
		if i == mostLimits {
			p.field("", fmt.Sprintf("%d more limits turn here", len(t.Limits)-i))
			return
		}
		l := &t.Limits[i]
		at := t.Below.Written
		if t.Above.Ended == report.EndsNotMet {
			at = t.Above.Written
		}
		p.field("about", l.About)
		if l.Found != nil {
			p.field("found", l.Found.Text+", at "+at)
		}
		p.field("limit", limit(l))
		p.field("source", saying.Cite(l.Source))
	}
}

// limit tells what a text needs, and its rule where that says more than the figure.
func limit(l *report.SweptLimit) string {
	rule := ""
	if l.Source != nil {
		rule = l.Source.Rule
	}
	if l.Needed == nil || l.Needed.SI != nil && (strings.HasPrefix(rule, "at least ") || strings.HasPrefix(rule, "at most ")) {
		return rule
	}
	return strings.TrimSuffix(l.Needed.Text+"; "+rule, "; ")
}

// swept lists the figures that change, and plots those that were asked for.
func (p *page) swept(s *report.Sweep, o SweepOptions) {
	if len(s.Figures) == 0 {
		return
	}
	p.heading(fmt.Sprintf("FIGURES THAT CHANGE, at %s and at %s, as good as what is stated", s.Swept.From, s.Swept.To))
	column := min(p.Width()/2, 50)
	for i := range s.Figures {
		f := &s.Figures[i]
		p.Row(2, sweptName(f), column, f.First+" → "+f.Last)
	}
	for _, i := range o.Plots {
		f := &s.Figures[i]
		c := &report.Course{Across: report.Axis{Title: s.Swept.Pointer, Kind: s.Swept.Kind}, Up: report.Axis{Title: f.Title, Kind: f.Kind}}
		for k, v := range f.Values {
			if v != nil {
				c.Points = append(c.Points, [2]float64{s.Values[k].SI, *v})
			}
		}
		p.heading(f.ID + ", " + sweptName(f))
		o.Plot(p.Page, c)
	}
}

func sweptName(f *report.SweptFigure) string {
	return figureName(&report.Figure{Subject: f.Subject, Label: f.Label, Title: f.Title})
}
