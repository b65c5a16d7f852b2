package check

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// answer is one way in which a clause can end.
type answer struct {
	name    string
	outcome report.Outcome
	reason  report.Reason
	clause  func(*Sheet) Ruling
}

// The ways in which a clause can end, heaviest first as and joins them.
var answers = []answer{
	{"not met", report.NotMet, "", func(s *Sheet) Ruling { return Is(s, false, Asked(s, code.CylinderUpright, nil), "found", "needed") }},
	{"not known", report.NotKnown, report.MissingInput, func(s *Sheet) Ruling { List(s, &s.Layout().Alarms); return Ruling{} }},
	{"ask the fitter", report.NotApplicable, report.AskFitter, func(s *Sheet) Ruling { Limit(s, "x", code.VentToIgnition, nil); return Ruling{} }},
	{"not covered", report.NotApplicable, report.NotCovered, func(s *Sheet) Ruling { Limit(s, "x", code.VentToOpening, nil); return Ruling{} }},
	{"within", report.Within, "", func(s *Sheet) Ruling { return Is(s, true, Asked(s, code.CylinderUpright, nil), "found", "needed") }},
	{"exempt", report.NotApplicable, report.RuleExempts, func(s *Sheet) Ruling { return NotApplicable(s, "it is something else") }},
}

func answerBooks(t testing.TB) code.Codes {
	return books(t, stand, tall, says("locker.vent-to-ignition", `{"fixed": "1 m"}`, "memory"))
}

// lightFirst is the order in which or takes answers: one that is within is
// enough, one that nobody could judge may be, one that is not met is not, and one
// that does not arise adds nothing.
var lightFirst = []string{"within", "not known", "ask the fitter", "not covered", "not met", "exempt"}

// TestAndOr is the whole table of and and or for pairs, both ways round, and for
// and by separate clauses of a check, by All, by Every and by Same.
func TestAndOr(t *testing.T) {
	l, codes := load(t), answerBooks(t)
	for i, a := range answers {
		for j, b := range answers {
			want := answers[min(i, j)]
			folds := map[string]report.Finding{
				"All": judge(t, l, codes, func(s *Sheet, _ *layout.Cylinder) Ruling { return All(s, a.clause, b.clause) }),
				"clauses": judge(t, l, codes, func(s *Sheet, _ *layout.Cylinder) Ruling { return a.clause(s) },
					func(s *Sheet, _ *layout.Cylinder) Ruling { return b.clause(s) }),
				"Every": judge(t, l, codes, func(s *Sheet, _ *layout.Cylinder) Ruling {
					return Every(s, s.Layout().Cylinders.All(), func() Ruling { t.Error("none of two"); return Ruling{} }, func(s *Sheet, c *layout.Cylinder) Ruling {
						if c.ID() == "a" {
							return a.clause(s)
						}
						return b.clause(s)
					})
				}),
				"Same": judge(t, l, codes, func(s *Sheet, c *layout.Cylinder) Ruling {
					return Same(s, asks(func(s *Sheet, _ *layout.Cylinder) Ruling { return a.clause(s) }, func(s *Sheet, _ *layout.Cylinder) Ruling { return b.clause(s) }), c)
				}),
			}
			for fold, f := range folds {
				t.Run(fmt.Sprintf("%s(%s, %s)", fold, a.name, b.name), func(t *testing.T) {
					is(t, f, want.outcome, want.reason)
					if len(f.Parts) != 2 {
						t.Errorf("%d parts, want both kept", len(f.Parts))
					}
					if f.Parts[0].Outcome != want.outcome || f.Parts[0].Reason != want.reason {
						t.Errorf("the first part is %s %s, not the one that decided", f.Parts[0].Outcome, f.Parts[0].Reason)
					}
				})
			}
			t.Run(fmt.Sprintf("Any(%s, %s)", a.name, b.name), func(t *testing.T) {
				want := a
				if rank := func(name string) int { return slices.Index(lightFirst, name) }; rank(b.name) < rank(a.name) {
					want = b
				}
				is(t, judge(t, l, codes, func(s *Sheet, _ *layout.Cylinder) Ruling { return Any(s, a.clause, b.clause) }), want.outcome, want.reason)
			})
		}
	}
}

