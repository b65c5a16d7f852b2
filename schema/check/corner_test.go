package check

import (
	"context"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// TestTheWorstCornerDecides: a height against 24 in, in both senses, with bands
// that cross the limit, touch it, and keep clear of it.
func TestTheWorstCornerDecides(t *testing.T) {
	for _, c := range []struct {
		height          string
		tall, low       report.Outcome
		tallAt, shortAt float64 // the value that was judged, m
	}{
		{"24 in", report.Within, report.Within, 0.6096, 0.6096},
		{"609.6 mm", report.Within, report.Within, 0.6096, 0.6096},
		{"2 ft", report.Within, report.Within, 0.6096, 0.6096},
		{"609.5 mm", report.NotMet, report.Within, 0.6095, 0.6095},
		{"609.7 mm", report.Within, report.NotMet, 0.6097, 0.6097},
		{"62 cm ± 1 cm", report.Within, report.NotMet, 0.61, 0.63},
		{"62 cm ± 2 cm", report.NotMet, report.NotMet, 0.60, 0.64},
		{"60 cm ± 2 cm", report.NotMet, report.NotMet, 0.58, 0.62},
		{"60 cm ± 5 mm", report.NotMet, report.Within, 0.595, 0.605},
		{"24 in to 25 in", report.Within, report.NotMet, 0.6096, 0.635},
		{"23 in to 24 in", report.NotMet, report.Within, 0.5842, 0.6096},
	} {
		t.Run(c.height, func(t *testing.T) {
			l, codes := load(t, fmt.Sprintf("/cylinders/a/height = %q", c.height)), books(t, tall, low)
			for _, side := range []struct {
				clause  func(*Sheet, *layout.Cylinder) Ruling
				outcome report.Outcome
				at      float64
			}{{tallEnough, c.tall, c.tallAt}, {lowEnough, c.low, c.shortAt}} {
				f := judge(t, l, codes, side.clause)
				is(t, f, side.outcome, "")
				if got := *f.Parts[0].Found.SI; math.Abs(got-side.at) > 1e-12 {
					t.Errorf("judged at %v, want the worst corner %v", got, side.at)
				}
			}
		})
	}
}

// widthOver asks that the height be at least twice a length more than another:
// each of three values has its own worst end.
func difference(s *Sheet, c *layout.Cylinder) Ruling {
	h, d := Measure(s, "h", &c.Height), Measure(s, "d", &c.Diameter)
	free := Step(s, "f", Formula{Text: "f = h - d"}, func() unit.Length { return unit.Length(float64(h) - float64(d)) })
	return AtLeast(s, free, Limit(s, "h_need", code.ClearanceAbove, nil))
}

func TestTheCornerOfSeveralBands(t *testing.T) {
	codes := books(t, tall)
	for _, c := range []struct {
		height, diameter string
		outcome          report.Outcome
		found            float64
	}{
		{"1 m ± 1 cm", "0.3 m ± 1 cm", report.Within, 0.68},
		{"1 m ± 5 cm", "0.3 m ± 1 cm", report.Within, 0.64},
		{"1 m ± 5 cm", "0.3 m ± 5 cm", report.NotMet, 0.60},
		{"1 m", "0.3 m ± 9 cm", report.Within, 0.61},
		{"1 m", "0.3 m ± 91 mm", report.NotMet, 0.609},
	} {
		f := judge(t, load(t, fmt.Sprintf("/cylinders/a/height = %q", c.height), fmt.Sprintf("/cylinders/a/diameter = %q", c.diameter)), codes, difference)
		is(t, f, c.outcome, "")
		if got := *f.Parts[0].Found.SI; math.Abs(got-c.found) > 1e-12 {
			t.Errorf("%s less %s: judged at %v, want %v", c.height, c.diameter, got, c.found)
		}
		if short := f.Parts[0].Short; (short != nil) != (c.outcome == report.NotMet) || short != nil && math.Abs(*short.SI-(0.6096-c.found)) > 1e-12 {
			t.Errorf("short by %+v", short)
		}
		if margin, want := *f.Parts[0].Margin, (c.found-0.6096)/0.6096; math.Abs(margin-want) > 1e-12 {
			t.Errorf("%s less %s: the margin is %v of the limit, want %v", c.height, c.diameter, margin, want)
		}
	}
}

// TestAsWrittenWhereNoCornerIsWorse: where the ends of a band change no answer, the value
// is shown as it is written.
func TestAsWrittenWhereNoCornerIsWorse(t *testing.T) {
	taken := func(s *Sheet, c *layout.Cylinder) Ruling {
		Measure(s, "h", &c.Height)
		return standing1(s, c)
	}
	l := load(t, `/cylinders/a/height = "70 cm ± 2 cm"`)
	r, err := Run(context.Background(), Set{Checks: []Check{asksOfA(taken)}}, l, books(t, stand), Options{On: judged, Working: true})
	if err != nil {
		t.Fatal(err)
	}
	f := of(t, r, "/cylinders/a")
	is(t, f, report.Within, "")
	if line := f.Parts[0].Working[0]; line.Symbol != "h" || *line.Value.SI != 0.7 {
		t.Errorf("shown as %s = %v, written is 0.7 m", line.Symbol, *line.Value.SI)
	}
}

// TestNoInteriorIsWorseThanTheCorners samples the inside of the bands of a
// clause that is monotone in each value.
func TestNoInteriorIsWorseThanTheCorners(t *testing.T) {
	codes := books(t, tall)
	rapid.Check(t, func(rt *rapid.T) {
		mm := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(rt, name) }
		h, dh := mm("height", 700, 1100), mm("slack of height", 0, 60)
		d, dd := mm("diameter", 100, 300), mm("slack of diameter", 0, 60)
		at := func(h, d string) report.Finding {
			return judge(t, load(t, fmt.Sprintf("/cylinders/a/height = %q", h), fmt.Sprintf("/cylinders/a/diameter = %q", d)), codes, difference)
		}
		whole := at(fmt.Sprintf("%d mm ± %d mm", h, dh), fmt.Sprintf("%d mm ± %d mm", d, dd))
		inside := at(fmt.Sprintf("%d mm", h+mm("inside h", -dh, dh)), fmt.Sprintf("%d mm", d+mm("inside d", -dd, dd)))
		if weight(inside.Outcome, inside.Reason) > weight(whole.Outcome, whole.Reason) || *inside.Parts[0].Found.SI < *whole.Parts[0].Found.SI-1e-12 {
			rt.Fatalf("a case inside the bands is worse (%s) than the bands (%s)", inside.Parts[0].Found.Text, whole.Parts[0].Found.Text)
		}
	})
}

