package handoff

import (
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// TestWaiversAtTheHead: a waiver is a finding that somebody means to live with; only who
// may work stands before it.
func TestWaiversAtTheHead(t *testing.T) {
	waived := 0
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		blocks := d.Parts[0].Sections[0].Blocks
		table, is := blocks[1].(*paper.Table)
		if is != (len(m.Report.Waivers) > 0) {
			t.Fatalf("%d waivers, and the second block is %T", len(m.Report.Waivers), blocks[1])
		}
		if !is {
			return
		}
		if len(table.Rows) != len(m.Report.Waivers) || !strings.Contains(table.Caption, "a waived finding stands") {
			t.Errorf("%d rows under %q", len(table.Rows), table.Caption)
		}
		for i, w := range m.Report.Waivers {
			row := table.Rows[i]
			for n, want := range []string{w.ID, w.Check, w.State, w.DecidedBy, w.Reason} {
				if !strings.Contains(row[n].Text, want) {
					t.Errorf("waiver %s: %q does not tell %q", w.ID, row[n].Text, want)
				}
			}
			if !strings.Contains(row[3].Text, w.Until) || !row[5].Blank {
				t.Errorf("waiver %s: until %q, a blank for the fitter %t", w.ID, row[3].Text, row[5].Blank)
			}
		}
		waived += len(m.Report.Waivers)
	})
	if waived < 3 {
		t.Errorf("only %d waivers in all demonstrations", waived)
	}
}

// TestWaivedStillStands: a waived finding is among those not met, and says that it stands.
func TestWaivedStillStands(t *testing.T) {
	m := matterOf(demos.One(t, "sedge"))
	s := sectionOf(t, Paper(m), "not-met")
	some := 0
	page := textsIn(*s)
	for _, f := range m.findings(ended(report.NotMet)) {
		if !f.Waived() {
			continue
		}
		some++
		if !strings.Contains(page, f.Waiver.Reason+". The finding stands.") || !strings.Contains(page, "verified by nobody") {
			t.Errorf("%s: %q", keyOf(f), page)
		}
	}
	if some == 0 {
		t.Error("no waived finding was looked at")
	}
}

// TestYardstick: by which text was judged, and that it may not be the law here.
func TestYardstick(t *testing.T) {
	borrowed, none := 0, 0
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		first := pairsOf(sectionOf(t, d, "first"))
		switch c := m.Report.Code; {
		case c == nil:
			none++
			if !strings.HasPrefix(first["judged by"].Value, "no code: none was chosen") {
				t.Errorf("without a code it was judged by %q", first["judged by"].Value)
			}
		case first["judged by"].Value != strings.TrimSuffix(c.Title+"; "+c.Edition, "; "):
			t.Errorf("judged by %q", first["judged by"].Value)
		case !c.Governs:
			borrowed++
			if got := first["borrowed yardstick"].Value; !strings.HasPrefix(got, "not shown to be the law here: "+firstSentence(c.Borrowed)) || c.Borrowed == "" ||
				!strings.Contains(textsIn(*sectionOf(t, d, "not-covered")), c.Borrowed) {
				t.Errorf("a borrowed yardstick is told as %q", got)
			}
		case first["borrowed yardstick"].Value != "":
			t.Error("the law of the place is called borrowed")
		}
		if !first["fitter's own code"].Blank {
			t.Error("no blank for the edition that the fitter used")
		}
	})
	if borrowed == 0 || none == 0 {
		t.Errorf("%d borrowed, %d without a code were looked at", borrowed, none)
	}
}

// TestOwnCode: a code from the user's own file is told as one that nobody has verified.
func TestOwnCode(t *testing.T) {
	m := matterOf(demos.One(t, "sedge"))
	r := *m.Report
	c := *r.Code
	c.File = "mine.json"
	r.Code, m.Report = &c, &r
	if got := pairsOf(sectionOf(t, Paper(m), "first"))["read from"].Value; got != "mine.json, a file of the user's own: nobody has verified it" {
		t.Errorf("it is told as %q", got)
	}
}

// TestSecondHand lists each limit in use that nobody read in its text, once.
func TestSecondHand(t *testing.T) {
	some := 0
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		got := pairsOf(sectionOf(t, d, "first"))["text not read"].Value
		any := false
		for _, f := range m.Report.Findings {
			for _, p := range f.Parts {
				if p.Source != nil && p.Source.Document != "" && p.Source.Provenance != "read" {
					any = true
					some++
					if cite := strings.TrimSpace(p.Source.Document + " " + p.Source.Clause); !strings.Contains(got, cite) {
						t.Errorf("%q is not told in %q", cite, got)
					}
				}
			}
		}
		if !any && got != "of none of the limits that were judged by" {
			t.Errorf("with none it says %q", got)
		}
	})
	if some == 0 {
		t.Error("no demonstration has a limit at second hand")
	}
}

