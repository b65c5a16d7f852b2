package check

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// judged is the day on which the tests judge.
var judged = unit.Date{Year: 2026, Month: 11, Day: 25}

// tiny is an invented dwelling with just enough in it to try the engine on.
const tiny = `{
  "format": "lowvent-layout/1",
  "surveyedBy": { "complete": ["cylinders", "appliances"] },
  "outside": { "surveyed": { "complete": ["openings"] } },
  "spaces": {
    "cabin": { "use": "living", "box": { "from": ["0 m", "0 m", "0 m"], "to": ["4 m", "2 m", "2 m"] },
      "surveyed": { "complete": ["openings", "combustibles"] } }
  },
  "lockers": {
    "side": { "box": { "from": ["1 m", "2 m", "0 m"], "to": ["2 m", "2.5 m", "0.8 m"] },
      "sealedFrom": { "cabin": { "seal": "gas-tight" } }, "penetrations": {}, "vents": {},
      "surveyed": { "complete": ["penetrations"] } }
  },
  "cylinders": {
    "a": { "in": "lockers/side", "role": "in-service", "gas": "propane", "upright": true, "height": "24 in", "diameter": "0.3 m",
      "waterCapacity": "20 kg", "propane": "8 kg", "tare": "10 kg", "at": ["1.2 m", "2.2 m", "0 m"] },
    "b": { "in": "open-air", "role": "spare", "gas": "propane", "upright": true, "height": "0.7 m", "diameter": "0.3 m",
      "waterCapacity": "20 kg", "propane": "8 kg", "box": { "from": ["5 m", "0 m", "0 m"], "to": ["5.3 m", "0.3 m", "0.7 m"] } }
  },
  "appliances": {},
  "combustibles": {},
  "openings": {},
  "wants": { "timeBetweenSwaps": "2 weeks" }
}`

// load reads the tiny dwelling with edits made to it.
func load(t testing.TB, edits ...string) *layout.Layout {
	t.Helper()
	var all []source.Edit
	for _, line := range edits {
		e, err := source.ParseEdit(line)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, e)
	}
	file, err := source.Apply(source.NewFile("tiny.json", []byte(tiny)), nil, all)
	if err != nil {
		t.Fatal(err)
	}
	l, faults := layout.Load(file)
	if faults != nil {
		t.Fatalf("%v\n%v", edits, faults)
	}
	return l
}

// says is one entry of a profile.
func says(term, rule, provenance string) string {
	return fmt.Sprintf(`%q: {"says": "Invented %s.", "rule": %s, "document": "Invented Code", "clause": " 4", "provenance": %q}`, term, term, rule, provenance)
}

// The entries that most tests judge by.
var (
	tall      = says("clearance.above", `{"fixed": "24 in"}`, "read")             // a length of at least 24 in
	low       = says("locker.low-vent-edge", `{"fixed": "24 in"}`, "read")        // a length of at most 24 in
	stand     = says("cylinder.upright", `{"asked": true}`, "read")               // a duty
	somewhere = says("cylinder.places", `{"oneOf": ["open-air"]}`, "second-hand") // one word
)

// books gives the built-in books with an invented profile of these entries; with
// none, no code was chosen.
func books(t testing.TB, entries ...string) code.Codes {
	t.Helper()
	c, err := code.Use("")
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) == 0 {
		return c
	}
	text := fmt.Sprintf(`{"format": "lowvent-code/1", "id": "invented", "title": "An invented code", "jurisdiction": "Nowhere", "edition": "2026",
		"book": "profile", "scope": {"dwellings": ["cabin"], "countries": ["NZ"], "text": "Invented."},
		"entries": {%s}, "notCovered": ["Everything else"]}`, strings.Join(entries, ",\n"))
	p, faults := code.Load("invented.json", []byte(text))
	if faults != nil {
		t.Fatal(faults)
	}
	return c.With(p)
}

func cylindersOf(l *layout.Layout) *layout.Section[layout.Cylinder] { return &l.Cylinders }

// asks makes a check of cylinders.
func asks(clauses ...func(*Sheet, *layout.Cylinder) Ruling) Check {
	return For(Descriptor{ID: "tiny.check", Asks: "Is it so?", Why: "Because.", Word: report.Danger, MayAct: report.Owner}, cylindersOf, clauses...)
}

// asksOnce makes a check of the whole dwelling.
func asksOnce(clauses ...func(*Sheet, *layout.Layout) Ruling) Check {
	return ForDwelling(Descriptor{ID: "tiny.once", Asks: "Is it so?", Word: report.Warning, MayAct: report.Owner}, clauses...)
}

func run1(t testing.TB, l *layout.Layout, codes code.Codes, checks ...Check) Result {
	t.Helper()
	out, err := Run(context.Background(), Set{Checks: checks}, l, codes, Options{On: judged})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// of gives the finding of a subject, which must be there once.
func of(t testing.TB, r Result, subject string) report.Finding {
	t.Helper()
	var found []report.Finding
	for _, f := range r.Findings {
		if f.Subject == subject {
			found = append(found, f)
		}
	}
	if len(found) != 1 {
		t.Fatalf("%d findings of %q, want 1: %+v", len(found), subject, r.Findings)
	}
	return found[0]
}

// judge asks clauses of cylinder a alone.
func judge(t testing.TB, l *layout.Layout, codes code.Codes, clauses ...func(*Sheet, *layout.Cylinder) Ruling) report.Finding {
	t.Helper()
	return of(t, run1(t, l, codes, asksOfA(clauses...)), "/cylinders/a")
}

func asksOfA(clauses ...func(*Sheet, *layout.Cylinder) Ruling) Check {
	var plain []func(*Sheet, layout.Item) Ruling
	for _, f := range clauses {
		plain = append(plain, func(s *Sheet, a layout.Item) Ruling { return f(s, a.(*layout.Cylinder)) })
	}
	onlyA := func(l *layout.Layout) ([]layout.Item, *layout.Spot, bool) {
		return []layout.Item{l.Cylinders.Get("a")}, l.Cylinders.Spot(), true
	}
	return ForItems(Descriptor{ID: "tiny.check", Asks: "Is it so?", Why: "Because.", Word: report.Danger, MayAct: report.Owner}, onlyA, plain...)
}

// is compares an outcome and its reason.
func is(t testing.TB, f report.Finding, outcome report.Outcome, reason report.Reason) {
	t.Helper()
	if f.Outcome != outcome || f.Reason != reason {
		t.Fatalf("%s %s ended %s %q, want %s %q: %+v", f.Check, f.Subject, f.Outcome, f.Reason, outcome, reason, f.Parts)
	}
}

// tallEnough and lowEnough hold a cylinder's height against 24 in.
func tallEnough(s *Sheet, c *layout.Cylinder) Ruling {
	h := Measure(s, "h", &c.Height)
	return AtLeast(s, h, Limit(s, "h_need", code.ClearanceAbove, nil))
}

func lowEnough(s *Sheet, c *layout.Cylinder) Ruling {
	h := Measure(s, "h", &c.Height)
	return AtMost(s, h, Limit(s, "h_max", code.LockerLowVentEdge, nil))
}

func standing1(s *Sheet, c *layout.Cylinder) Ruling {
	return Is(s, Read(s, &c.Upright), Asked(s, code.CylinderUpright, nil), "found", "needed")
}

func placed1(s *Sheet, c *layout.Cylinder) Ruling {
	return OneOf(s, Read(s, &c.In).Section(), AllowedWords(s, code.CylinderPlaces, nil))
}