// TestCornersAreTriedOnce counts the runs of a clause: once as written, and once
// at each corner of the bands that it meets, however often it takes a value.
func TestCornersAreTriedOnce(t *testing.T) {
	codes := books(t, tall)
	for _, c := range []struct {
		edits []string
		runs  int
	}{
		{nil, 1},
		{[]string{`/cylinders/a/height = "1 m ± 1 cm"`}, 3},
		{[]string{`/cylinders/a/height = "1 m ± 1 cm"`, `/cylinders/a/diameter = "0.3 m to 0.31 m"`}, 5},
		{[]string{`/cylinders/a/height = "1 m ± 0 cm"`}, 1},
	} {
		runs := 0
		judge(t, load(t, c.edits...), codes, func(s *Sheet, a *layout.Cylinder) Ruling {
			runs++
			Measure(s, "h", &a.Height)
			return difference(s, a)
		})
		if runs != c.runs {
			t.Errorf("%v: %d runs, want %d", c.edits, runs, c.runs)
		}
	}
}

// TestABranchThatMeetsMoreValues: at one corner of the first value the clause
// takes a second one, whose worst end decides; and where that one is missing, the
// whole is not known.
func TestABranchThatMeetsMoreValues(t *testing.T) {
	codes := books(t, tall)
	branchy := func(s *Sheet, a *layout.Cylinder) Ruling {
		h := Measure(s, "h", &a.Height)
		need := Limit(s, "h_need", code.ClearanceAbove, nil)
		if h > 1 {
			return AtLeast(s, Measure(s, "d", &a.Diameter), need)
		}
		return AtLeast(s, h, need)
	}
	within := judge(t, load(t, `/cylinders/a/height = "1 m ± 1 cm"`, `/cylinders/a/diameter = "0.7 m ± 5 cm"`), codes, branchy)
	is(t, within, report.Within, "")
	broken := judge(t, load(t, `/cylinders/a/height = "1 m ± 1 cm"`, `/cylinders/a/diameter = "0.65 m ± 5 cm"`), codes, branchy)
	is(t, broken, report.NotMet, "")
	if got := *broken.Parts[0].Found.SI; math.Abs(got-0.60) > 1e-12 {
		t.Errorf("judged at %v", got)
	}
	missing := judge(t, load(t, `/cylinders/a/height = "1 m ± 1 cm"`, `delete /cylinders/a/diameter`), codes, branchy)
	is(t, missing, report.NotKnown, report.MissingInput)
	exact := judge(t, load(t, `/cylinders/a/height = "1 m"`, `delete /cylinders/a/diameter`), codes, branchy)
	is(t, exact, report.Within, "")
}

