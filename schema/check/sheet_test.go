package check

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

func pointersOf(missing []report.Missing) []string {
	var out []string
	for _, m := range missing {
		out = append(out, m.Place.Pointer)
	}
	return out
}

// TestEverythingMissingIsToldAtOnce holds the sheet sticky and patient: it goes on
// noting what is missing, each place once, and no ruling gets through.
func TestEverythingMissingIsToldAtOnce(t *testing.T) {
	l := load(t, "delete /cylinders/a/height", "delete /cylinders/a/upright", "delete /cylinders/a/in", "delete /openings", "delete /outside", "/spaces/cabin/surveyed/complete = []")
	f := judge(t, l, books(t, tall, stand), func(s *Sheet, c *layout.Cylinder) Ruling {
		h := Measure(s, "h", &c.Height)
		up := Read(s, &c.Upright)
		Measure(s, "h", &c.Height) // once more: told once
		if Item(s, &c.In) != nil || up || h != 0 {
			t.Error("a value that was left out is not its zero")
		}
		if List(s, &s.Layout().Openings) != nil {
			t.Error("a list that was left out has something in it")
		}
		return AtLeast(s, unit.Length(100), Limit(s, "h_need", code.ClearanceAbove, nil)).About("the thing")
	})
	is(t, f, report.NotKnown, report.MissingInput)
	want := []string{"/cylinders/a/height", "/cylinders/a/upright", "/cylinders/a/in", "/openings"}
	if diff := cmp.Diff(want, pointersOf(f.Parts[0].Missing)); diff != "" {
		t.Errorf("missing (-want +got):\n%s", diff)
	}
	for _, m := range f.Parts[0].Missing {
		if m.Measure == "" || m.Measure != layout.Describe(m.Place.Pointer) {
			t.Errorf("%s: how to find it out is %q", m.Place.Pointer, m.Measure)
		}
	}
	if f.Parts[0].About != "the thing" {
		t.Errorf("what it was about got lost: %q", f.Parts[0].About)
	}
	if f.Parts[0].Found != nil || f.Parts[0].Source != nil {
		t.Errorf("the ruling of a stuck sheet got through: %+v", f.Parts[0])
	}
	if f.Place.Pointer != "/cylinders/a/height" || f.Place.Line == 0 {
		t.Errorf("the finding stands at %+v, want where the first thing is missing", f.Place)
	}
}

func TestAnEmptyListIsAStatement(t *testing.T) {
	f := judge(t, load(t), books(t, stand), func(s *Sheet, c *layout.Cylinder) Ruling {
		n := len(List(s, &s.Layout().Openings))
		return Is(s, n == 0, Asked(s, code.CylinderUpright, nil), "none", "none")
	})
	is(t, f, report.Within, "")
	if diff := cmp.Diff([]report.Input{{Pointer: "/openings", Basis: "stated"}}, f.Parts[0].Inputs); diff != "" {
		t.Error(diff)
	}
}

