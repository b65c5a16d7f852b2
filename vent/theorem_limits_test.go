package vent_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// scenes are the good and the faulty ones.
func scenes(t testing.TB) []*scene { return slices.Concat(good(t), faulty(t)) }

// TestASilentCode is the second part of the theorem: where the book has no text, or
// one that somebody merely remembers, no answer that took the limit is within, and
// none is not met by it. Common practice may still add a finding of its own.
func TestASilentCode(t *testing.T) {
	used := map[string]bool{}
	for _, s := range scenes(t) {
		for _, term := range code.Terms() {
			var ids []string // the only ones that can take it: TestDescriptorsTellTheTruth
			for _, c := range allChecks().Checks {
				if slices.Contains(c.Limits, term) {
					ids = append(ids, c.ID)
				}
			}
			for how, codes := range withoutTerm(s.codes, term.ID) {
				if len(ids) == 0 {
					continue
				}
				after, err := ask(s.layout, codes, ids...)
				if err != nil {
					t.Fatal(err)
				}
				for pair, before := range s.found {
					takes := slices.Contains(limitsOf(before), term.ID)
					switch {
					case takes:
						used[before.Check+" "+term.ID] = true
						silenced(t, s.name, pair, term.ID, how, after[pair])
					case slices.Contains(ids, before.Check) && before.Outcome == report.Within && before.Outcome != after[pair].Outcome:
						t.Errorf("%s: %s is %s with %s %s, which it is not said to take", s.name, pair, after[pair].Outcome, term.ID, how)
					}
				}
			}
		}
	}
	for _, a := range actedCases(t) {
		for term, findings := range byLimit(a.findings) {
			used[a.example.Check+" "+term] = true
			for how, codes := range withoutTerm(a.codes, term) {
				after, err := ask(a.layout, codes, a.example.Check)
				if err != nil {
					t.Fatal(err)
				}
				for _, f := range findings {
					silenced(t, a.name, pairOf(f), term, how, after[pairOf(f)])
				}
			}
		}
	}
	for _, c := range allChecks().Checks {
		for _, term := range c.Limits {
			if !used[c.ID+" "+term.ID] {
				t.Errorf("%s: no answer in any layout of the tests takes %s", c.ID, term.ID)
			}
		}
	}
}

// byLimit sorts findings by the limits that they take.
func byLimit(findings []report.Finding) map[string][]report.Finding {
	sorted := map[string][]report.Finding{}
	for _, f := range findings {
		for _, term := range limitsOf(f) {
			sorted[term] = append(sorted[term], f)
		}
	}
	return sorted
}

func withoutTerm(codes code.Codes, term string) map[string]code.Codes {
	return map[string]code.Codes{"silent": codes.Silence(term), "remembered": codes.Remember(term)}
}

func silenced(t *testing.T, where, pair, term, how string, after report.Finding) {
	t.Helper()
	if after.Outcome == report.Within {
		t.Errorf("%s: %s is within, with %s %s", where, pair, term, how)
	}
	for _, p := range after.Parts {
		if slices.Contains(p.Limits, term) {
			t.Errorf("%s: a part of %s, about %q, still takes %s, which is %s", where, pair, p.About, term, how)
		}
		if p.Outcome == report.NotMet && p.Source != nil && p.Source.Provenance == "memory" {
			t.Errorf("%s: %s is not met by what is only remembered", where, pair)
		}
	}
}

// TestARememberedCodeIsNeverJudged: with everything only remembered, nothing at all
// is within or not met by the code.
func TestARememberedCodeIsNeverJudged(t *testing.T) {
	for _, s := range scenes(t) {
		for how, change := range map[string]func(code.Codes, string) code.Codes{"silent": code.Codes.Silence, "remembered": code.Codes.Remember} {
			codes := s.codes
			for _, term := range code.Terms() {
				codes = change(codes, term.ID)
			}
			after, err := ask(s.layout, codes)
			if err != nil {
				t.Fatal(err)
			}
			if len(after) != len(s.found) {
				t.Errorf("%s: %d answers with all %s, %d before", s.name, len(after), how, len(s.found))
			}
			for pair, f := range after {
				if f.Outcome == report.Within || f.Outcome == report.NotMet {
					t.Errorf("%s: %s is %s with every limit %s", s.name, pair, f.Outcome, how)
				}
			}
		}
	}
}

