package unit

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// shownTexts gives, for each kind, how what was written is shown in both systems.
var shownTexts = []struct{ kind, written, want string }{
	{"area", "30 cm2", "30 cm2 (4.7 in2)"},
	{"area", "21 cm2", "21 cm2 (3.3 in2)"},
	{"area", "0.30 m2", "0.3 m2 (3.2 ft2)"},
	{"area", "0.25 mm2", "0.25 mm2 (0.00039 in2)"},
	{"gaugePressure", "11 inH2O", "2.74 kPa (11 inH2O)"},
	{"gaugePressure", "0.5 inH2O", "125 Pa (0.5 inH2O)"},
	{"gaugePressure", "10 psi", "68.9 kPa (10 psi)"},
	{"gaugePressure", "375 psi", "2.59 MPa (375 psi)"},
	{"absolutePressure", "101.325 kPa", "101.3 kPa (14.7 psia)"},
	{"absolutePressure", "872 Pa", "872 Pa (0.126 psia)"},
	{"gaugePressure", "999 Pa", "999 Pa (4.01 inH2O)"},
	{"gaugePressure", "1 kPa", "1 kPa (4.01 inH2O)"},
	{"gaugePressure", "9.99 kPa", "9.99 kPa (40.1 inH2O)"},
	{"gaugePressure", "10 kPa", "10 kPa (1.45 psi)"},
	{"gaugePressure", "1 MPa", "1 MPa (145 psi)"},
	{"power", "999 W", "999 W (3410 BTU/h)"},
	{"power", "1 kW", "1 kW (3410 BTU/h)"},
	{"mass", "999 g", "999 g (2.2 lb)"},
	{"mass", "15 oz", "425 g (15 oz)"},
	{"duration", "119 s", "119 s"},
	{"duration", "120 s", "2 min"},
	{"duration", "119 min", "119 min"},
	{"duration", "71 h", "71 h"},
	{"duration", "72 h", "3 days"},
	{"temperature", "-12 degC", "-12 degC (10.4 degF)"},
	{"temperature", "0 degF", "-17.8 degC (0 degF)"},
	{"temperature", "273.15 K", "0 degC (32 degF)"},
	{"temperatureDifference", "8 K", "8 K (14.4 degF)"},
	{"length", "1.32 m", "1.32 m (51.97 in)"},
	{"length", "24 in", "609.6 mm (24 in)"},
	{"length", "5/8 in", "15.88 mm (0.625 in)"},
	{"length", "0.049 in", "1.24 mm (0.049 in)"},
	{"length", "-50 mm", "-50 mm (-1.969 in)"},
	{"length", "20 ft", "6.096 m (20 ft)"},
	{"length", "0 m", "0 mm (0 in)"},
	{"length", "999.99 mm", "1000 mm (39.37 in)"},
	{"volume", "21.6 L", "21.6 L (5.71 galUS)"},
	{"volume", "20 m3", "20 m3 (706 ft3)"},
	{"volume", "250 mL", "250 mL (15.3 in3)"},
	{"propaneMass", "40 lb", "18.1 kg (40 lb)"},
	{"mass", "100 g", "100 g (3.5 oz)"},
	{"waterMass", "47.6 lb", "21.6 kg (47.6 lb)"},
	{"force", "4 kN", "4 kN (899 lbf)"},
	{"power", "8000 BTU/h", "2.34 kW (8000 BTU/h)"},
	{"grossPower", "26523 BTU/h", "7.77 kW (26500 BTU/h)"},
	{"netPower", "160000 BTU/h", "46.9 kW (160000 BTU/h)"},
	{"energy", "1 kWh", "3.6 MJ (3410 BTU)"},
	{"massFlow", "12 g/h", "12 g/h (0.026 lb/h)"},
	{"massFlow", "1.8 kg/h", "1.8 kg/h (3.97 lb/h)"},
	{"volumeFlow", "40 m3/h", "40 m3/h (23.5 cfm)"},
	{"speed", "0.3 m/s", "0.3 m/s (59.1 ft/min)"},
	{"duration", "90 s", "90 s"},
	{"duration", "45 min", "45 min"},
	{"duration", "15 h", "15 h"},
	{"duration", "2 weeks", "14 days"},
	{"ratio", "0.7", "70 %"},
	{"ratio", "2.1 %", "2.1 %"},
	{"angle", "30 deg", "30 deg"},
	{"current", "60 mA", "60 mA"},
	{"voltage", "12.6 V", "12.6 V"},
	{"areaPerPower", "1 in2/(kBTU/h)", "22 cm2/kW (1 in2/(kBTU/h))"},
	{"areaPerMass", "1/7 in2/lb", "2.03 cm2/kg (0.143 in2/lb)"},
	{"heatPerMass", "50.3 MJ/kg", "50.3 MJ/kg (21600 BTU/lb)"},
	{"heatCapacity", "2.5 kJ/(kg.K)", "2500 J/(kg.K) (0.5971 BTU/(lb.degF))"},
	{"viscosity", "8 uPa.s", "8 uPa.s (0.008 cP)"},
	{"heatTransfer", "2 BTU/(h.ft2.degF)", "11.4 W/(m2.K) (2 BTU/(h.ft2.degF))"},
	{"density", "1.88 kg/m3", "1.88 kg/m3 (0.117 lb/ft3)"},
	{"number", "2", "2"},
	{"number", "10", "10"},
	{"number", "0", "0"},
	{"number", "1234", "1234"},
}

