package checktest

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

func locker(outcome report.Outcome, reason report.Reason, subject string) report.Finding {
	return report.Finding{Subject: subject, Outcome: outcome, Reason: reason}
}

// TestWanted: what is listed, and for the rest what was said before; what has gone
// with the patch is not missed.
func TestWanted(t *testing.T) {
	before := []report.Finding{locker(report.Within, "", "/a/1"), locker(report.NotMet, "", "/a/2"), locker(report.Within, report.ToProve, "/a/3"), locker(report.NotApplicable, report.NoSubject, "/b")}
	after := []report.Finding{locker(report.Within, "", "/a/1"), locker(report.NotMet, "", "/a/2"), locker(report.NotKnown, report.MissingInput, "/a/3")}
	c := &Case{Want: []Verdict{{"a/3", report.NotKnown, report.MissingInput}, {"a/9", report.Within, ""}}}
	want := []string{"a/1 within", "a/2 not-met", "a/3 not-known missing-input", "a/9 within"}
	if diff := cmp.Diff(want, wanted(c, before, after)); diff != "" {
		t.Error(diff)
	}
	if got := reasons(want, after); got != "" {
		t.Errorf("reasons for what is as wanted: %q", got)
	}
	odd := []report.Finding{{Subject: "", Outcome: report.NotMet, Parts: []report.Part{{Outcome: report.NotMet, About: "this", Found: report.Words("that"), Needed: report.Words("other"), Missing: []report.Missing{{What: "a gland"}}}}}}
	if got := reasons(want, odd); !strings.Contains(got, "dwelling: not-met") || !strings.Contains(got, "found that, needed other") || !strings.Contains(got, "missing a gland") {
		t.Errorf("%q", got)
	}
}

// sink is a testing.TB that notes instead of failing.
type sink struct {
	testing.TB
	told []string
}

func (s *sink) Helper() {}
func (s *sink) Errorf(format string, _ ...any) {
	s.told = append(s.told, format)
}

// TestTrueToName: a case that is called what it is not is told, each kind.
func TestTrueToName(t *testing.T) {
	number := func(outcome report.Outcome, found, needed float64) report.Finding {
		return report.Finding{Outcome: outcome, Parts: []report.Part{{Outcome: outcome, Found: &report.Amount{SI: &found}, Needed: &report.Amount{SI: &needed}}}}
	}
	counted := func(found, needed float64) report.Finding {
		f := number(report.NotMet, found, needed)
		f.Parts[0].Found.Kind = unit.KindCount.String()
		return f
	}
	words := report.Finding{Outcome: report.Within, Parts: []report.Part{{Outcome: report.Within, Found: report.Words("a"), Needed: report.Words("a")}}}
	for _, c := range []struct {
		name string
		f    report.Finding
		fair bool
	}{
		{"good", number(report.Within, 2, 1), true},
		{"good-metal", number(report.NotMet, 1, 2), false},
		{"bad", number(report.NotMet, 1, 2), true},
		{"bad", words, false},
		{"unknown", locker(report.NotKnown, report.MissingInput, ""), true},
		{"unknown", locker(report.NotKnown, report.NotSurveyed, ""), false},
		{"unsurveyed", locker(report.NotKnown, report.NotSurveyed, ""), true},
		{"unsurveyed", locker(report.NotKnown, report.MissingInput, ""), false},
		{"at-limit", number(report.Within, 2, 2), true},
		{"at-limit", number(report.Within, 2.000001, 2), true},
		{"at-limit", number(report.Within, 2.000003, 2), false},
		{"at-limit", number(report.NotMet, 2, 2), false},
		{"at-limit", words, false},
		{"past-limit", number(report.NotMet, 1.99, 2), true},
		{"past-limit", number(report.NotMet, 1.9, 2), false},
		{"past-limit", number(report.Within, 1.99, 2), false},
		{"past-limit", number(report.NotMet, 0.001, 0), true},
		{"past-limit", number(report.NotMet, 0.01, 0), false},
		{"past-limit", words, false},
		{"past-limit", counted(3, 2), true},
		{"past-limit", counted(4, 2), false},
		{"tolerance", number(report.NotMet, 1, 2), true},
	} {
		s := &sink{TB: t}
		trueToName(s, &Case{Name: c.name}, []report.Finding{c.f})
		if fair := len(s.told) == 0; fair != c.fair {
			t.Errorf("%s with %s: fair %v, want %v", c.name, c.f.Outcome, fair, c.fair)
		}
	}
}

