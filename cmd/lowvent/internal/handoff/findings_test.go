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

// keysOf are the findings of a report that are so, in its order.
func keysOf(m *Matter, so func(*report.Finding) bool) []string {
	var all []string
	for i := range m.Report.Findings {
		if f := &m.Report.Findings[i]; so(f) {
			all = append(all, keyOf(f))
		}
	}
	return all
}

// told are the findings that a section tells, each once, by what its rows or headings say.
func told(s *paper.Section) []string {
	var all []string
	add := func(key string) {
		if !slices.Contains(all, key) {
			all = append(all, key)
		}
	}
	for _, h := range blocksOf[*paper.Heading](s) {
		check, label, _ := strings.Cut(h.Text, ", ")
		add(check + " | " + label)
	}
	for _, row := range rowsOf(s) {
		add(row[0].Text + " | " + row[1].Text)
	}
	return all
}

// TestFindingsInTheirPlace: each finding stands in the section of its outcome, in the order
// of the report, and in no other.
func TestFindingsInTheirPlace(t *testing.T) {
	places := map[string]func(*report.Finding) bool{
		"not-met":   ended(report.NotMet),
		"not-known": ended(report.NotKnown),
		"within":    ended(report.Within),
		"notes": func(f *report.Finding) bool {
			return f.Outcome == report.NotMet || f.Outcome == report.NotKnown || f.Reason == report.AskFitter
		},
	}
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		for id, so := range places {
			if diff := cmp.Diff(keysOf(m, so), told(sectionOf(t, d, id))); diff != "" {
				t.Errorf("%s (-report +paper):\n%s", id, diff)
			}
		}
	})
}

// TestGrouped: what has no answer is told by check, with every thing that it was asked of.
func TestGrouped(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		for _, tt := range []struct {
			section string
			table   int
			reasons []report.Reason
		}{
			{"not-covered", 0, []report.Reason{report.NotCovered}},
			{"not-covered", 1, []report.Reason{report.AskFitter}},
			{"not-applicable", 0, []report.Reason{report.NoSubject, report.RuleExempts}},
		} {
			var want, got []string
			for _, f := range m.Report.Findings {
				if slices.Contains(tt.reasons, f.Reason) {
					want = append(want, keyOf(&f))
				}
			}
			if table, is := sectionOf(t, d, tt.section).Blocks[tt.table].(*paper.Table); is {
				for _, row := range table.Rows {
					for label := range strings.SplitSeq(row[1].Text, ", ") {
						got = append(got, row[0].Text+" | "+label)
					}
					if row[2].Text == "" && tt.section != "not-applicable" {
						t.Errorf("%s of %s tells nothing", row[0].Text, tt.section)
					}
				}
			}
			slices.Sort(want)
			slices.Sort(got)
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("%s, %v: %s", tt.section, tt.reasons, diff)
			}
		}
	})
}

// TestNothingSilent: the sections together tell as many questions as were asked.
func TestNothingSilent(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, _ *paper.Document) {
		placed := 0
		for _, f := range m.Report.Findings {
			for _, so := range []bool{f.Outcome == report.NotMet, f.Outcome == report.NotKnown, f.Outcome == report.Within,
				f.Reason == report.NotCovered, f.Reason == report.AskFitter, f.Reason == report.NoSubject || f.Reason == report.RuleExempts} {
				if so {
					placed++
				}
			}
		}
		if placed != m.Report.Counts.Subjects || placed != len(m.Report.Findings) {
			t.Errorf("%d findings have a place, of %d that were asked", placed, m.Report.Counts.Subjects)
		}
	})
}

// TestNotMetTellsAll: who reads that something is not met reads what was asked, what was
// found and needed, by which text, what mends it and who may do so.
func TestNotMetTellsAll(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		s := sectionOf(t, d, "not-met")
		all := blocksOf[*paper.Pairs](s)
		for i, f := range m.findings(ended(report.NotMet)) {
			var said []string
			for _, row := range all[i].Rows {
				if row.Label == "" || row.Value == "" {
					t.Errorf("%s: the row %q is empty", keyOf(f), row.Label)
				}
				said = append(said, row.Label+": "+row.Value)
			}
			page := strings.Join(said, "\n")
			want := []string{"asked: " + f.Asks + " Not met.", "why: " + f.Why, "who may act: " + string(f.MayAct), f.Place.Pointer}
			for _, p := range f.Parts {
				if p.Outcome != report.NotMet {
					continue
				}
				for _, amount := range []*report.Amount{p.Found, p.Needed, p.Short} {
					if amount != nil {
						want = append(want, amount.Text)
					}
				}
				if p.Mend != nil {
					want = append(want, "mend: "+p.Mend.Text)
				}
				if p.Source != nil && p.Source.Clause != "" {
					want = append(want, p.Source.Clause)
				}
			}
			for _, w := range want {
				if !strings.Contains(page, w) {
					t.Errorf("%s does not tell %q:\n%s", keyOf(f), w, page)
				}
			}
		}
	})
}

