package code

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// size draws a fact of any size that a float64 has, sound or not.
func size() *rapid.Generator[float64] {
	return rapid.OneOf(
		rapid.Float64Range(1e-6, 1e6),
		rapid.Float64(),
		rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, math.SmallestNonzeroFloat64}),
	)
}

// areaRule draws a rule for leastArea, nested up to a depth.
func areaRule(depth int) *rapid.Generator[string] {
	simple := rapid.Custom(func(r *rapid.T) string {
		figure := func(label string) string { return fmt.Sprintf("%d mm2", rapid.IntRange(1, 99999).Draw(r, label)) }
		switch rapid.IntRange(0, 3).Draw(r, "form") {
		case 0:
			return fmt.Sprintf(`{"fixed": %q}`, figure("fixed"))
		case 1:
			return fmt.Sprintf(`{"shareOf": "locker.floorArea", "share": "%d %%", "splitOver": %d, "least": %q}`,
				rapid.IntRange(1, 100).Draw(r, "share"), rapid.IntRange(2, 4).Draw(r, "split"), figure("least"))
		case 2:
			return fmt.Sprintf(`{"perUnit": [{"of": "space.unfluedInput", "rate": "%d cm2/kW"}, {"of": "dwelling.sleeps", "rate": %q}]%s}`,
				rapid.IntRange(1, 99).Draw(r, "rate"), figure("each"), rapid.SampledFrom([]string{"", `, "splitOver": 2`, `, "splitOver": 3`}).Draw(r, "split"))
		}
		return fmt.Sprintf(`{"tableBy": "space.floorArea", "rows": [{"upTo": "5 m2", "is": %q}, {"upTo": "50 m2", "is": %q}]}`, figure("first"), figure("second"))
	})
	if depth == 0 {
		return simple
	}
	return rapid.Custom(func(r *rapid.T) string {
		inner := areaRule(depth - 1)
		switch rapid.IntRange(0, 2).Draw(r, "shape") {
		case 0:
			return fmt.Sprintf(`{"allOf": [%s, %s]}`, inner.Draw(r, "a"), inner.Draw(r, "b"))
		case 1:
			return fmt.Sprintf(`{"when": [{"fact": "appliance.kind", "isOneOf": ["oven"], "then": "notAsked"}, {"fact": "cylinder.gas", "isOneOf": ["propane"], "then": %s}], "otherwise": %s}`,
				inner.Draw(r, "then"), rapid.SampledFrom([]string{`"notCovered"`, inner.Draw(r, "otherwise")}).Draw(r, "branch"))
		}
		return inner.Draw(r, "plain")
	})
}

// someFacts draws facts of which any may be missing or unsound.
func someFacts(r *rapid.T) known {
	k := known{}
	for _, f := range EveryFact() {
		if rapid.IntRange(0, 4).Draw(r, "missing "+string(f)) == 0 {
			continue
		}
		switch {
		case f.Kind() != 0:
			k[f] = size().Draw(r, string(f))
		case !f.IsDate():
			k[f] = rapid.SampledFrom(append(f.Words(), "nonsense")).Draw(r, string(f))
		}
	}
	return k
}

// TestEveryOutcomeIsSound holds for any rule and any facts: an answered figure
// is finite, not negative and what its working gives; anything else has no figure
// at all; open names facts that the rule reads and that were not soundly given;
// nothing is answered once a fact that it used is taken away.
func TestEveryOutcomeIsSound(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		text := areaRule(2).Draw(r, "rule")
		rule := ruleFor(t, leastArea, text)
		f := someFacts(r)
		a := asking(t, leastArea, text, f)
		if a.State != Answered {
			if !math.IsNaN(a.SI) || a.Steps != "" || len(a.Symbols) > 0 {
				r.Fatalf("%v leaks %+v", a.State, a)
			}
			if (a.State == Open) != (len(a.Missing) > 0) {
				r.Fatalf("%v with missing %v", a.State, a.Missing)
			}
			for _, m := range a.Missing {
				if !slices.Contains(rule.Facts(), m) {
					r.Fatalf("%s is missing, and the rule reads %v", m, rule.Facts())
				}
			}
			return
		}
		if math.IsNaN(a.SI) || math.IsInf(a.SI, 0) || a.SI < 0 {
			r.Fatalf("limit %v", a.SI)
		}
		if got := worked(t, a); got != a.SI {
			r.Fatalf("working %q gives %v, the answer is %v", a.Steps, got, a.SI)
		}
		for _, s := range a.Symbols[1:] {
			dropped := known{}
			for name, v := range f {
				if name.info().symbol != s.Name {
					dropped[name] = v
				}
			}
			if again := asking(t, leastArea, text, dropped); again.State != Open {
				r.Fatalf("without %s the answer is %v", s.Name, again.State)
			}
		}
	})
}

