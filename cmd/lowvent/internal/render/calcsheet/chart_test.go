package calcsheet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

func TestAxis(t *testing.T) {
	tests := []struct {
		kind      unit.Kind
		low, high float64
		rounded   bool
		want      string
	}{
		{unit.KindTemperature, 254.01, 275.26, true, "degC -20 -15 -10 -5 0 5"},
		{unit.KindDuration, 0, 495691, false, "days 0 1 2 3 4 5"},
		{unit.KindDuration, 0, 86400, false, "h 0 4 8 12 16 20 24"},
		{unit.KindDuration, 0, 3600, false, "min 0 10 20 30 40 50 60"},
		{unit.KindDuration, 0, 90, false, "s 0 15 30 45 60 75 90"},
		{unit.KindPropaneMass, 2, 10, true, "kg 0 2 4 6 8 10"},
		{unit.KindRatio, 0.0004, 0.0051, true, "% 0 0.1 0.2 0.3 0.4 0.5 0.6"},
		{unit.KindRatio, 0, 0, true, "% 0 0.2 0.4 0.6 0.8 1"},
		{unit.KindPower, 0, 2400, true, "W 0 500 1000 1500 2000 2500"},
		{unit.KindTemperature, 300, 300.0000000001, true, "degC 26.5 27 27.5 28 28.5 29 29.5 30"},
		{unit.KindSpeed, 1e6, math.Nextafter(1e6, 2e6), false, "m/s 1000000 1020000 1040000 1060000 1080000 1100000"},
		{0, 1, 2, false, " 1 1.2 1.4 1.6 1.8 2"},
	}
	for _, tt := range tests {
		a := axisOf(tt.kind, tt.low, tt.high, tt.rounded)
		got := a.name
		for _, each := range a.marks() {
			got += " " + label(each, a.step, 0)
		}
		if got != tt.want {
			t.Errorf("%s from %g to %g: %q, want %q", tt.kind, tt.low, tt.high, got, tt.want)
		}
	}
}

// TestAxisHoldsItsNumbers: an axis reaches over what it is for, with a few marks that
// all lie on it and all read differently.
func TestAxisHoldsItsNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(unit.Kinds()).Draw(t, "kind")
		low := rapid.Float64Range(0, 1e6).Draw(t, "low")
		high := low + rapid.Float64Range(0, 1e6).Draw(t, "over")
		rounded := rapid.Bool().Draw(t, "rounded")
		a := axisOf(k, low, high, rounded)
		slack := 1e-9 * max(1, math.Abs(a.high))
		if a.of(low) < a.low-slack || a.of(high) > a.high+slack {
			t.Fatalf("%+v does not hold %g to %g", a, low, high)
		}
		if back := a.toSI(a.of(high)); math.Abs(back-high) > 1e-9*max(1, high) {
			t.Fatalf("%g comes back as %g", high, back)
		}
		marks, seen := a.marks(), map[string]bool{}
		for _, each := range marks {
			if each < a.low-a.step*1e-6 || each > a.high+a.step*1e-6 {
				t.Fatalf("a mark at %g of %+v", each, a)
			}
			seen[label(each, a.step, 0)] = true
		}
		if len(marks) > mostMarks+2 || len(seen) != len(marks) {
			t.Fatalf("marks %v of %+v", marks, a)
		}
	})
}

func TestOtherSystemStandsOnTheRight(t *testing.T) {
	marks, other := upMarks(unit.KindTemperature, axisOf(unit.KindTemperature, 254, 276, true))
	var got []string
	for _, each := range marks {
		got = append(got, each.Label+"="+each.Other)
	}
	if diff := cmp.Diff([]string{"-20=-4", "-15=5", "-10=14", "-5=23", "0=32", "5=41"}, got); diff != "" || other != "degF" {
		t.Error(other, diff)
	}
	if marks, other := upMarks(unit.KindRatio, axisOf(unit.KindRatio, 0, 1, true)); other != "" || marks[0].Other != "" {
		t.Error("a share has one system")
	}
	marks, other = upMarks(unit.KindPropaneMass, axisOf(unit.KindPropaneMass, 0, 10, true))
	if marks[1].Label+"="+marks[1].Other != "2=4.4" || other != "lb" {
		t.Errorf("%v %s", marks[1], other)
	}
}

// TestLineKeepsEveryPeak: however many points a course has, its line in the picture is
// short, stays in the frame and reaches from the lowest to the highest.
func TestLineKeepsEveryPeak(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ups := rapid.SliceOfN(rapid.Float64Range(200, 400), 1, 3000).Draw(t, "ups")
		c := &report.Course{Across: report.Axis{Title: "time", Kind: "duration"}, Up: report.Axis{Title: "heat", Kind: "temperature"}}
		for i, up := range ups {
			c.Points = append(c.Points, [2]float64{float64(i) * 30, up})
		}
		got := chartOf(c, "course-1")
		e := extremes(c.Points)
		y := axisOf(unit.KindTemperature, c.Points[e.lowest][1], c.Points[e.highest][1], true)
		pairs := strings.Fields(got.Line)
		if len(pairs) > 4*400 {
			t.Fatalf("%d points in the picture", len(pairs))
		}
		top, bottom := math.Inf(1), math.Inf(-1)
		for _, each := range pairs {
			var px, py float64
			if _, err := fmt.Sscanf(each, "%g,%g", &px, &py); err != nil || px < frameLeft || px > frameRight || py < frameTop-0.1 || py > frameBottom+0.1 {
				t.Fatalf("%q lies outside (%v)", each, err)
			}
			top, bottom = min(top, py), max(bottom, py)
		}
		for si, at := range map[float64]float64{c.Points[e.highest][1]: top, c.Points[e.lowest][1]: bottom} {
			if want := onto(y, y.of(si), frameBottom, frameTop); math.Abs(want-at) > 0.11 && e.lowest != e.highest {
				t.Fatalf("%g K is drawn at %g, want %g", si, at, want)
			}
		}
		thin(t, got, len(ups))
	})
}

// thin holds the short table to its ends and extremes.
func thin(t *rapid.T, c *chart, n int) {
	if c.Some[0].Number != 1 || c.Some[len(c.Some)-1].Number != n || len(c.Some) > mostShown+4 || n <= mostShown && c.All != nil || n > mostShown && len(c.All) != n {
		t.Fatalf("of %d points the table shows %d, all are %d", n, len(c.Some), len(c.All))
	}
	notes := map[string]int{}
	for i, each := range c.Some {
		notes[each.Note]++
		if i > 0 && each.Number <= c.Some[i-1].Number {
			t.Fatalf("point %d after %d", each.Number, c.Some[i-1].Number)
		}
	}
	if notes["highest"] != 1 || notes["lowest"] > 1 {
		t.Fatalf("%v", notes)
	}
}

func TestDescribed(t *testing.T) {
	c := &report.Course{Across: report.Axis{Title: "time", Kind: "duration"}, Up: report.Axis{Title: "heat", Kind: "temperature"}, Points: [][2]float64{{0, 273.15}, {3600, 263.15}, {7200, 268.15}}}
	got := chartOf(c, "x")
	want := "A line of 3 points. Heat goes from 0 degC (32 degF) at 0 s to -5 degC (23 degF) at 2 h. Lowest: -10 degC (14 degF) at 60 min. Highest: 0 degC (32 degF) at 0 s. The table below has the numbers."
	if got.Describe != want || got.Title != "Heat against time" || got.UpName != "heat, degC" || got.Across != "time, h" {
		t.Errorf("%+v", got)
	}
}
