package check

import (
	"fmt"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// Read takes a statement that is no quantity: a word, a yes or no, a date. One
// that the file leaves out is noted, and the zero that comes back is never used,
// since the sheet is stuck from then on.
func Read[T any](s *Sheet, g *layout.Given[T]) T {
	value, known := g.Get()
	if !known {
		s.miss(g.Spot().Key(), g.Spot())
		var zero T
		return zero
	}
	s.took(g)
	if s.run.options.Working {
		s.line("read", "", g.Spot(), report.Words(written(value)))
	}
	return value
}

// written is a statement as the working shows it: lengths as the file has them.
func written(value any) string {
	switch v := value.(type) {
	case unit.Value[unit.Length]:
		return v.Written
	case layout.Point:
		return v[0].Written + ", " + v[1].Written + ", " + v[2].Written
	}
	return fmt.Sprint(value)
}

// Measure takes a quantity under the symbol that the working shows. A quantity
// with a tolerance is taken at the corner that is being tried.
func Measure[Q unit.Quantity](s *Sheet, symbol string, m *layout.Measure[Q]) Q {
	value, known := m.Get()
	if !known {
		s.miss(m.Spot().Key(), m.Spot())
		return 0
	}
	s.took(m)
	if s.sized == nil && !s.quiet {
		s.sized = m.Spot()
	}
	q := Q(s.pick.choose(m.Spot(), float64(value.Low), float64(value.Nominal), float64(value.High)))
	if s.run.options.Working {
		s.line("read", symbol, m.Spot(), report.Quantity(q.Kind(), float64(q)))
	}
	return q
}

// Count takes a number of people or things, as the figure that a rule multiplies by,
// under the symbol that the working shows.
func Count(s *Sheet, symbol string, g *layout.Given[int]) float64 {
	count, known := g.Get()
	if !known {
		s.miss(g.Spot().Key(), g.Spot())
		return 0
	}
	s.took(g)
	si := float64(count)
	if s.run.options.Working {
		s.line("read", symbol, g.Spot(), &report.Amount{Kind: "count", SI: &si, Text: fmt.Sprint(count)})
	}
	return si
}

// Band takes a quantity that comes with its own band, such as the distance
// between two things whose coordinates have tolerances; of names what it is and
// is its name among the corners.
func Band[Q unit.Quantity](s *Sheet, symbol, of string, v unit.Value[Q]) Q {
	if s.stuck() {
		return 0
	}
	q := Q(s.pick.choose(of, float64(v.Low), float64(v.Nominal), float64(v.High)))
	if s.run.options.Working {
		s.lines = append(s.lines, report.Line{Role: "figure", Symbol: symbol, What: of, Value: report.Quantity(q.Kind(), float64(q))})
	}
	return q
}

func (s *Sheet) line(role, symbol string, spot *layout.Spot, value *report.Amount) {
	at := place(spot)
	s.lines = append(s.lines, report.Line{Role: role, Symbol: symbol, What: spot.Pointer(), Value: value, Place: &at})
}

// Where takes the position of a thing: its two corners.
func Where(s *Sheet, what layout.Item, p *layout.Position) (from, to layout.Point) {
	from, to, known := p.Corners()
	switch {
	case !known:
		s.miss("where "+what.Label()+" stands", p.At.Spot())
	case p.At.Known() && !p.Box.Present():
		s.took(&p.At)
	default:
		s.took(&p.Box.From)
		s.took(&p.Box.To)
	}
	return from, to
}

// Corners takes the two corners of a box.
func Corners(s *Sheet, b *layout.Box) (from, to layout.Point) {
	return Read(s, &b.From), Read(s, &b.To)
}

// Item takes a reference and returns the thing it names, or nil for the open air.
func Item(s *Sheet, g *layout.Given[layout.Ref]) layout.Item {
	return s.run.layout.Find(Read(s, g))
}

// List takes a section. One that was left out is not an empty one.
func List[T any](s *Sheet, section *layout.Section[T]) []*T {
	if !section.Known() {
		s.miss("the list "+section.Spot().Key()+" ({} states that there are none)", section.Spot())
		return nil
	}
	s.notes = append(s.notes, section.Spot())
	return section.All()
}

// Survey notes that the answer ranges over a list of one space or locker, and can
// be within its limit only if that list is stated complete there.
func Survey(s *Sheet, of layout.Item, survey *layout.Survey, list layout.SurveyList) {
	s.complete(of.Label()+": whether all "+string(list)+" there are listed", survey.IsComplete(list), survey.Complete.Spot(), string(list))
}

// Inventory notes that the answer ranges over a list of the whole file.
func Inventory(s *Sheet, list layout.InventoryList) {
	words := &s.run.layout.SurveyedBy.Complete
	s.complete("whether all "+string(list)+" of the dwelling are listed", words.Has(list), words.Spot(), string(list))
}

// Whole asks that a list of the whole dwelling is stated complete, where an answer would
// say that a thing is missing: what is only not listed may be there all the same.
func Whole(s *Sheet, list layout.InventoryList) {
	if s.stuck() {
		return // there is no such answer
	}
	s.unlisted = true
	Inventory(s, list)
}

func (s *Sheet) complete(what string, complete bool, spot *layout.Spot, list string) {
	if complete {
		s.notes = append(s.notes, surveyed{at: spot, list: list})
		return
	}
	s.gaps = append(s.gaps, report.Missing{What: what, Measure: layout.HowTo(spot.Pointer()), Place: place(spot)})
}
