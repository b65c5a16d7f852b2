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
	parts  []*part // one, or those of a fold, worst first
	margin float64 // signed, relative to the limit; the least decides among corners
	made   bool
	open   bool // the limit itself is outside, so that no figure that is written down would be the mend
	fitter bool // what is not met here only a licensed fitter may mend, whoever else may act on the question
}

// noMargin is the margin of an answer that is no comparison of numbers: it leaves
// it to the others which corner is the worst.
const noMargin = math.MaxFloat64

func (r Ruling) worst() *part { return r.parts[0] }

func ruled(within bool, margin float64, p part) Ruling {
	p.outcome = report.NotMet
	if within {
		p.outcome = report.Within
	}
	return Ruling{parts: []*part{&p}, margin: margin, made: true}
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
	p := part{source: need.source, sizes: sizes{kind: found.Kind(), found: float64(found), needed: float64(need.at), over: over, broken: !within}}
	margin, _ := p.sizes.margin()
	r := ruled(within, margin, p)
	r.open = need.exclusive
	return r
}

// Is rules on a duty: whether the thing that the code asks for is so. The texts
// say what was found and what was asked.
func Is(s *Sheet, found bool, duty Duty, foundText, neededText string) Ruling {
	return ruled(found, noMargin, part{found: foundText, needed: neededText, source: duty.source})
}

// Absent rules that there is nothing to hold against a limit: what should have been
// measured never was. No measured zero is shown of it, nor by how much it is short.
func Absent[Q unit.Quantity](s *Sheet, foundText string, need Need[Q]) Ruling {
	need.at = plain(need.at)
	size := sizes{kind: need.at.Kind(), needed: float64(need.at), unmeasured: true}
	return ruled(false, noMargin, part{found: foundText, sizes: size, source: need.source})
}

// OneOf rules that the word found is one of those that the code allows.
func OneOf[W ~string](s *Sheet, found W, allowed Words) Ruling {
	p := part{found: string(found), needed: allowed.String(), source: allowed.source}
	return ruled(slices.Contains(allowed.allowed, string(found)), noMargin, p)
}

// NotApplicable rules that the question does not arise for this subject.
func NotApplicable(s *Sheet, why string) Ruling {
	return Ruling{made: true, margin: noMargin, parts: []*part{{outcome: report.NotApplicable, reason: report.RuleExempts, text: why}}}
}

// About names the other thing of a comparison.
func (r Ruling) About(format string, a ...any) Ruling {
	return r.each(func(p *part) { p.about = fmt.Sprintf(format, a...) })
}

// Says adds a sentence on what was compared.
func (r Ruling) Says(format string, a ...any) Ruling {
	return r.each(func(p *part) { p.text = fmt.Sprintf(format, a...) })
}

// Points says where the answer stands, where that is neither the value to be mended
// nor the quantity that was compared.
func (r Ruling) Points(spot *layout.Spot) Ruling {
	return r.each(func(p *part) { p.place = func() report.Place { return PlaceOf(spot.Head()) } })
}

// Worded says in plain words what was found and needed, where the words of the file
// and of the code do not.
func (r Ruling) Worded(found, needed string) Ruling {
	return r.each(func(p *part) { p.found, p.needed = found, needed })
}

// Mend says what would bring a part that is not met within its limit, in words
// and, where a number or a word of the file does it, as edits.
func (r Ruling) Mend(text string, set ...report.Edit) Ruling {
	return r.each(func(p *part) {
		if p.outcome == report.NotMet {
			if r.open {
				set = nil
			}
			p.mend = &report.Mend{Text: text, Set: set}
		}
	})
}

// OnlyFitter leaves what is not met here to the licensed fitter, in a question of which
// an owner may mend the rest.
func (r Ruling) OnlyFitter() Ruling {
	r.fitter = r.made && r.worst().outcome == report.NotMet
	return r
}

func (r Ruling) each(change func(*part)) Ruling {
	for _, p := range r.parts {
		change(p)
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
		p := &part{text: s.why, source: s.source}
		switch {
		case s.exempt:
			p.outcome, p.reason = report.NotApplicable, report.RuleExempts
		case s.blocked != "":
			p.outcome, p.reason = report.NotApplicable, s.blocked
		default:
			p.outcome, p.reason, p.missing = report.NotKnown, report.MissingInput, s.missing
		}
		if r.made {
			p.about = r.worst().about
		}
		r = Ruling{made: true, margin: noMargin, parts: []*part{p}}
	}
	if worst := r.worst(); len(s.gaps) > 0 && (rangesOver(worst) || s.unlisted) {
		worst.outcome, worst.reason, worst.missing = report.NotKnown, report.NotSurveyed, s.gaps
		worst.text = "nothing listed breaks the limit, but the list is not stated complete"
		if s.unlisted {
			worst.text = "none is listed, and the list is not stated complete"
		}
		worst.mend = nil
	}
	s.sign(r.worst())
	return r
}

// rangesOver tells whether an answer would say that no listed thing offends: such
// an answer needs the list to be complete.
func rangesOver(p *part) bool {
	return p.outcome == report.Within || p.outcome == report.NotApplicable && p.reason == report.RuleExempts
}

func (s *Sheet) at(pointer string) *source.Node { return s.run.layout.Root().At(pointer) }
