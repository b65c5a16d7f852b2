package handoff

import (
	"slices"
	"strconv"
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

// toldIn are the findings that a section tells, each once, as its rows name them.
func toldIn(m *Matter, s *paper.Section) []string {
	var all []string
	add := func(key string) {
		if !slices.Contains(all, key) {
			all = append(all, key)
		}
	}
	switch s.ID {
	case "not-met":
		for _, pairs := range blocksOf[*paper.Pairs](s) {
			check := pairs.Rows[len(pairs.Rows)-1].Value
			for _, row := range pairs.Rows {
				if number, label, _ := strings.Cut(row.Label, " "); strings.Trim(number, "0123456789") == "" {
					add(check + " | " + label)
				}
			}
		}
	case "not-known":
		for _, row := range rowsOf(s) {
			for each := range strings.SplitSeq(row[2].Text, "; ") {
				_, finding, _ := strings.Cut(each, " ")
				add(strings.Replace(finding, ", ", " | ", 1))
			}
		}
	case "notes":
		for _, row := range rowsOf(s) {
			n, err := strconv.Atoi(row[0].Text)
			if err != nil || n < 1 || n > len(m.numbered()) {
				add("no finding has the number " + row[0].Text)
				continue
			}
			add(keyOf(m.numbered()[n-1]))
		}
	default:
		for _, row := range rowsOf(s) {
			add(row[0].Text + " | " + row[1].Text)
		}
	}
	return all
}

// TestFindingsInTheirPlace: each finding stands in the section of its outcome, and in no other.
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
			want, got := keysOf(m, so), toldIn(m, sectionOf(t, d, id))
			slices.Sort(want)
			slices.Sort(got)
			if diff := cmp.Diff(want, got); diff != "" {
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
		headings, all := blocksOf[*paper.Heading](s), blocksOf[*paper.Pairs](s)
		faults := m.faults(m.findings(ended(report.NotMet)))
		if len(faults) != len(all) || len(faults) != len(headings) {
			t.Fatalf("%d faults, %d headings, %d tellings", len(faults), len(headings), len(all))
		}
		for i, each := range faults {
			said := []string{headings[i].Text}
			for _, row := range all[i].Rows {
				if row.Label == "" || row.Value == "" {
					t.Errorf("%s: the row %q is empty", headings[i].Text, row.Label)
				}
				said = append(said, row.Label+": "+row.Value)
			}
			page := strings.Join(said, "\n")
			var want []string
			for _, f := range each.findings {
				want = append(want, wanted(f)...)
			}
			for _, w := range want {
				if !strings.Contains(page, w) {
					t.Errorf("%s does not tell %q:\n%s", headings[i].Text, w, page)
				}
			}
		}
	})
}

// wanted is what must be told of a finding that is not met.
func wanted(f *report.Finding) []string {
	want := []string{f.Asks + " Not met.", "why: " + f.Why, "who may act: " + string(f.MayAct), f.Place.Pointer}
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
	return want
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
	for i, f := range m.faults(m.findings(ended(report.NotMet))) {
		if h := blocksOf[*paper.Heading](s)[i]; h.Word != string(f.findings[0].Word) {
			t.Errorf("%s bears %q, not %s", h.Text, h.Word, f.findings[0].Word)
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
						return strings.Contains(row[0].Text, missing.What) && strings.Contains(row[0].Text, missing.Place.Pointer) && row[1].Text == missing.Measure &&
							strings.Contains(row[2].Text, f.Check+", "+f.Label) && report.Signal(row[2].Word).Rank() >= f.Word.Rank() && row[3].Blank
					}) {
						t.Errorf("%s does not tell that %s is missing", keyOf(f), missing.What)
					}
				}
			}
		}
		for _, row := range rows {
			if row[0].Text == "" || row[1].Text == "" {
				t.Errorf("%s of %s: nothing is said of what to measure", row[0].Text, row[1].Text)
			}
		}
	})
}

// TestWorst: the page of the worst has at most five faults, none of a lesser word than one
// that it leaves out, and says how many findings come later.
func TestWorst(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		s := sectionOf(t, d, "worst")
		open := m.findings(func(f *report.Finding) bool { return f.Counts(report.Notice) })
		all := byGravity(m.faults(open))
		headings := blocksOf[*paper.Heading](s)
		if len(headings) != min(5, len(all)) {
			t.Fatalf("%d headings of %d faults", len(headings), len(all))
		}
		for i, h := range headings {
			if h.Text != all[i].title() || i > 0 && report.Signal(h.Word).Rank() > report.Signal(headings[i-1].Word).Rank() {
				t.Errorf("%q, want %q", h.Text, all[i].title())
			}
		}
		for _, f := range open {
			if len(headings) == 5 && f.Word.Rank() > report.Signal(headings[4].Word).Rank() && !slices.ContainsFunc(all[:5], func(each fault) bool { return slices.Contains(each.findings, f) }) {
				t.Errorf("%s is worse than %s and left out", keyOf(f), headings[4].Text)
			}
		}
		if !s.NewPage {
			t.Error("it begins on no page of its own")
		}
		if page := textsIn(*s); len(open) == 0 && !strings.Contains(page, "That is no approval: nothing was inspected") {
			t.Errorf("with nothing to tell it says %q", page)
		}
	})
}

// TestGravest: the checks by which the page of the worst is ordered are checks of the
// program, none twice, and every one of them can be at DANGER; and of the faulty
// demonstration, gas at cylinder pressure in appliances comes first.
func TestGravest(t *testing.T) {
	seen := map[string]bool{}
	danger := map[string]bool{}
	for _, d := range demos.All(t) {
		for _, f := range d.Report.Findings {
			danger[f.Check] = danger[f.Check] || f.Word == report.Danger
		}
	}
	for _, id := range gravest() {
		if seen[id] || !danger[id] {
			t.Errorf("%s comes twice, or is no check whose word is DANGER", id)
		}
		seen[id] = true
	}
	m := matterOf(demos.One(t, "sorrel-faulty"))
	if first := byGravity(m.faults(m.findings(ended(report.NotMet))))[0]; first.findings[0].Check != "regulator.present" {
		t.Errorf("first comes %s", first.title())
	}
}

// TestNoScore: the worst and the counts are told without any share or mark.
func TestNoScore(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		for _, word := range []string{"%", "score", "points", "grade", "out of five"} {
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

// TestManyComparisons: a finding with many comparisons tells each of them once, and none
// that ended otherwise.
func TestManyComparisons(t *testing.T) {
	f := &report.Finding{Check: "a.b", Label: "c", Asks: "Is it so?", Outcome: report.NotMet, Why: "w", MayAct: report.Owner}
	for _, name := range []string{"one", "two", "three", "one"} {
		f.Parts = append(f.Parts, report.Part{Outcome: report.NotMet, About: name, Found: report.Words("f"), Needed: report.Words("n")})
	}
	f.Parts = append(f.Parts, report.Part{Outcome: report.Within, About: "kept", Found: report.Words("f")})
	f.Place = report.Place{Pointer: "/a/b"}
	if got, want := thing(f), "one: f; needed n. two: f; needed n. three: f; needed n (/a/b)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
