package gas_test

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// figuresOf computes the figures of the demonstration bus with edits made to it.
func figuresOf(t *testing.T, patch ...string) map[string]report.Figure {
	t.Helper()
	b, err := checktest.NewBench(".")
	if err != nil {
		t.Fatal(err)
	}
	var edits []source.Edit
	for _, line := range patch {
		e, err := source.ParseEdit(line)
		if err != nil {
			t.Fatal(err)
		}
		edits = append(edits, e)
	}
	l, err := b.Layout(checktest.DefaultBase, edits)
	if err != nil {
		t.Fatal(err)
	}
	codes, err := b.Codes(checktest.DefaultCode)
	if err != nil {
		t.Fatal(err)
	}
	r, err := check.Run(context.Background(), check.Set{Figures: gas.Checks().Figures}, l, codes, check.Options{On: checktest.Day})
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]report.Figure{}
	for _, f := range r.Figures {
		key := f.ID
		if f.Subject != "" {
			key += " " + f.Subject
		}
		found[key] = f
	}
	return found
}

// TestFiguresByHand works the figures of the demonstration bus out anew, from its
// plates and its pattern of use. 1 BTU/h (International Table) is 0.293 071 07 W and
// 1 lb 0.453 592 37 kg (NIST Special Publication 811); propane burns with 2219.2 kJ/mol
// (NIST Chemistry WebBook) at 44.0956 g/mol, 50.33 MJ/kg, which is good to 0.1 %.
func TestFiguresByHand(t *testing.T) {
	const (
		btuh = 0.29307107
		heat = 2219.2e3 / 44.0956e-3
		day  = 86400
	)
	heater := 0.280 / 3600 * heat // 280 g/h
	load := (22000+12000+1500)*btuh + heater
	propane := (19.9 + 15) * 0.45359237 // A by its filling, B by its sleeve
	use := 22000*btuh*(10*60*0.25+30*60*0.25) + 12000*btuh*(20*60+20*60) + 1500*btuh*(day*0.50) + heater*(6*3600*0.40+2*3600*0.60)
	figures := figuresOf(t)
	for id, want := range map[string]float64{
		"dwelling.connected-load":      load,
		"dwelling.propane-in-service":  propane,
		"dwelling.daily-heat":          use,
		"dwelling.run-time-by-pattern": propane * heat / use * day,
		"dwelling.run-time-flat-out":   propane * heat / load,
	} {
		f, shown := figures[id]
		if !shown || f.Value == nil {
			t.Errorf("%s is not shown: %+v", id, f)
			continue
		}
		if got := *f.Value.SI; math.Abs(got-want) > 1e-3*want {
			t.Errorf("%s is %v, by hand %v", id, got, want)
		}
		if f.Missing != nil || f.Note != "" {
			t.Errorf("%s: %+v %q", id, f.Missing, f.Note)
		}
	}
}

// TestFiguresTellWhatTheyLeaveOut: where a list is not stated complete, a figure over
// it says so; where something of it is missing, it has no value.
func TestFiguresTellWhatTheyLeaveOut(t *testing.T) {
	appliances := []string{"dwelling.connected-load", "dwelling.daily-heat", "dwelling.run-time-by-pattern", "dwelling.run-time-flat-out"}
	cylinders := []string{"dwelling.propane-in-service", "dwelling.run-time-by-pattern", "dwelling.run-time-flat-out"}
	for _, c := range []struct {
		patch []string
		open  []string // shown, of what is listed
		none  []string // not shown
	}{
		{[]string{`/surveyedBy/complete = ["cylinders"]`}, appliances, nil},
		{[]string{`/surveyedBy/complete = ["appliances"]`}, cylinders, nil},
		{[]string{`delete /appliances/water/plate/input`}, nil, appliances},
		{[]string{`delete /appliances/fridge/use`}, nil, []string{"dwelling.daily-heat", "dwelling.run-time-by-pattern"}},
		{[]string{`delete /cylinders/B/role`}, nil, cylinders},
		{[]string{`/appliances/hob/use = {}`, `/appliances/water/use = {}`, `/appliances/fridge/use = {}`, `/appliances/heater/use = {}`}, nil, []string{"dwelling.run-time-by-pattern"}},
	} {
		figures := figuresOf(t, c.patch...)
		for _, id := range []string{"dwelling.connected-load", "dwelling.propane-in-service", "dwelling.daily-heat", "dwelling.run-time-by-pattern", "dwelling.run-time-flat-out"} {
			f := figures[id]
			open, none := slices.Contains(c.open, id), slices.Contains(c.none, id)
			if (f.Value == nil) != none || (len(f.Missing) > 0) != (open || none) {
				t.Errorf("%v: %s has the value %v and misses %v", c.patch, id, f.Value, f.Missing)
			}
			if open != strings.Contains(f.Note, "not stated complete") {
				t.Errorf("%v: %s notes %q", c.patch, id, f.Note)
			}
		}
	}
}

// TestFiguresCarryTheirBands to whoever reads them.
func TestFiguresCarryTheirBands(t *testing.T) {
	figures := figuresOf(t, `/appliances/hob/plate/input = "22000 BTU/h ± 1000 BTU/h"`, `/cylinders/A/propane = "19 lb ± 0.5 lb"`)
	plain := figuresOf(t, `/cylinders/A/propane = "19 lb"`)
	for id, want := range map[string][2]float64{
		"dwelling.connected-load":     {-1000 * 0.29307107, 1000 * 0.29307107},
		"dwelling.propane-in-service": {-0.5 * 0.45359237, 0.5 * 0.45359237},
	} {
		f, exact := figures[id].Value, *plain[id].Value.SI
		if f.Low == nil || math.Abs(*f.Low-exact-want[0]) > 1e-6*exact || math.Abs(*f.High-exact-want[1]) > 1e-6*exact {
			t.Errorf("%s: %v to %v about %v", id, *f.Low, *f.High, exact)
		}
	}
	t1, t0 := figures["dwelling.run-time-flat-out"].Value, *plain["dwelling.run-time-flat-out"].Value.SI
	if !(*t1.Low < t0 && t0 < *t1.High) {
		t.Errorf("run time %v to %v, exactly %v", *t1.Low, *t1.High, t0)
	}
}
