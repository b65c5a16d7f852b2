package vent_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/report"
)

const wordsGolden = "testdata/words.golden"

// TestWordsForPeople holds what the good and the bad examples say was found and
// needed, and which edits are offered, of the part that decided: words are what people act on. Read the changes
// before you keep them: go test ./vent -run Words -update
func TestWordsForPeople(t *testing.T) {
	data, err := os.ReadFile(wordsGolden)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string][]string{}
	for _, line := range strings.Split(strings.TrimSuffix(string(data), "\n"), "\n") {
		id, _, _ := strings.Cut(line, ",")
		want[id] = append(want[id], line)
	}
	var all []string
	for _, e := range examples(t) {
		t.Run(e.Check, func(t *testing.T) {
			got := wordsOf(actedCasesOf(t, e.Check))
			all = append(all, got...)
			if diff := cmp.Diff(want[e.Check], got); diff != "" && !*update {
				t.Errorf("words (-want +got):\n%s", diff)
			}
		})
	}
	if *update {
		if err := os.WriteFile(wordsGolden, []byte(strings.Join(all, "\n")+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func wordsOf(cases []*acted) (lines []string) {
	for _, a := range cases {
		if kind, _, _ := strings.Cut(a.edits.Name, "-"); kind != "good" && kind != "bad" {
			continue
		}
		for _, f := range a.findings {
			for _, v := range a.edits.Want {
				if p := f.Parts[0]; checktest.Of(f) == v && p.Found != nil {
					lines = append(lines, fmt.Sprintf("%s: %s: %s: %s | %s → %s%s", a.name, v.Subject, f.Outcome, strings.TrimSpace(p.About+" "+p.Text), p.Found.Text, p.Needed.Text, editsOf(p)))
				}
			}
		}
	}
	return lines
}

// editsOf are the edits that a part offers.
func editsOf(p report.Part) (text string) {
	if p.Mend == nil {
		return ""
	}
	for _, e := range p.Mend.Set {
		text += " | " + e.Pointer + " = " + e.Value
	}
	return text
}

// TestWordsDoNotContradictTheOutcome: what is not met is never shown as found just as
// it is needed, nor a number on the wrong side of its limit.
func TestWordsDoNotContradictTheOutcome(t *testing.T) {
	for _, f := range everyFinding(t) {
		for _, p := range f.Parts {
			if p.Found != nil && p.Outcome == report.NotMet && p.Found.Text == p.Needed.Text {
				t.Errorf("%s, about %q: not met, found %q and needed %q", pairOf(f), p.About, p.Found.Text, p.Needed.Text)
			}
			if (p.Short != nil) != (p.Outcome == report.NotMet && p.Found != nil && p.Found.SI != nil) {
				t.Errorf("%s, about %q: %s, and short by %+v", pairOf(f), p.About, p.Outcome, p.Short)
			}
		}
	}
}