// TestABrokenSurvey is the third part of the theorem: where a list is no longer
// stated complete, no answer that ranged over it is within, nor exempt.
func TestABrokenSurvey(t *testing.T) {
	for _, base := range [][]*scene{good(t)[:2], good(t)[2:]} {
		var surveys []string
		for _, s := range base {
			for _, f := range s.found {
				surveys = append(surveys, surveysOf(f)...)
			}
		}
		slices.Sort(surveys)
		surveys = slices.Compact(surveys)
		if len(surveys) < 10 {
			t.Fatalf("%s: only %d surveys are relied upon", base[0].base, len(surveys))
		}
		forEach(surveys, func(survey string) {
			edit := unsurveyed(t, base[0].layout.Root(), survey)
			l, loads := edited(t, base[0].base, edit)
			if !loads {
				t.Errorf("%s does not load with %s", base[0].base, edit)
				return
			}
			for _, s := range base {
				after := s.of(t, l)
				for pair, before := range s.found {
					granted := func(f report.Finding) bool {
						return f.Outcome == report.Within || f.Outcome == report.NotApplicable && f.Reason == report.RuleExempts
					}
					if slices.Contains(surveysOf(before), survey) && granted(before) && granted(after[pair]) {
						t.Errorf("%s: %s is still %s, with %s no longer stated complete", s.name, pair, after[pair].Outcome, survey)
					}
				}
			}
		})
	}
}

// unsurveyed is the edit that takes one list out of those stated complete.
func unsurveyed(t *testing.T, root *source.Node, survey string) source.Edit {
	pointer, list, _ := strings.Cut(survey, "#")
	var kept []string
	for _, word := range root.At(pointer).Children {
		if word.Text() != list {
			kept = append(kept, word.Text())
		}
	}
	text, err := json.Marshal(kept)
	if err != nil {
		t.Error(err)
	}
	if kept == nil {
		text = []byte("[]")
	}
	return source.Edit{Pointer: pointer, Value: string(text)}
}

// TestNeverWaived holds the list of checks that no waiver sets aside: those at whose
// end somebody dies, as SAFETY.md says. Each is put to the proof by its own bad
// example with a waiver on it, and so are all others.
func TestNeverWaived(t *testing.T) {
	var never []string
	for _, c := range allChecks().Checks {
		if c.NeverWaive {
			never = append(never, c.ID)
			if c.Word != report.Danger {
				t.Errorf("%s is never waived, and its word is %s", c.ID, c.Word)
			}
		}
	}
	want := []string{"appliance.gas-kind", "appliance.outdoor-only", "appliance.portable", "appliance.room-sealed", "cylinder.fill", "cylinder.in-locker",
		"cylinder.outside-living", "cylinder.upright", "line.open-end", "locker.sealed", "regulator.gas", "regulator.present"}
	if diff := cmp.Diff(want, never); diff != "" {
		t.Errorf("never waived (-want +got):\n%s", diff)
	}
	for _, e := range examples(t) {
		c := e.Case("bad")
		subject := c.Want[0].Subject
		if subject == "dwelling" {
			continue // no reference names the whole dwelling, so that no waiver can
		}
		waived := *c
		waived.Edits = append(slices.Clone(c.Edits), source.Edit{Pointer: "/waivers/try",
			Value: fmt.Sprintf(`{"check": %q, "subject": %q, "reason": "to try", "decidedBy": "nobody", "until": "2030"}`, e.Check, subject)})
		l, _, err := bench(t).Case(allChecks(), &e, &waived)
		if err != nil {
			t.Errorf("%s: %v", e.Check, err)
			continue
		}
		state, attached := waiverOn(t, l, e, c)
		wantState := report.WaiverInForce
		if slices.Contains(never, e.Check) {
			wantState = report.WaiverNotAllowed
		}
		if state != wantState || attached != (wantState == report.WaiverInForce) {
			t.Errorf("%s on %s: the waiver is %s and attached: %v", e.Check, subject, state, attached)
		}
	}
}
