package unit

import (
	"crypto/sha256"
	"encoding/csv"
	"fmt"
	"math"
	"math/big"
	"os"
	"strconv"
	"testing"
)

// kindNamed gives the kind of that name.
func kindNamed(t *testing.T, name string) Kind {
	t.Helper()
	for _, k := range Kinds() {
		if k.String() == name {
			return k
		}
	}
	t.Fatalf("no kind is named %q", name)
	return 0
}

// publishedRows reads a table of testdata/published, its heading apart.
func publishedRows(t *testing.T, file string) [][]string {
	t.Helper()
	f, err := os.Open("testdata/published/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// A published value is never edited: the tables are what the manifest says.
func TestPublishedTablesAreUntouched(t *testing.T) {
	files, err := os.ReadDir("testdata/published")
	if err != nil {
		t.Fatal(err)
	}
	rows := publishedRows(t, "MANIFEST.csv")
	if len(files) != len(rows)+1 {
		t.Errorf("%d files, %d rows in the manifest", len(files), len(rows))
	}
	for _, row := range rows {
		text, err := os.ReadFile("testdata/published/" + row[0])
		if err != nil {
			t.Fatal(err)
		}
		if got := fmt.Sprintf("%x", sha256.Sum256(text)); got != row[1] {
			t.Errorf("%s has changed: SHA-256 %s", row[0], got)
		}
	}
}

// Each factor agrees with NIST SP 811 appendix B to every digit printed there,
// and exactly where the table prints it in bold.
func TestPublishedConversionFactors(t *testing.T) {
	rows := publishedRows(t, "nist_sp811.csv")
	if len(rows) < 45 {
		t.Fatalf("only %d rows", len(rows))
	}
	for _, row := range rows {
		t.Run(row[0]+" "+row[1], func(t *testing.T) {
			want, ok := new(big.Rat).SetString(row[2])
			if !ok {
				t.Fatalf("bad figure %q", row[2])
			}
			r, err := ParseKind(kindNamed(t, row[0]), row[1])
			if err != nil {
				t.Fatal(err)
			}
			nearest, _ := want.Float64()
			if row[4] == "yes" {
				if r.Nominal != nearest {
					t.Errorf("%v, published as exactly %v (%s)", r.Nominal, nearest, row[5])
				}
				return
			}
			printed, _ := strconv.Atoi(row[3])
			got := strconv.FormatFloat(r.Nominal, 'E', printed-1, 64)
			if got != strconv.FormatFloat(nearest, 'E', printed-1, 64) {
				t.Errorf("%s, published %s (%s)", got, row[2], row[5])
			}
		})
	}
}

// The factors of the tables are the definitions, not roundings of them.
// Definitions: NIST SP 811 (2008) B.6 and notes 9, 22, 23 of B.8.
func TestFactorsFollowFromDefinitions(t *testing.T) {
	of := func(n, d int64) *big.Rat { return big.NewRat(n, d) }
	mul := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
	div := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }
	inch := of(254, 10000)
	foot := mul(inch, of(12, 1))
	in2, ft2 := mul(inch, inch), mul(foot, foot)
	in3, ft3 := mul(in2, inch), mul(ft2, foot)
	pound := of(45359237, 1e8)
	gravity := of(980665, 1e5)
	btu := of(105505585262, 1e8)
	hour, minute := of(3600, 1), of(60, 1)
	gallon := mul(of(231, 1), in3)
	water := of(999, 1) // kg/m³, see TestWaterDensity
	psi := div(mul(pound, gravity), in2)
	table := []struct {
		kind Kind
		unit string
		want *big.Rat
	}{
		{KindLength, "in", inch}, {KindLength, "ft", foot},
		{KindArea, "in2", in2}, {KindArea, "ft2", ft2},
		{KindVolume, "in3", in3}, {KindVolume, "ft3", ft3}, {KindVolume, "galUS", gallon}, {KindVolume, "galImp", of(454609, 1e8)},
		{KindMass, "lb", pound}, {KindMass, "oz", div(pound, of(16, 1))},
		{KindWaterMass, "lb", pound}, {KindWaterMass, "oz", div(pound, of(16, 1))},
		{KindWaterMass, "L", mul(water, of(1, 1000))}, {KindWaterMass, "mL", mul(water, of(1, 1e6))}, {KindWaterMass, "galUS", mul(water, gallon)},
		{KindForce, "lbf", mul(pound, gravity)}, {KindForce, "kgf", gravity},
		{KindGaugePressure, "psi", psi}, {KindGaugePressure, "psig", psi}, {KindAbsolutePressure, "psia", psi},
		// Conventional water: 1000 kg/m³ under standard gravity.
		{KindGaugePressure, "mmH2O", mul(gravity, of(1000, 1000))}, {KindGaugePressure, "inH2O", mul(gravity, of(254, 10))},
		// Conventional mercury: 13 595.1 kg/m³ (SP 811 prints an inch as 3386.389
		// and a foot as 40 636.66 Pa; only this density gives both).
		{KindGaugePressure, "inHg", mul(mul(gravity, of(135951, 10)), inch)},
		{KindTemperatureDifference, "degF", of(5, 9)},
		{KindPower, "BTU/h", div(btu, hour)}, {KindPower, "kBTU/h", mul(div(btu, hour), of(1000, 1))},
		{KindEnergy, "BTU", btu}, {KindEnergy, "kWh", mul(hour, of(1000, 1))},
		{KindMassFlow, "lb/h", div(pound, hour)}, {KindMassFlow, "g/h", div(of(1, 1000), hour)}, {KindMassFlow, "kg/h", div(of(1, 1), hour)},
		{KindVolumeFlow, "cfm", div(ft3, minute)}, {KindVolumeFlow, "ft3/h", div(ft3, hour)},
		{KindVolumeFlow, "m3/h", div(of(1, 1), hour)}, {KindVolumeFlow, "L/min", div(of(1, 1000), minute)},
		{KindVolumeFlow, "mL/h", div(of(1, 1000000), hour)}, {KindVolumeFlow, "in3/h", div(in3, hour)},
		{KindSpeed, "mph", div(mul(of(5280, 1), foot), hour)}, {KindSpeed, "ft/min", div(foot, minute)}, {KindSpeed, "km/h", div(of(1000, 1), hour)},
		{KindAreaPerPower, "in2/(kBTU/h)", div(in2, mul(div(btu, hour), of(1000, 1)))}, {KindAreaPerPower, "cm2/kW", of(1, 1e7)},
		{KindAreaPerMass, "in2/lb", div(in2, pound)}, {KindAreaPerMass, "cm2/kg", of(1, 1e4)},
		{KindHeatPerMass, "BTU/lb", div(btu, pound)}, {KindHeatPerMass, "kWh/kg", of(36e5, 1)},
		{KindDensity, "lb/ft3", div(pound, ft3)},
		{KindHeatCapacity, "BTU/(lb.degF)", div(btu, mul(pound, of(5, 9)))}, {KindHeatCapacity, "kJ/(kg.K)", of(1000, 1)},
		{KindViscosity, "cP", of(1, 1000)}, {KindViscosity, "mPa.s", of(1, 1000)}, {KindViscosity, "uPa.s", of(1, 1e6)},
		{KindHeatTransfer, "BTU/(h.ft2.degF)", div(btu, mul(hour, mul(ft2, of(5, 9))))},
	}
	for _, row := range table {
		s := find(row.kind.info().units, row.unit)
		if s == nil {
			t.Errorf("%s has no unit %q", row.kind, row.unit)
			continue
		}
		if s.factor().Cmp(row.want) != 0 {
			t.Errorf("%s %s: factor %s, want %s", row.kind, row.unit, s.factor(), row.want)
		}
	}
}

// A degree is π/180; π to 50 decimals as tabulated in NIST DLMF 3.12.1 (from
// memory, checked against math.Pi below).
func TestDegreeIsTheBestFractionOfPi(t *testing.T) {
	pi, _ := new(big.Rat).SetString("3.14159265358979323846264338327950288419716939937511")
	if f, _ := pi.Float64(); f != math.Pi {
		t.Fatalf("π is %v", f)
	}
	degree := new(big.Rat).Quo(pi, big.NewRat(180, 1))
	off := new(big.Rat).Sub(find(angles, "deg").factor(), degree)
	off.Quo(off.Abs(off), degree)
	if off.Cmp(new(big.Rat).SetFrac64(6, 1)) >= 0 {
		t.Fatal("not near π/180 at all")
	}
	limit, _ := new(big.Rat).SetString("6e-37")
	if off.Cmp(limit) > 0 {
		f, _ := off.Float64()
		t.Errorf("relative error %.3g", f)
	}
	if got := MustParse[Angle]("180 deg"); float64(got) != math.Pi {
		t.Errorf("180 deg = %v", got)
	}
}

// A litre of water counts as 0.999 kg. Published: 999.1026 kg/m³ at 15 °C
// (CIPM table, second-hand), 998.9468 at 16 °C (hydrostatic weighing of
// standard mean ocean water, abstract read), and Kell's equation as printed in
// IP Standard Methods 1998 appendix G (read). 60 °F lies between.
func TestWaterDensity(t *testing.T) {
	ours := float64(MustParse[WaterMass]("1 L")) * 1000
	at := (60.0 - 32) / 1.8
	between := 999.1026 + (at-15)*(998.9468-999.1026)
	if math.Abs(ours-between) > 0.05 {
		t.Errorf("%.3f kg/m³, interpolated %.3f", ours, between)
	}
	kell := (999.83952 + at*(16.952577+at*(-7.9905127e-3+at*(-46.241757e-6+at*(105.84601e-9-at*281.03006e-12))))) / (1 + 16.887236e-3*at)
	if math.Abs(ours-kell) > 0.05 {
		t.Errorf("%.3f kg/m³, by Kell's equation %.3f", ours, kell)
	}
	if ours >= 1000 {
		t.Error("not the careful side: a litre must not count as more than a kilogram")
	}
}
