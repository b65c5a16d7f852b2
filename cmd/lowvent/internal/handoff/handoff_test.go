package handoff

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/report"
)

// TestWhole: each demonstration, and each against another as if that were of the last
// visit, makes a paper and a card that any page can show.
func TestWhole(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		for name, each := range map[string]*paper.Document{"paper": d, "card": Card(m)} {
			if err := each.Check(); err != nil {
				t.Errorf("%s: %v", name, err)
			}
			if each.Foot != "Prepared by the owner from tape and plates. Not inspected. Not a certificate." {
				t.Errorf("the foot of the %s is %q", name, each.Foot)
			}
			if each.Made != "2026-11-25" || each.Language != "en" || each.Program != "lowvent test" || each.Title == "" || each.Subject == "" {
				t.Errorf("%s: made %q in %q by %q, %q, %q", name, each.Made, each.Language, each.Program, each.Title, each.Subject)
			}
		}
	})
	all := demos.All(t)
	for i, d := range all {
		m, old := matterOf(d), all[(i+1)%len(all)]
		m.Old, m.Changes = old.Report, report.Compare(old.Report, m.Report)
		if err := Paper(m).Check(); err != nil {
			t.Errorf("%s since %s: %v", d.Name, old.Name, err)
		}
	}
}

// TestParts: who reads which pages, in which order.
func TestParts(t *testing.T) {
	var parts []string
	sections := map[string][]string{}
	for _, p := range Paper(since(t, "sorrel-faulty", "sorrel")).Parts {
		parts = append(parts, p.ID)
		for _, s := range p.Sections {
			sections[p.ID] = append(sections[p.ID], s.ID)
		}
	}
	if diff := cmp.Diff([]string{"builder", "fitter", "card", "annex"}, parts); diff != "" {
		t.Error(diff)
	}
	want := map[string][]string{
		"builder": {"first", "worst", "schematic", "plan", "elevation", "locker-skirt", "not-met", "not-known", "changes", "charts", "due"},
		"fitter":  {"unsafe", "prove", "unseen", "hidden", "joints", "plates", "loads", "pipes", "ventilation", "materials", "manuals", "tests", "notes"},
		"card":    {"card-smell", "card-monoxide", "card-valves", "card-daily"},
		"annex":   {"within", "not-covered", "not-applicable", "figures", "assumptions"},
	}
	if diff := cmp.Diff(want, sections); diff != "" {
		t.Error(diff)
	}
}

// TestNoOldNoChanges: a paper without an older file has no page of changes.
func TestNoOldNoChanges(t *testing.T) {
	every(t, func(t *testing.T, _ *Matter, d *paper.Document) {
		for _, s := range d.Parts[0].Sections {
			if s.ID == "changes" {
				t.Error("there are changes, and nothing that they are against")
			}
		}
	})
}

// TestCautionsFirst: the words that every report begins and ends with stand on the first
// page, before and after all else.
func TestCautionsFirst(t *testing.T) {
	every(t, func(t *testing.T, _ *Matter, d *paper.Document) {
		first := &d.Parts[0].Sections[0]
		paras := blocksOf[*paper.Para](first)
		for i, want := range report.Cautions() {
			if paras[i].Text != want || !paras[i].Strong {
				t.Errorf("paragraph %d is %q", i, paras[i].Text)
			}
		}
		box, is := first.Blocks[0].(*paper.Box)
		if !is || box.Blocks[0] != paper.Block(paras[0]) {
			t.Error("something stands before the cautions")
		}
		if last, is := first.Blocks[len(first.Blocks)-1].(*paper.Para); !is || !strings.HasSuffix(last.Text, report.KeepOff) || !last.Strong {
			t.Error("the first page does not end with the words to keep the gas off")
		}
	})
}

// TestEnclosed: the file that the paper was made from travels with it, under its hash.
func TestEnclosed(t *testing.T) {
	m := matterOf(demos.One(t, "sorrel"))
	m.Data = []byte("as it was")
	d := Paper(m)
	if len(d.Enclosed) != 1 || string(d.Enclosed[0].Data) != "as it was" || !strings.Contains(d.Enclosed[0].About, m.Report.SHA256) {
		t.Errorf("enclosed is %v", d.Enclosed)
	}
	if first := pairsOf(sectionOf(t, d, "first")); !strings.HasSuffix(first["file"].Value, "SHA-256 "+m.Report.SHA256) {
		t.Errorf("the first page tells of the file %q", first["file"].Value)
	}
	if len(Card(m).Enclosed) != 0 {
		t.Error("the card encloses the file")
	}
}

// TestTitle: a file without a title is called by its name.
func TestTitle(t *testing.T) {
	for _, tt := range []struct{ title, file, want string }{
		{"Sorrel", "a.json", "Sorrel"},
		{"", "a.json", "a.json"},
	} {
		m := matterOf(demos.One(t, "bare"))
		r := *m.Report
		r.Title, r.File = tt.title, tt.file
		m.Report = &r
		if got := Paper(m); got.Title != "For the licensed gas fitter" || got.Subject != tt.want {
			t.Errorf("%q of %q, want %q", got.Title, got.Subject, tt.want)
		}
	}
}

// TestSamePaper: nothing in a paper comes from a clock or from the order of a map.
func TestSamePaper(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		if diff := cmp.Diff(d.Texts(), Paper(m).Texts()); diff != "" {
			t.Error(diff)
		}
	})
}

// TestChanges: each question that went another way has its row, the worst turn first.
func TestChanges(t *testing.T) {
	for _, tt := range []struct{ old, now string }{{"sorrel", "sorrel-faulty"}, {"sorrel-faulty", "sorrel"}, {"sedge", "willow"}} {
		m := since(t, tt.old, tt.now)
		s := sectionOf(t, Paper(m), "changes")
		var want, got, turns []string
		for _, turn := range report.Turns() {
			for _, c := range m.Changes {
				if c.Turn == turn {
					want = append(want, keyOf(c.Finding())+" "+string(turn))
				}
			}
		}
		for _, row := range rowsOf(s) {
			got, turns = append(got, row[0].Text+" | "+row[1].Text+" "+row[2].Text), append(turns, row[2].Text)
			if row[3].Text == "" || row[4].Text == "" {
				t.Errorf("%s: a change tells nothing of before or now: %v", tt.now, row)
			}
		}
		if diff := cmp.Diff(want, got); diff != "" || len(want) == 0 {
			t.Errorf("%s since %s, %d changes: %s", tt.now, tt.old, len(want), diff)
		}
		if !slices.Contains(turns, string(report.Worse)) && tt.now == "sorrel-faulty" {
			t.Error("nothing in the faulty bus is worse")
		}
		if caption := blocksOf[*paper.Table](s)[0].Caption; !strings.Contains(caption, m.Old.SHA256) || !strings.Contains(caption, m.Old.File) {
			t.Errorf("the older file is not named: %q", caption)
		}
	}
}

// TestNothingChanged says so in words, and not by an empty table.
func TestNothingChanged(t *testing.T) {
	s := sectionOf(t, Paper(since(t, "sorrel", "sorrel")), "changes")
	if got := textsIn(*s); len(rowsOf(s)) != 0 || !strings.Contains(got, "Every question ended as it did before") {
		t.Errorf("it says %q", got)
	}
}