// TestNothingIsComputedOnAStuckSheet tries every way in which a sheet gets stuck
// against every way in which something would be computed.
func TestNothingIsComputedOnAStuckSheet(t *testing.T) {
	never := &Figure[unit.Length, *layout.Cylinder]{ID: "tiny.never", Title: "never", Calc: func(s *Sheet, c *layout.Cylinder) unit.Length {
		return Step(s, "x", Formula{Text: "x = 1"}, func() unit.Length { return 1 })
	}}
	for _, c := range []struct {
		name    string
		stick   func(*Sheet, *layout.Cylinder)
		outcome report.Outcome
		reason  report.Reason
	}{
		{"a missing quantity", func(s *Sheet, c *layout.Cylinder) { Measure(s, "x", &c.WeighedTare) }, report.NotKnown, report.MissingInput},
		{"a missing word", func(s *Sheet, c *layout.Cylinder) { Read(s, &c.Material) }, report.NotKnown, report.MissingInput},
		{"a missing list", func(s *Sheet, c *layout.Cylinder) { List(s, &s.Layout().Alarms) }, report.NotKnown, report.MissingInput},
		{"a missing place", func(s *Sheet, c *layout.Cylinder) {
			Where(s, c, layout.PositionOf(&layout.Opening{}))
		}, report.NotKnown, report.MissingInput},
		{"a thing that is not listed", func(s *Sheet, c *layout.Cylinder) { s.Missing("a gland", c.Spot()) }, report.NotKnown, report.MissingInput},
		{"a silent code", func(s *Sheet, c *layout.Cylinder) { Limit(s, "x", code.VentToOpening, nil) }, report.NotApplicable, report.NotCovered},
		{"a remembered figure", func(s *Sheet, c *layout.Cylinder) { Limit(s, "x", code.VentToIgnition, nil) }, report.NotApplicable, report.AskFitter},
		{"a case that the code exempts", func(s *Sheet, c *layout.Cylinder) { AllowedWords(s, code.CylinderPlaces, cylinderRole(c)) }, report.NotApplicable, report.RuleExempts},
	} {
		t.Run(c.name, func(t *testing.T) {
			codes := books(t, stand, says("locker.vent-to-ignition", `{"fixed": "1 m"}`, "memory"),
				says("cylinder.places", `{"when": [{"fact": "cylinder.role", "isOneOf": ["in-service"], "then": "notAsked"}], "otherwise": {"oneOf": ["lockers"]}}`, "read"))
			f := judge(t, load(t), codes, func(s *Sheet, cylinder *layout.Cylinder) Ruling {
				if s.Stuck() {
					t.Error("stuck before anything happened")
				}
				c.stick(s, cylinder)
				if !s.Stuck() {
					t.Error("not stuck")
				}
				refuse := func(*Sheet) Ruling { t.Error("a clause ran"); return Ruling{} }
				if q := Step(s, "y", Formula{Text: "y = 2"}, func() unit.Length { t.Error("a step ran"); return 2 }); q != 0 {
					t.Errorf("a step gave %v", q)
				}
				if q := Fig(s, "z", never, cylinder); q != 0 {
					t.Errorf("a figure gave %v", q)
				}
				if q := Band(s, "b", "a band", unit.Exactly(unit.Length(3))); q != 0 {
					t.Errorf("a band gave %v", q)
				}
				for _, r := range []Ruling{All(s, refuse), Any(s, refuse), OrPractice(s, refuse, refuse), Same(s, asks(standing1), cylinder),
					Every(s, s.Layout().Cylinders.All(), func() Ruling { t.Error("none ran"); return Ruling{} }, func(*Sheet, *layout.Cylinder) Ruling { return refuse(s) })} {
					if r.made {
						t.Error("a fold made a ruling")
					}
				}
				return Is(s, true, Asked(s, code.CylinderUpright, nil), "found", "needed")
			})
			is(t, f, c.outcome, c.reason)
			if len(f.Parts) != 1 || f.Parts[0].Found != nil {
				t.Errorf("%+v", f.Parts)
			}
		})
	}
}

func cylinderRole(c *layout.Cylinder) Facts {
	return Facts{code.FactCylinderRole: func(s *Sheet) any { return string(Read(s, &c.Role)) }}
}

