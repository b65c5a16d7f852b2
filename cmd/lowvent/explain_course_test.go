package main

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/schema/report"
)

func TestMarks(t *testing.T) {
	var rising [][2]float64
	for x := range 12 {
		rising = append(rising, [2]float64{float64(x), float64(x)})
	}
	lines := marks(rising, 12)
	for row, line := range lines {
		if want := strings.Repeat(" ", 11-row) + "*"; line != want {
			t.Errorf("line %d is %q, want %q", row, line, want)
		}
	}
	flat := marks([][2]float64{{0, 3}, {1, 3}}, 4)
	if diff := cmp.Diff("*  *", flat[plotTall-1]); diff != "" || strings.TrimSpace(strings.Join(flat[:plotTall-1], "")) != "" {
		t.Errorf("a level course: %q", flat)
	}
	both := marks([][2]float64{{0, 0}, {0.1, 10}, {10, 5}}, 10)
	for row, line := range both {
		if !strings.HasPrefix(line, "*") {
			t.Errorf("the first column goes from the lowest to the highest, and line %d is %q", row, line)
		}
	}
}

// TestMarksHoldEveryPoint: whatever the points, each column that has one is marked, and
// none is wider than the plot.
func TestMarksHoldEveryPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wide := rapid.IntRange(1, 80).Draw(t, "wide")
		number := rapid.Float64Range(-1e9, 1e9)
		points := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) [2]float64 { return [2]float64{number.Draw(t, "x"), number.Draw(t, "y")} }), 1, 30).Draw(t, "points")
		lines := marks(points, wide)
		left, right, low, high := extent(points)
		for _, each := range points {
			column, up := place(each[0], left, right, wide), place(each[1], low, high, plotTall)
			line := lines[plotTall-1-up]
			if len(line) <= column || line[column] != '*' {
				t.Fatalf("%v is not drawn in %q", each, lines)
			}
		}
		for _, line := range lines {
			if len(line) > wide {
				t.Fatalf("%d columns: %q", len(line), line)
			}
		}
	})
}

// TestCoursesAreToldAndGiven: each is drawn for people, and its points stand in the JSON form,
// by rising time and all of them numbers.
func TestCoursesAreToldAndGiven(t *testing.T) {
	sorrel := "../../testdata/layouts/sorrel.json"
	for _, id := range []string{"regulator.cold-course", "regulator.cold-contents", "locker.leak-course", "space.carbon-dioxide-course"} {
		told := run(nil, "explain", id, sorrel, "--on", "2026-11-25")
		if told.status != 0 || !strings.Contains(told.stdout, "\n  +-----") || !strings.Contains(told.stdout, "*") {
			t.Errorf("%s: status %d, %s", id, told.status, told.stdout)
		}
		given := run(nil, "explain", id, sorrel, "--on", "2026-11-25", "--format", "json")
		var r report.Run
		if err := json.Unmarshal([]byte(given.stdout), &r); err != nil || given.status != 0 {
			t.Fatalf("%s: %v, status %d", id, err, given.status)
		}
		courses := 0
		for _, f := range r.Files[0].Figures {
			if f.Course == nil {
				continue
			}
			courses++
			before := math.Inf(-1)
			for _, each := range f.Course.Points {
				if each[0] <= before || math.IsNaN(each[1]) {
					t.Fatalf("%s: %v after %v", id, each, before)
				}
				before = each[0]
			}
			if len(f.Course.Points) < 30 {
				t.Errorf("%s: %d points", id, len(f.Course.Points))
			}
		}
		if courses == 0 {
			t.Errorf("%s has no course", id)
		}
	}
	if got := run(nil, "explain", "regulator.cold-course", "--format", "json"); got.status != 2 || !strings.Contains(got.stderr, "name the layout") {
		t.Errorf("--format without a layout: %+v", got)
	}
}