func TestText(t *testing.T) {
	for _, row := range shownTexts {
		k := kindNamed(t, row.kind)
		r, err := ParseKind(k, row.written)
		if err != nil {
			t.Fatal(err)
		}
		if got := TextOf(k, r.Nominal); got != row.want {
			t.Errorf("%s %s: %q, want %q", k, row.written, got, row.want)
		}
	}
	if got := Text(MustParse[Area]("30 cm2")); got != "30 cm2 (4.7 in2)" {
		t.Errorf("Text: %q", got)
	}
}

func TestTextOfWhatIsNoSize(t *testing.T) {
	for _, row := range []struct {
		si   float64
		want string
	}{
		{math.NaN(), "not a number"}, {math.Inf(1), "without limit"}, {math.Inf(-1), "without limit"},
		{math.Copysign(0, -1), "0 mm (0 in)"}, {-1e-13, "-1e-13 m"}, {1e300, "1e+300 m"}, {5e-324, "4.94e-324 m"},
		{math.MaxFloat64, "1.8e+308 m"}, {1.234e12, "1.23e+12 m"},
	} {
		if got := TextOf(KindLength, row.si); got != row.want {
			t.Errorf("%v: %q, want %q", row.si, got, row.want)
		}
	}
	if got := TextOf(KindTemperature, math.Nextafter(273.15, 0)); got != "0 degC (32 degF)" {
		t.Errorf("just below freezing: %q", got)
	}
}

// sizes draws an SI value of a size that a dwelling could have, or 0.
func sizes(k Kind) *rapid.Generator[float64] {
	return rapid.Custom(func(t *rapid.T) float64 {
		r := rapid.SampledFrom(k.info().units).Draw(t, "unit")
		v := rapid.OneOf(rapid.Float64Range(0, 2), rapid.Float64Range(0, 2000), rapid.Float64Range(1e-6, 1e6)).Draw(t, "number")
		if k.info().floor == "" && rapid.Bool().Draw(t, "negative") {
			v = -v
		}
		x := new(big.Rat).SetFloat64(v)
		x.Mul(x, r.factor())
		si, _ := x.Float64()
		return si
	})
}

// What Text prints in the metric system parses back to within the digits
// printed: half a step of the last one.
func TestTextRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(Kinds()).Draw(t, "kind")
		si := sizes(k).Draw(t, "si")
		metric, _, _ := strings.Cut(TextOf(k, si), " (")
		if strings.Contains(metric, "e") && unusual(k, si) {
			return
		}
		w, bad := scan(k.info(), metric)
		if bad != nil {
			t.Fatalf("%s %v prints %q: %s", k, si, metric, bad.why)
		}
		off := new(big.Rat).SetFloat64(si)
		off.Sub(off, w.first.rat())
		s := suiting(k.info().metric, si)
		half := tenTo(0).Mul(big.NewRat(1, 2), w.first.unit.factor())
		if places := s.places(w.first.unit.from(si)); places >= 0 {
			half.Quo(half, tenTo(places))
		} else {
			half.Mul(half, tenTo(-places))
		}
		if off.Abs(off).Cmp(half) > 0 {
			t.Fatalf("%s %v prints %q, off by more than half a step", k, si, metric)
		}
	})
}

// No print has a minus before a zero, a bare zero before decimals that round
// away, trailing zeros after a point, or anything a reader would stumble over.
func TestTextIsClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(Kinds()).Draw(t, "kind")
		si := rapid.OneOf(sizes(k), rapid.Float64()).Draw(t, "si")
		text := TextOf(k, si)
		for _, number := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '(' }) {
			if !isDigit(strings.TrimLeft(number, "-")[0]) {
				continue
			}
			if strings.Trim(number, "-0.") == "" && number != "0" {
				t.Fatalf("%s %v prints %q", k, si, text)
			}
			if strings.Contains(number, ".") && strings.HasSuffix(number, "0") && !strings.Contains(number, "e") {
				t.Fatalf("%s %v prints %q", k, si, text)
			}
		}
	})
}