// manyBands makes a clause that takes n values with a band, and how it ends.
func manyBands(n int, end func(*Sheet) Ruling) func(*Sheet, *layout.Cylinder) Ruling {
	return func(s *Sheet, _ *layout.Cylinder) Ruling {
		for i := range n {
			Band(s, "x", fmt.Sprint("value ", i), unit.Value[unit.Length]{Low: 1, Nominal: 2, High: 3})
		}
		return end(s)
	}
}

// TestTooManyBands: past the number of corners that can be tried nothing is
// within, nor exempt; what is not met as written stays so.
func TestTooManyBands(t *testing.T) {
	codes := answerBooks(t)
	for _, c := range []struct {
		end     string
		n       int
		outcome report.Outcome
		reason  report.Reason
	}{
		{"within", maxCorners, report.Within, ""},
		{"within", maxCorners + 1, report.NotKnown, report.MissingInput},
		{"exempt", maxCorners, report.NotApplicable, report.RuleExempts},
		{"exempt", maxCorners + 1, report.NotKnown, report.MissingInput},
		{"not met", maxCorners + 1, report.NotMet, ""},
		{"not known", maxCorners + 1, report.NotKnown, report.MissingInput},
		{"not covered", maxCorners + 1, report.NotApplicable, report.NotCovered},
	} {
		for _, a := range answers {
			if a.name != c.end {
				continue
			}
			f := judge(t, load(t), codes, manyBands(c.n, a.clause))
			t.Run(fmt.Sprint(c.end, " ", c.n), func(t *testing.T) { is(t, f, c.outcome, c.reason) })
		}
	}
	tooMany := judge(t, load(t), codes, manyBands(maxCorners+1, answers[4].clause))
	if m := tooMany.Parts[0].Missing; len(m) != 1 || m[0].What != "exact values: too many of those that count here carry a tolerance" || m[0].Place.Pointer != "/cylinders/a" {
		t.Errorf("%+v", m)
	}
	runs := 0
	judge(t, load(t), codes, manyBands(maxCorners, func(s *Sheet) Ruling { runs++; return answers[4].clause(s) }))
	if runs != 1+1<<maxCorners {
		t.Errorf("%d runs at %d bands, want %d", runs, maxCorners, 1+1<<maxCorners)
	}
}

// TestTheLeastMarginIsKept: of two corners that are both not met the one that is
// shorter is told, in relation to the limit.
func TestTheLeastMarginIsKept(t *testing.T) {
	f := judge(t, load(t, `/cylinders/a/height = "20 cm ± 10 cm"`), books(t, tall), tallEnough)
	is(t, f, report.NotMet, "")
	if got := *f.Parts[0].Short.SI; math.Abs(got-0.5096) > 1e-12 {
		t.Errorf("short by %v m, want 0.5096", got)
	}
	f = judge(t, load(t, `/cylinders/a/height = "80 cm ± 10 cm"`), books(t, low), lowEnough)
	if got := *f.Parts[0].Short.SI; math.Abs(got-0.2904) > 1e-12 {
		t.Errorf("over by %v m, want 0.2904", got)
	}
	within := judge(t, load(t, `/cylinders/a/height = "80 cm ± 10 cm"`), books(t, tall), tallEnough)
	if got := *within.Parts[0].Found.SI; math.Abs(got-0.7) > 1e-12 || within.Parts[0].Short != nil {
		t.Errorf("judged at %v, short %v", got, within.Parts[0].Short)
	}
}

// TestAnUndefinedNumberIsNeverWithin in either sense.
func TestAnUndefinedNumberIsNeverWithin(t *testing.T) {
	nan := func(s *Sheet) unit.Length {
		return Step(s, "x", Formula{Text: "x = 0 / 0"}, func() unit.Length { return unit.Length(math.NaN()) })
	}
	is(t, judge(t, load(t), books(t, tall), func(s *Sheet, _ *layout.Cylinder) Ruling {
		return AtLeast(s, nan(s), Limit(s, "h_need", code.ClearanceAbove, nil))
	}), report.NotMet, "")
	is(t, judge(t, load(t), books(t, low), func(s *Sheet, _ *layout.Cylinder) Ruling {
		return AtMost(s, nan(s), Limit(s, "h_max", code.LockerLowVentEdge, nil))
	}), report.NotMet, "")
	is(t, judge(t, load(t), books(t, stand), func(s *Sheet, _ *layout.Cylinder) Ruling {
		return AtLeast(s, nan(s), Against(Asked(s, code.CylinderUpright, nil), nan(s)))
	}), report.NotMet, "")
}

