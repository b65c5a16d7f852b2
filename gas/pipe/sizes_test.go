package pipe

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// ladders are the materials with standard sizes of a bore.
var ladders = []Material{SteelPipe, CopperK, CopperL, CopperACR, Polyethylene}

// The dimensions against the tables that print the standards (ASME B36.10, ASTM B88,
// ASTM B280), row by row.
func TestSizesArePublished(t *testing.T) {
	of := map[string]Material{
		"steel Schedule 40": SteelPipe, "copper type K": CopperK, "copper type L": CopperL, "copper ACR annealed": CopperACR,
	}
	left := map[string]bool{}
	for _, m := range of {
		for _, s := range Sizes(m) {
			left[fmt.Sprintf("%s %.3f %.3f", m, float64(s.Outside)/inch, float64(s.Wall)/inch)] = true
		}
	}
	var d deviations
	for _, row := range physicstest.Published(t, "pipe_dimensions.csv") {
		outside, wall := row.Number(t, "outside_diameter_in"), row.Number(t, "wall_in")
		key := fmt.Sprintf("%s %.3f %.3f", of[row["material"]], outside, wall)
		if !left[key] {
			t.Errorf("%s is published and not listed, or listed once and published twice", key)
		}
		delete(left, key)
		if row["inside_diameter_in"] != "" {
			// 3/16 in ACR is printed as 0.128 in, its outside and wall give 0.127.
			bore := must[unit.Length](t)(BoreOf(unit.Length(outside*inch), unit.Length(wall*inch)))
			d.add(float64(bore)/inch, row.Number(t, "inside_diameter_in"))
			if math.Abs(float64(bore)/inch-row.Number(t, "inside_diameter_in")) > 0.00101 {
				t.Errorf("%s: bore %.4f in, printed %s", key, float64(bore)/inch, row["inside_diameter_in"])
			}
		}
	}
	d.log(t, "bore from outside diameter and wall")
	if len(left) > 0 {
		t.Errorf("listed and not published: %v", left)
	}
}

// The bores that the fuel gas code prints beside its tables are those of the sizes:
// copper stands there with the bore of type K.
func TestBoresOfTheCodeTables(t *testing.T) {
	of := map[string]Material{steel: SteelPipe, copper: CopperK, plastic: Polyethylene, olderSteel: SteelPipe}
	compared := map[string]bool{}
	for _, row := range physicstest.Published(t, "pipe_capacity.csv") {
		m, ok := of[row["material"]]
		if !ok {
			continue
		}
		bore, found := row.Number(t, "inside_diameter_in"), false
		for _, s := range Sizes(m) {
			found = found || math.Abs(float64(s.Bore)/inch-bore) < 5e-4
		}
		compared[fmt.Sprint(m, bore)] = true
		if !found {
			t.Errorf("%s: no size has the printed bore of %g in", m, bore)
		}
	}
	if len(compared) != 9+9+8 {
		t.Errorf("%d bores compared: %v", len(compared), compared)
	}
}

func TestSizesRise(t *testing.T) {
	for _, m := range ladders {
		before := unit.Length(0)
		for _, s := range Sizes(m) {
			if !(s.Bore > before) || s.Source == "" || s.Name == "" || s.Material != m {
				t.Errorf("%s: %+v after a bore of %g m", m, s, float64(before))
			}
			bore := must[unit.Length](t)(BoreOf(s.Outside, s.Wall))
			near(t, s.Name, float64(s.Bore), float64(bore), 1e-12)
			before = s.Bore
		}
	}
	for _, s := range Sizes(Corrugated) {
		if s.EHD == 0 || s.Bore != 0 || s.Name != fmt.Sprintf("EHD %d", s.EHD) {
			t.Errorf("%+v", s)
		}
	}
	for _, m := range []Material{Hose, SteelTube, StainlessTube, AluminiumTube, "cheese"} {
		if Sizes(m) != nil {
			t.Errorf("%s has standard sizes", m)
		}
	}
	Sizes(CopperK)[0].Bore = 1
	if Sizes(CopperK)[0].Bore == 1 {
		t.Error("a caller can change the table")
	}
}

