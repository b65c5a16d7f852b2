package draw

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// curvesOf are the lines of a chart that are drawn with the pen of courses, and its frame.
func curvesOf(d *Drawing) (curves []*Path, frame Rectangle) {
	for _, m := range d.Marks {
		if p, is := m.(*Path); is && p.Pen.Width == 0.6 {
			curves = append(curves, p)
		} else if is && p.Closed && p.Pen.Width == 0.3 {
			frame, _ = Extent([]Mark{p})
		}
	}
	return curves, frame
}

// TestNothingLeavesTheFrame: however far a course goes beyond its level, no part of the
// curve lies outside the frame, the level lies well up in it, and what is left out is told.
func TestNothingLeavesTheFrame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		level := math.Pow(10, rapid.Float64Range(-3, 3).Draw(t, "level"))
		n := rapid.IntRange(2, 3000).Draw(t, "n")
		var points [][2]float64
		most := 0.0
		for i := range n {
			y := level * math.Pow(10, rapid.Float64Range(-2, 3).Draw(t, "y"))
			points, most = append(points, [2]float64{float64(i) * 10, y}), max(most, y)
		}
		d := Chart("c", "a course", course(unit.KindRatio, points, report.Level{Title: "a level", At: level}))
		curves, frame := curvesOf(d)
		for _, c := range curves {
			if r, _ := Extent([]Mark{c}); !r.Within(frame.grown(1e-6)) {
				t.Fatalf("a curve over %v leaves the frame %v", r, frame)
			}
		}
		off := strings.Contains(textOn(d), "off the chart")
		least := points[0][1]
		for _, p := range points {
			least = min(least, p[1])
		}
		if want := most > 5*level && least <= 4*level; off != want || off != strings.Contains(d.Alt, "off the chart") {
			t.Fatalf("most %g of level %g, least %g: off the chart %v", most, level, least, off)
		}
		if off && !strings.Contains(d.Alt, "at most "+axisText(unit.KindRatio, most)) {
			t.Fatalf("how far it goes is not told: %s", d.Alt)
		}
	})
}

// TestTimesTold: on a straight rise the time at which the course comes to a level or runs
// off the chart is level over slope.
func TestTimesTold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slope := rapid.Float64Range(0.01, 5).Draw(t, "slope") // levels a minute
		minutes := rapid.IntRange(1, 200).Draw(t, "minutes")
		var points [][2]float64
		for i := range minutes + 1 {
			points = append(points, [2]float64{60 * float64(i), slope * float64(i)})
		}
		end := slope * float64(minutes)
		d := Chart("c", "a course", course(unit.KindRatio, points, report.Level{Title: "a level", At: 1}))
		switch {
		case slope > 1.001 && !strings.Contains(d.Alt, "passed within 60 s") && !strings.Contains(d.Alt, "passed within 1 min"):
			t.Fatalf("slope %g, passed within the first step: %s", slope, d.Alt)
		case slope < 0.999 && end > 1.001 && !strings.Contains(d.Alt, "passed after "+axisText(unit.KindDuration, meets(points[0], points[minutes], 1))):
			t.Fatalf("slope %g: %s", slope, d.Alt)
		case end < 0.999 && strings.Contains(d.Alt, "passed after"):
			t.Fatalf("it ends at %g, and yet: %s", end, d.Alt)
		}
		at, does := firstPassed(points, 1)
		if does != (end >= 1) && math.Abs(end-1) > 1e-9 || does && math.Abs(at-60/slope) > 1e-6*at+1e-9 {
			t.Fatalf("slope %g: passed %v after %g s", slope, does, at)
		}
	})
}

// TestFirstPassed tries starts above, on and below a height, by figures done by hand.
func TestFirstPassed(t *testing.T) {
	for _, c := range []struct {
		name   string
		course [][2]float64
		want   float64
		does   bool
	}{
		{"rises", [][2]float64{{0, 0}, {60, 30}}, 20, true},
		{"falls", [][2]float64{{0, 30}, {40, 0}}, 40.0 * 2 / 3, true},
		{"comes up to it and goes no further", [][2]float64{{0, 0}, {60, 10}, {120, 0}}, 60, true},
		{"stays below", [][2]float64{{0, 0}, {60, 9.9}}, 0, false},
		{"stays above", [][2]float64{{0, 11}, {60, 12}}, 0, false},
		{"starts on it", [][2]float64{{5, 10}, {60, 12}}, 5, true},
		{"the first of two times", [][2]float64{{0, 0}, {10, 20}, {20, 0}, {30, 20}}, 5, true},
	} {
		if at, does := firstPassed(c.course, 10); does != c.does || math.Abs(at-c.want) > 1e-9 {
			t.Errorf("%s: %v after %g, want %v after %g", c.name, does, at, c.does, c.want)
		}
	}
}

// TestASmearIsCut: a course to sixty times the limit is drawn to about four times it, says
// when it runs off and how far, and a title that leaves no room moves the words inside.
func TestASmearIsCut(t *testing.T) {
	var points [][2]float64
	for i := range 601 {
		points = append(points, [2]float64{float64(i), float64(i) / 10})
	}
	for _, title := range []string{"of the lower limit", strings.Repeat("of the lower limit, ", 6)} {
		c := course(unit.KindRatio, points, report.Level{Title: "the limit", At: 1})
		c.Up.Title = title
		d := Chart("c", "a course", c)
		whole(t, "cut", d)
		curves, frame := curvesOf(d)
		if len(curves) != 1 || math.Abs(curves[0].Points[len(curves[0].Points)-1].Y-frame.Top) > 1e-6 {
			t.Fatalf("%d curves, frame %v", len(curves), frame)
		}
		if text := textOn(d); !strings.Contains(text, "off the chart after 40 s; at most 6000 %") || !strings.Contains(strings.ReplaceAll(text, "\n", " "), "passed after 10 s") {
			t.Errorf("%s", text)
		}
	}
}

// TestOffFromTheStart: a course that begins beyond the chart says so.
func TestOffFromTheStart(t *testing.T) {
	d := Chart("c", "a course", course(unit.KindRatio, [][2]float64{{0, 50}, {60, 50}, {120, 0}}, report.Level{Title: "the limit", At: 1}))
	if !strings.Contains(d.Alt, "off the chart from the start; at most 5000 %") {
		t.Errorf("%s", d.Alt)
	}
}