// TestKleene holds that within, not met and not known are the true, false and
// unknown of strong Kleene logic (Kleene, Introduction to Metamathematics, 1952,
// section 64, from memory; the tables are those of min and max over false <
// unknown < true), for nests of and and or of any shape.
func TestKleene(t *testing.T) {
	l, codes := load(t), answerBooks(t)
	truth := map[report.Outcome]int{report.NotMet: 0, report.NotKnown: 1, report.Within: 2}
	leaves := []answer{answers[0], answers[1], answers[4]}
	type nest struct {
		text   string
		value  int
		clause func(*Sheet) Ruling
	}
	var grow func(t *rapid.T, depth int) nest
	grow = func(t *rapid.T, depth int) nest {
		if depth == 0 || rapid.IntRange(0, 2).Draw(t, "leaf") == 0 {
			a := rapid.SampledFrom(leaves).Draw(t, "answer")
			return nest{a.name, truth[a.outcome], a.clause}
		}
		var parts []nest
		for range rapid.IntRange(1, 3).Draw(t, "width") {
			parts = append(parts, grow(t, depth-1))
		}
		and := rapid.Bool().Draw(t, "and")
		out := nest{text: "Any(", value: 0}
		if and {
			out = nest{text: "All(", value: 2}
		}
		var clauses []func(*Sheet) Ruling
		for _, p := range parts {
			out.text += p.text + " "
			clauses = append(clauses, p.clause)
			if and {
				out.value = min(out.value, p.value)
			} else {
				out.value = max(out.value, p.value)
			}
		}
		out.text += ")"
		out.clause = func(s *Sheet) Ruling {
			if and {
				return All(s, clauses...)
			}
			return Any(s, clauses...)
		}
		return out
	}
	rapid.Check(t, func(rt *rapid.T) {
		n := grow(rt, 3)
		f := judge(t, l, codes, func(s *Sheet, _ *layout.Cylinder) Ruling { return n.clause(s) })
		if got := truth[f.Outcome]; got != n.value {
			rt.Fatalf("%s is %s, want truth %d", n.text, f.Outcome, n.value)
		}
	})
}

// TestAllOfMany: and does not depend on the order of its clauses, and of those
// that are not met the one that falls shortest comes first.
func TestAllOfMany(t *testing.T) {
	l, codes := load(t), answerBooks(t)
	rapid.Check(t, func(rt *rapid.T) {
		picked := rapid.SliceOfN(rapid.IntRange(0, len(answers)-1), 1, 6).Draw(rt, "answers")
		var clauses []func(*Sheet) Ruling
		for _, i := range picked {
			clauses = append(clauses, answers[i].clause)
		}
		f := judge(t, l, codes, func(s *Sheet, _ *layout.Cylinder) Ruling { return All(s, clauses...) })
		want := answers[slices.Min(picked)]
		if f.Outcome != want.outcome || f.Reason != want.reason || len(f.Parts) != len(picked) {
			rt.Fatalf("%v: %s %s with %d parts", picked, f.Outcome, f.Reason, len(f.Parts))
		}
		for i := 1; i < len(f.Parts); i++ {
			if weight(f.Parts[i-1].Outcome, f.Parts[i-1].Reason) < weight(f.Parts[i].Outcome, f.Parts[i].Reason) {
				rt.Fatalf("part %d outweighs the one before it", i)
			}
		}
	})
	f := judge(t, l, codes, func(s *Sheet, _ *layout.Cylinder) Ruling {
		short := func(found unit.Length) func(*Sheet) Ruling {
			return func(s *Sheet) Ruling { return AtLeast(s, found, Limit(s, "h_need", code.ClearanceAbove, nil)) }
		}
		return All(s, short(0.5), answers[4].clause, short(0.2), short(0.4), answers[0].clause)
	})
	var texts []string
	for _, p := range f.Parts {
		texts = append(texts, p.Found.Text)
	}
	want := []string{"found", "200 mm (7.874 in)", "400 mm (15.75 in)", "500 mm (19.69 in)", "found"}
	if diff := cmp.Diff(want, texts); diff != "" {
		t.Errorf("parts in order of shortfall (-want +got):\n%s", diff)
	}
}