// TestKindsFor: a check that ranges over a list needs an unsurveyed case, and one
// that compares numbers the cases at the limit.
func TestKindsFor(t *testing.T) {
	surveys := &check.Check{Descriptor: check.Descriptor{Surveys: []layout.SurveyList{layout.SurveyListOpenings}}}
	inventory := &check.Check{Descriptor: check.Descriptor{Inventory: []layout.InventoryList{layout.InventoryListLines}}}
	for _, c := range []struct {
		check   *check.Check
		numeric bool
		want    string
	}{
		{&check.Check{}, false, "good bad unknown"},
		{&check.Check{}, true, "good bad unknown at-limit past-limit"},
		{surveys, false, "good bad unknown unsurveyed"},
		{inventory, true, "good bad unknown at-limit past-limit unsurveyed"},
	} {
		if got := strings.Join(kindsFor(c.check, c.numeric), " "); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func bench(t *testing.T) *Bench {
	t.Helper()
	b, err := NewBench(".")
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestBench loads what the examples name, each once, and says what it can't load.
func TestBench(t *testing.T) {
	b := bench(t)
	if _, err := NewBench("/"); err == nil {
		t.Error("the top of the file system is in no module")
	}
	first, err := b.Base(DefaultBase)
	if err != nil {
		t.Fatal(err)
	}
	if again, _ := b.Base(DefaultBase); again != first {
		t.Error("the base was parsed twice")
	}
	if _, err := b.Base("no/such.json"); err == nil {
		t.Error("a base that is not there was read")
	}
	if _, err := b.Base("go.mod"); err == nil {
		t.Error("a base that is no JSON was read")
	}
	if _, err := b.Layout("no/such.json", nil); err == nil {
		t.Error("a layout that is not there was loaded")
	}
	if _, err := b.Layout(DefaultBase, []source.Edit{{Pointer: "/nothing", Delete: true}}); err == nil {
		t.Error("an edit that can't be made was made")
	}
	if _, err := b.Layout(DefaultBase, []source.Edit{{Pointer: "/format", Value: `"another"`}}); err == nil {
		t.Error("a layout with a fault was loaded")
	}
	for _, name := range []string{DefaultCode, "testdata/codes/every-term.json", "testdata/codes/every-term.json"} {
		if c, err := b.Codes(name); err != nil || c.Profile == nil || c.Own == nil {
			t.Errorf("%s: %+v, %v", name, c.Profile, err)
		}
	}
	for _, name := range []string{"no-such-code", "no/such.json", "testdata/layouts/sorrel.json"} {
		if _, err := b.Codes(name); err == nil {
			t.Errorf("the code %q was loaded", name)
		}
	}
	if _, err := Judge(check.Set{}, "no.check", nil, code.Codes{}); err == nil {
		t.Error("a check that is not there was asked")
	}
}

// TestEveryTermIsAnswered by the invented code that lets tests reach every answer
// of a check: one entry a term of a profile, each marked as read, and named as
// invented where anybody could take it for law.
func TestEveryTermIsAnswered(t *testing.T) {
	c, err := bench(t).Codes("testdata/codes/every-term.json")
	if err != nil {
		t.Fatal(err)
	}
	var want, got []string
	for _, term := range code.Terms() {
		if term.Book == code.BookProfile {
			want = append(want, term.ID+" read")
		}
	}
	for _, e := range c.Profile.Entries {
		got = append(got, e.Term+" "+string(e.Provenance))
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("terms (-) and entries (+):\n%s", diff)
	}
	for _, text := range []string{c.Profile.Title, c.Profile.Note, c.Profile.Scope.Text} {
		if !strings.Contains(strings.ToLower(text), "invented") {
			t.Errorf("%q does not say that it is invented", text)
		}
	}
}
