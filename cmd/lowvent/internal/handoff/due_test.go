package handoff

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/calendar"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// runsOut are the keys of a layout whose dates fall due.
var runsOut = []string{"/cylinders/*/requalifiedBy", "/alarms/*/replaceBy", "/extinguishers/*/serviceBy", "/certificates/*/expires", "/waivers/*/until"}

// datesIn finds the dates in the bytes of a layout, without its types.
func datesIn(n *source.Node) map[string]string {
	all := map[string]string{}
	for _, child := range n.Children {
		for at, value := range datesIn(child) {
			all[at] = value
		}
		if slices.Contains(runsOut, layout.Template(child.Pointer())) {
			all[child.Pointer()] = child.Text()
		}
	}
	return all
}

// TestDates: every date of the file that falls due comes out, as it is written, and no
// other; the soonest first.
func TestDates(t *testing.T) {
	some := 0
	for _, d := range demos.All(t) {
		got := map[string]string{}
		all := Dates(d.Layout)
		for _, e := range all {
			got[e.Subject] = e.Written
			if e.What == "" {
				t.Errorf("%s: %s says nothing", d.Name, e.Subject)
			}
		}
		if diff := cmp.Diff(datesIn(d.Layout.Root()), got); diff != "" {
			t.Errorf("%s: %s", d.Name, diff)
		}
		if !slices.IsSortedFunc(all, func(a, b calendar.Entry) int { return a.On.Compare(b.On) }) {
			t.Errorf("%s: the dates are in no order: %v", d.Name, all)
		}
		some += len(all)
	}
	if some < 10 {
		t.Errorf("only %d dates in all demonstrations", some)
	}
}

// TestFirstDay: a month or a year reminds on its first day, so that nobody is late.
func TestFirstDay(t *testing.T) {
	for written, want := range map[string]string{"2026-11-25": "2026-11-25", "2026-11": "2026-11-01", "2026": "2026-01-01"} {
		d, err := unit.ParseDate(written)
		if err != nil {
			t.Fatal(err)
		}
		if got := firstDay(d).String(); got != want {
			t.Errorf("%s reminds on %s, want %s", written, got, want)
		}
	}
}

// TestDue is the table of the dates, with what is past on the day judged.
func TestDue(t *testing.T) {
	for written, want := range map[string]string{"2026-11-24": "OVERDUE", "2026-11-25": "today", "2026-11-26": "to come", "2026-11": "OVERDUE", "2026-12": "to come", "2026": "OVERDUE", "2027": "to come"} {
		m := reloaded(demos.One(t, "sedge"), source.Edit{Pointer: "/alarms/gas/replaceBy", Value: source.Quote(written)})
		if m == nil {
			t.Fatalf("%s: it does not load", written)
		}
		var found []string
		for _, row := range rowsOf(sectionOf(t, &paper.Document{Parts: []paper.Part{{Sections: []paper.Section{due(m)}}}}, "due")) {
			if row[3].Text == "/alarms/gas/replaceBy" {
				found = append(found, row[0].Text+" "+row[2].Text)
			}
		}
		if !slices.Equal(found, []string{written + " " + want}) {
			t.Errorf("%s is told as %q, want %q", written, found, want)
		}
	}
}

// TestUndated: a thing that has such a date, of which the file states none, is told to be
// not known; it is no entry of a calendar.
func TestUndated(t *testing.T) {
	d := demos.One(t, "sorrel")
	for at := range datesIn(d.Layout.Root()) {
		if strings.HasPrefix(at, "/waivers/") {
			continue // a waiver without an end is no waiver, and the file does not load
		}
		m := reloaded(d, leaveOut(d, at)...)
		if m == nil {
			t.Fatalf("without %s it does not load", at)
		}
		s := due(m)
		rows := rowsOf(&s)
		if !slices.ContainsFunc(rows, func(row []paper.Cell) bool {
			return row[0].Text == "not known" && row[2].Text == "not known" && row[3].Text == at
		}) {
			t.Errorf("that %s is not stated is not told: %v", at, rows)
		}
		if slices.ContainsFunc(Dates(m.Layout), func(e calendar.Entry) bool { return e.Subject == at }) {
			t.Errorf("%s is in the calendar without a date", at)
		}
	}
}

// TestNoDates: a file without any thing that has a date says so in words.
func TestNoDates(t *testing.T) {
	s := sectionOf(t, paperOf(demos.One(t, "bare")).paper, "due")
	page := textsIn(*s)
	if !strings.Contains(page, "states no date that falls due") || !strings.Contains(page, "not known") || !strings.Contains(page, "Hoses and regulators age as well") {
		t.Errorf("it says %q", page)
	}
}