// TestWhatStopsASheetFirst: an exemption outweighs what blocks, and that
// outweighs what is missing, in whichever order they come.
func TestWhatStopsASheetFirst(t *testing.T) {
	codes := books(t, stand, says("locker.vent-to-ignition", `{"fixed": "1 m"}`, "memory"),
		says("cylinder.places", `{"when": [{"fact": "cylinder.role", "isOneOf": ["in-service"], "then": "notAsked"}], "otherwise": {"oneOf": ["lockers"]}}`, "read"))
	miss := func(s *Sheet, c *layout.Cylinder) { Measure(s, "x", &c.WeighedTare) }
	silent := func(s *Sheet, c *layout.Cylinder) { Limit(s, "x", code.VentToOpening, nil) }
	memory := func(s *Sheet, c *layout.Cylinder) { Limit(s, "x", code.VentToIgnition, nil) }
	exempt := func(s *Sheet, c *layout.Cylinder) { AllowedWords(s, code.CylinderPlaces, cylinderRole(c)) }
	viaFigure := func(f func(*Sheet, *layout.Cylinder)) func(*Sheet, *layout.Cylinder) {
		return func(s *Sheet, c *layout.Cylinder) {
			Fig(s, "f", &Figure[unit.Length, *layout.Cylinder]{ID: "tiny.stuck", Calc: func(s *Sheet, c *layout.Cylinder) unit.Length { f(s, c); return 1 }}, c)
		}
	}
	exemptText, silentText, memoryText := "the text does not ask this here: what the cylinder is doing is in-service", code.VentToOpening.Asks, code.VentToIgnition.Asks
	for _, c := range []struct {
		name   string
		steps  []func(*Sheet, *layout.Cylinder)
		reason report.Reason
		text   string
	}{
		{"missing then silent", []func(*Sheet, *layout.Cylinder){miss, silent}, report.NotCovered, silentText},
		{"silent then missing", []func(*Sheet, *layout.Cylinder){silent, miss}, report.NotCovered, silentText},
		{"silent then remembered", []func(*Sheet, *layout.Cylinder){silent, memory}, report.NotCovered, silentText},
		{"remembered then silent", []func(*Sheet, *layout.Cylinder){memory, silent}, report.AskFitter, memoryText},
		{"silent then exempt", []func(*Sheet, *layout.Cylinder){silent, exempt}, report.RuleExempts, exemptText},
		{"exempt then silent", []func(*Sheet, *layout.Cylinder){exempt, silent}, report.RuleExempts, exemptText},
		{"exempt then missing", []func(*Sheet, *layout.Cylinder){exempt, miss}, report.RuleExempts, exemptText},
		{"exempt, then a figure that misses nothing", []func(*Sheet, *layout.Cylinder){exempt, viaFigure(func(*Sheet, *layout.Cylinder) {})}, report.RuleExempts, exemptText},
		{"exempt, then a figure that is silent", []func(*Sheet, *layout.Cylinder){exempt, viaFigure(silent)}, report.RuleExempts, exemptText},
		{"a figure that is silent", []func(*Sheet, *layout.Cylinder){viaFigure(silent)}, report.NotCovered, silentText},
		{"missing, then a figure that is silent", []func(*Sheet, *layout.Cylinder){miss, viaFigure(silent)}, report.NotCovered, silentText},
		{"silent, then a figure that is exempt", []func(*Sheet, *layout.Cylinder){silent, viaFigure(exempt)}, report.RuleExempts, exemptText},
		{"silent, then a figure that is remembered", []func(*Sheet, *layout.Cylinder){silent, viaFigure(memory)}, report.NotCovered, silentText},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := judge(t, load(t), codes, func(s *Sheet, cylinder *layout.Cylinder) Ruling {
				for _, step := range c.steps {
					step(s, cylinder)
				}
				return Ruling{}
			})
			is(t, f, report.NotApplicable, c.reason)
			if f.Parts[0].Text != c.text {
				t.Errorf("says %q, want %q", f.Parts[0].Text, c.text)
			}
			cited := f.Parts[0].Source != nil
			if want := c.reason != report.NotCovered; cited != want {
				t.Errorf("cites a text: %v, want %v", cited, want)
			}
		})
	}
}