func TestFindSize(t *testing.T) {
	for _, c := range []struct {
		m       Material
		outside float64 // m
		name    string
		bore    float64 // in
	}{
		{CopperK, 0.0127, "3/8", 0.402},
		{CopperK, 0.015875, "1/2", 0.527},
		{CopperL, 0.0127, "3/8", 0.430},
		{CopperACR, 0.0127, "1/2", 0.436}, // the trade's other "½ in"
		{CopperACR, 0.01905, "3/4", 0.666},
		{CopperACR, 0.0079375, "5/16", 0.248}, // 5/16 in, written 0.312 in the standard
		{SteelPipe, 0.0213, "1/2", 0.622},
		{SteelPipe, 0.0267, "3/4", 0.824},
		{SteelPipe, 0.0334, "1", 1.049},
		{Polyethylene, 0.0213, "1/2 SDR 9", 0.660},
		{CopperACR, 0.008, "", 0}, // 8 mm is no 5/16 in
		{CopperACR, 0.010, "", 0},
		{CopperK, 0.015, "", 0},
		{CopperK, 0.022, "", 0},
		{CopperK, 0, "", 0},
		{CopperK, math.NaN(), "", 0},
		{Corrugated, 0, "", 0},
		{Hose, 0.0127, "", 0},
	} {
		s, ok := FindSize(c.m, unit.Length(c.outside))
		if ok != (c.name != "") || s.Name != c.name || math.Abs(float64(s.Bore)/inch-c.bore) > 5e-4 {
			t.Errorf("%s, %g m outside: %+v, %v; want %q", c.m, c.outside, s, ok, c.name)
		}
	}
}

func TestBoreOf(t *testing.T) {
	symbols := map[string]float64{"D_o": 0.0127, "t": 0.00124}
	bore := must[unit.Length](t)(BoreOf(0.0127, 0.00124))
	near(t, BoreFormula, float64(bore), evaluate(t, BoreFormula, symbols), 1e-15)
	near(t, "½ in, 0.049 in wall, in inches", float64(must[unit.Length](t)(BoreOf(0.5*inch, 0.049*inch)))/inch, 0.402, 1e-12)
	for _, bad := range [][2]float64{{0.01, 0.005}, {0.01, 0.006}, {0.01, -0.001}, {math.NaN(), 0.001}, {0.01, math.NaN()}, {math.Inf(1), 0.001}, {3, 0.5}, {0, 0}} {
		_, err := BoreOf(unit.Length(bad[0]), unit.Length(bad[1]))
		outOfRange(t, fmt.Sprint(bad), err)
	}
}

// The multiples and the lengths of Table A.2.2 of the fuel gas code, size by size, to
// half its last printed digit.
func TestEquivalentLengthsArePublished(t *testing.T) {
	one := map[string]Fittings{
		"elbow 90": {Elbow90: 1}, "elbow 45": {Elbow45: 1}, "tee branch": {TeeBranch: 1}, "bend R/d 1": {SweptBend: 1},
	}
	var d deviations
	for _, row := range physicstest.Published(t, "pipe_fittings.csv") {
		f, listed := one[row["fitting"]]
		if !listed || row["inside_diameter_in"] == "" {
			continue
		}
		bore, printed := row.Number(t, "inside_diameter_in")*inch, row.Number(t, "equivalent_length_ft")
		got := float64(must[unit.Length](t)(EquivalentLength(0, unit.Length(bore), f))) / foot
		d.add(got, printed)
		if math.Abs(got-printed) > max(0.011, 0.006*printed) {
			t.Errorf("%s %s: %.3f ft, printed %g", row["fitting"], row["nominal_size"], got, printed)
		}
	}
	d.log(t, "equivalent lengths, Table A.2.2")
	if len(d.shares) != 4*9 {
		t.Errorf("%d rows compared, want 36", len(d.shares))
	}
}

// What is taken for the kinds that the code's table leaves out, or where tables differ:
// within what is published, and for a bend the greatest.
func TestFittingMultiplesAgainstAllTables(t *testing.T) {
	least, most := map[string]float64{}, map[string]float64{}
	for _, row := range physicstest.Published(t, "pipe_fittings.csv") {
		name, bores := row["fitting"], row.Number(t, "bores")
		if _, seen := least[name]; !seen || bores < least[name] {
			least[name] = bores
		}
		most[name] = max(most[name], bores)
	}
	for _, c := range []struct {
		got             float64
		name            string
		atLeast, atMost float64
	}{
		{elbow90Bores, "90° elbow", least["elbow 90"], most["elbow 90"]},
		{elbow45Bores, "45° elbow", least["elbow 45"], most["elbow 45"]},
		{teeBranchBores, "tee branch", least["tee branch"], most["tee branch"]},
		{teeThroughBores, "tee through", most["tee through"], 1.5 * most["tee through"]},
		{couplingBores, "coupling", most["tee through or coupling"], most["tee through or coupling"]},
		{valveBores, "valve", most["ball valve"], most["plug-type cock"]},
		{bendBores, "bend", most["bend R/d 8"], most["bend R/d 1"]},
	} {
		if c.atLeast == 0 || c.got < c.atLeast || c.got > c.atMost {
			t.Errorf("%s: %g bores, published %g to %g", c.name, c.got, c.atLeast, c.atMost)
		}
	}
	if most["globe valve"] < 10*valveBores {
		t.Error("the doc comment of EquivalentLength warns of globe valves without reason")
	}
}

