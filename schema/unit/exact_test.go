package unit

import (
	"fmt"
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// All whole inches from 1 to 120 equal their millimetre twins, so that a limit
// in one system is the same limit in the other.
func TestInchesEqualTheirMillimetres(t *testing.T) {
	for n := 1; n <= 120; n++ {
		inches := MustParse[Length](fmt.Sprintf("%d in", n))
		tenths := n * 254 // of a millimetre
		metric := MustParse[Length](fmt.Sprintf("%d.%d mm", tenths/10, tenths%10))
		if inches != metric {
			t.Errorf("%d in = %v, but %d.%d mm = %v", n, inches, tenths/10, tenths%10, metric)
		}
		if !AtLeast(inches, metric) || !AtMost(inches, metric) {
			t.Errorf("%d in is not at its own limit", n)
		}
	}
}

// The naive product misses its twin for some inches, as the plain sum of the
// test above would not show: 24 in falls short of 609.6 mm.
func TestNaiveConversionWouldDiffer(t *testing.T) {
	scale, differ := 0.0254, 0
	for n := 1; n <= 120; n++ {
		exact, _ := big.NewRat(int64(n)*127, 5000).Float64()
		if float64(n)*scale != exact {
			differ++
		}
	}
	if differ == 0 || 24*scale >= 0.6096 {
		t.Errorf("%d of 120 inches differ", differ)
	}
}

// Sixty-fourths of an inch, mixed, compound and decimal, are one number.
func TestFractionsOfAnInch(t *testing.T) {
	for n := 1; n < 64*15; n++ {
		whole, part := n/64, n%64
		decimal := big.NewRat(int64(n), 64).FloatString(6)
		want := MustParse[Length](decimal + " in")
		forms := []string{fmt.Sprintf("%d/64 in", n)}
		if part != 0 {
			forms = append(forms, fmt.Sprintf("%d %d/64 in", whole, part))
		}
		if whole >= 12 && part != 0 {
			forms = append(forms, fmt.Sprintf("%d ft %d %d/64 in", whole/12, whole%12, part))
		}
		for _, form := range forms {
			if got := MustParse[Length](form); got != want {
				t.Errorf("%s = %v, %s in = %v", form, got, decimal, want)
			}
		}
	}
}

// Gallons and ounces that make whole units meet exactly.
func TestTwinsAcrossUnits(t *testing.T) {
	for _, row := range []struct {
		kind Kind
		a, b string
	}{
		{KindLength, "3 ft", "36 in"}, {KindLength, "10 ft", "3.048 m"}, {KindLength, "24 in", "609.6 mm"},
		{KindArea, "1 ft2", "144 in2"}, {KindArea, "100 in2", "645.16 cm2"},
		{KindVolume, "231 in3", "1 galUS"}, {KindVolume, "1 ft3", "1728 in3"}, {KindVolume, "4.54609 L", "1 galImp"},
		{KindMass, "1 lb", "16 oz"}, {KindMass, "20 lb", "9.0718474 kg"}, {KindPropaneMass, "20 lb 8 oz", "20.5 lb"},
		{KindWaterMass, "1000 L", "999 kg"},
		{KindGaugePressure, "1 bar", "1000 mbar"}, {KindGaugePressure, "37 mbar", "3.7 kPa"}, {KindGaugePressure, "10 psi", "10 psig"},
		{KindTemperature, "-40 degC", "-40 degF"}, {KindTemperature, "100 degC", "212 degF"}, {KindTemperature, "20 degC", "293.15 K"},
		{KindTemperatureDifference, "18 degF", "10 K"},
		{KindPower, "160 kBTU/h", "160000 BTU/h"}, {KindEnergy, "1 kWh", "3.6 MJ"},
		{KindMassFlow, "3.6 kg/h", "1 g/s"}, {KindVolumeFlow, "60 ft3/h", "1 cfm"}, {KindVolumeFlow, "3.6 m3/h", "1 L/s"},
		{KindSpeed, "88 ft/min", "1 mph"}, {KindDuration, "2 weeks", "14 d"}, {KindRatio, "12.5 %", "1/8"},
		{KindHeatPerMass, "1 kWh/kg", "3.6 MJ/kg"}, {KindDensity, "1.5 kg/L", "1500 kg/m3"},
		{KindAreaPerPower, "1 mm2/W", "10 cm2/kW"},
	} {
		a, errA := ParseKind(row.kind, row.a)
		b, errB := ParseKind(row.kind, row.b)
		if errA != nil || errB != nil || a.Nominal != b.Nominal {
			t.Errorf("%s: %q = %v (%v), %q = %v (%v)", row.kind, row.a, a.Nominal, errA, row.b, b.Nominal, errB)
		}
	}
}

// The fast path gives the very bits of the rational one.
func TestFastPathIsBitEqual(t *testing.T) {
	taken := 0
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(Kinds()).Draw(t, "kind")
		text := plainTexts(k).Draw(t, "text")
		w, bad := scan(k.info(), text)
		if bad != nil {
			return // a compound whose second part is too large
		}
		want, _ := w.first.rat().Float64()
		got, ok := w.first.fast()
		if !ok {
			return
		}
		taken++
		if math.Float64bits(got) != math.Float64bits(want) {
			t.Fatalf("%s %q: %v by the fast path, %v exactly", k, text, got, want)
		}
	})
	if taken == 0 {
		t.Error("the fast path was never taken")
	}
}

