package check

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// Ruling is the answer of a clause. Only the functions of this package make one;
// the zero Ruling is a fault of the program.
type Ruling struct {
	parts  []report.Part // one, or those of a fold, worst first
	margin float64       // signed, relative to the limit; the least decides among corners
	made   bool
	open   bool // the limit itself is outside, so that no figure that is written down would be the mend
	fitter bool // what is not met here only a licensed fitter may mend, whoever else may act on the question
}

// noMargin is the margin of an answer that is no comparison of numbers: it leaves
// it to the others which corner is the worst.
const noMargin = math.MaxFloat64

func (r Ruling) worst() *report.Part { return &r.parts[0] }

func ruled(within bool, margin float64, p report.Part) Ruling {
	p.Outcome = report.NotMet
	if within {
		p.Outcome = report.Within
	}
	return Ruling{parts: []report.Part{p}, margin: margin, made: true}
}

// AtLeast rules that found is no less than the limit.
func AtLeast[Q unit.Quantity](s *Sheet, found Q, need Need[Q]) Ruling {
	found, need.at = plain(found), plain(need.at)
	return compared(found, need, unit.AtLeast(found, need.at), float64(found)-float64(need.at))
}

// AtMost rules that found is no more than the limit.
func AtMost[Q unit.Quantity](s *Sheet, found Q, need Need[Q]) Ruling {
	found, need.at = plain(found), plain(need.at)
	return compared(found, need, unit.AtMost(found, need.at), float64(need.at)-float64(found))
}

// plain rounds a quantity to 12 significant digits, as package box rounds lengths.
// A figure that was computed carries a last digit that nobody measured: half of
// 2 % of 0.558 m2 is 55.8 cm2, and in floats a hair more. No text that is read has
// more digits than that, so nothing that was written is changed by it.
func plain[Q unit.Quantity](q Q) Q {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(float64(q), 'e', 11, 64), 64)
	if err != nil {
		return q
	}
	return Q(rounded)
}

func compared[Q unit.Quantity](found Q, need Need[Q], within bool, over float64) Ruling {
	within = within && !(need.exclusive && found == need.at)
	p := report.Part{Source: need.source}
	p.Found, p.Needed = report.Apart(found.Kind(), float64(found), float64(need.at))
	if !within {
		p.Short = report.Quantity(found.Kind(), -over)
	}
	margin := over / math.Max(math.Abs(float64(need.at)), math.SmallestNonzeroFloat64)
	if need.at != 0 {
		p.Margin = &margin
	}
	r := ruled(within, margin, p)
	r.open = need.exclusive
	return r
}

// Is rules on a duty: whether the thing that the code asks for is so. The texts
// say what was found and what was asked.
func Is(s *Sheet, found bool, duty Duty, foundText, neededText string) Ruling {
	p := report.Part{Found: report.Words(foundText), Needed: report.Words(neededText), Source: duty.source}
	return ruled(found, noMargin, p)
}

// Absent rules that there is nothing to hold against a limit: what should have been
// measured never was. No measured zero is shown of it, nor by how much it is short.
func Absent[Q unit.Quantity](s *Sheet, foundText string, need Need[Q]) Ruling {
	need.at = plain(need.at)
	p := report.Part{Found: report.Words(foundText), Needed: report.Quantity(need.at.Kind(), float64(need.at)), Source: need.source}
	return ruled(false, noMargin, p)
}

// OneOf rules that the word found is one of those that the code allows.
func OneOf[W ~string](s *Sheet, found W, allowed Words) Ruling {
	p := report.Part{Found: report.Words(string(found)), Needed: report.Words(allowed.String()), Source: allowed.source}
	return ruled(slices.Contains(allowed.allowed, string(found)), noMargin, p)
}

// NotApplicable rules that the question does not arise for this subject.
func NotApplicable(s *Sheet, why string) Ruling {
	return Ruling{made: true, margin: noMargin, parts: []report.Part{{Outcome: report.NotApplicable, Reason: report.RuleExempts, Text: why}}}
}

// About names the other thing of a comparison.
func (r Ruling) About(format string, a ...any) Ruling {
	return r.each(func(p *report.Part) { p.About = fmt.Sprintf(format, a...) })
}

// Says adds a sentence on what was compared.
func (r Ruling) Says(format string, a ...any) Ruling {
	return r.each(func(p *report.Part) { p.Text = fmt.Sprintf(format, a...) })
}

