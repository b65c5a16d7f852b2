package check

import (
	"context"
	"encoding/json"
	"errors"
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

// TestOneFindingForEachPair of a check and a subject, whatever a file leaves out:
// silence never means good.
func TestOneFindingForEachPair(t *testing.T) {
	set := []Check{asks(tallEnough, standing1), asksOnce(func(s *Sheet, l *layout.Layout) Ruling {
		return Is(s, len(List(s, &l.Cylinders)) > 0, Asked(s, code.CylinderUpright, nil), "some", "some")
	})}
	optional := []string{"delete /cylinders/a", "delete /cylinders/b", "delete /cylinders/a/height", "delete /cylinders/b/upright", "delete /wants", "delete /combustibles"}
	rapid.Check(t, func(rt *rapid.T) {
		var edits []string
		for _, e := range optional {
			if rapid.Bool().Draw(rt, e) && !(strings.HasPrefix(e, "delete /cylinders/a/") && slices.Contains(edits, "delete /cylinders/a")) &&
				!(strings.HasPrefix(e, "delete /cylinders/b/") && slices.Contains(edits, "delete /cylinders/b")) {
				edits = append(edits, e)
			}
		}
		if slices.Contains(edits, "delete /combustibles") {
			edits = append(edits, "/spaces/cabin/surveyed/complete = []")
		}
		l := load(t, edits...)
		seen := map[string]int{}
		for _, f := range run1(t, l, books(t, tall, stand), set...).Findings {
			seen[f.Check+" "+f.Subject]++
			if len(f.Parts) == 0 || f.Outcome == "" || f.Asks == "" {
				rt.Fatalf("a finding that says nothing: %+v", f)
			}
		}
		want := map[string]int{"tiny.once ": 1}
		for _, c := range l.Cylinders.All() {
			want["tiny.check "+c.Spot().Pointer()] = 1
		}
		if len(l.Cylinders.All()) == 0 {
			want["tiny.check /cylinders"] = 1
		}
		if diff := cmp.Diff(want, seen); diff != "" {
			rt.Fatalf("%v\n%s", edits, diff)
		}
	})
}

// TestNoSubject: a list that is stated empty has nothing to judge; one that was
// left out is not known.
func TestNoSubject(t *testing.T) {
	codes := books(t, stand)
	empty := of(t, run1(t, load(t, "/cylinders = {}"), codes, asks(standing1)), "/cylinders")
	is(t, empty, report.NotApplicable, report.NoSubject)
	if empty.Label != "cylinders" || empty.Place.Pointer != "/cylinders" || empty.Parts[0].Text == "" {
		t.Errorf("%+v", empty)
	}
	absent := of(t, run1(t, load(t, "delete /cylinders", "/surveyedBy/complete = []"), codes, asks(standing1)), "/cylinders")
	is(t, absent, report.NotKnown, report.MissingInput)
	m := absent.Parts[0].Missing
	if len(m) != 1 || m[0].Measure != layout.Describe("/cylinders") || m[0].Place.Pointer != "/cylinders" || m[0].Place.Line == 0 {
		t.Errorf("%+v", m)
	}
	if absent.Word != report.Danger || absent.Asks != "Is it so?" || absent.Why != "Because." || absent.MayAct != report.Owner {
		t.Errorf("%+v", absent)
	}
}

// everyOutcome is a set of checks that ends in every way there is.
func everyOutcome() Set {
	var set Set
	for i, a := range answers {
		c := asks(func(s *Sheet, c *layout.Cylinder) Ruling { return a.clause(s) }, tallEnough)
		c.ID = fmt.Sprint("tiny.", i)
		c.Word = report.Signals()[i%4]
		set.Checks = append(set.Checks, c)
	}
	set.Figures = []Shown{ShowDwelling(&Figure[unit.Length, *layout.Layout]{ID: "tiny.height", Title: "height", Calc: func(s *Sheet, l *layout.Layout) unit.Length {
		return Measure(s, "h", &l.Cylinders.Get("a").Height)
	}})}
	return set
}

// TestWorkersChangeNothing: the bytes of a result are the same for any number.
func TestWorkersChangeNothing(t *testing.T) {
	l := load(t, `/cylinders/b/height = "1 m ± 1 cm"`, waiver("w", "tiny.0", "cylinders/a", "2027"))
	var want []byte
	for _, workers := range []int{-1, 0, 1, 2, 16, 100} {
		for range 3 {
			out, err := Run(context.Background(), everyOutcome(), l, answerBooks(t), Options{On: judged, Workers: workers, Working: true})
			if err != nil {
				t.Fatal(err)
			}
			got, err := json.Marshal(out)
			if err != nil {
				t.Fatal(err)
			}
			if want == nil {
				want = got
			}
			if diff := cmp.Diff(string(want), string(got)); diff != "" {
				t.Fatalf("%d workers:\n%s", workers, diff)
			}
		}
	}
}

// TestFindingsInReadingOrder: not met, then not known, then the rest, the worst
// word first.
func TestFindingsInReadingOrder(t *testing.T) {
	out, err := Run(context.Background(), everyOutcome(), load(t), answerBooks(t), Options{On: judged})
	if err != nil {
		t.Fatal(err)
	}
	rank := map[report.Outcome]int{report.NotMet: 0, report.NotKnown: 1, report.NotApplicable: 2, report.Within: 3}
	for i := 1; i < len(out.Findings); i++ {
		a, b := out.Findings[i-1], out.Findings[i]
		if rank[a.Outcome] > rank[b.Outcome] || a.Outcome == b.Outcome && a.Word.Rank() < b.Word.Rank() {
			t.Errorf("%s %s before %s %s", a.Outcome, a.Word, b.Outcome, b.Word)
		}
	}
	if len(out.Findings) != 12 || len(out.Figures) != 1 {
		t.Errorf("%d findings, %d figures", len(out.Findings), len(out.Figures))
	}
}

// TestRunNeedsAFullDay: without a day of judgement every alarm would be in date.
func TestRunNeedsAFullDay(t *testing.T) {
	for _, on := range []unit.Date{{}, {Year: 2026}, {Year: 2026, Month: 11}} {
		out, err := Run(context.Background(), everyOutcome(), load(t), answerBooks(t), Options{On: on})
		if err == nil || !strings.Contains(err.Error(), "expected a full day") || out.Findings != nil {
			t.Errorf("judged on %q: %v", on, err)
		}
	}
}

// TestARunStopsWithItsContext: before it began, and in the middle.
func TestARunStopsWithItsContext(t *testing.T) {
	for _, workers := range []int{1, 4} {
		ctx, cancel := context.WithCancel(context.Background())
		cancel()
		asked := false
		c := asks(func(s *Sheet, c *layout.Cylinder) Ruling { asked = true; return standing1(s, c) })
		out, err := Run(ctx, Set{Checks: []Check{c}}, load(t), books(t, stand), Options{On: judged, Workers: workers})
		if !errors.Is(err, context.Canceled) || out.Findings != nil || asked {
			t.Errorf("%d workers: %v, %d findings, asked %v", workers, err, len(out.Findings), asked)
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	var set Set
	for range 50 {
		set.Checks = append(set.Checks, asks(func(s *Sheet, c *layout.Cylinder) Ruling { cancel(); return standing1(s, c) }))
	}
	out, err := Run(ctx, set, load(t), books(t, stand), Options{On: judged, Workers: 2})
	if !errors.Is(err, context.Canceled) || out.Findings != nil {
		t.Errorf("in the middle: %v, %d findings", err, len(out.Findings))
	}
}

// TestAFaultOfTheProgram surfaces where the caller can meet it, whichever worker
// it was in, and names itself.
func TestAFaultOfTheProgram(t *testing.T) {
	for name, c := range map[string]struct {
		check Check
		says  string
	}{
		"a clause without a ruling":     {asks(func(*Sheet, *layout.Cylinder) Ruling { return Ruling{} }), "a clause ended without a ruling"},
		"a sub-clause without a ruling": {asks(func(s *Sheet, _ *layout.Cylinder) Ruling { return All(s, func(*Sheet) Ruling { return Ruling{} }) }), "a clause ended without a ruling"},
		"no clause at all":              {asks(), "nothing to join"},
		"a clause that panics":          {asks(func(*Sheet, *layout.Cylinder) Ruling { panic("a slip") }), "a slip"},
	} {
		for _, workers := range []int{1, 16} {
			t.Run(fmt.Sprint(name, " ", workers), func(t *testing.T) {
				defer func() {
					if p := recover(); p == nil || !strings.Contains(fmt.Sprint(p), c.says) || !strings.Contains(fmt.Sprint(p), "goroutine") {
						t.Errorf("panic %v, want one that says %q and where", p, c.says)
					}
				}()
				_, err := Run(context.Background(), Set{Checks: []Check{c.check}}, load(t), books(t, stand), Options{On: judged, Workers: workers})
				t.Errorf("the run ended with %v", err)
			})
		}
	}
}

func TestJoin(t *testing.T) {
	named := func(ids ...string) (s Set) {
		for _, id := range ids {
			s.Checks = append(s.Checks, Check{Descriptor: Descriptor{ID: id}})
			s.Figures = append(s.Figures, Shown{ID: "figure " + id})
		}
		return s
	}
	first := named("c", "a")
	all := Join(first, named("d", "b"), Set{})
	var got []string
	for i := range all.Checks {
		got = append(got, all.Checks[i].ID, all.Figures[i].ID)
	}
	if diff := cmp.Diff([]string{"a", "figure a", "b", "figure b", "c", "figure c", "d", "figure d"}, got); diff != "" {
		t.Error(diff)
	}
	if first.Checks[0].ID != "c" {
		t.Error("Join sorted the set that it was given")
	}
}

// TestSubjectsOfAnySort: one finding each for things out of several sections,
// and for the dwelling.
func TestSubjectsOfAnySort(t *testing.T) {
	mixed := ForItems(Descriptor{ID: "tiny.mixed"}, func(l *layout.Layout) ([]layout.Item, *layout.Spot, bool) {
		return []layout.Item{l, l.Spaces.Get("cabin"), l.Cylinders.Get("b")}, l.Spaces.Spot(), true
	}, func(s *Sheet, item layout.Item) Ruling {
		return Is(s, true, Asked(s, code.CylinderUpright, nil), item.Label(), "any")
	})
	out := run1(t, load(t), books(t, stand), mixed)
	got := map[string]string{}
	for _, f := range out.Findings {
		got[f.Subject] = f.Label
	}
	if diff := cmp.Diff(map[string]string{"": "the dwelling", "/spaces/cabin": "space cabin", "/cylinders/b": "cylinder b"}, got); diff != "" {
		t.Error(diff)
	}
}

// TestAListThatIsLeftOutIsAskedBeside: of two lists that make the subjects, one that
// was left out is not known, and the things of the other are asked all the same.
func TestAListThatIsLeftOutIsAskedBeside(t *testing.T) {
	both := ForItems(Descriptor{ID: "tiny.both", Word: report.Danger}, func(l *layout.Layout) ([]layout.Item, *layout.Spot, bool) {
		return []layout.Item{l.Cylinders.Get("a")}, l.Stoves.Spot(), l.Stoves.Known()
	}, func(s *Sheet, item layout.Item) Ruling { return standing1(s, item.(*layout.Cylinder)) })
	out := run1(t, load(t), books(t, stand), both)
	is(t, of(t, out, "/cylinders/a"), report.Within, "")
	is(t, of(t, out, "/stoves"), report.NotKnown, report.MissingInput)
	out = run1(t, load(t, "/stoves = {}"), books(t, stand), both)
	is(t, of(t, out, "/cylinders/a"), report.Within, "")
	if len(out.Findings) != 1 {
		t.Errorf("%d findings where the second list is stated empty", len(out.Findings))
	}
}