func TestFittingKindsFollowTheFields(t *testing.T) {
	ones := []Fittings{{Elbow90: 1}, {Elbow45: 1}, {TeeThrough: 1}, {TeeBranch: 1}, {Valve: 1}, {Coupling: 1}, {SweptBend: 1}}
	kinds := FittingKinds()
	if len(kinds) != len(ones) {
		t.Fatalf("%d kinds, %d fields", len(kinds), len(ones))
	}
	for i, f := range ones {
		if got := f.bores(); got != float64(kinds[i].Bores) || kinds[i].Source == "" || kinds[i].Name == "" {
			t.Errorf("%s: %g bores, listed %g", kinds[i].Name, got, float64(kinds[i].Bores))
		}
	}
}

func TestEquivalentLengthText(t *testing.T) {
	f := Fittings{1, 2, 3, 4, 5, 6, 7}
	got := must[unit.Length](t)(EquivalentLength(3.2, 0.0157, f))
	want := evaluate(t, EquivalentLengthFormula, map[string]float64{
		"L": 3.2, "D": 0.0157, "n_90": 1, "n_45": 2, "n_through": 3, "n_branch": 4, "n_valve": 5, "n_coupling": 6, "n_bend": 7,
	})
	near(t, EquivalentLengthFormula, float64(got), want, 1e-15)
}

// Lengths and fittings add up, and one more fitting is never a shorter run.
func TestEquivalentLengthAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) Fittings {
			n := func(k string) int { return rapid.IntRange(0, 50).Draw(t, name+k) }
			return Fittings{n("a"), n("b"), n("c"), n("d"), n("e"), n("f"), n("g")}
		}
		f, g := draw("f"), draw("g")
		both := Fittings{f.Elbow90 + g.Elbow90, f.Elbow45 + g.Elbow45, f.TeeThrough + g.TeeThrough, f.TeeBranch + g.TeeBranch,
			f.Valve + g.Valve, f.Coupling + g.Coupling, f.SweptBend + g.SweptBend}
		bore := unit.Length(rapid.Float64Range(2e-3, 0.2).Draw(t, "bore"))
		a, b := unit.Length(rapid.Float64Range(0, 50).Draw(t, "a")), unit.Length(rapid.Float64Range(0, 50).Draw(t, "b"))
		l1, e1 := EquivalentLength(a, bore, f)
		l2, e2 := EquivalentLength(b, bore, g)
		sum, e3 := EquivalentLength(a+b, bore, both)
		if err := errors.Join(e1, e2, e3); err != nil {
			t.Fatal(err)
		}
		if math.Abs(float64(l1+l2-sum)) > 1e-9 || sum < l1 || sum < a+b {
			t.Fatalf("%g + %g = %g", float64(l1), float64(l2), float64(sum))
		}
	})
}

func TestEquivalentLengthRefuses(t *testing.T) {
	for _, bad := range nonsense {
		_, err := EquivalentLength(unit.Length(bad), 0.01, Fittings{})
		outOfRange(t, fmt.Sprint("length ", bad), err)
		_, err = EquivalentLength(1, unit.Length(bad), Fittings{})
		outOfRange(t, fmt.Sprint("bore ", bad), err)
	}
	if _, err := EquivalentLength(1, 0.01, Fittings{Valve: mostFittings}); err != nil {
		t.Error(err)
	}
	for _, bad := range []Fittings{{Elbow90: -1}, {SweptBend: mostFittings + 1}, {Valve: math.MinInt}} {
		_, err := EquivalentLength(1, 0.01, bad)
		outOfRange(t, fmt.Sprint(bad), err)
	}
}

func TestRoughness(t *testing.T) {
	got := map[Material]float64{}
	for _, m := range []Material{SteelPipe, CopperK, CopperL, CopperACR, Polyethylene, SteelTube, StainlessTube, AluminiumTube, Corrugated, Hose, "cheese"} {
		r, ok := RoughnessOf(m)
		if ok != (r.Height > 0) || ok && r.Source == "" {
			t.Errorf("%s: %+v, %v", m, r, ok)
		}
		if ok {
			got[m] = float64(r.Height)
		}
	}
	want := map[Material]float64{SteelPipe: 45e-6, SteelTube: 45e-6, CopperK: 1.5e-6, CopperL: 1.5e-6, CopperACR: 1.5e-6,
		Polyethylene: 7e-6, StainlessTube: 15e-6, AluminiumTube: 2e-6}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}
