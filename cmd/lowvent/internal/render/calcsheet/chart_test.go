package calcsheet

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/report"
)

func heat(ups ...float64) *report.Course {
	c := &report.Course{Across: report.Axis{Title: "time", Kind: "duration"}, Up: report.Axis{Title: "heat", Kind: "temperature"}}
	for i, up := range ups {
		c.Points = append(c.Points, [2]float64{float64(i) * 30, up})
	}
	return c
}

// TestOfAnyCourseTheTableIsShortAndWhole: however many points a course has, the table beside
// its picture is short and has its ends and extremes; all points stand below it. A single
// point makes no picture.
func TestOfAnyCourseTheTableIsShortAndWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ups := rapid.SliceOfN(rapid.Float64Range(200, 400), 1, 3000).Draw(t, "ups")
		got := chartOf(heat(ups...), "course-1")
		if (got.Picture != nil) != (len(ups) > 1) {
			t.Fatalf("a picture %v of %d points", got.Picture, len(ups))
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
	if got.Describe != want || got.Title != "Heat against time" {
		t.Errorf("%+v", got)
	}
}

// TestLevelsAreToldToThoseWhoCantSeeThePicture holds the page to what the drawing tells.
func TestLevelsAreToldToThoseWhoCantSeeThePicture(t *testing.T) {
	run := sample(plainly())
	run.Files[0].Figures[0].Course = heat(270, 265, 268)
	run.Files[0].Figures[0].Course.Levels = []report.Level{{Title: "freezing", At: 273.15}}
	if page := pageFor(t, run); !strings.Contains(page, "Held against: freezing, 0 degC (32 degF).") || strings.Count(page, "<svg") != 1 {
		t.Error(page)
	}
}

// TestNoPageWithAPictureThatIsNoPicture: a course with a number that is none makes no page,
// rather than one whose picture lies.
func TestNoPageWithAPictureThatIsNoPicture(t *testing.T) {
	run := sample(plainly())
	run.Files[0].Figures[0].Course = heat(270, math.NaN(), 268)
	var out strings.Builder
	if err := HTML(&out, run); err == nil || !strings.Contains(err.Error(), "no finite number") || out.Len() > 0 {
		t.Errorf("%v, %d bytes written", err, out.Len())
	}
}
