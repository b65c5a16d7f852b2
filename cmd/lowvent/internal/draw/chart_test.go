package draw

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

func course(kind unit.Kind, points [][2]float64, levels ...report.Level) *report.Course {
	return &report.Course{Across: report.Axis{Title: "time", Kind: unit.KindDuration.String()}, Up: report.Axis{Title: "it", Kind: kind.String()}, Points: points, Levels: levels}
}

// TestAnyCourseFits: whatever the numbers, the chart stays on its paper, no text stands on
// another, and the curve rises where the course does.
func TestAnyCourseFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom([]unit.Kind{unit.KindRatio, unit.KindTemperature, unit.KindLength, unit.KindGaugePressure, unit.KindPropaneMass}).Draw(t, "kind")
		size := math.Pow(10, rapid.Float64Range(-3, 3).Draw(t, "size"))
		n, step := rapid.IntRange(2, 300).Draw(t, "n"), rapid.Float64Range(1, 1e5).Draw(t, "step")
		var points [][2]float64
		for i := range n {
			points = append(points, [2]float64{float64(i) * step, 300 + size*rapid.Float64Range(-1, 1).Draw(t, "y")})
		}
		var levels []report.Level
		for range rapid.IntRange(0, 6).Draw(t, "levels") {
			levels = append(levels, report.Level{Title: "a level with a name", At: 300 + size*rapid.Float64Range(-2, 2).Draw(t, "at")})
		}
		d := Chart("c", "a course", course(kind, points, levels...))
		if r, _ := Extent(d.Marks); !r.Within(Rectangle{0, 0, d.Width, d.Height}) {
			t.Fatalf("%v is not within %g by %g", r, d.Width, d.Height)
		}
		texts := textsOf(d.Marks)
		for i, a := range texts {
			for _, b := range texts[:i] {
				if a.Bounds().Overlaps(b.Bounds()) {
					t.Fatalf("%q stands on %q", a.Content, b.Content)
				}
			}
		}
		curve := d.Marks[len(d.Marks)-1].(*Path).Points
		for i := 1; len(curve) == n && i < n; i++ {
			if rise := points[i][1] - points[i-1][1]; math.Abs(rise) > 1e-9*300 && (rise > 0) != (curve[i].Y < curve[i-1].Y) {
				t.Fatalf("from %g to %g the curve goes from %g to %g", points[i-1][1], points[i][1], curve[i-1].Y, curve[i].Y)
			}
		}
	})
}

// TestThinningKeepsPeaks: the first, the last, the lowest and the highest point of a long
// course are drawn.
func TestThinningKeepsPeaks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 900).Draw(t, "n")
		points := make([][2]float64, n)
		low, high := math.Inf(1), math.Inf(-1)
		for i := range points {
			points[i] = [2]float64{float64(i), rapid.Float64Range(-5, 5).Draw(t, "y")}
			low, high = min(low, points[i][1]), max(high, points[i][1])
		}
		out := thinned(points, 20)
		if len(out) > max(80, 0) || out[0] != points[0] || out[len(out)-1] != points[n-1] {
			t.Fatalf("%d points, from %v to %v", len(out), out[0], out[len(out)-1])
		}
		gotLow, gotHigh := math.Inf(1), math.Inf(-1)
		for i, p := range out {
			gotLow, gotHigh = min(gotLow, p[1]), max(gotHigh, p[1])
			if i > 0 && p[0] <= out[i-1][0] {
				t.Fatalf("%v after %v", p, out[i-1])
			}
		}
		if gotLow != low || gotHigh != high {
			t.Fatalf("from %g to %g, want %g to %g", gotLow, gotHigh, low, high)
		}
	})
}

