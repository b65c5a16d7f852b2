package pipe

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

func TestTableFor(t *testing.T) {
	for _, c := range []struct {
		m     Material
		inlet float64
		want  *Table
	}{
		{SteelPipe, 2740, &steelTable},
		{SteelPipe, 10 * psi, &steelHighTable},
		{SteelPipe, 20 * psi, &steelHighTable},
		{SteelPipe, 2 * psi, nil}, // between the tables
		{SteelPipe, 1.5 * psi, nil},
		{CopperK, 2740, &copperTable},
		{CopperL, 2740, &copperTable},
		{CopperACR, 10 * psi, &copperHighTable},
		{Polyethylene, 2740, &polyethyleneTable},
		{Polyethylene, 10 * psi, nil},
		{Corrugated, 2740, &corrugatedTable},
		{Corrugated, 10 * psi, nil},
		{Hose, 2740, nil},
		{StainlessTube, 2740, nil},
		{SteelPipe, 0, nil},
		{SteelPipe, math.NaN(), nil},
		{SteelPipe, -1, nil},
	} {
		got, ok := TableFor(c.m, unit.GaugePressure(c.inlet))
		if ok != (c.want != nil) || ok && got != c.want {
			t.Errorf("%s at %g Pa: %v, %v", c.m, c.inlet, got, ok)
		}
	}
}

// kilo is a load in thousands of BTU/h, rounded to a thousandth.
func kilo(p unit.GrossPower) float64 { return math.Round(float64(p)/kiloBTU*1e3) / 1e3 }

// The next longer length and the next smaller bore.
func TestCapacityLooksToTheCautiousSide(t *testing.T) {
	for _, c := range []struct {
		table      *Table
		bore, feet float64 // in, ft
		load       float64 // kBTU/h
		size       string
	}{
		{&steelTable, 0.622, 10, 291, "1/2"},
		{&steelTable, 0.622, 10.01, 200, "1/2"},
		{&steelTable, 0.622, 1, 291, "1/2"},
		{&steelTable, 0.622, 30, 137, "1/2"}, // the cell for 30 ft could not be read
		{&steelTable, 0.8, 20, 200, "1/2"},   // between two sizes
		{&steelTable, 0.824, 10, 418, "3/4"}, // the cell for 10 ft could not be read
		{&steelTable, 0.622, 84, 94, "1/2"},
		{&steelTable, 5, 60, 14800, "4"},
		{&copperTable, 0.311, 10, 45, "K&L 1/4 (ACR 3/8)"},
		{&copperTable, 0.436, 20, 64, "K&L 3/8 (ACR 1/2)"},
		{&copperHighTable, 0.305, 400, 70, "K&L 1/4 (ACR 3/8)"},
		{&polyethyleneTable, 0.660, 75, 110, "1/2 SDR 9"},
	} {
		e, err := c.table.Capacity(unit.Length(c.bore*inch), unit.Length(c.feet*foot))
		if err != nil || kilo(e.Load) != c.load || e.Size != c.size {
			t.Errorf("%g in, %g ft: %+v, %v; want %g kBTU/h of %s", c.bore, c.feet, e, err, c.load, c.size)
		}
	}
}

func TestCapacityEndsWithTheTable(t *testing.T) {
	var none *NoTableError
	for what, err := range map[string]error{
		"narrower than any":  second(steelTable.Capacity(0.5*inch, 10*foot)),
		"longer than any":    second(steelTable.Capacity(0.622*inch, 100.1*foot)),
		"longer than copper": second(copperTable.Capacity(0.305*inch, 31*foot)),
		"no such EHD":        second(corrugatedTable.CapacityEHD(14, 10*foot)),
		"EHD 0":              second(steelTable.CapacityEHD(0, 10*foot)),
		"longer than EHD 13": second(corrugatedTable.CapacityEHD(13, 61*foot)),
		"bore of corrugated": second(corrugatedTable.Capacity(0.5*inch, 10*foot)),
		"allowed, too long":  second(steelTable.Allowed(CodePropane(), 0.622*inch, 101*foot)),
	} {
		if !errors.As(err, &none) || none.Error() == "" || none.Segment != -1 {
			t.Errorf("%s: error %v, want a NoTableError", what, err)
		}
	}
	for _, bad := range nonsense {
		outOfRange(t, fmt.Sprint("length ", bad), second(steelTable.Capacity(0.0158, unit.Length(bad))))
		outOfRange(t, fmt.Sprint("bore ", bad), second(steelTable.Capacity(unit.Length(bad), 3)))
		outOfRange(t, fmt.Sprint("EHD, length ", bad), second(corrugatedTable.CapacityEHD(13, unit.Length(bad))))
		outOfRange(t, fmt.Sprint("allowed, bore ", bad), second(steelTable.Allowed(CodePropane(), unit.Length(bad), 3)))
	}
	outOfRange(t, "allowed, no gas", second(steelTable.Allowed(CodeGas{}, 0.622*inch, 3)))
}