// Points says where the answer stands, where that is neither the value to be mended
// nor the quantity that was compared.
func (r Ruling) Points(spot *layout.Spot) Ruling {
	return r.each(func(p *report.Part) { p.Place = PlaceOf(spot.Head()) })
}

// Worded says in plain words what was found and needed, where the words of the file
// and of the code do not.
func (r Ruling) Worded(found, needed string) Ruling {
	return r.each(func(p *report.Part) { p.Found, p.Needed = report.Words(found), report.Words(needed) })
}

// Mend says what would bring a part that is not met within its limit, in words
// and, where a number or a word of the file does it, as edits.
func (r Ruling) Mend(text string, set ...report.Edit) Ruling {
	return r.each(func(p *report.Part) {
		if p.Outcome == report.NotMet {
			if r.open {
				set = nil
			}
			p.Mend = &report.Mend{Text: text, Set: set}
		}
	})
}

// OnlyFitter leaves what is not met here to the licensed fitter, in a question of which
// an owner may mend the rest.
func (r Ruling) OnlyFitter() Ruling {
	r.fitter = r.made && r.worst().Outcome == report.NotMet
	return r
}

func (r Ruling) each(change func(*report.Part)) Ruling {
	for i := range r.parts {
		change(&r.parts[i])
	}
	return r
}

// settle turns what a clause returned into what may be said. This is the only
// place where "within" is granted, and the only one that knows the sheet.
func (s *Sheet) settle(r Ruling) Ruling {
	if !r.made && !s.stuck() {
		panic("check: a clause ended without a ruling")
	}
	if s.stuck() {
		p := report.Part{Text: s.why, Source: s.source}
		switch {
		case s.exempt:
			p.Outcome, p.Reason = report.NotApplicable, report.RuleExempts
		case s.blocked != "":
			p.Outcome, p.Reason = report.NotApplicable, s.blocked
		default:
			p.Outcome, p.Reason, p.Missing = report.NotKnown, report.MissingInput, s.missing
		}
		about := ""
		if r.made {
			about = r.worst().About
		}
		p.About = about
		r = Ruling{made: true, margin: noMargin, parts: []report.Part{p}}
	}
	if worst := r.worst(); len(s.gaps) > 0 && (rangesOver(worst) || s.unlisted) {
		worst.Outcome, worst.Reason, worst.Missing = report.NotKnown, report.NotSurveyed, s.gaps
		worst.Text = "nothing listed breaks the limit, but the list is not stated complete"
		if s.unlisted {
			worst.Text = "none is listed, and the list is not stated complete"
		}
		worst.Mend = nil
	}
	s.sign(r.worst())
	return r
}

// rangesOver tells whether an answer would say that no listed thing offends: such
// an answer needs the list to be complete.
func rangesOver(p *report.Part) bool {
	return p.Outcome == report.Within || p.Outcome == report.NotApplicable && p.Reason == report.RuleExempts
}

// sign writes onto a part what the sheet noted, unless a sub-sheet already has. Its
// place is where the hand has to go: what is missing, what a mend would change, the
// quantity that was compared, the last statement that was read.
func (s *Sheet) sign(p *report.Part) {
	p.Inputs = union(p.Inputs, s.inputs)
	p.Limits = union(p.Limits, s.limits)
	p.Surveys = union(p.Surveys, s.surveys)
	p.Working = append(slices.Clone(s.lines), p.Working...)
	if p.Place == (report.Place{}) {
		switch {
		case len(p.Missing) > 0:
			p.Place = p.Missing[0].Place
		case p.Mend != nil && len(p.Mend.Set) > 0 && s.at(p.Mend.Set[0].Pointer) != nil:
			p.Place = PlaceOf(s.at(p.Mend.Set[0].Pointer).Place())
		case s.sized != nil:
			p.Place = place(s.sized)
		case s.last != nil:
			p.Place = place(s.last)
		}
	}
}

func (s *Sheet) at(pointer string) *source.Node { return s.run.layout.Root().At(pointer) }

func union[T comparable](a, b []T) []T {
	if len(a)+len(b) > fewHere {
		return unionOfMany(a, b)
	}
	for _, each := range b {
		if !slices.Contains(a, each) {
			a = append(a, each)
		}
	}
	return a
}

// fewHere is up to how many a look through all of them is quicker than a map.
const fewHere = 64

func unionOfMany[T comparable](a, b []T) []T {
	seen := make(map[T]bool, len(a)+len(b))
	for _, each := range a {
		seen[each] = true
	}
	for _, each := range b {
		if !seen[each] {
			seen[each] = true
			a = append(a, each)
		}
	}
	return a
}
