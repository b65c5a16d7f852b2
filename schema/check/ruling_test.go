package check

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// TestWhatARulingTells: what was found, what was asked, and by how much it falls
// short, with as many digits as it takes to tell the two apart.
func TestWhatARulingTells(t *testing.T) {
	codes := books(t, tall, low, stand, somewhere)
	for _, c := range []struct {
		name                 string
		edit                 string
		clause               func(*Sheet, *layout.Cylinder) Ruling
		outcome              report.Outcome
		found, needed, short string
	}{
		{"least, met", `/cylinders/a/height = "25 in"`, tallEnough, report.Within, "635 mm (25 in)", "609.6 mm (24 in)", ""},
		{"least, at the limit", `/cylinders/a/height = "24 in"`, tallEnough, report.Within, "609.6 mm (24 in)", "609.6 mm (24 in)", ""},
		{"least, short", `/cylinders/a/height = "609.59 mm"`, tallEnough, report.NotMet, "609.59 mm (23.9996 in)", "609.6 mm (24 in)", "0.01 mm (0.00039 in)"},
		{"most, met", `/cylinders/a/height = "23 in"`, lowEnough, report.Within, "584.2 mm (23 in)", "609.6 mm (24 in)", ""},
		{"most, at the limit", `/cylinders/a/height = "2 ft"`, lowEnough, report.Within, "609.6 mm (24 in)", "609.6 mm (24 in)", ""},
		{"most, over", `/cylinders/a/height = "25 in"`, lowEnough, report.NotMet, "635 mm (25 in)", "609.6 mm (24 in)", "25.4 mm (1 in)"},
		{"duty, met", `/cylinders/a/upright = true`, standing1, report.Within, "found", "needed", ""},
		{"duty, not met", `/cylinders/a/upright = false`, standing1, report.NotMet, "found", "needed", ""},
		{"word, allowed", `/cylinders/a/in = "open-air"`, placed1, report.Within, "open-air", "open-air", ""},
		{"word, not allowed", `/cylinders/a/in = "lockers/side"`, placed1, report.NotMet, "lockers", "open-air", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := judge(t, load(t, c.edit), codes, c.clause)
			is(t, f, c.outcome, "")
			p := f.Parts[0]
			got := []string{p.Found.Text, p.Needed.Text, ""}
			if p.Short != nil {
				got[2] = p.Short.Text
			}
			if diff := cmp.Diff([]string{c.found, c.needed, c.short}, got); diff != "" {
				t.Error(diff)
			}
			if p.Source == nil {
				t.Error("no text is cited")
			}
		})
	}
}

// TestAbsenceIsNoMeasuredZero: what was never measured is not met; words are found, and
// no number is short by anything.
func TestAbsenceIsNoMeasuredZero(t *testing.T) {
	absent := func(s *Sheet, _ *layout.Cylinder) Ruling {
		return Absent(s, "none was measured", Limit(s, "h_need", code.ClearanceAbove, nil)).Mend("Measure it.")
	}
	f := judge(t, load(t), books(t, tall), absent)
	is(t, f, report.NotMet, "")
	p := f.Parts[0]
	if diff := cmp.Diff(report.Words("none was measured"), p.Found); diff != "" {
		t.Error(diff)
	}
	if p.Needed.Text != "609.6 mm (24 in)" || p.Short != nil || p.Margin != nil || p.Source == nil || p.Mend == nil {
		t.Errorf("%+v", p)
	}
	is(t, judge(t, load(t), books(t), absent), report.NotApplicable, report.NotCovered)
}

