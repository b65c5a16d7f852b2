package handoff

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// TestClaims: each claim of the report is there to be proved, with a blank for how.
func TestClaims(t *testing.T) {
	claims := 0
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		s := sectionOf(t, d, "prove")
		var want, got []string
		for _, c := range m.Report.Claims {
			want = append(want, strings.Join([]string{c.Subject, c.States, c.Basis, strings.Join(c.Checks, ", ")}, " | "))
		}
		for _, row := range rowsOf(s) {
			got = append(got, strings.Join([]string{row[0].Text, row[1].Text, row[2].Text, row[3].Text}, " | "))
			if last := row[len(row)-1]; !last.Blank || last.Text != "" {
				t.Errorf("%s has no blank", row[0].Text)
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Error(diff)
		}
		claims += len(got)
	})
	if claims < 50 {
		t.Errorf("only %d claims in all demonstrations", claims)
	}
}

// TestHidden: the linings to take off are those of the lines that are not stated visible,
// and of these all.
func TestHidden(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		var want, got []string
		for _, line := range m.Layout.Lines.All() {
			switch seen, known := line.Visible.Get(); {
			case !known:
				want = append(want, line.Label()+" not known")
			case !seen:
				want = append(want, line.Label()+" no")
			}
		}
		for _, row := range rowsOf(sectionOf(t, d, "hidden")) {
			got = append(got, row[0].Text+" "+row[1].Text)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Error(diff)
		}
	})
}

// TestUnseen: each list that is not stated complete and each joint not stated visible.
func TestUnseen(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		page := textsIn(*sectionOf(t, d, "unseen"))
		for _, list := range layout.InventoryList("").Choices() {
			if has := strings.Contains(page, "the whole dwelling: "+list+" are not stated"); has == m.Layout.SurveyedBy.Complete.Has(layout.InventoryList(list)) {
				t.Errorf("that %s are all listed: told as open: %t", list, has)
			}
		}
		for _, s := range m.Layout.Spaces.All() {
			for _, list := range layout.SurveyList("").Choices() {
				told := regexp.MustCompile("(?m)^" + regexp.QuoteMeta(s.Label()) + `: not stated.*\b` + list + `\b`).MatchString(page)
				if told == s.Surveyed.IsComplete(layout.SurveyList(list)) {
					t.Errorf("%s of %s: told as open: %t", list, s.Label(), told)
				}
			}
		}
		for _, line := range m.Layout.Lines.All() {
			for _, j := range line.Joints.All() {
				seen, known := j.Visible.Get()
				if told := strings.Contains(page, fmt.Sprintf("joint %s of %s:", j.ID(), line.Label())); told == (known && seen) {
					t.Errorf("joint %s of %s: told as not seen: %t", j.ID(), line.Label(), told)
				}
			}
		}
	})
}

// TestJoints: the list has every joint of every line in the flow, by the drawing's numbers.
func TestJoints(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		var want, got []string
		for i, j := range draw.Joints(m.Layout) {
			want = append(want, fmt.Sprintf("%d %s %s", i+1, j.Line.ID(), j.Joint.ID()))
		}
		for _, row := range rowsOf(sectionOf(t, d, "joints")) {
			got = append(got, fmt.Sprintf("%s %s %s", row[0].Text, row[1].Text, row[2].Text))
			if !row[len(row)-1].Blank {
				t.Errorf("joint %s has no blank for leak fluid", row[2].Text)
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Error(diff)
		}
	})
}

// solvedSizes are the figures that must stand on the fitter's pages alone.
func solvedSizes(m *Matter) []string {
	var all []string
	for i := range m.Report.Figures {
		if f := &m.Report.Figures[i]; (f.ID == "line.least-size" || f.ID == "line.least-bore") && f.Value != nil {
			all = append(all, f.Value.Text)
		}
	}
	return all
}

// TestSolvedSizes stand in the pipe schedule, and on no page that is not the fitter's: a
// builder who reads them buys by them. A text may hold the same number as something that
// the file states, so each is looked for as a cell of its own, and its words everywhere.
func TestSolvedSizes(t *testing.T) {
	some := 0
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		pipes := textsIn(*sectionOf(t, d, "pipes"))
		sizes := solvedSizes(m)
		some += len(sizes)
		for _, size := range sizes {
			if !strings.Contains(pipes, size) {
				t.Errorf("%s is not in the pipe schedule", size)
			}
		}
		for _, p := range d.Parts {
			if p.ID == "fitter" {
				continue
			}
			for _, s := range p.Sections {
				for _, row := range rowsOf(&s) {
					if last := row[len(row)-1].Text; slices.Contains(sizes, last) && strings.Contains(row[0].Text, "bore") {
						t.Errorf("%s tells %q", s.ID, last)
					}
				}
				if page := textsIn(s); strings.Contains(page, "narrowest standard outside") || strings.Contains(page, "bore of ") {
					t.Errorf("%s speaks of a solved size", s.ID)
				}
			}
		}
	})
	if some < 10 {
		t.Errorf("only %d sizes were solved in all demonstrations", some)
	}
}

