package draw

import (
	"lowvent.example/cmd/lowvent/internal/demos"
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// tags are how often the signal word stands in groups of a thing.
func tags(marks []Mark, of string) int {
	many := 0
	for _, g := range groups(marks)[of] {
		for _, text := range textsOf(g.Marks) {
			if text.Content == string(report.Danger) {
				many++
			}
		}
	}
	return many
}

// TestDangerousThingsAreMarked: whatever is drawn and has a finding of DANGER that is not
// met is told in the words with the check, and has the signal word beside it, once but for
// what is said of distances; nothing else is.
func TestDangerousThingsAreMarked(t *testing.T) {
	marked := 0
	for _, d := range demos.All(t) {
		checks := dangerous(d.Report)
		for _, g := range []*Drawing{Plan(d.Layout, nil), Elevation(d.Layout, nil)} {
			if g != nil && strings.Contains(g.Alt, "Marked DANGER") {
				t.Errorf("%s: marked without a report", d.Name)
			}
		}
		for _, g := range []*Drawing{Plan(d.Layout, d.Report), Elevation(d.Layout, d.Report)} {
			if g == nil {
				continue
			}
			for pointer, of := range groups(g.Marks) {
				item := d.Layout.Find(layout.Ref(strings.TrimPrefix(pointer, "/")))
				told := item != nil && strings.Contains(g.Alt, item.Label()+" ("+listed(checks[pointer])+")")
				if len(checks[pointer]) > 0 && item != nil {
					marked++
					if !told || tags(g.Marks, pointer) == 0 {
						t.Errorf("%s, %s: %s is a danger (%v) and not marked in %d groups", d.Name, g.ID, pointer, checks[pointer], len(of))
					}
				}
			}
		}
	}
	if marked < 10 {
		t.Errorf("%d things marked: the test says little", marked)
	}
}

// TestOnlyUnmetDangersAreMarked: another word, or another outcome, marks nothing, and each
// check is named once.
func TestOnlyUnmetDangersAreMarked(t *testing.T) {
	f := &report.FileReport{Findings: []report.Finding{
		{Check: "a", Subject: "/x/1", Outcome: report.NotMet, Word: report.Danger}, {Check: "a", Subject: "/x/1", Outcome: report.NotMet, Word: report.Danger},
		{Check: "b", Subject: "/x/1", Outcome: report.NotMet, Word: report.Danger}, {Check: "c", Subject: "/x/1", Outcome: report.NotMet, Word: report.Warning},
		{Check: "d", Subject: "/x/2", Outcome: report.NotKnown, Word: report.Danger}, {Check: "e", Subject: "/x/3", Outcome: report.Within, Word: report.Danger}}}
	got := dangerous(f)
	if len(got) != 1 || !slices.Equal(got["/x/1"], []string{"a", "b"}) {
		t.Errorf("%v", got)
	}
}

// TestAThingIsMarkedOnce, whatever number of findings speak of it: cylinder spare of the
// faulty demonstration has three.
func TestAThingIsMarkedOnce(t *testing.T) {
	d := demos.One(t, "sorrel-faulty")
	only := *d.Report
	only.Findings = nil
	for _, f := range d.Report.Findings {
		if f.Subject == "/cylinders/spare" && f.Word == report.Danger {
			f.Parts = nil // no distances
			only.Findings = append(only.Findings, f)
		}
	}
	for _, g := range []*Drawing{Plan(d.Layout, &only), Elevation(d.Layout, &only)} {
		if n := tags(g.Marks, "/cylinders/spare"); n != 1 || len(only.Findings) < 2 {
			t.Errorf("%s: marked %d times for %d findings", g.ID, n, len(only.Findings))
		}
	}
}