// TestOnlyFitter: of a question on which an owner may act, what is left to the fitter is
// his where it is not met, alone or among other clauses, and nowhere else.
func TestOnlyFitter(t *testing.T) {
	codes := books(t, tall, stand)
	left := func(s *Sheet, c *layout.Cylinder) Ruling { return standing1(s, c).OnlyFitter() }
	lying := `/cylinders/a/upright = false`
	for _, c := range []struct {
		name    string
		edits   []string
		clauses []func(*Sheet, *layout.Cylinder) Ruling
		want    report.Who
	}{
		{"not met", []string{lying}, []func(*Sheet, *layout.Cylinder) Ruling{left}, report.LicensedFitter},
		{"not met, and another clause met", []string{lying}, []func(*Sheet, *layout.Cylinder) Ruling{tallEnough, left}, report.LicensedFitter},
		{"met", nil, []func(*Sheet, *layout.Cylinder) Ruling{left}, report.Owner},
		{"met, and another clause not", []string{`/cylinders/a/height = "1 cm"`}, []func(*Sheet, *layout.Cylinder) Ruling{left, tallEnough}, report.Owner},
		{"not known", []string{"delete /cylinders/a/upright"}, []func(*Sheet, *layout.Cylinder) Ruling{left}, report.Owner},
		{"not left to the fitter", []string{lying}, []func(*Sheet, *layout.Cylinder) Ruling{standing1}, report.Owner},
	} {
		t.Run(c.name, func(t *testing.T) {
			if f := judge(t, load(t, c.edits...), codes, c.clauses...); f.MayAct != c.want {
				t.Errorf("%s may act on %s, want %s", f.MayAct, f.Outcome, c.want)
			}
		})
	}
}

// TestSeveralWordsAllowed are listed as a person would.
func TestSeveralWordsAllowed(t *testing.T) {
	clause := func(s *Sheet, word string) Ruling { return OneOf(s, word, AllowedWords(s, code.PracticeOpenEnd, nil)) }
	for word, want := range map[string]report.Outcome{"cap": report.Within, "plug": report.Within, "taped": report.NotMet, "": report.NotMet, "Cap": report.NotMet} {
		f := judge(t, load(t), books(t), func(s *Sheet, _ *layout.Cylinder) Ruling { return clause(s, word) })
		is(t, f, want, "")
		if f.Parts[0].Needed.Text != "cap or plug" {
			t.Errorf("%q", f.Parts[0].Needed.Text)
		}
	}
}

// TestMendsStandOnWhatIsNotMet and nowhere else.
func TestMendsStandOnWhatIsNotMet(t *testing.T) {
	mended := func(s *Sheet, c *layout.Cylinder) Ruling {
		return tallEnough(s, c).Mend("Raise it.", Raise(&c.Height, unit.Length(0.6096)))
	}
	codes := books(t, tall)
	if f := judge(t, load(t), codes, mended); f.Parts[0].Mend != nil {
		t.Errorf("a mend of what is within: %+v", f.Parts[0].Mend)
	}
	if f := judge(t, load(t, "delete /cylinders/a/height"), codes, mended); f.Parts[0].Mend != nil {
		t.Errorf("a mend of what is not known: %+v", f.Parts[0].Mend)
	}
	f := judge(t, load(t, `/cylinders/a/height = "20 in"`), codes, mended)
	want := &report.Mend{Text: "Raise it.", Set: []report.Edit{{Pointer: "/cylinders/a/height", Value: `"24 in"`, Sense: "least", Kind: "length"}}}
	if diff := cmp.Diff(want, f.Parts[0].Mend); diff != "" {
		t.Error(diff)
	}
}

// TestEdits are written as the file writes, on the demanding side.
func TestEdits(t *testing.T) {
	l := load(t, `/cylinders/a/height = "50 cm ± 1 cm"`, `/cylinders/a/lastQualified = "2020-05"`)
	a := l.Cylinders.Get("a")
	at, _ := a.At.Get()
	for want, got := range map[string]report.Edit{
		`/cylinders/a/height "61 cm" least length`:     Raise(&a.Height, 0.6096),
		`/cylinders/a/height "60.9 cm" most length`:    Lower(&a.Height, 0.6096),
		`/cylinders/a/tare "11 kg" most mass`:          Lower(&a.Tare, 11),
		`/cylinders/a/weighedEmpty "11 kg" least mass`: Raise(&a.WeighedTare, 11),
		`/cylinders/a/in "open-air"  `:                 SetWord(&a.In, layout.OpenAir),
		`/cylinders/a/upright true  `:                  SetBool(&a.Upright, true),
		`/cylinders/a/upright false  `:                 SetBool(&a.Upright, false),
		`/cylinders/a/material "a \"quoted\" one"  `:   SetWord(&a.Material, layout.CylinderMaterial(`a "quoted" one`)),
		`/cylinders/a/at/2 "0.61 m" least length`:      RaiseAt("/cylinders/a/at/2", at[2], 0.6096),
	} {
		if text := fmt.Sprintf("%s %s %s %s", got.Pointer, got.Value, got.Sense, got.Kind); text != want {
			t.Errorf("%s, want %s", text, want)
		}
	}
}

