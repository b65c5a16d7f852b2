package check

import (
	"fmt"
	"strings"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// Sheet is the calculation sheet of one clause for one subject. It notes every
// value and limit that is taken, and everything that could not be.
type Sheet struct {
	run      *run
	pick     *picker
	about    *layout.Spot // the subject
	missing  []report.Missing
	blocked  report.Reason // NotCovered or AskFitter, once a limit could not be taken
	why      string        // of blocked or exempt
	source   citation
	gaps     []report.Missing // lists that are not stated complete
	exempt   bool
	unlisted bool // the answer is that a thing is missing from the lists
	notes    []note
	sized    *layout.Spot // of the first quantity that was read
	last     *layout.Spot // of the last statement that was read
	quiet    bool         // a rule is reading its facts, which are not what is asked about
	lines    []report.Line
	before   *Sheet // that signed the same part before this one
}

func (r *run) sheet(p *picker, about *layout.Spot) *Sheet {
	return &Sheet{run: r, pick: p, about: about}
}

// stuck tells that nothing more may be computed on this sheet.
func (s *Sheet) stuck() bool { return len(s.missing) > 0 || s.blocked != "" || s.exempt }

// Stuck tells a check that something is missing already, so that it does not ask
// for more on the strength of what was never read.
func (s *Sheet) Stuck() bool { return s.stuck() }

// Layout is the layout that is being judged, for walking from thing to thing.
// Values leave it only through the reading functions of this package.
func (s *Sheet) Layout() *layout.Layout { return s.run.layout }

// On is the date of judgement.
func (s *Sheet) On() unit.Date { return s.run.options.On }

func (s *Sheet) miss(what string, spot *layout.Spot) {
	m := report.Missing{What: what, Measure: layout.HowTo(spot.Pointer()), Place: place(spot)}
	for _, each := range s.missing {
		if each.Place.Pointer == m.Place.Pointer {
			return
		}
	}
	s.missing = append(s.missing, m)
}

// Missing notes that a thing would have to be listed, or a key written, before
// the question can be answered.
func (s *Sheet) Missing(what string, spot *layout.Spot) { s.miss(what, spot) }

func (s *Sheet) took(v layout.Stated) {
	s.notes = append(s.notes, v)
	if !s.quiet {
		s.last = v.Spot()
	}
}

func place(spot *layout.Spot) report.Place { return PlaceOf(spot.Place()) }

// adopt takes over what the sheet of a figure noted.
func (s *Sheet) adopt(o *Sheet) {
	for _, m := range o.missing {
		if !hasPlace(s.missing, m) {
			s.missing = append(s.missing, m)
		}
	}
	for _, g := range o.gaps {
		if !hasPlace(s.gaps, g) {
			s.gaps = append(s.gaps, g)
		}
	}
	switch {
	case s.exempt:
	case o.exempt:
		s.excuse(o.why, o.source)
	case o.blocked != "":
		s.block(o.blocked, o.why, o.source)
	}
	s.notes = append(s.notes, o)
	s.lines = append(s.lines, o.lines...)
	if s.quiet {
		return
	}
	if s.sized == nil {
		s.sized = o.sized
	}
	if o.last != nil {
		s.last = o.last
	}
}

func hasPlace(list []report.Missing, m report.Missing) bool {
	for _, each := range list {
		if each.Place.Pointer == m.Place.Pointer && each.What == m.What {
			return true
		}
	}
	return false
}

// Formula is one named formula of a working: an equation in plain arithmetic,
// with the result's symbol on its left, where it is from, and where it holds.
type Formula struct {
	Text   string // "A_free = A_gross * open"
	Source string
	Valid  string
}

// Step computes one named formula, and writes it into the working. It computes
// nothing on a stuck sheet: calc never sees a value that was not stated.
func Step[Q unit.Quantity](s *Sheet, symbol string, f Formula, calc func() Q) Q {
	if s.stuck() {
		return 0
	}
	q := calc()
	if s.run.options.Working {
		s.lines = append(s.lines, report.Line{Role: "step", Symbol: symbol, Formula: f.Text, Valid: f.Valid, Source: f.Source,
			Value: report.Quantity(q.Kind(), float64(q))})
	}
	return q
}

// facts lets a rule of a code read what it needs, through the sheet.
type facts struct {
	sheet *Sheet
	of    Facts
}

// Facts tells a rule where to read each fact about the subject. A rule reads only
// those that it uses, so a code that does not need a value never asks for it.
type Facts map[code.Fact]func(*Sheet) any

func (f facts) take(name code.Fact) any {
	read, ok := f.of[name]
	if !ok {
		f.sheet.miss("the code's rule needs "+string(name)+", which this check does not know how to read", f.sheet.run.layout.Spot())
		return nil
	}
	before := len(f.sheet.missing)
	quiet := f.sheet.quiet
	f.sheet.quiet = true
	v := read(f.sheet)
	f.sheet.quiet = quiet
	if len(f.sheet.missing) > before {
		return nil
	}
	return v
}

// Number implements code.Facts.
func (f facts) Number(name code.Fact) (float64, bool) {
	n, ok := f.take(name).(float64)
	return n, ok
}

// Word implements code.Facts.
func (f facts) Word(name code.Fact) (string, bool) {
	w, ok := f.take(name).(string)
	return w, ok
}

// Date implements code.Facts.
func (f facts) Date(name code.Fact) (unit.Date, bool) {
	d, ok := f.take(name).(unit.Date)
	return d, ok
}

// Constant writes a constant of nature or of a definition into the working, so
// that a formula that uses its symbol can be computed again by hand.
func Constant[Q unit.Quantity](s *Sheet, symbol, what, source string, q Q) Q {
	if s.run.options.Working && !s.stuck() {
		s.lines = append(s.lines, report.Line{Role: "constant", Symbol: symbol, What: what, Source: source, Value: report.Quantity(q.Kind(), float64(q))})
	}
	return q
}

// Symbol makes a symbol that a formula can use from a letter and the ids of the
// things it belongs to: Symbol("P", "hob-2") is "P_hob_2".
func Symbol(letter string, ids ...string) string {
	plain := strings.Map(func(r rune) rune {
		if r == '-' || r == '.' {
			return '_'
		}
		return r
	}, strings.Join(ids, "_"))
	return letter + "_" + plain
}

// Try is [Step] for a formula that refuses values out of its reach: what it refuses is
// not known, and the report tells why. about is the thing whose values they are.
func Try[Q unit.Quantity](s *Sheet, about layout.Item, symbol string, f Formula, calc func() (Q, error)) Q {
	if s.stuck() {
		return 0
	}
	q, err := calc()
	if err != nil {
		s.miss(fmt.Sprintf("values for %s within the reach of the formula: %v", about.Label(), err), about.Spot())
	}
	return Step(s, symbol, f, func() Q { return q })
}