// TestTheLastDigitOfAFloatDecidesNothing: 2 % of 0.558 m2, halved, is 0.00558 m2
// on paper and a hair more in floats; what was written to 12 digits still counts.
func TestTheLastDigitOfAFloatDecidesNothing(t *testing.T) {
	codes := books(t, says("locker.low-vent-area", `{"shareOf": "locker.floorArea", "share": "2 %", "splitOver": 2}`, "read"),
		says("regulator.outlet-ceiling", `{"fixed": "3 Pa"}`, "read"))
	least := func(found unit.Area) report.Finding {
		facts := Facts{code.FactLockerFloorArea: func(*Sheet) any { return 0.558 }}
		return judge(t, load(t), codes, func(s *Sheet, _ *layout.Cylinder) Ruling {
			return AtLeast(s, found, Limit(s, "A_need", code.LockerLowVentArea, facts))
		})
	}
	for found, want := range map[unit.Area]report.Outcome{0.00558: report.Within, 0.00557999999999999: report.Within, 0.00557999999999: report.NotMet, 0.00558000000001: report.Within} {
		f := least(found)
		is(t, f, want, "")
		if p := f.Parts[0]; want == report.Within && *p.Found.SI < *p.Needed.SI {
			t.Errorf("within, and shown as %s of %s", p.Found.Text, p.Needed.Text)
		}
	}
	most := func(found unit.GaugePressure) report.Finding {
		return judge(t, load(t), codes, func(s *Sheet, _ *layout.Cylinder) Ruling {
			return AtMost(s, found, Limit(s, "p_max", code.RegulatorOutletCeiling, nil))
		})
	}
	for found, want := range map[unit.GaugePressure]report.Outcome{3: report.Within, 3.000000000000001: report.Within, 3.00000000001: report.NotMet, 2.9: report.Within} {
		is(t, most(found), want, "")
	}
}

// bandsOf takes two values with a band, whose difference is held against 24 in,
// for each of n things.
func bandOfThing(s *Sheet, i int, low, high unit.Length) Ruling {
	x := Band(s, "x", fmt.Sprint("value of ", i), unit.Value[unit.Length]{Low: low, Nominal: (low + high) / 2, High: high})
	return AtLeast(s, x, Limit(s, "h_need", code.ClearanceAbove, nil)).About("%d", i)
}

// TestClausesJoinedByAndHaveCornersOfTheirOwn: any number of things may carry a
// tolerance, each is told at its own worst corner, and the work adds up instead
// of multiplying.
func TestClausesJoinedByAndHaveCornersOfTheirOwn(t *testing.T) {
	codes := books(t, tall)
	const n = 3 * maxCorners
	for name, fold := range map[string]func(*Sheet, func(*Sheet, int) Ruling) Ruling{
		"All": func(s *Sheet, f func(*Sheet, int) Ruling) Ruling {
			var clauses []func(*Sheet) Ruling
			for i := range n {
				clauses = append(clauses, func(s *Sheet) Ruling { return f(s, i) })
			}
			return All(s, clauses...)
		},
		"Every": func(s *Sheet, f func(*Sheet, int) Ruling) Ruling {
			i := -1
			return Every(s, make([]*layout.Cylinder, n), nil, func(s *Sheet, _ *layout.Cylinder) Ruling {
				if s.pick.first {
					i++
				}
				return f(s, i)
			})
		},
	} {
		t.Run(name, func(t *testing.T) {
			runs := 0
			f := judge(t, load(t), codes, func(s *Sheet, _ *layout.Cylinder) Ruling {
				return fold(s, func(s *Sheet, i int) Ruling {
					runs++
					return bandOfThing(s, i, 0.61+unit.Length(i)/100, 2)
				})
			})
			is(t, f, report.Within, "")
			if runs != 3*n {
				t.Errorf("%d runs for %d things with one band each, want %d", runs, n, 3*n)
			}
			for i, p := range f.Parts {
				if p.About != fmt.Sprint(i) || math.Abs(*p.Found.SI-(0.61+float64(i)/100)) > 1e-12 {
					t.Errorf("part %d is about %s, judged at %v", i, p.About, *p.Found.SI)
				}
			}
		})
	}
	// Two things, each short at an end of its own band only: both are told.
	f := judge(t, load(t), codes, func(s *Sheet, _ *layout.Cylinder) Ruling {
		return All(s, func(s *Sheet) Ruling { return bandOfThing(s, 1, 0.5, 2) }, func(s *Sheet) Ruling { return bandOfThing(s, 2, 0.4, 2) })
	})
	if len(f.Parts) != 2 || f.Parts[0].Outcome != report.NotMet || f.Parts[1].Outcome != report.NotMet || *f.Parts[0].Found.SI != 0.4 || *f.Parts[1].Found.SI != 0.5 {
		t.Errorf("%+v", f.Parts)
	}
}

