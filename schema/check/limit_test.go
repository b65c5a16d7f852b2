package check

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// TestALimitCitesItsText in full, whether it is met, not met, or remembered.
func TestALimitCitesItsText(t *testing.T) {
	want := report.Source{Book: "profile", Document: "Invented Code", Clause: " 4", Provenance: "read", Rule: "at least 609.6 mm (24 in)"}
	for _, edits := range [][]string{nil, {`/cylinders/a/height = "1 cm"`}} {
		f := judge(t, load(t, edits...), books(t, tall), tallEnough)
		if diff := cmp.Diff(&want, f.Parts[0].Source); diff != "" {
			t.Error(diff)
		}
		if diff := cmp.Diff([]string{"clearance.above"}, f.Parts[0].Limits); diff != "" {
			t.Error(diff)
		}
	}
	remembered := judge(t, load(t), books(t, says("clearance.above", `{"fixed": "24 in"}`, "memory")), tallEnough)
	is(t, remembered, report.NotApplicable, report.AskFitter)
	s := remembered.Parts[0].Source
	if s == nil || s.Document != "Invented Code" || s.Provenance != "memory" || s.Book != "profile" {
		t.Errorf("%+v", s)
	}
	if p := remembered.Parts[0]; p.Text != code.ClearanceAbove.Asks || p.Found != nil || p.Needed != nil {
		t.Errorf("a remembered figure shows through: %+v", p)
	}
	for book, clause := range map[string]func(*Sheet, *layout.Cylinder) Ruling{
		"own": func(s *Sheet, c *layout.Cylinder) Ruling {
			return Is(s, true, Asked(s, code.OwnConsistent, nil), "a", "b")
		},
		"practice": func(s *Sheet, c *layout.Cylinder) Ruling {
			return OneOf(s, "cap", AllowedWords(s, code.PracticeOpenEnd, nil))
		},
		"component": func(s *Sheet, c *layout.Cylinder) Ruling {
			return AtMost(s, Measure(s, "m", &c.Propane), Limit(s, "m_max", code.CylinderFill, cylinderFacts1(c)))
		},
	} {
		f := judge(t, load(t), books(t), clause)
		is(t, f, report.Within, "")
		if f.Parts[0].Source.Book != book {
			t.Errorf("%s: %+v", book, f.Parts[0].Source)
		}
	}
}

func cylinderFacts1(c *layout.Cylinder) Facts {
	return Facts{
		code.FactCylinderGas:   func(s *Sheet) any { return string(Read(s, &c.Gas)) },
		code.FactWaterCapacity: func(s *Sheet) any { return float64(Measure(s, "m_water", &c.WaterCapacity)) },
	}
}

// TestALimitThatExcludesItself holds at the figure, just under and just over it, for
// both senses; and no edit is offered that would write the limit itself.
func TestALimitThatExcludesItself(t *testing.T) {
	for _, c := range []struct {
		height string
		clause func(*Sheet, *layout.Cylinder) Ruling
		want   report.Outcome
	}{
		{"24 in", tallEnough, report.NotMet}, {"24.1 in", tallEnough, report.Within}, {"23.9 in", tallEnough, report.NotMet},
		{"24 in", lowEnough, report.NotMet}, {"23.9 in", lowEnough, report.Within}, {"24.1 in", lowEnough, report.NotMet},
	} {
		open := `{"fixed": "24 in", "exclusive": true}`
		codes := books(t, says("clearance.above", open, "read"), says("locker.low-vent-edge", open, "read"))
		f := judge(t, load(t, `/cylinders/a/height = "`+c.height+`"`), codes, func(s *Sheet, x *layout.Cylinder) Ruling {
			return c.clause(s, x).Mend("Change it.", Raise(&x.Height, unit.Length(1)))
		})
		if f.Outcome != c.want {
			t.Errorf("%s: %s", c.height, f.Outcome)
		}
		if m := f.Parts[0].Mend; c.want == report.NotMet && (m == nil || m.Text == "" || len(m.Set) != 0) {
			t.Errorf("%s: the mend is %+v", c.height, m)
		}
	}
}