// TestWhatAFigureNotesIsNotedByWhoeverTakesIt holds adopt: what is missing, what
// is not surveyed, what was read, each once.
func TestWhatAFigureNotesIsNotedByWhoeverTakesIt(t *testing.T) {
	figure := &Figure[unit.Length, *layout.Cylinder]{ID: "tiny.noted", Title: "noted", Calc: func(s *Sheet, c *layout.Cylinder) unit.Length {
		Inventory(s, layout.InventoryListLines)
		Inventory(s, layout.InventoryListAppliances)
		Limit(s, "h_need", code.ClearanceAbove, nil)
		return Measure(s, "h", &c.Height)
	}}
	clause := func(s *Sheet, c *layout.Cylinder) Ruling {
		Inventory(s, layout.InventoryListLines)
		Fig(s, "h", figure, c)
		Fig(s, "h", figure, c)
		return AtLeast(s, Fig(s, "h", figure, c), Limit(s, "h_need", code.ClearanceAbove, nil))
	}
	f := judge(t, load(t), books(t, tall), clause)
	is(t, f, report.NotKnown, report.NotSurveyed)
	p := f.Parts[0]
	if got := pointersOf(p.Missing); !slices.Equal(got, []string{"/surveyedBy/complete"}) {
		t.Errorf("gaps %v", got)
	}
	if diff := cmp.Diff([]report.Input{{Pointer: "/cylinders/a/height", Basis: "stated"}}, p.Inputs); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{"clearance.above"}, p.Limits); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{"/surveyedBy/complete#appliances"}, p.Surveys); diff != "" {
		t.Error(diff)
	}
	missing := judge(t, load(t, "delete /cylinders/a/height"), books(t, tall), clause)
	is(t, missing, report.NotKnown, report.MissingInput)
	if got := pointersOf(missing.Parts[0].Missing); !slices.Equal(got, []string{"/cylinders/a/height"}) {
		t.Errorf("missing %v", got)
	}
}

// TestTwoListsOfOnePlaceAreTwoGaps: what two figures lack is told apart, though both
// would have to be stated in the same key.
func TestTwoListsOfOnePlaceAreTwoGaps(t *testing.T) {
	over := func(id string, lists ...layout.InventoryList) *Figure[unit.Length, *layout.Cylinder] {
		return &Figure[unit.Length, *layout.Cylinder]{ID: id, Calc: func(s *Sheet, c *layout.Cylinder) unit.Length {
			for _, list := range lists {
				Inventory(s, list)
			}
			return 1
		}}
	}
	f := judge(t, load(t), books(t, stand), func(s *Sheet, c *layout.Cylinder) Ruling {
		Fig(s, "x", over("tiny.one", layout.InventoryListLines), c)
		Fig(s, "y", over("tiny.two", layout.InventoryListFlues, layout.InventoryListLines), c)
		return standing1(s, c)
	})
	is(t, f, report.NotKnown, report.NotSurveyed)
	var what []string
	for _, m := range f.Parts[0].Missing {
		what = append(what, m.What)
	}
	want := []string{"whether all lines of the dwelling are listed", "whether all flues of the dwelling are listed"}
	if diff := cmp.Diff(want, what); diff != "" {
		t.Error(diff)
	}
}