// TestAnInnerClauseKeepsToTheCornerOfTheOuter for values that both take.
func TestAnInnerClauseKeepsToTheCornerOfTheOuter(t *testing.T) {
	l := load(t, `/cylinders/a/height = "0.5 m to 1 m"`, `/cylinders/a/diameter = "0.1 m to 0.2 m"`)
	seen := map[string]bool{}
	f := judge(t, l, books(t, stand), func(s *Sheet, c *layout.Cylinder) Ruling {
		outer := Measure(s, "h", &c.Height)
		return All(s, func(s *Sheet) Ruling {
			inner, d := Measure(s, "h", &c.Height), Measure(s, "d", &c.Diameter)
			seen[fmt.Sprint(float64(outer), float64(d))] = true
			return Is(s, inner == outer, Asked(s, code.CylinderUpright, nil), "found", "needed")
		})
	})
	is(t, f, report.Within, "")
	for _, corner := range []string{"0.5 0.1", "0.5 0.2", "1 0.1", "1 0.2"} {
		if !seen[corner] {
			t.Errorf("the corner %s was not tried", corner)
		}
	}
}

// TestAnyMayBeAnotherAtEachCorner: that one of two is always enough is enough.
func TestAnyMayBeAnotherAtEachCorner(t *testing.T) {
	codes := books(t, tall, low)
	either := func(s *Sheet, c *layout.Cylinder) Ruling {
		return Any(s, func(s *Sheet) Ruling { return tallEnough(s, c) }, func(s *Sheet) Ruling { return lowEnough(s, c) })
	}
	is(t, judge(t, load(t, `/cylinders/a/height = "0.5 m to 1 m"`), codes, either), report.Within, "")
	twice := func(s *Sheet, c *layout.Cylinder) Ruling {
		return Any(s, func(s *Sheet) Ruling { return tallEnough(s, c) }, func(s *Sheet) Ruling { return tallEnough(s, c) })
	}
	is(t, judge(t, load(t, `/cylinders/a/height = "0.5 m to 1 m"`), codes, twice), report.NotMet, "")
}

// TestWordsLeaveTheCornerToNumbers: a duty beside a comparison does not hide the
// comparison's worst corner.
func TestWordsLeaveTheCornerToNumbers(t *testing.T) {
	codes := books(t, tall, stand, somewhere)
	f := judge(t, load(t, `/cylinders/a/height = "0.7 m to 1 m"`, `/cylinders/a/in = "open-air"`), codes, func(s *Sheet, c *layout.Cylinder) Ruling {
		h := Measure(s, "h", &c.Height)
		return All(s, func(s *Sheet) Ruling { return standing1(s, c) }, func(s *Sheet) Ruling { return placed1(s, c) },
			func(s *Sheet) Ruling { return AtLeast(s, h, Limit(s, "h_need", code.ClearanceAbove, nil)) })
	})
	is(t, f, report.Within, "")
	if got := *f.Parts[0].Found.SI; got != 0.7 {
		t.Errorf("told at %v, want the worst corner, 0.7", got)
	}
}

// TestTooManyBandsInOnePart are that part's own matter.
func TestTooManyBandsInOnePart(t *testing.T) {
	codes := answerBooks(t)
	f := judge(t, load(t), codes, func(s *Sheet, c *layout.Cylinder) Ruling {
		return All(s, answers[4].clause, func(s *Sheet) Ruling { return manyBands(maxCorners+1, answers[4].clause)(s, c) })
	})
	is(t, f, report.NotKnown, report.MissingInput)
	if len(f.Parts) != 2 || f.Parts[1].Outcome != report.Within {
		t.Errorf("%+v", f.Parts)
	}
}