// TestWhereAFindingStands: at the first value that the deciding part read; at the
// subject when it read none.
func TestWhereAFindingStands(t *testing.T) {
	codes := books(t, tall, stand)
	f := judge(t, load(t, `/cylinders/a/height = "1 cm"`), codes, standing1, tallEnough)
	if f.Place.Pointer != "/cylinders/a/height" || f.Place != f.Parts[0].Place || f.Place.File != "tiny.json" {
		t.Errorf("%+v", f.Place)
	}
	f = judge(t, load(t), codes, func(s *Sheet, c *layout.Cylinder) Ruling {
		return Is(s, true, Asked(s, code.CylinderUpright, nil), "found", "needed")
	})
	if f.Place.Pointer != "/cylinders/a" || f.Place.Line == 0 {
		t.Errorf("%+v", f.Place)
	}
}

// heightFigure and wordFigure read a word and a quantity, and a word.
var (
	heightFigure = &Figure[unit.Length, *layout.Cylinder]{ID: "tiny.h", Calc: func(s *Sheet, c *layout.Cylinder) unit.Length {
		Read(s, &c.Gas)
		return Measure(s, "h", &c.Height)
	}}
	wordFigure = &Figure[unit.Length, *layout.Cylinder]{ID: "tiny.w", Calc: func(s *Sheet, c *layout.Cylinder) unit.Length { Read(s, &c.Gas); return 1 }}
)

// kept and broken are the two answers to a duty.
func kept(s *Sheet) Ruling {
	return Is(s, true, Asked(s, code.CylinderUpright, nil), "found", "needed")
}

func broken(s *Sheet) Ruling {
	return Is(s, false, Asked(s, code.CylinderUpright, nil), "found", "needed")
}

// byRule takes a limit whose rule reads a word and a quantity, straight or by a figure.
func byRule(s *Sheet, c *layout.Cylinder) {
	Limit(s, "A", code.LockerLowVentArea, Facts{code.FactLockerFloorArea: func(s *Sheet) any {
		Read(s, &c.Gas)
		return float64(Measure(s, "h", &c.Height))
	}})
}

func byFigure(s *Sheet, c *layout.Cylinder) {
	Limit(s, "A", code.LockerLowVentArea, Facts{code.FactLockerFloorArea: func(s *Sheet) any { return float64(Fig(s, "x", heightFigure, c)) }})
}