// TestFigures: each figure of the report has its row, with its value or what is missing.
func TestFigures(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		rows := rowsOf(sectionOf(t, d, "figures"))
		if len(rows) != len(m.Report.Figures) {
			t.Fatalf("%d rows for %d figures", len(rows), len(m.Report.Figures))
		}
		for i, f := range m.Report.Figures {
			want := "missing "
			switch {
			case f.Course != nil:
				want = "drawn as a chart"
			case f.Value != nil && strings.HasPrefix(f.ID, "line.least-"):
				want = "stands on the fitter's pages"
			case f.Value != nil:
				want = f.Value.Text
			}
			if row := rows[i]; row[0].Text != f.Title || row[1].Text != f.Label || !strings.HasPrefix(row[2].Text, want) || !strings.Contains(row[2].Text, f.Note) && f.Value != nil && !solved(f.ID) {
				t.Errorf("%s of %s is told as %q, want %q", f.ID, f.Label, row[2].Text, want)
			}
		}
	})
}

// TestAssumed: each constant that was reckoned with stands with its source: in the annex,
// or with the sizes that it was for.
func TestAssumed(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		rows := append(rowsOf(sectionOf(t, d, "assumptions")), rowsOf(sectionOf(t, d, "pipes"))...)
		told := map[string]bool{}
		for _, row := range rows {
			told[row[0].Text+"|"+row[1].Text+"|"+row[2].Text] = true
		}
		var lines []report.Line
		for _, f := range m.Report.Findings {
			for _, p := range f.Parts {
				lines = append(lines, p.Working...)
			}
		}
		for _, f := range m.Report.Figures {
			lines = append(lines, f.Working...)
		}
		for _, l := range lines {
			if l.Role == "constant" && !told[l.What+"|"+label(l.Value)+"|"+l.Source] {
				t.Errorf("%s is reckoned with and not told", l.What)
			}
		}
	})
}

// order is the work of the test sheet as docs and fitters have it; common practice of the
// trade, no source.
var order = []string{"isolate", "look it all over", "strength", "tightness", "let-by", "lock-up", "running pressure", "flame guard", "flue: no spillage",
	"carbon monoxide at the flue", "alarm sounds", "locker sealed", "vents clear", "high side with leak fluid"}

// TestSteps: fourteen steps in the order of the work, each with blanks, each on every thing
// that it is done on.
func TestSteps(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		table := tableOf(t, sectionOf(t, d, "tests"), "Tests")
		var steps []string
		on := map[string][]string{}
		for _, row := range table.Rows {
			if step := row[0].Text; len(steps) == 0 || steps[len(steps)-1] != step {
				steps = append(steps, step)
			}
			on[row[0].Text] = append(on[row[0].Text], row[1].Text)
			for _, cell := range row[2:] {
				if !cell.Blank || cell.Text != "" {
					t.Errorf("%s has a cell that is no blank: %q", row[0].Text, cell.Text)
				}
			}
		}
		if len(steps) != len(order) {
			t.Fatalf("%d steps: %q", len(steps), steps)
		}
		for i, word := range order {
			if !strings.HasPrefix(steps[i], fmt.Sprintf("%d. ", i+1)) || !strings.Contains(steps[i], word) {
				t.Errorf("step %d is %q, want %q", i+1, steps[i], word)
			}
		}
		for _, a := range m.Layout.Appliances.All() {
			if !slices.Contains(on[steps[6]], a.Label()) {
				t.Errorf("no running pressure of %s", a.Label())
			}
		}
		for _, k := range m.Layout.Lockers.All() {
			if !slices.Contains(on[steps[11]], k.Label()) || !slices.Contains(on[steps[12]], k.Label()) {
				t.Errorf("neither seal nor vents of %s", k.Label())
			}
		}
	})
}

// amountWithUnit is a number with a unit: what a reader could take for a value to be reached.
var amountWithUnit = regexp.MustCompile(`(?i)\d\s*(mbar|bar|kpa|pa|psi|psig|inh2o|in\b|mm|cm|min|minutes|s\b|seconds|°c|%|ppm|kg|lb)`)

// TestNoValueToReach: no step and no heading of the test sheet says what is to be reached.
// What is right for one code kills under another.
func TestNoValueToReach(t *testing.T) {
	every(t, func(t *testing.T, _ *Matter, d *paper.Document) {
		s := sectionOf(t, d, "tests")
		for _, caption := range []string{"Tests", "Instruments"} {
			table := tableOf(t, s, caption)
			for _, c := range table.Columns {
				if amountWithUnit.MatchString(c.Title) {
					t.Errorf("a heading says %q", c.Title)
				}
			}
			for _, row := range table.Rows {
				// the label of a thing is its id, which an owner may call "6-kg"
				if amountWithUnit.MatchString(row[0].Text) {
					t.Errorf("a step says %q", row[0].Text)
				}
			}
		}
		if first := blocksOf[*paper.Para](s)[0]; !first.Strong || !strings.Contains(first.Text, "licensed fitter's use. Nobody else pressurises") {
			t.Errorf("the sheet begins with %q", first.Text)
		}
	})
}