// Numbers with as many digits as the fast path takes are where it could round
// twice: a spread of them, in every unit.
func TestFastPathIsBitEqualWithManyDigits(t *testing.T) {
	seed := uint64(1)
	for _, k := range Kinds() {
		for i := range k.info().units {
			for range 500 {
				seed = seed*6364136223846793005 + 1442695040888963407 // Knuth's MMIX generator
				all := fmt.Sprintf("%015d", seed%1e15)
				a := amount{n: number{whole: all[:3+seed>>60%9], decimals: all[3+seed>>60%9:]}, unit: &k.info().units[i], negative: seed>>59&1 == 1}
				got, ok := a.fast()
				want, _ := a.rat().Float64()
				if ok && math.Float64bits(got) != math.Float64bits(want) {
					t.Fatalf("%s %s.%s %s: %v by the fast path, %v exactly", k, a.n.whole, a.n.decimals, a.unit.name, got, want)
				}
			}
		}
	}
}

// Everyday texts take the fast path.
func TestFastPathIsTaken(t *testing.T) {
	for _, row := range []struct {
		kind Kind
		text string
	}{
		{KindLength, "24 in"}, {KindLength, "1.32 m"}, {KindLength, "5/8 in"}, {KindArea, "90 cm2"}, {KindMass, "20 lb"},
		{KindGaugePressure, "11 inH2O"}, {KindGaugePressure, "10 psi"}, {KindPower, "160000 BTU/h"}, {KindPower, "8.5 kW"},
		{KindTemperature, "-12 degC"}, {KindTemperature, "10.4 degF"}, {KindTemperature, "293.15 K"}, {KindRatio, "70 %"}, {KindRatio, "0.7"},
	} {
		w, bad := scan(row.kind.info(), row.text)
		if bad != nil {
			t.Fatalf("%q: %s", row.text, bad.why)
		}
		if _, ok := w.first.fast(); !ok {
			t.Errorf("%s %q goes the slow way", row.kind, row.text)
		}
	}
}

// A comparison with what is not a number never holds.
func TestComparisons(t *testing.T) {
	nan, inf := Area(math.NaN()), Area(math.Inf(1))
	for _, row := range []struct {
		a, b            Area
		atLeast, atMost bool
	}{
		{1, 1, true, true}, {1, 2, false, true}, {2, 1, true, false},
		{Area(math.Nextafter(1, 0)), 1, false, true}, {Area(math.Nextafter(1, 2)), 1, true, false},
		{nan, 1, false, false}, {1, nan, false, false}, {nan, nan, false, false},
		{inf, 1, true, false}, {1, inf, false, true}, {Area(math.Copysign(0, -1)), 0, true, true},
	} {
		if got := AtLeast(row.a, row.b); got != row.atLeast {
			t.Errorf("AtLeast(%v, %v) = %v", row.a, row.b, got)
		}
		if got := AtMost(row.a, row.b); got != row.atMost {
			t.Errorf("AtMost(%v, %v) = %v", row.a, row.b, got)
		}
	}
}