// TestOfThoseWithinTheTightestLeads: the one that is nearest to its limit, in
// relation to it and in either sense, before those that are answers in words.
func TestOfThoseWithinTheTightestLeads(t *testing.T) {
	f := judge(t, load(t), books(t, tall, low, stand), func(s *Sheet, _ *layout.Cylinder) Ruling {
		least := func(found unit.Length) func(*Sheet) Ruling {
			return func(s *Sheet) Ruling { return AtLeast(s, found, Limit(s, "h_need", code.ClearanceAbove, nil)) }
		}
		most := func(found unit.Length) func(*Sheet) Ruling {
			return func(s *Sheet) Ruling { return AtMost(s, found, Limit(s, "h_max", code.LockerLowVentEdge, nil)) }
		}
		return All(s, answers[4].clause, least(0.9), most(0.5), least(0.62), most(0.6096))
	})
	is(t, f, report.Within, "")
	var texts []string
	for _, p := range f.Parts {
		texts = append(texts, p.Found.Text)
	}
	want := []string{"609.6 mm (24 in)", "620 mm (24.41 in)", "500 mm (19.69 in)", "900 mm (35.43 in)", "found"}
	if diff := cmp.Diff(want, texts); diff != "" {
		t.Errorf("parts in order of margin (-want +got):\n%s", diff)
	}
}

func TestEveryOfNone(t *testing.T) {
	l, codes := load(t), answerBooks(t)
	f := judge(t, l, codes, func(s *Sheet, _ *layout.Cylinder) Ruling {
		return Every(s, List(s, &s.Layout().Openings), func() Ruling { return NotApplicable(s, "there is none") },
			func(*Sheet, *layout.Opening) Ruling { t.Error("something of nothing"); return Ruling{} })
	})
	is(t, f, report.NotApplicable, report.RuleExempts)
	if f.Parts[0].Text != "there is none" {
		t.Errorf("%q", f.Parts[0].Text)
	}
}

// TestNames: a part of a fold names the thing that it is about, unless the clause
// has named it better.
func TestNames(t *testing.T) {
	l, codes := load(t), answerBooks(t)
	about := func(f report.Finding) (names []string) {
		for _, p := range f.Parts {
			names = append(names, p.About)
		}
		return names
	}
	every := judge(t, l, codes, func(s *Sheet, _ *layout.Cylinder) Ruling {
		return Every(s, s.Layout().Cylinders.All(), nil, func(s *Sheet, c *layout.Cylinder) Ruling {
			r := standing1(s, c)
			if c.ID() == "b" {
				return r.About("the %s one", "spare")
			}
			return r
		})
	})
	if diff := cmp.Diff([]string{"cylinder a", "the spare one"}, about(every)); diff != "" {
		t.Error(diff)
	}
	same := judge(t, l, codes, func(s *Sheet, c *layout.Cylinder) Ruling { return Same(s, asks(standing1), c) })
	if diff := cmp.Diff([]string{"cylinder a, tiny.check"}, about(same)); diff != "" {
		t.Error(diff)
	}
	named := judge(t, l, codes, func(s *Sheet, c *layout.Cylinder) Ruling {
		return Same(s, asks(func(s *Sheet, c *layout.Cylinder) Ruling { return standing1(s, c).About("mine").Says("%d cm", 3) }), c)
	})
	if diff := cmp.Diff([]string{"mine"}, about(named)); diff != "" || named.Parts[0].Text != "3 cm" {
		t.Error(diff, named.Parts[0].Text)
	}
}

