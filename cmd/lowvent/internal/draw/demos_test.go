package draw

import (
	"slices"
	"testing"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/schema/report"
)

// whole holds what every drawing must keep: all marks on the paper, no text on another, a
// title, and words for those who can't see it.
func whole(t *testing.T, of string, d *Drawing) {
	t.Helper()
	if d.ID == "" || d.Title == "" || d.Alt == "" {
		t.Errorf("%s %s: no id, title or words", of, d.ID)
	}
	if r, some := Extent(d.Marks); !some || !r.Within(Rectangle{0, 0, d.Width, d.Height}) {
		t.Errorf("%s %s: %v is not within %g by %g", of, d.ID, r, d.Width, d.Height)
	}
	texts := textsOf(d.Marks)
	for i, a := range texts {
		for _, b := range texts[:i] {
			if a.Bounds().Overlaps(b.Bounds()) {
				t.Errorf("%s %s: %q stands on %q", of, d.ID, a.Content, b.Content)
			}
		}
	}
}

func TestDrawingsOfTheDemos(t *testing.T) {
	for _, demo := range demos.All(t) {
		pressures, _ := Pressures(demo.Layout, demo.Report)
		drawings := append(Charts(demo.Report), pressures...)
		if s := Schematic(demo.Layout, demo.Report); s != nil {
			drawings = append(drawings, s)
		}
		ids := map[string]bool{}
		for _, d := range drawings {
			whole(t, demo.Name, d)
			if ids[d.ID] {
				t.Errorf("%s: two drawings %s", demo.Name, d.ID)
			}
			ids[d.ID] = true
		}
	}
}

// TestEveryCourseIsDrawn: each course of a report has its chart, and what can't be reckoned
// has none. The carbon dioxide of a space where nothing burns is the one exception: readers
// took the little that comes of sleeping or of nobody at all for a finding, and its figure
// stays in the report.
func TestEveryCourseIsDrawn(t *testing.T) {
	leftOut := 0
	for _, demo := range demos.All(t) {
		courses := 0
		for _, f := range demo.Report.Figures {
			idle := slices.ContainsFunc(demo.Report.Findings, func(g report.Finding) bool {
				return g.Check == "room.air" && g.Subject == f.Subject && g.Outcome == report.NotApplicable
			})
			switch {
			case f.Course == nil:
			case f.ID == "space.carbon-dioxide-course" && idle:
				leftOut++
			default:
				courses++
			}
		}
		if got := len(Charts(demo.Report)); got != courses {
			t.Errorf("%s: %d charts of %d courses", demo.Name, got, courses)
		}
	}
	if leftOut == 0 {
		t.Error("no space where nothing burns: the exception is not tried")
	}
}