// TestFlueless: steps on flues leave out what is stated to have none, and only that.
func TestFlueless(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		var on []string
		for _, row := range tableOf(t, sectionOf(t, d, "tests"), "Tests").Rows {
			if strings.HasPrefix(row[0].Text, "9. ") {
				on = append(on, row[1].Text)
			}
		}
		for _, a := range m.Layout.Appliances.All() {
			kind, known := a.Flue.Get()
			if got, want := slices.Contains(on, a.Label()), !known || kind != layout.FlueKindNone; got != want {
				t.Errorf("%s with flue %q, known %t: tested %t", a.Label(), kind, known, got)
			}
		}
		for _, stove := range m.Layout.Stoves.All() {
			if !slices.Contains(on, stove.Label()) {
				t.Errorf("%s is not tested for spillage", stove.Label())
			}
		}
	})
}

// TestBlindSpots are told as what a gauge does not show, and never as a pass.
func TestBlindSpots(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		page := textsIn(*sectionOf(t, d, "tests"))
		for _, r := range m.Layout.Regulators.All() {
			if want := r.Label() + ": volume under test " + m.figure("regulator.test-volume", r.Spot().Pointer()); !strings.Contains(page, want) {
				t.Errorf("%q is not told", want)
			}
		}
		if some := m.Layout.Regulators.All(); len(some) > 0 && !strings.Contains(page, "no bubbles anywhere") {
			t.Error("a steady gauge is told without leak fluid")
		}
	})
}

// TestNotesAreNoCertificate: the last pages are blanks, and say what they are not.
func TestNotesAreNoCertificate(t *testing.T) {
	every(t, func(t *testing.T, _ *Matter, d *paper.Document) {
		s := sectionOf(t, d, "notes")
		if s.Title != "Fitter's notes (not a statutory certificate)" {
			t.Errorf("the notes are called %q", s.Title)
		}
		for _, row := range rowsOf(s) {
			if !row[3].Blank || !row[4].Blank {
				t.Errorf("%s has no blank for a decision", row[0].Text)
			}
		}
		for _, want := range []string{"immediately dangerous", "at risk", "gas capped", "where it was capped or locked off"} {
			if page := textsIn(*sectionOf(t, d, "unsafe")); !strings.Contains(page, want) {
				t.Errorf("the blank for an unsafe situation has no %q", want)
			}
		}
	})
}

// TestMaterials: each line, changeover, regulator and alarm, with a blank, under a title
// that keeps anybody from buying by it.
func TestMaterials(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		l := m.Layout
		var bought []*layout.Line
		for _, line := range l.Lines.All() {
			if to, _ := line.To.Get(); to.Section() != "openEnds" {
				bought = append(bought, line)
			}
		}
		want := slices.Concat(labels(bought), labels(l.Changeovers.All()), labels(l.Regulators.All()), labels(l.Alarms.All()))
		var got []string
		for _, row := range rowsOf(sectionOf(t, d, "materials")) {
			got = append(got, row[0].Text)
			if !row[6].Blank {
				t.Errorf("%s has no blank", row[0].Text)
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Error(diff)
		}
		if len(got) > 0 {
			tableOf(t, sectionOf(t, d, "materials"), "For the fitter to confirm before anything is bought")
		}
	})
}

// TestChartsDrawn: a course of the report is drawn, one that could not be reckoned is not,
// nor that of the air of a space where nothing burns.
func TestChartsDrawn(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		courses := len(draw.Charts(m.Report))
		for _, f := range m.Report.Figures {
			if f.Course == nil {
				continue
			}
			drawn := slices.ContainsFunc(draw.Charts(m.Report), func(c *draw.Drawing) bool { return strings.HasPrefix(c.Title, f.Label+": "+f.Title) })
			if !drawn && f.ID != "space.carbon-dioxide-course" {
				t.Errorf("%s of %s is not drawn", f.ID, f.Label)
			}
		}
		s := sectionOf(t, d, "charts")
		if got := len(blocksOf[*paper.Picture](s)); got != courses {
			t.Errorf("%d charts of %d courses", got, courses)
		}
		if past := draw.Unregulated(m.Layout); strings.Contains(textsIn(*s), "gas at cylinder pressure can reach") != (len(past) > 0) {
			t.Errorf("cylinder pressure can reach %v, and the charts say %q", past, textsIn(*s))
		}
		if courses == 0 && !strings.Contains(textsIn(*s), "what it takes is not stated") {
			t.Errorf("without a chart it says %q", textsIn(*s))
		}
	})
	if len(blocksOf[*paper.Picture](sectionOf(t, Paper(matterOf(demos.One(t, "sorrel"))), "charts"))) == 0 {
		t.Error("the whole bus has no chart")
	}
}