// TestOrPractice is the whole table: practice is asked only where the code is
// silent or remembered, it can add a finding there, and it never fills the
// silence with a within.
func TestOrPractice(t *testing.T) {
	l, codes := load(t), answerBooks(t)
	find := func(name string) answer {
		return answers[slices.IndexFunc(answers, func(a answer) bool { return a.name == name })]
	}
	for _, c := range []struct{ byCode, byPractice, want string }{
		{"not met", "", "not met"},
		{"not known", "", "not known"},
		{"within", "", "within"},
		{"exempt", "", "exempt"},
		{"not covered", "not met", "not met"},
		{"not covered", "not known", "not known"},
		{"not covered", "within", "not covered"},
		{"not covered", "exempt", "not covered"},
		{"not covered", "not covered", "not covered"},
		{"ask the fitter", "not met", "not met"},
		{"ask the fitter", "not known", "not known"},
		{"ask the fitter", "within", "ask the fitter"},
		{"ask the fitter", "exempt", "ask the fitter"},
		{"ask the fitter", "not covered", "ask the fitter"},
		{"not covered", "ask the fitter", "ask the fitter"},
	} {
		t.Run(c.byCode+" or "+c.byPractice, func(t *testing.T) {
			asked := 0
			f := judge(t, l, codes, func(s *Sheet, _ *layout.Cylinder) Ruling {
				return OrPractice(s, find(c.byCode).clause, func(s *Sheet) Ruling {
					asked++
					return find(c.byPractice).clause(s)
				})
			})
			want := find(c.want)
			is(t, f, want.outcome, want.reason)
			if asks := c.byPractice != ""; asks != (asked == 1) {
				t.Errorf("practice was asked %d times", asked)
			}
			kept := strings.Contains(f.Parts[0].Text, "common practice is kept, as stated")
			if want := c.byPractice == "within"; kept != want {
				t.Errorf("says that practice is kept: %v, want %v (%q)", kept, want, f.Parts[0].Text)
			}
		})
	}
}

// TestAFoldOfNothing: a fold over no clauses is a fault of the program.
func TestAFoldOfNothing(t *testing.T) {
	for name, fold := range map[string]func(*Sheet) Ruling{
		"All": func(s *Sheet) Ruling { return All(s) },
		"Any": func(s *Sheet) Ruling { return Any(s) },
	} {
		t.Run(name, func(t *testing.T) {
			defer func() {
				if p := recover(); p == nil || !strings.Contains(fmt.Sprint(p), "nothing to join") {
					t.Errorf("panic %v", p)
				}
			}()
			judge(t, load(t), answerBooks(t), func(s *Sheet, _ *layout.Cylinder) Ruling { return fold(s) })
		})
	}
}

// TestSubSheetsStandApart: what one clause of a fold misses does not stick the
// next, and nothing that a part rests on is lost.
func TestSubSheetsStandApart(t *testing.T) {
	l, codes := load(t), answerBooks(t)
	f := judge(t, l, codes, func(s *Sheet, c *layout.Cylinder) Ruling {
		Read(s, &c.Role) // noted on the outer sheet
		return All(s, answers[1].clause, func(s *Sheet) Ruling { return tallEnough(s, c) }, func(s *Sheet) Ruling { return standing1(s, c) })
	})
	is(t, f, report.NotKnown, report.MissingInput)
	var got [][]string
	for _, p := range f.Parts {
		var pointers []string
		for _, in := range p.Inputs {
			pointers = append(pointers, in.Pointer)
		}
		got = append(got, pointers)
	}
	want := [][]string{{"/cylinders/a/role"}, {"/cylinders/a/height"}, {"/cylinders/a/upright"}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("inputs of the parts (-want +got):\n%s", diff)
	}
}