// TestWhereTheHandHasToGo: a finding points at what is missing, else at what its mend
// would change, else at the first quantity that was taken, else at the last statement
// that was read. What a rule of the code reads, or a figure on its behalf, is not what
// is asked about.
func TestWhereTheHandHasToGo(t *testing.T) {
	codes := books(t, tall, stand, says("locker.low-vent-area", `{"shareOf": "locker.floorArea", "share": "50 %"}`, "read"))
	for _, c := range []struct {
		name   string
		clause func(*Sheet, *layout.Cylinder) Ruling
		at     string
	}{
		{"a word", func(s *Sheet, c *layout.Cylinder) Ruling { Read(s, &c.Role); return kept(s) }, "role"},
		{"the last of two words", func(s *Sheet, c *layout.Cylinder) Ruling { Read(s, &c.Role); Read(s, &c.Gas); return kept(s) }, "gas"},
		{"a quantity before a word", func(s *Sheet, c *layout.Cylinder) Ruling { Measure(s, "h", &c.Height); Read(s, &c.Gas); return kept(s) }, "height"},
		{"a quantity after a word", func(s *Sheet, c *layout.Cylinder) Ruling { Read(s, &c.Gas); Measure(s, "h", &c.Height); return kept(s) }, "height"},
		{"the first of two quantities", func(s *Sheet, c *layout.Cylinder) Ruling {
			Measure(s, "d", &c.Diameter)
			Measure(s, "h", &c.Height)
			return kept(s)
		}, "diameter"},
		{"a figure's quantity", func(s *Sheet, c *layout.Cylinder) Ruling {
			Read(s, &c.Role)
			Fig(s, "h", heightFigure, c)
			return kept(s)
		}, "height"},
		{"a quantity before a figure's", func(s *Sheet, c *layout.Cylinder) Ruling {
			Measure(s, "d", &c.Diameter)
			Fig(s, "h", heightFigure, c)
			return kept(s)
		}, "diameter"},
		{"a figure's word, the last", func(s *Sheet, c *layout.Cylinder) Ruling {
			Read(s, &c.Role)
			Fig(s, "w", wordFigure, c)
			return kept(s)
		}, "gas"},
		{"a word after a figure's", func(s *Sheet, c *layout.Cylinder) Ruling {
			Fig(s, "w", wordFigure, c)
			Read(s, &c.Role)
			return kept(s)
		}, "role"},
		{"not what the rule reads", func(s *Sheet, c *layout.Cylinder) Ruling { byRule(s, c); Read(s, &c.Role); return kept(s) }, "role"},
		{"not what the rule reads last", func(s *Sheet, c *layout.Cylinder) Ruling { Read(s, &c.Role); byRule(s, c); return kept(s) }, "role"},
		{"not a figure that the rule takes", func(s *Sheet, c *layout.Cylinder) Ruling { Read(s, &c.Role); byFigure(s, c); return kept(s) }, "role"},
		{"a quantity after the rule's", func(s *Sheet, c *layout.Cylinder) Ruling {
			byFigure(s, c)
			Measure(s, "d", &c.Diameter)
			return kept(s)
		}, "diameter"},
		{"what is missing", func(s *Sheet, c *layout.Cylinder) Ruling {
			Measure(s, "h", &c.Height)
			Read(s, &c.Material)
			return kept(s)
		}, "material"},
		{"what the mend changes", func(s *Sheet, c *layout.Cylinder) Ruling {
			Measure(s, "h", &c.Height)
			return broken(s).Mend("Stand it up.", SetBool(&c.Upright, true))
		}, "upright"},
		{"not a mend of what is within", func(s *Sheet, c *layout.Cylinder) Ruling {
			Measure(s, "h", &c.Height)
			return kept(s).Mend("Stand it up.", SetBool(&c.Upright, true))
		}, "height"},
		{"not a mend in words alone", func(s *Sheet, c *layout.Cylinder) Ruling {
			Measure(s, "h", &c.Height)
			return broken(s).Mend("Stand it up.")
		}, "height"},
		{"not a mend that adds what is not there", func(s *Sheet, c *layout.Cylinder) Ruling {
			Measure(s, "h", &c.Height)
			return broken(s).Mend("Say it.", SetBool(&c.ReliefValve, true))
		}, "height"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := judge(t, load(t), codes, c.clause)
			if want := "/cylinders/a/" + c.at; f.Place.Pointer != want || f.Place.Line == 0 {
				t.Errorf("stands at %s, want %s", f.Place.Pointer, want)
			}
		})
	}
}

// TestInputsStandOnce each, in the order in which they were read.
func TestInputsStandOnce(t *testing.T) {
	f := judge(t, load(t), books(t, tall), func(s *Sheet, c *layout.Cylinder) Ruling {
		for range 3 {
			Measure(s, "h", &c.Height)
			Read(s, &c.Role)
			Limit(s, "h_need", code.ClearanceAbove, nil)
			Inventory(s, layout.InventoryListCylinders)
		}
		return tallEnough(s, c)
	})
	p := f.Parts[0]
	if len(p.Inputs) != 2 || len(p.Limits) != 1 || len(p.Surveys) != 1 {
		t.Errorf("%v %v %v", p.Inputs, p.Limits, p.Surveys)
	}
}
