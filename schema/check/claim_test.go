package check

import (
	"context"
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// TestClaims: an answer that rests on what only a fitter can prove says so,
// until a fitter's test is named as its proof.
func TestClaims(t *testing.T) {
	claiming := func(claims ...string) Check {
		c := asksOfA(standing1, tallEnough)
		c.Claims = claims
		return c
	}
	evidence := func(basis string) []string {
		return []string{`/tests = {"t": {"kind": "strength"}}`, `/cylinders/a/evidence = {"upright": {"basis": "` + basis + `", "by": "tests/t"}}`}
	}
	for _, c := range []struct {
		name    string
		claims  []string
		edits   []string
		outcome report.Outcome
		reason  report.Reason
	}{
		{"no claim", nil, nil, report.Within, ""},
		{"a claim as stated", []string{"/cylinders/*/upright"}, nil, report.Within, report.ToProve},
		{"a claim that was measured", []string{"/cylinders/*/upright"}, evidence("measured"), report.Within, report.ToProve},
		{"a claim from a plate", []string{"/cylinders/*/upright"}, evidence("plate"), report.Within, report.ToProve},
		{"a claim with a photo", []string{"/cylinders/*/upright"}, evidence("photographed"), report.Within, report.ToProve},
		{"a claim that was proved", []string{"/cylinders/*/upright"}, evidence("proved"), report.Within, ""},
		{"one of two claims proved", []string{"/cylinders/*/upright", "/cylinders/*/height"}, evidence("proved"), report.Within, report.ToProve},
		{"a claim on what was not read", []string{"/cylinders/*/propane"}, nil, report.Within, ""},
		{"a claim that is not met", []string{"/cylinders/*/upright"}, []string{"/cylinders/a/upright = false"}, report.NotMet, ""},
		{"a proof of what is not met", []string{"/cylinders/*/upright"}, append(evidence("proved"), "/cylinders/a/upright = false"), report.NotMet, ""},
		{"a claim that is missing", []string{"/cylinders/*/upright"}, []string{"delete /cylinders/a/upright"}, report.NotKnown, report.MissingInput},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := of(t, run1(t, load(t, c.edits...), books(t, stand, tall), claiming(c.claims...)), "/cylinders/a")
			is(t, f, c.outcome, c.reason)
		})
	}
}

// TestTheBasisStandsBesideTheInput for the reader of a report.
func TestTheBasisStandsBesideTheInput(t *testing.T) {
	f := judge(t, load(t, `/cylinders/a/evidence = {"height": {"basis": "photographed"}}`), books(t, stand, tall), func(s *Sheet, c *layout.Cylinder) Ruling {
		Read(s, &c.Upright)
		return tallEnough(s, c)
	})
	want := []report.Input{{Pointer: "/cylinders/a/upright", Basis: "stated"}, {Pointer: "/cylinders/a/height", Basis: "photographed"}}
	if got := f.Parts[0].Inputs; len(got) != 2 || got[0] != want[0] || got[1] != want[1] {
		t.Errorf("%+v, want %+v", got, want)
	}
}

// TestClaimsAreListed once each, with the thing, the statement as written, what it
// rests on, and the checks that rest on it; those that are proved, or that no
// answer within its limit rests on, are left out.
func TestClaimsAreListed(t *testing.T) {
	claiming := func(id string, clause func(*Sheet, *layout.Cylinder) Ruling, claims ...string) Check {
		c := asks(clause)
		c.ID, c.Claims = id, claims
		return c
	}
	sealed := asksOnce(func(s *Sheet, l *layout.Layout) Ruling {
		seal := Read(s, &l.Lockers.Get("side").SealedFrom.Get("cabin").Kind)
		return Is(s, seal == layout.SealKindGasTight, Asked(s, code.CylinderUpright, nil), "found", "needed")
	})
	sealed.Claims = []string{"/lockers/*/sealedFrom/*/seal"}
	set := Set{Checks: []Check{
		claiming("tiny.b", standing1, "/cylinders/*/upright"),
		claiming("tiny.a", standing1, "/cylinders/*/upright"),
		claiming("tiny.c", tallEnough, "/cylinders/*/upright"),
		sealed,
	}}
	list := func(edits ...string) (out []string) {
		r, err := Report(context.Background(), set, load(t, edits...), books(t, stand, tall), Options{On: judged}, report.Warning)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range r.Claims {
			out = append(out, fmt.Sprintf("%s | %s | %s | %s | %v", c.Place.Pointer, c.Subject, c.States, c.Basis, c.Checks))
		}
		return out
	}
	a := "/cylinders/a/upright | cylinder a | upright: true | stated | [tiny.a tiny.b]"
	b := "/cylinders/b/upright | cylinder b | upright: true | photographed | [tiny.a tiny.b]"
	seal := "/lockers/side/sealedFrom/cabin/seal | locker side, seal from cabin | seal: gas-tight | stated | [tiny.once]"
	photo := `/cylinders/b/evidence = {"upright": {"basis": "photographed"}}`
	for _, c := range []struct {
		edits, want []string
	}{
		{[]string{photo}, []string{a, b, seal}},
		{[]string{photo, "/cylinders/a/upright = false"}, []string{b, seal}},
		{[]string{photo, "delete /cylinders/a/upright"}, []string{b, seal}},
		{[]string{photo, `/tests = {"t": {"kind": "strength"}}`, `/cylinders/a/evidence = {"upright": {"basis": "proved", "by": "tests/t"}}`}, []string{b, seal}},
		{[]string{photo, `/lockers/side/sealedFrom/cabin/seal = "not-sealed"`}, []string{a, b}},
	} {
		if diff := cmp.Diff(c.want, list(c.edits...)); diff != "" {
			t.Errorf("%v: claims (-want +got):\n%s", c.edits, diff)
		}
	}
}