// TestWhere takes a box, a point, a box before a point, and neither.
func TestWhere(t *testing.T) {
	for _, c := range []struct {
		name   string
		edits  []string
		inputs []string
		to     unit.Length // x of the far corner
	}{
		{"a point", nil, []string{"/cylinders/a/at"}, 1.2},
		{"a box", []string{`delete /cylinders/a/at`, `/cylinders/a/box = {"from": ["1 m","2 m","0 m"], "to": ["1.5 m","2.3 m","0.5 m"]}`},
			[]string{"/cylinders/a/box/from", "/cylinders/a/box/to"}, 1.5},
		{"both", []string{`/cylinders/a/box = {"from": ["1 m","2 m","0 m"], "to": ["1.5 m","2.3 m","0.5 m"]}`},
			[]string{"/cylinders/a/box/from", "/cylinders/a/box/to"}, 1.5},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := judge(t, load(t, c.edits...), books(t, stand), func(s *Sheet, cylinder *layout.Cylinder) Ruling {
				_, to := Where(s, cylinder, &cylinder.Position)
				return Is(s, to[0].Nominal == c.to, Asked(s, code.CylinderUpright, nil), "found", "needed")
			})
			is(t, f, report.Within, "")
			var got []string
			for _, in := range f.Parts[0].Inputs {
				got = append(got, in.Pointer)
			}
			if diff := cmp.Diff(c.inputs, got); diff != "" {
				t.Error(diff)
			}
		})
	}
	f := judge(t, load(t, "delete /cylinders/a/at"), books(t, stand), func(s *Sheet, c *layout.Cylinder) Ruling {
		Where(s, c, &c.Position)
		return Is(s, true, Asked(s, code.CylinderUpright, nil), "found", "needed")
	})
	is(t, f, report.NotKnown, report.MissingInput)
	if m := f.Parts[0].Missing[0]; m.Place.Pointer != "/cylinders/a/at" || !strings.Contains(m.What, "cylinder a") {
		t.Errorf("%+v", m)
	}
}

func TestCornersOfABox(t *testing.T) {
	f := of(t, run1(t, load(t), books(t, stand), asksOnce(func(s *Sheet, l *layout.Layout) Ruling {
		from, to := Corners(s, &l.Spaces.Get("cabin").Box)
		return Is(s, from[0].Nominal == 0 && to[0].Nominal == 4, Asked(s, code.CylinderUpright, nil), "found", "needed")
	})), "")
	is(t, f, report.Within, "")
	if len(f.Parts[0].Inputs) != 2 {
		t.Errorf("%+v", f.Parts[0].Inputs)
	}
}

func TestSymbol(t *testing.T) {
	for want, got := range map[string]string{
		"P_hob_2":   Symbol("P", "hob-2"),
		"t_hob_tea": Symbol("t", "hob", "tea"),
		"A_v1_2":    Symbol("A", "v1.2"),
		"m_A":       Symbol("m", "A"),
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestCount: a number of people is taken and noted, and one that was left out is
// missing and no number.
func TestCount(t *testing.T) {
	var got float64
	ask := func(s *Sheet, c *layout.Cylinder) Ruling {
		got = Count(s, "n", &s.Layout().Dwelling.Sleeps)
		return standing1(s, c)
	}
	f := of(t, run1(t, load(t, `/dwelling = { "sleeps": 3 }`), books(t, stand), asksOfA(ask)), "/cylinders/a")
	is(t, f, report.Within, "")
	if got != 3 || !slices.ContainsFunc(f.Parts[0].Inputs, func(in report.Input) bool { return in.Pointer == "/dwelling/sleeps" }) {
		t.Errorf("%v, from %+v", got, f.Parts[0].Inputs)
	}
	for working, want := range map[bool]string{false: "", true: "n 3 /dwelling/sleeps"} {
		r, err := Run(context.Background(), Set{Checks: []Check{asksOfA(ask)}}, load(t, `/dwelling = { "sleeps": 3 }`), books(t, stand), Options{On: judged, Working: working})
		if err != nil {
			t.Fatal(err)
		}
		line := ""
		for _, l := range of(t, r, "/cylinders/a").Parts[0].Working {
			if l.Symbol == "n" {
				line = l.Symbol + " " + l.Value.Text + " " + l.Place.Pointer
			}
		}
		if line != want {
			t.Errorf("working %t: %q, want %q", working, line, want)
		}
	}
	f = of(t, run1(t, load(t), books(t, stand), asksOfA(ask)), "/cylinders/a")
	is(t, f, report.NotKnown, report.MissingInput)
	if got != 0 || len(f.Parts[0].Missing) != 1 || f.Parts[0].Missing[0].What != "sleeps" {
		t.Errorf("%v, missing %+v", got, f.Parts[0].Missing)
	}
}