// TestARuleReadsOnlyWhatItNeeds, through the sheet: noted as inputs, missed when
// they are missing, taken at the corner of their bands.
func TestARuleReadsOnlyWhatItNeeds(t *testing.T) {
	clause := func(s *Sheet, c *layout.Cylinder) Ruling {
		return AtMost(s, Measure(s, "m", &c.Propane), Limit(s, "m_max", code.CylinderFill, cylinderFacts1(c)))
	}
	pointers := func(f report.Finding) (out []string) {
		for _, in := range f.Parts[0].Inputs {
			out = append(out, in.Pointer)
		}
		return out
	}
	f := judge(t, load(t), books(t), clause)
	is(t, f, report.Within, "")
	if want := []string{"/cylinders/a/propane", "/cylinders/a/gas", "/cylinders/a/waterCapacity"}; !slices.Equal(pointers(f), want) {
		t.Errorf("%v", pointers(f))
	}
	silent := judge(t, load(t, `/cylinders/a/gas = "butane"`), books(t), clause)
	is(t, silent, report.NotApplicable, report.NotCovered)
	if slices.Contains(pointers(silent), "/cylinders/a/waterCapacity") {
		t.Error("a rule that is silent on butane read the water capacity")
	}
	for _, key := range []string{"gas", "waterCapacity"} {
		missing := judge(t, load(t, "delete /cylinders/a/"+key), books(t), clause)
		is(t, missing, report.NotKnown, report.MissingInput)
		if got := pointersOf(missing.Parts[0].Missing); !slices.Equal(got, []string{"/cylinders/a/" + key}) {
			t.Errorf("without %s: %v", key, got)
		}
	}
	for _, c := range []struct {
		water, propane string
		outcome        report.Outcome
	}{
		{"20 kg", "8.4 kg", report.Within}, // 42 % of 20 kg, exactly (49 CFR 173.304a(d)(1))
		{"20 kg", "8.41 kg", report.NotMet},
		{"20 kg ± 1 kg", "7.97 kg", report.Within},
		{"20 kg ± 1 kg", "7.99 kg", report.NotMet},
		{"20 kg ± 1 kg", "7.5 kg ± 0.4 kg", report.Within},
		{"20 kg ± 1 kg", "7.5 kg ± 0.5 kg", report.NotMet},
	} {
		l := load(t, fmt.Sprintf("/cylinders/a/waterCapacity = %q", c.water), fmt.Sprintf("/cylinders/a/propane = %q", c.propane))
		if f := judge(t, l, books(t), clause); f.Outcome != c.outcome {
			t.Errorf("%s in %s: %s, want %s", c.propane, c.water, f.Outcome, c.outcome)
		}
	}
}

// TestAFactThatTheCheckCannotRead is missing, and said to be.
func TestAFactThatTheCheckCannotRead(t *testing.T) {
	codes := books(t, says("appliance.flue", `{"when": [{"fact": "space.use", "isOneOf": ["cab"], "then": "notAsked"}], "otherwise": {"oneOf": ["room-sealed"]}}`, "read"))
	for name, facts := range map[string]Facts{"none": nil, "others": {code.FactApplianceKind: func(*Sheet) any { return "lamp" }}} {
		f := judge(t, load(t), codes, func(s *Sheet, _ *layout.Cylinder) Ruling {
			return OneOf(s, "none", AllowedWords(s, code.ApplianceFlue, facts))
		})
		t.Run(name, func(t *testing.T) { is(t, f, report.NotKnown, report.MissingInput) })
		if what := f.Parts[0].Missing[0].What; !strings.Contains(what, "space.use") {
			t.Errorf("%s: %q", name, what)
		}
	}
}

