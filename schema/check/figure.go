package check

import (
	"math"
	"sync"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// Figure is a computed figure of one kind of subject, shared by the checks that
// read it and by the report: it is computed once a run, with its band, its
// working, and what is missing for it.
type Figure[Q unit.Quantity, S layout.Item] struct {
	ID    string // "locker.low-vent-free-area"
	Title string // for the report
	Calc  func(*Sheet, S) Q
}

type figureKey struct {
	id string
	of *layout.Spot
}

// computed is a figure's result for one subject.
type computed struct {
	once               sync.Once
	sheet              *Sheet
	low, nominal, high float64
	tooMany            bool
}

// Fig takes a figure under the symbol that the working shows. What is missing for
// the figure is missing for whoever takes it.
func Fig[Q unit.Quantity, S layout.Item](s *Sheet, symbol string, f *Figure[Q, S], subject S) Q {
	c := compute(s.run, f, subject)
	s.adopt(c.sheet)
	if c.tooMany {
		s.miss("exact values: too many of those behind "+f.Title+" carry a tolerance", subject.Spot())
	}
	if s.stuck() {
		return 0
	}
	q := Q(s.pick.choose(c, c.low, c.nominal, c.high))
	if s.run.options.Working {
		s.lines = append(s.lines, report.Line{Role: "figure", Symbol: symbol, What: f.Title, Value: taken(q.Kind(), float64(q), c)})
	}
	return q
}

func compute[Q unit.Quantity, S layout.Item](r *run, f *Figure[Q, S], subject S) *computed {
	slot, _ := r.figures.LoadOrStore(figureKey{f.ID, subject.Spot()}, &computed{})
	c := slot.(*computed)
	c.once.Do(func() {
		c.low, c.high = math.Inf(1), math.Inf(-1)
		all := corners(nil, func(p *picker) {
			s := r.sheet(p, subject.Spot())
			q := float64(f.Calc(s, subject))
			switch {
			case c.sheet == nil:
				c.sheet, c.nominal = s, q
			case s.stuck() && !c.sheet.stuck():
				c.sheet = s // what is missing at one corner is missing for the figure
			}
			c.low, c.high = min(c.low, q), max(c.high, q)
		})
		c.tooMany = !all
	})
	return c
}

func band(kind unit.Kind, c *computed) *report.Amount {
	a := report.Quantity(kind, c.nominal)
	if c.low < c.high {
		low, high := c.low, c.high
		a.Low, a.High = &low, &high
		if from, to := unit.TextOf(kind, low), unit.TextOf(kind, high); from != to {
			a.Text = from + " to " + to
		}
	}
	return a
}

// taken is the value of a figure at the corner that is being tried, which the
// lines after it reckon with, and the band that it was taken from.
func taken(kind unit.Kind, q float64, c *computed) *report.Amount {
	a := report.Quantity(kind, q)
	if of := band(kind, c); of.Low != nil {
		a.Low, a.High = of.Low, of.High
		a.Text += ", of " + of.Text
	}
	return a
}

// Shown is a figure as the report lists it, for every subject of a section.
type Shown struct {
	ID, Title string
	Detail    bool // for who asks for it: no part of an ordinary report
	show      func(*run) []report.Figure
}

// Detail keeps a figure out of the ordinary report.
func Detail(f Shown) Shown {
	f.Detail = true
	return f
}

// Show lists a figure for everything in a section.
func Show[Q unit.Quantity, T any, P item[T]](f *Figure[Q, P], section func(*layout.Layout) *layout.Section[T]) Shown {
	return Shown{ID: f.ID, Title: f.Title, show: func(r *run) []report.Figure {
		var out []report.Figure
		for _, each := range section(r.layout).All() {
			out = append(out, shown(r, f, P(each)))
		}
		return out
	}}
}

// ShowDwelling lists a figure of the whole dwelling.
func ShowDwelling[Q unit.Quantity](f *Figure[Q, *layout.Layout]) Shown {
	return Shown{ID: f.ID, Title: f.Title, show: func(r *run) []report.Figure {
		return []report.Figure{shown(r, f, r.layout)}
	}}
}

func shown[Q unit.Quantity, S layout.Item](r *run, f *Figure[Q, S], subject S) report.Figure {
	c := compute(r, f, subject)
	out := report.Figure{ID: f.ID, Title: f.Title, Subject: subject.Spot().Pointer(), Label: subject.Label(), Working: c.sheet.lines}
	if c.sheet.stuck() || c.tooMany {
		out.Missing, out.Note = c.sheet.missing, c.sheet.why
		return out
	}
	var zero Q
	out.Value = band(zero.Kind(), c)
	if len(c.sheet.gaps) > 0 {
		out.Missing = c.sheet.gaps
		out.Note = "of what is listed; the lists are not stated complete"
	}
	return out
}