func TestTextApart(t *testing.T) {
	for _, row := range []struct {
		kind         Kind
		a, b         float64
		wantA, wantB string
	}{
		{KindArea, 21e-4, 30e-4, "21 cm2 (3.3 in2)", "30 cm2 (4.7 in2)"},
		{KindArea, 29.96e-4, 30e-4, "29.96 cm2 (4.6 in2)", "30 cm2 (4.7 in2)"},
		{KindArea, 29.99e-4, 30e-4, "29.99 cm2 (4.6 in2)", "30 cm2 (4.7 in2)"},
		{KindArea, 900e-4, 1100e-4, "0.09 m2 (0.97 ft2)", "0.11 m2 (1.2 ft2)"},
		{KindLength, 0.6096, 0.6096, "609.6 mm (24 in)", "609.6 mm (24 in)"},
		{KindLength, math.Nextafter(0.6096, 0), 0.6096, "609.5999999999999 mm (23.999999999999997 in)", "609.6 mm (24.000000000000001 in)"},
		{KindLength, 0.009, 1.2, "9 mm (0.354 in)", "1.2 m (47.24 in)"},
		{KindLength, 0, 1.2, "0 m (0 in)", "1.2 m (47.24 in)"},
		{KindLength, 0, -1.2, "0 m (0 in)", "-1.2 m (-47.24 in)"},
		{KindTemperature, 273.15, 273.16, "0 degC (32 degF)", "0.01 degC (32.02 degF)"},
		{KindRatio, 0.7, 0.7001, "70 %", "70.01 %"},
		{KindCount, 3, 2, "3", "2"},
		{KindCount, 120, 0, "120", "0"},
		{KindPower, 26523, 26524, "26.523 kW (90500 BTU/h)", "26.524 kW (90504 BTU/h)"},
		{KindPower, math.NaN(), 5, "not a number", "5 W (17.1 BTU/h)"},
		{KindLength, 1e300, 1.0001e300, "1e+300 m", "1.0001e+300 m"},
	} {
		a, b := TextApart(row.kind, row.a, row.b)
		if a != row.wantA || b != row.wantB {
			t.Errorf("%s %v, %v:\n got %q, %q\nwant %q, %q", row.kind, row.a, row.b, a, b, row.wantA, row.wantB)
		}
	}
}

// numbersIn gives the texts of the systems that a print has.
func numbersIn(text string) (metric, us string) {
	metric, us, _ = strings.Cut(text, " (")
	return metric, us
}

// Unequal numbers print unequal in each system, equal ones equal; and the
// order of the numbers is the order of the prints when the unit is the same.
func TestTextApartTellsApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(Kinds()).Draw(t, "kind")
		a := rapid.OneOf(sizes(k), rapid.Float64()).Draw(t, "a")
		b := a
		switch rapid.IntRange(0, 3).Draw(t, "b") {
		case 0:
			b = rapid.OneOf(sizes(k), rapid.Float64()).Draw(t, "b")
		case 1:
			b = math.Nextafter(a, math.Inf(1))
		case 2:
			b = a * (1 + rapid.Float64Range(-0.01, 0.01).Draw(t, "near"))
		}
		if math.IsInf(b, 0) {
			return
		}
		textA, textB := TextApart(k, a, b)
		metricA, usA := numbersIn(textA)
		metricB, usB := numbersIn(textB)
		if a == b && textA != textB {
			t.Fatalf("%s %v prints %q and %q", k, a, textA, textB)
		}
		if a != b && (metricA == metricB || usA == usB && usA != "") {
			t.Fatalf("%s %v and %v print %q and %q", k, a, b, textA, textB)
		}
		checkOrder(t, k, a, b, metricA, metricB)
	})
}

// checkOrder compares two metric prints of the grammar with their numbers.
func checkOrder(t *rapid.T, k Kind, a, b float64, metricA, metricB string) {
	x, badX := scan(k.info(), metricA)
	y, badY := scan(k.info(), metricB)
	if badX != nil || badY != nil || x.first.unit != y.first.unit {
		return
	}
	if order := x.first.rat().Cmp(y.first.rat()); order != new(big.Rat).SetFloat64(a).Cmp(new(big.Rat).SetFloat64(b)) {
		t.Fatalf("%s %v and %v print out of order: %q and %q", k, a, b, metricA, metricB)
	}
}