// TestScaling holds that a share without bounds grows with its fact, doubling
// when the fact doubles, exactly: both are powers of two apart.
func TestScaling(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		share := rapid.IntRange(1, 100).Draw(r, "share")
		floor := rapid.Float64Range(1e-3, 1e3).Draw(r, "floor")
		factor := math.Ldexp(1, rapid.IntRange(-6, 6).Draw(r, "power"))
		rule := fmt.Sprintf(`{"shareOf": "locker.floorArea", "share": "%d %%"}`, share)
		one := asking(t, leastArea, rule, known{FactLockerFloorArea: floor})
		other := asking(t, leastArea, rule, known{FactLockerFloorArea: floor * factor})
		if other.SI != one.SI*factor {
			r.Fatalf("%v m2 gives %v, %v times as much gives %v", floor, one.SI, factor, other.SI)
		}
	})
}

// TestMoreAsksNoLess holds that no growing fact ever lowers a least limit made
// of shares, rates and rising rows.
func TestMoreAsksNoLess(t *testing.T) {
	const rule = `{"allOf": [{"shareOf": "locker.floorArea", "share": "1 %", "least": "20 cm2"},
		{"perUnit": [{"of": "space.unfluedInput", "rate": "22 cm2/kW"}, {"of": "dwelling.sleeps", "rate": "650 mm2"}]},
		{"tableBy": "space.floorArea", "rows": [{"upTo": "5 m2", "is": "50 cm2"}, {"upTo": "50 m2", "is": "60 cm2"}]}]}`
	rapid.Check(t, func(r *rapid.T) {
		facts := []Fact{FactLockerFloorArea, FactUnfluedInput, FactDwellingSleeps, FactSpaceFloorArea}
		small, large := known{}, known{}
		for _, f := range facts {
			v := rapid.Float64Range(0.1, 25).Draw(r, string(f))
			small[f], large[f] = v, v
		}
		grown := rapid.SampledFrom(facts).Draw(r, "grown")
		large[grown] = small[grown].(float64) * rapid.Float64Range(1, 2).Draw(r, "factor")
		a, b := asking(t, leastArea, rule, small), asking(t, leastArea, rule, large)
		if a.State != Answered || b.State != Answered || b.SI < a.SI {
			r.Fatalf("%v m2 became %v m2 when %s grew", a.SI, b.SI, grown)
		}
	})
}

// TestStrictestSatisfiesAll holds that what satisfies an allOf satisfies each
// of its parts, and that one part asks just as much.
func TestStrictestSatisfiesAll(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		term := rapid.SampledFrom([]*Term{leastArea, mostMass}).Draw(r, "term")
		unit := map[*Term]string{leastArea: "cm2", mostMass: "g"}[term]
		var parts []string
		var each []float64
		for i := range rapid.IntRange(2, 5).Draw(r, "parts") {
			part := fmt.Sprintf(`{"fixed": "%d %s"}`, rapid.IntRange(1, 999).Draw(r, fmt.Sprint(i)), unit)
			parts = append(parts, part)
			each = append(each, asking(t, term, part, nil).SI)
		}
		text := parts[0]
		for _, p := range parts[1:] {
			text += ", " + p
		}
		got := asking(t, term, `{"allOf": [`+text+`]}`, nil).SI
		want := slices.Max(each)
		if term.Sense == Most {
			want = slices.Min(each)
		}
		if got != want {
			r.Fatalf("strictest of %v as %v is %v", each, term.Sense, got)
		}
	})
}

// TestSameFactsSameAnswer holds that nothing but the facts decides an answer.
func TestSameFactsSameAnswer(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		text, f := areaRule(2).Draw(r, "rule"), someFacts(r)
		a, b := asking(t, leastArea, text, f), asking(t, leastArea, text, f)
		a.Entry, b.Entry = nil, nil
		if math.IsNaN(a.SI) && math.IsNaN(b.SI) {
			a.SI, b.SI = 0, 0
		}
		if diff := cmp.Diff(a, b); diff != "" {
			r.Fatal(diff)
		}
	})
}