func TestSteps(t *testing.T) {
	for _, c := range []struct {
		kind unit.Kind
		span float64
		most int
		want float64
	}{
		{unit.KindRatio, 1, 5, 0.2}, {unit.KindRatio, 0.43, 5, 0.1}, {unit.KindLength, 7, 5, 2}, {unit.KindLength, 26, 5, 10},
		{unit.KindDuration, 3600, 7, 600}, {unit.KindDuration, 86400 * 10, 7, 86400 * 2}, {unit.KindDuration, 86400 * 60, 7, 86400 * 10},
	} {
		if got := stepOf(c.kind, c.span, c.most); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("a span of %g: steps of %g, want %g", c.span, got, c.want)
		}
	}
	if got := ticks(270, 281, 5, iceKelvin); len(got) != 2 || got[0] != 273.15 || got[1] != 278.15 {
		t.Errorf("temperatures from ice: %v", got)
	}
}

// TestPressuresFollowTheFigures: along the demonstration's lines the pressure at each
// appliance is the regulator's outlet less the larger of the two drops of every line on the
// way, as the report has them.
func TestPressuresFollowTheFigures(t *testing.T) {
	demo := demos.One(t, "sorrel")
	drop := map[string]float64{}
	for _, f := range demo.Report.Figures {
		if strings.HasPrefix(f.ID, "line.drop-by") && f.Value != nil {
			drop[f.Subject] = max(drop[f.Subject], largest(f.Value))
		}
	}
	d, notDrawn := Pressures(demo.Layout, demo.Report)
	if len(d) != 1 || len(notDrawn) > 0 {
		t.Fatalf("%d drawings for one regulator", len(d))
	}
	outlet, _ := demo.Layout.Regulators.Get("main").Outlet.Get()
	for _, a := range []string{"hob", "water", "heater", "fridge"} {
		want := float64(outlet.Nominal) - drop["/lines/trunk"] - drop["/lines/to-"+a]
		text := "arrives at appliance " + a + ", " + unit.TextOf(unit.KindGaugePressure, want)
		if drop["/lines/to-"+a] <= 0 || !strings.Contains(d[0].Alt, text) {
			t.Errorf("%q is not told: %s", text, d[0].Alt)
		}
	}
}

func TestNotesBesideAChart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var notes []*margin
		for range rapid.IntRange(1, 8).Draw(t, "n") {
			notes = append(notes, &margin{at: rapid.Float64Range(0, 70).Draw(t, "at"), lines: make([]string, rapid.IntRange(1, 2).Draw(t, "lines"))})
		}
		spreadOut(notes, 2.9, 0, 70)
		for i := range notes {
			half := (float64(len(notes[i].lines))*2.9 + 0.4) / 2
			if notes[i].middle-half < -1e-9 || notes[i].middle+half > 70+1e-9 {
				t.Fatalf("a note at %g, half %g", notes[i].middle, half)
			}
			if i > 0 && notes[i].middle-notes[i-1].middle < half+(float64(len(notes[i-1].lines))*2.9+0.4)/2-1e-9 {
				t.Fatalf("%g stands on %g", notes[i].middle, notes[i-1].middle)
			}
		}
	})
	if got := strings.Join(wrap("one two three", 12, 3), "|"); got != "one two|three" {
		t.Errorf("wrapped into %q", got)
	}
}

// TestALevelCourseIsDrawnLevel: what differs by the rounding of numbers alone is no slope,
// and its marks are few and differ.
func TestALevelCourseIsDrawnLevel(t *testing.T) {
	for kind, at := range map[unit.Kind]float64{unit.KindTemperature: 300, unit.KindSpeed: 1e6, unit.KindRatio: 0} {
		d := Chart("c", "a course", course(kind, [][2]float64{{0, at}, {3600, math.Nextafter(at, 2e6)}}))
		curve := d.Marks[len(d.Marks)-1].(*Path).Points
		if rise := math.Abs(curve[0].Y - curve[1].Y); rise > 0.01 {
			t.Errorf("%s: from %g to %g", kind, curve[0].Y, curve[1].Y)
		}
		said := map[string]bool{}
		texts := textsOf(d.Marks)
		for _, each := range texts {
			said[each.Content] = true
		}
		if len(texts) < 6 || len(texts) > 24 || len(said) != len(texts) {
			t.Errorf("%s: %d texts, %d of them different", kind, len(texts), len(said))
		}
	}
}
