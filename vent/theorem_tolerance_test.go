package vent_test

import (
	"fmt"
	"maps"
	"math/big"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// gravity orders outcomes: a worse case never weighs less.
func gravity(f report.Finding) int {
	switch {
	case f.Outcome == report.NotMet:
		return 3
	case f.Outcome == report.NotKnown:
		return 2
	case f.Reason == report.NotCovered || f.Reason == report.AskFitter:
		return 1
	}
	return 0
}

// measured is one number of a file: a quantity, or one coordinate of a point.
type measured struct {
	pointer string // of the number
	input   string // as a finding lists it
	amount  amount
}

// measuredIn lists the numbers of a file behind an input.
func measuredIn(root *source.Node, input string) []measured {
	n := root.At(input)
	if n == nil {
		return nil
	}
	if n.Kind == source.Array && isPoint(n) {
		var all []measured
		for i, a := range coordinates(n) {
			all = append(all, measured{input + "/" + strconv.Itoa(i), input, a})
		}
		return all
	}
	if a, ok := amountOf(n.Text()); ok && n.Kind == source.String {
		return []measured{{input, input, a}}
	}
	return nil
}

// exact is the amount without its tolerance.
func (a amount) exact() amount { return amount{value: a.value, unit: a.unit} }

// far is the number moved away from its value: a coordinate by metres, any other by a
// share of itself; a share of something stays between 0 and 100 %. The second result
// is the band from the value to there.
func (m measured) far(by string) (end, band amount) {
	v := m.amount.exact()
	end = v
	switch {
	case m.pointer != m.input:
		end = v.moved(rat(by))
	default:
		end.value = new(big.Rat).Mul(v.value, new(big.Rat).Add(rat("1"), rat(by)))
	}
	if v.unit == "%" && end.value.Cmp(rat("100")) > 0 {
		end.value = rat("100")
	}
	low, high := v.value, end.value
	if low.Cmp(high) > 0 {
		low, high = high, low
	}
	return end, amount{value: low, unit: v.unit, join: "to", other: high, in: v.unit}
}

func (m measured) set(a amount) source.Edit {
	return source.Edit{Pointer: m.pointer, Value: quoted(a.String())}
}

// exactCopy is a scene without the keys that no check reads, and without tolerances,
// so that one band can be tried at a time.
func exactCopy(t testing.TB, s *scene) *scene {
	t.Helper()
	return s.rewritten(t, rewriter{order: onlyRead, text: func(n *source.Node) string {
		if a, ok := amountOf(n.Text()); ok && a.join != "" {
			return a.exact().String()
		}
		return ""
	}})
}

// contradiction is the one question that a tolerance can only help: whether two
// measurements contradict each other. Two that may both be right do not.
func contradiction(f report.Finding) bool {
	return f.Check == "layout.consistent" && strings.HasPrefix(f.Subject, "/tapeMeasures/")
}

// TestTheWorstEndDecides is the part of the theorem on tolerances. For each kind of
// number that a check reads, one after the other, a band is written that goes from
// the value to one that is far away, either side. Where the far end would not be
// within, the band is not; and each check that compares numbers is brought across
// its limit so.
func TestTheWorstEndDecides(t *testing.T) {
	numeric, crossed, seen := map[string]bool{}, map[string]bool{}, map[string]bool{}
	var mu sync.Mutex
	for _, one := range good(t) {
		s := exactCopy(t, one)
		type trial struct {
			pair string
			m    measured
		}
		var trials []trial
		for _, pair := range slices.Sorted(maps.Keys(s.found)) {
			f := s.found[pair]
			if f.Outcome != report.Within || contradiction(f) {
				continue
			}
			for _, p := range f.Parts {
				if p.Found != nil && p.Found.SI != nil && p.Found.Kind != unit.KindCount.String() { // what is counted has no band
					numeric[f.Check] = true
				}
			}
			for _, input := range inputsOf(f) {
				for _, m := range measuredIn(s.layout.Root(), input) {
					what := one.base + " " + f.Check + " " + layout.Template(m.pointer) + m.pointer[strings.LastIndex(m.pointer, "/"):]
					if !seen[what] {
						seen[what] = true
						trials = append(trials, trial{pair, m})
					}
				}
			}
		}
		forEach(trials, func(tr trial) {
			ways := []string{"-0.97", "30", "-0.2", "0.2"}
			if tr.m.pointer != tr.m.input {
				ways = []string{"-2.5", "2.5", "-0.3", "0.3"}
			}
			for _, by := range ways {
				end, band := tr.m.far(by)
				l, loads := s.changed(t, tr.m.set(end))
				if !loads {
					continue
				}
				check := s.found[tr.pair].Check
				if gravity(s.of(t, l, check)[tr.pair]) == 0 {
					continue
				}
				mu.Lock()
				crossed[check] = true
				mu.Unlock()
				banded, loads := s.changed(t, tr.m.set(band))
				if !loads {
					continue
				}
				if f := s.of(t, banded, check)[tr.pair]; f.Outcome == report.Within {
					t.Errorf("%s: %s is within with %s = %s, and not with %s", s.name, tr.pair, tr.m.pointer, band, end)
				}
				return
			}
		})
	}
	for id := range numeric {
		if !crossed[id] && id != "layout.consistent" && id != "inspection.current" { // of which the age is reckoned from dates, and a date has no band
			t.Errorf("%s compares numbers, and no band of any brought it across its limit", id)
		}
	}
	if len(numeric) < 9 {
		t.Errorf("only %d checks compare numbers: %v", len(numeric), numeric)
	}
}

// TestNoCaseWithinTheBandsIsWorse: whatever the true value within its band, the
// answer to it is no worse than the answer to the band, since the corners of the
// bands are tried and the checks are monotone between them.
func TestNoCaseWithinTheBandsIsWorse(t *testing.T) {
	type trial struct {
		s    *scene
		pair string
		m    measured
	}
	var trials []trial
	for _, one := range good(t) {
		s := exactCopy(t, one)
		for pair, f := range s.found {
			if contradiction(f) || f.Outcome == report.NotApplicable {
				continue
			}
			for _, input := range inputsOf(f) {
				for _, m := range measuredIn(s.layout.Root(), input) {
					trials = append(trials, trial{s, pair, m})
				}
			}
		}
	}
	slices.SortFunc(trials, func(a, b trial) int {
		return strings.Compare(a.s.name+a.pair+a.m.pointer, b.s.name+b.pair+b.m.pointer)
	})
	drawn, tried := 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		drawn++
		tr := rapid.SampledFrom(trials).Draw(rt, "trial")
		far := rapid.IntRange(-98, 98).Draw(rt, "hundredths")
		part := rapid.IntRange(1, 99).Draw(rt, "part")
		end, band := tr.m.far(fmt.Sprintf("%d/100", far))
		inside := tr.m.amount.exact()
		step := new(big.Rat).Sub(end.value, inside.value)
		inside.value = new(big.Rat).Add(inside.value, step.Mul(step, big.NewRat(int64(part), 100)))
		if inside.String() == "" || band.String() == "" || len([]rune(band.String())) > unit.MaxLength {
			return // no text says it
		}
		whole, loads := tr.s.changed(t, tr.m.set(band))
		one, alsoLoads := tr.s.changed(t, tr.m.set(inside))
		if !loads || !alsoLoads {
			return // no dwelling has it
		}
		tried++
		check := tr.s.found[tr.pair].Check
		a, b := tr.s.of(t, whole, check)[tr.pair], tr.s.of(t, one, check)[tr.pair]
		if check == "layout.consistent" && a.Outcome == report.NotKnown {
			return // a band that leaves open whether two statements agree says just that
		}
		if gravity(b) > gravity(a) {
			rt.Fatalf("%s: %s is %s with %s = %s, and only %s with %s", tr.s.name, tr.pair, b.Outcome, tr.m.pointer, inside, a.Outcome, band)
		}
	})
	if tried < drawn/2 {
		t.Errorf("of %d cases drawn only %d could be tried", drawn, tried)
	}
}