// TestFactsOfEachForm reach the rule: a number, a word, a date; and a fact of the
// wrong form is not known rather than zero.
func TestFactsOfEachForm(t *testing.T) {
	date := says("cylinder.places", `{"when": [{"fact": "dwelling.firstUsed", "before": "2015", "then": {"oneOf": ["open-air"]}}], "otherwise": {"oneOf": ["lockers"]}}`, "read")
	ask := func(value any, miss bool) report.Finding {
		facts := Facts{code.FactFirstUsed: func(s *Sheet) any {
			if miss {
				s.Missing("the date", s.Layout().Dwelling.FirstUsed.Spot())
			}
			return value
		}}
		return judge(t, load(t), books(t, date), func(s *Sheet, _ *layout.Cylinder) Ruling {
			return OneOf(s, "open-air", AllowedWords(s, code.CylinderPlaces, facts))
		})
	}
	is(t, ask(unit.Date{Year: 2010, Month: 1, Day: 1}, false), report.Within, "")
	is(t, ask(unit.Date{Year: 2020, Month: 1, Day: 1}, false), report.NotMet, "")
	is(t, ask(unit.Date{Year: 2010, Month: 1, Day: 1}, true), report.NotKnown, report.MissingInput)
	area := says("locker.low-vent-area", `{"shareOf": "locker.floorArea", "share": "50 %"}`, "read")
	half := func(value any) report.Finding {
		facts := Facts{code.FactLockerFloorArea: func(*Sheet) any { return value }}
		return judge(t, load(t), books(t, area), func(s *Sheet, _ *layout.Cylinder) Ruling {
			return AtLeast(s, unit.Area(1), Limit(s, "A_need", code.LockerLowVentArea, facts))
		})
	}
	is(t, half(2.0), report.Within, "")
	is(t, half(2.01), report.NotMet, "")
}

// TestARuleThatIsOpenWithoutReason is a fault of the program: the sheet would
// have nothing to say.
func TestARuleThatIsOpenWithoutReason(t *testing.T) {
	area := says("locker.low-vent-area", `{"shareOf": "locker.floorArea", "share": "50 %"}`, "read")
	defer func() {
		if p := recover(); p == nil || !strings.Contains(fmt.Sprint(p), "locker.low-vent-area is open, and the sheet misses nothing") {
			t.Errorf("panic %v", p)
		}
	}()
	judge(t, load(t), books(t, area), func(s *Sheet, _ *layout.Cylinder) Ruling {
		facts := Facts{code.FactLockerFloorArea: func(*Sheet) any { return 0.0 }}
		return AtLeast(s, unit.Area(1), Limit(s, "A_need", code.LockerLowVentArea, facts))
	})
}

// TestALimitOfAValueOfTheFile carries the duty's text.
func TestALimitOfAValueOfTheFile(t *testing.T) {
	clause := func(s *Sheet, c *layout.Cylinder) Ruling {
		need := Against(Asked(s, code.CylinderUpright, nil), Measure(s, "d", &c.Diameter))
		return AtLeast(s, Measure(s, "h", &c.Height), need)
	}
	f := judge(t, load(t, `/cylinders/a/diameter = "0.6096 m"`), books(t, stand), clause)
	is(t, f, report.Within, "")
	if s := f.Parts[0].Source; s == nil || s.Rule != "Invented cylinder.upright." {
		t.Errorf("%+v", s)
	}
	is(t, judge(t, load(t, `/cylinders/a/diameter = "0.61 m"`), books(t, stand), clause), report.NotMet, "")
	is(t, judge(t, load(t), books(t), clause), report.NotApplicable, report.NotCovered)
}

// TestNoCodeChosen: every term of a profile is silent.
func TestNoCodeChosen(t *testing.T) {
	is(t, judge(t, load(t), books(t), tallEnough), report.NotApplicable, report.NotCovered)
}