// Every cell is found at its own bore and length, or one that is no worse.
func TestCapacityFindsEveryCell(t *testing.T) {
	for _, table := range []*Table{&steelTable, &copperTable, &polyethyleneTable, &steelHighTable, &copperHighTable, &corrugatedTable} {
		if table.Drop <= 0 || table.Inlet <= 0 || table.Source == "" || table.Clause == "" {
			t.Errorf("%s: %+v", table.Material, table)
		}
		for _, e := range table.Entries() {
			got, err := table.Capacity(max(e.Bore, leastBore), e.Length)
			if table == &corrugatedTable {
				got, err = table.CapacityEHD(e.EHD, e.Length)
			}
			if err != nil || got.Load != e.Load || got.Length != e.Length {
				t.Errorf("%s %s, %g m: %+v, %v", table.Material, e.Size, float64(e.Length), got, err)
			}
		}
	}
}

// In the misprinted rows the equation counts, elsewhere whichever is less; never more
// than either.
func TestAllowedIsTheSmallerOfTableAndEquation(t *testing.T) {
	byEquation := map[float64]bool{}
	for _, e := range steelTable.Entries() {
		allowed := must[unit.GrossPower](t)(steelTable.Allowed(CodePropane(), e.Bore, e.Length))
		equation := must[unit.GrossPower](t)(CodeCapacity(CodePropane(), e.Bore, e.Length, steelTable.Drop))
		if allowed != min(e.Load, equation) {
			t.Errorf("%s: %g W allowed, table %g, equation %g", e.Size, float64(allowed), float64(e.Load), float64(equation))
		}
		if float64(allowed) < 0.95*float64(e.Load) {
			byEquation[math.Round(float64(e.Length)/foot)] = true
		}
	}
	if len(byEquation) != 2 || !byEquation[80] || !byEquation[100] {
		t.Errorf("the equation is well below the table at %v ft, want 80 and 100", byEquation)
	}
	high := must[unit.GrossPower](t)(copperHighTable.Allowed(CodePropane(), 0.305*inch, 10*foot))
	if kilo(high) > 513 || kilo(high) < 505 {
		t.Errorf("¼ in type K at 10 psi, 10 ft: %g kBTU/h", kilo(high))
	}
	if shortest := must[unit.GrossPower](t)(steelTable.Allowed(CodePropane(), 0.622*inch, 0)); kilo(shortest) != 291 {
		t.Errorf("no length: %g kBTU/h", kilo(shortest))
	}
}

// Longer or narrower never lets more pass.
func TestCapacityIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		table := rapid.SampledFrom([]*Table{&steelTable, &copperTable, &polyethyleneTable, &steelHighTable, &copperHighTable}).Draw(t, "table")
		bore := unit.Length(rapid.Float64Range(0.008, 0.11).Draw(t, "bore"))
		length := unit.Length(rapid.Float64Range(0, 40).Draw(t, "length"))
		worse := unit.Length(rapid.Float64Range(1, 2).Draw(t, "worse"))
		at := func(bore, length unit.Length) unit.GrossPower {
			load, err := table.Allowed(CodePropane(), bore, length)
			var none *NoTableError
			if err != nil && !errors.As(err, &none) {
				t.Fatal(err)
			}
			return load
		}
		if best := at(bore, length); at(bore/worse, length) > best || at(bore, length*worse) > best {
			t.Fatalf("%g m bore, %g m: worse lets more pass", float64(bore), float64(length))
		}
	})
}

// The drop per metre of corrugated tube gives back the table's own drop at each of its
// cells (or less, where a longer cell has the same load), and rises with the load.
func TestCorrugatedSlope(t *testing.T) {
	for _, e := range corrugatedTable.Entries() {
		slope, reason := corrugatedSlope(e.EHD, float64(e.Load))
		if reason != "" || slope*float64(e.Length) > float64(corrugatedTable.Drop)*(1+1e-12) {
			t.Errorf("%s at %g m: %g Pa/m, %s", e.Size, float64(e.Length), slope, reason)
		}
		more, reason := corrugatedSlope(e.EHD, float64(e.Load)*1.0001)
		if reason == "" && !(more > slope) {
			t.Errorf("%s at %g m: more load loses no more", e.Size, float64(e.Length))
		}
	}
	for _, c := range []struct {
		ehd  int
		load float64
	}{{14, 1000}, {13, 73 * kiloBTU}, {0, 1000}} {
		if slope, reason := corrugatedSlope(c.ehd, c.load); reason == "" || slope != 0 {
			t.Errorf("EHD %d, %g W: %g Pa/m", c.ehd, c.load, slope)
		}
	}
	if slope, _ := corrugatedSlope(13, 1); math.Abs(slope-0.5*inchOfWater/(60*foot)) > 1e-12 {
		t.Errorf("a small load counts as less than the longest row: %g Pa/m", slope)
	}
}