// TestGasNow: what a fitter finds on arrival, and what the file does not say of it.
func TestGasNow(t *testing.T) {
	sedge := demos.One(t, "sedge")
	tests := []struct {
		name  string
		edits []source.Edit
		want  map[string]string
	}{
		{"connected", nil, map[string]string{"gas now": "the file says that gas IS CONNECTED now", "work done so far": "none", "what is live": "not known", "access, whom to call": "not known"}},
		{"not connected", []source.Edit{{Pointer: "/gas/connected", Value: "false"}}, map[string]string{"gas now": ""}},
		{"not stated", []source.Edit{{Pointer: "/gas/connected", Delete: true}, {Pointer: "/gas/propaneShare", Delete: true}},
			map[string]string{"gas now": ""}},
		{"told", []source.Edit{{Pointer: "/gas/liveParts", Value: `"all of it"`}, {Pointer: "/gas/access", Value: `"ring at the gate"`}},
			map[string]string{"what is live": "all of it", "access, whom to call": "ring at the gate"}},
	}
	for _, tt := range tests {
		m := edited(t, sedge, tt.edits...)
		if m == nil {
			t.Fatalf("%s: the layout does not load", tt.name)
		}
		first := pairsOf(&Paper(m).Parts[0].Sections[0])
		for label, want := range tt.want {
			if want == "" {
				want = m.Report.Gas
			}
			if got := first[label].Value; got != want || got == "" {
				t.Errorf("%s: %s is %q, want %q", tt.name, label, got, want)
			}
		}
		if tt.name != "connected" && tt.name != "told" && strings.Contains(first["gas now"].Value, "IS CONNECTED") {
			t.Errorf("%s: %s", tt.name, first["gas now"].Value)
		}
		if !first["fitter's licence, no."].Blank {
			t.Errorf("%s: no blank for the licence", tt.name)
		}
	}
}

// TestLocalRules: an overlay is told as unverified, with who loosened what until when.
func TestLocalRules(t *testing.T) {
	m := matterOf(demos.One(t, "sedge"))
	r := *m.Report
	r.Overlay = &report.Overlay{File: "rules.json", Over: "us", Limits: []report.LocalLimit{
		{Term: "a.b", Says: "at least 2 in", Document: "Notice 4", State: report.LocalInForce},
		{Term: "c.d", Says: "at most 3 in", Document: "Letter", State: report.LocalExpired, Loosens: true, By: "J. Doe", Licence: "G 1", Until: "2026-01-31", Reason: "as built"}}}
	m.Report = &r
	table := tableOf(t, sectionOf(t, Paper(m), "first"), "Local rules from rules.json")
	if !strings.Contains(table.Caption, "nobody has verified them") {
		t.Errorf("the caption is %q", table.Caption)
	}
	want := [][]string{{"a.b", "at least 2 in", "Notice 4", "in force", "no"}, {"c.d", "at most 3 in", "Letter", "expired", "yes: by J. Doe, licence G 1, until 2026-01-31: as built"}}
	for i, row := range want {
		for n, cell := range row {
			if got := table.Rows[i][n].Text; got != cell {
				t.Errorf("row %d: %q, want %q", i, got, cell)
			}
		}
	}
}

// TestCandidates: without a code those that might fit are named.
func TestCandidates(t *testing.T) {
	m := matterOf(demos.One(t, "bare"))
	r := *m.Report
	r.Code, r.Candidates = nil, []report.Code{{Title: "Code A"}, {Title: "Code B"}}
	m.Report = &r
	page := textsIn(*sectionOf(t, Paper(m), "first"))
	if !strings.Contains(page, "might fit\nCode A\nmight fit\nCode B") {
		t.Errorf("they are told as %q", page)
	}
}

// TestAsked counts every question that was put.
func TestAsked(t *testing.T) {
	c := report.Counts{Checks: 1, Subjects: 45, Danger: 1, Warning: 2, Caution: 3, Notice: 4, NotKnown: 5, Within: 6, ToProve: 3, NotCovered: 7, AskFitter: 8, NoSubject: 4, RuleExempts: 5}
	want := "1 check of 45 subjects: not met 1 DANGER, 2 WARNING, 3 CAUTION, 4 NOTICE; not known 5; within limit as stated 6, of which 3 are for the fitter to prove; not covered 7; left to the fitter 8; not applicable 9"
	if got := asked(&c); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}
