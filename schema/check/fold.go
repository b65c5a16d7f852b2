package check

import (
	"cmp"
	"math"
	"slices"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// weight orders outcomes for and: the heaviest decides. A clause that is not met
// outweighs one that is not known; a code that is silent outweighs a met clause,
// so that no half-covered question reads as answered.
func weight(outcome report.Outcome, reason report.Reason) int {
	switch outcome {
	case report.NotMet:
		return 5
	case report.NotKnown:
		return 4
	case report.Within:
		return 1
	}
	switch reason {
	case report.AskFitter:
		return 3
	case report.NotCovered:
		return 2
	}
	return 0
}

func (p *part) weight() int { return weight(p.outcome, p.reason) }

// and joins rulings: the heaviest part first, the parts that say something kept.
func and(rulings []Ruling) Ruling {
	if len(rulings) == 0 {
		panic("check: nothing to join")
	}
	if len(rulings) == 1 {
		return rulings[0]
	}
	out := Ruling{made: true, margin: rulings[0].margin}
	size := 0
	for _, r := range rulings {
		size += len(r.parts)
	}
	out.parts = make([]*part, 0, size)
	for _, r := range rulings {
		out.parts = append(out.parts, r.parts...)
		out.margin = min(out.margin, r.margin)
		out.fitter = out.fitter || r.fitter
	}
	slices.SortStableFunc(out.parts, func(a, b *part) int {
		return cmp.Or(cmp.Compare(b.weight(), a.weight()), cmp.Compare(tightness(a), tightness(b)))
	})
	return out
}

// tightness orders parts of one weight: the one that is furthest short of its
// limit, or nearest to it, leads. Answers in words come before numbers that are
// short and after numbers that are within.
func tightness(p *part) float64 {
	share, ok := p.sizes.margin()
	switch {
	case ok:
		return share
	case p.outcome == report.NotMet:
		return math.Inf(-1)
	}
	return math.Inf(1)
}

// or takes the first ruling that is within. Where there is none, one that could
// not be judged outweighs those that are not met, since it may be the one that is
// enough; only when all are judged do they come together.
func or(rulings []Ruling) Ruling {
	best := allJudged
	for _, r := range rulings {
		best = min(best, openness(r.worst()))
	}
	for _, r := range rulings {
		if best < allJudged && openness(r.worst()) == best {
			return r
		}
	}
	return and(rulings)
}

// allJudged is the openness of an answer that is no reason to hope.
const allJudged = 4

// openness orders answers for or: the least decides.
func openness(p *part) int {
	switch {
	case p.outcome == report.Within:
		return 0
	case p.outcome == report.NotKnown:
		return 1
	case p.reason == report.AskFitter:
		return 2
	case p.reason == report.NotCovered:
		return 3
	}
	return allJudged
}

// sub rules on one of several clauses that are joined by and, on a sheet of its
// own and at the worst corner of its own tolerances. Since the worst of all is the
// worst of each, no clause has to try the corners of the next.
func (s *Sheet) sub(f func(*Sheet) Ruling) Ruling { return s.run.atWorst(s.pick, s.about, f) }

// here rules on a clause of a clause on a sheet of its own, at the corner at which
// the outer sheet is.
func (s *Sheet) here(f func(*Sheet) Ruling) Ruling {
	inner := s.run.sheet(s.pick, s.about)
	return inner.settle(f(inner))
}

// All joins clauses by and, each on a sheet of its own.
func All(s *Sheet, clauses ...func(*Sheet) Ruling) Ruling {
	if s.stuck() {
		return Ruling{}
	}
	var rulings []Ruling
	for _, f := range clauses {
		rulings = append(rulings, s.sub(f))
	}
	return and(rulings)
}

// Any joins clauses by or, each on a sheet of its own. At every corner one of them
// has to be enough, and it need not be the same.
func Any(s *Sheet, clauses ...func(*Sheet) Ruling) Ruling {
	if s.stuck() {
		return Ruling{}
	}
	var rulings []Ruling
	for _, f := range clauses {
		rulings = append(rulings, s.here(f))
	}
	return or(rulings)
}

// Every asks the same of each thing in a list, and joins by and. An empty list
// gives the ruling for none, which the caller makes and which a list that is not
// surveyed complete turns into not known.
func Every[T layout.Item](s *Sheet, items []T, none func() Ruling, f func(*Sheet, T) Ruling) Ruling {
	if s.stuck() {
		return Ruling{}
	}
	if len(items) == 0 {
		return none()
	}
	var rulings []Ruling
	for _, each := range items {
		rulings = append(rulings, s.sub(func(s *Sheet) Ruling { return f(s, each) }).named(each))
	}
	return and(rulings)
}

func (r Ruling) named(thing layout.Item) Ruling {
	return r.each(func(p *part) {
		if p.about == "" {
			p.about = thing.Label()
		}
	})
}

// Same is the ruling of another check on a thing, as a clause of this one.
func Same(s *Sheet, c Check, subject layout.Item) Ruling {
	if s.stuck() {
		return Ruling{}
	}
	var rulings []Ruling
	for _, f := range c.clauses {
		rulings = append(rulings, s.sub(func(s *Sheet) Ruling { return f(s, subject) }))
	}
	return and(rulings).each(func(p *part) {
		if p.about == "" {
			p.about = subject.Label() + ", " + c.ID
		}
	})
}

// OrPractice asks by the code, and only where the code is silent or its figure is
// merely remembered, by common practice as well. Practice can add a finding
// there; it never fills the code's silence with a "within".
func OrPractice(s *Sheet, byCode, byPractice func(*Sheet) Ruling) Ruling {
	if s.stuck() {
		return Ruling{}
	}
	first := s.here(byCode)
	switch first.worst().reason {
	case report.NotCovered, report.AskFitter:
		second := s.here(byPractice)
		if second.worst().outcome == report.Within {
			first.worst().text += "; common practice is kept, as stated"
		}
		return and([]Ruling{second, first})
	}
	return first
}

// ByEither is OrPractice for one question that is asked alike by a term of the code
// and by one of common practice.
func ByEither[L any](s *Sheet, byCode, byPractice L, ask func(*Sheet, L) Ruling) Ruling {
	return OrPractice(s,
		func(s *Sheet) Ruling { return ask(s, byCode) },
		func(s *Sheet) Ruling { return ask(s, byPractice) })
}