// TestSignalWords: each heading of a finding bears its word, and the page says what the
// words mean for people.
func TestSignalWords(t *testing.T) {
	d := Paper(matterOf(demos.One(t, "sorrel-faulty")))
	s := sectionOf(t, d, "not-met")
	words := map[string]string{}
	for _, p := range blocksOf[*paper.Para](s) {
		words[p.Word] = p.Text
	}
	for _, w := range report.Signals() {
		if words[string(w)] != w.Meaning() {
			t.Errorf("%s is said to mean %q", w, words[string(w)])
		}
	}
	m := matterOf(demos.One(t, "sorrel-faulty"))
	for i, f := range m.findings(ended(report.NotMet)) {
		if h := blocksOf[*paper.Heading](s)[i]; h.Word != string(f.Word) {
			t.Errorf("%s bears %q, not %s", h.Text, h.Word, f.Word)
		}
	}
}

// TestNotKnownTellsHow: each thing that the file does not state has its row, with how to
// measure it.
func TestNotKnownTellsHow(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		rows := rowsOf(sectionOf(t, d, "not-known"))
		for _, f := range m.findings(ended(report.NotKnown)) {
			for _, p := range f.Parts {
				for _, missing := range p.Missing {
					if !slices.ContainsFunc(rows, func(row []paper.Cell) bool {
						return row[0].Text == f.Check && row[1].Text == f.Label && row[0].Word == string(f.Word) &&
							strings.Contains(row[2].Text, missing.What) && strings.Contains(row[2].Text, missing.Place.Pointer) && row[3].Text == missing.Measure
					}) {
						t.Errorf("%s does not tell that %s is missing", keyOf(f), missing.What)
					}
				}
			}
		}
		for _, row := range rows {
			if row[2].Text == "" || row[3].Text == "" {
				t.Errorf("%s of %s: nothing is said of what to measure", row[0].Text, row[1].Text)
			}
		}
	})
}

// TestWorst: the page of the worst has the first five of the report that count, no more,
// and says how many come later.
func TestWorst(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		s := sectionOf(t, d, "worst")
		want := keysOf(m, func(f *report.Finding) bool { return f.Counts(report.Notice) })
		more := max(0, len(want)-5)
		if got := told(s); cmp.Diff(want[:min(5, len(want))], got) != "" || len(blocksOf[*paper.Heading](s)) > 5 {
			t.Errorf("the worst are %q, want %q", got, want[:min(5, len(want))])
		}
		if !s.NewPage {
			t.Error("it begins on no page of its own")
		}
		page := textsIn(*s)
		if strings.Contains(page, "And "+of(more, "finding")+" more") != (more > 0) {
			t.Errorf("%d come later: %q", more, page)
		}
		if len(want) == 0 && !strings.Contains(page, "That is no approval: nothing was inspected") {
			t.Errorf("with nothing to tell it says %q", page)
		}
	})
}

// TestNoScore: the worst and the counts are told without any share or mark.
func TestNoScore(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		for _, word := range []string{"%", "score", "points", "grade", "out of"} {
			if got := asked(&m.Report.Counts); strings.Contains(got, word) {
				t.Errorf("%q has %q", got, word)
			}
			for _, h := range blocksOf[*paper.Heading](sectionOf(t, d, "worst")) {
				if strings.Contains(h.Text, word) {
					t.Errorf("%q has %q", h.Text, word)
				}
			}
		}
	})
}

// TestManyComparisons: a finding with more comparisons than have rows of their own tells
// the others all the same.
func TestManyComparisons(t *testing.T) {
	f := &report.Finding{Check: "a.b", Label: "c", Asks: "Is it so?", Outcome: report.NotMet, Why: "w", MayAct: report.Owner}
	for _, name := range []string{"one", "two", "three", "four", "five", "one"} {
		f.Parts = append(f.Parts, report.Part{Outcome: report.NotMet, About: name, Found: report.Words("f"), Needed: report.Words("n")})
	}
	f.Parts = append(f.Parts, report.Part{Outcome: report.Within, About: "kept", Found: report.Words("f")})
	var got []string
	for _, row := range finding(f)[1].(*paper.Pairs).Rows {
		if row.Label == "found" || row.Label == "also" {
			got = append(got, row.Label+" "+row.Value)
		}
	}
	want := []string{"found one: f; needed n", "found two: f; needed n", "found three: f; needed n", "also four: f; needed n. five: f; needed n"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}