// TestWorking: the lines of a sheet in the order in which it was written, each
// under the symbol of the clause; and none unless they are asked for.
func TestWorking(t *testing.T) {
	clause := func(s *Sheet, c *layout.Cylinder) Ruling {
		Read(s, &c.Role)
		Read(s, &c.At)
		Read(s, &c.Height.Given)
		h := Measure(s, "h", &c.Height)
		k := Constant(s, "k", "a constant", "a handbook", unit.Length(0.1))
		x := Step(s, "x", Formula{Text: "x = h + k", Source: "definition", Valid: "always"}, func() unit.Length { return unit.Length(float64(h) + float64(k)) })
		Band(s, "b", "a band", unit.Value[unit.Length]{Low: 2, Nominal: 2, High: 2})
		AllowedWords(s, code.CylinderPlaces, nil)
		Asked(s, code.CylinderUpright, nil)
		AtMost(s, Measure(s, "m", &c.Propane), Limit(s, "m_max", code.CylinderFill, cylinderFacts1(c)))
		return AtLeast(s, x, Limit(s, "h_need", code.ClearanceAbove, nil))
	}
	set := Set{Checks: []Check{asksOfA(clause)}}
	out, err := Run(context.Background(), set, load(t), books(t, tall, stand, somewhere), Options{On: judged, Working: true})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, l := range out.Findings[0].Parts[0].Working {
		line := strings.Join([]string{l.Role, l.Symbol, l.What, l.Formula, l.Source, l.Value.Text}, " | ")
		if l.Place != nil {
			line += " @" + l.Place.Pointer
		}
		got = append(got, line)
	}
	want := []string{
		"read |  | /cylinders/a/role |  |  | in-service @/cylinders/a/role",
		"read |  | /cylinders/a/at |  |  | 1.2 m, 2.2 m, 0 m @/cylinders/a/at",
		"read |  | /cylinders/a/height |  |  | 24 in @/cylinders/a/height",
		"read | h | /cylinders/a/height |  |  | 609.6 mm (24 in) @/cylinders/a/height",
		"constant | k | a constant |  | a handbook | 100 mm (3.937 in)",
		"step | x |  | x = h + k | definition | 709.6 mm (27.94 in)",
		"figure | b | a band |  |  | 2 m (78.74 in)",
		"limit |  | open-air |  | Invented Code  4 | open-air",
		"limit |  | Invented cylinder.upright. |  | Invented Code  4 | Invented cylinder.upright.",
		"read | m | /cylinders/a/propane |  |  | 8 kg (17.6 lb) @/cylinders/a/propane",
		"read |  | /cylinders/a/gas |  |  | propane @/cylinders/a/gas",
		"read | m_water | /cylinders/a/waterCapacity |  |  | 20 kg (44.1 lb) @/cylinders/a/waterCapacity",
		"limit | m_max | 42 % of the cylinder's water capacity of 20 kg (44.1 lb) | m_max = 0.42 * m_water | 49 CFR 173.304a(d)(1) | 8.4 kg (18.5 lb)",
		"limit | h_need | at least 609.6 mm (24 in) | h_need = 0.6096 | Invented Code  4 | 609.6 mm (24 in)",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("working (-want +got):\n%s", diff)
	}
	for _, f := range run1(t, load(t), books(t, tall, stand, somewhere), set.Checks...).Findings {
		if f.Parts[0].Working != nil {
			t.Errorf("a working that nobody asked for: %+v", f.Parts[0].Working)
		}
	}
}

// TestWhole: that a thing is missing is an answer only where its list is stated complete.
// A list that is not leaves it not known, and offers no mend for what may be there.
func TestWhole(t *testing.T) {
	missing := func(list layout.InventoryList) func(*Sheet, *layout.Cylinder) Ruling {
		return func(s *Sheet, c *layout.Cylinder) Ruling {
			duty := Asked(s, code.CylinderUpright, nil)
			Whole(s, list)
			return Is(s, false, duty, "none", "one").Mend("Get one.")
		}
	}
	codes := books(t, stand)
	is(t, judge(t, load(t), codes, missing(layout.InventoryListCylinders)), report.NotMet, "")
	open := judge(t, load(t), codes, missing(layout.InventoryListAlarms))
	is(t, open, report.NotKnown, report.NotSurveyed)
	if p := open.Parts[0]; p.Mend != nil || len(p.Missing) != 1 || p.Missing[0].Place.Pointer != "/surveyedBy/complete" {
		t.Errorf("%+v", p)
	}
	is(t, judge(t, load(t), books(t), missing(layout.InventoryListAlarms)), report.NotApplicable, report.NotCovered)
}
