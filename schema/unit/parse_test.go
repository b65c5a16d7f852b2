package unit

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// parseForms pairs texts of every form with their value and band in SI.
var parseForms = []struct {
	kind               Kind
	text               string
	nominal, low, high float64
}{
	{KindLength, "1.32 m", 1.32, 1.32, 1.32},
	{KindLength, "1.32m", 1.32, 1.32, 1.32},
	{KindLength, "  1.32 m ", 1.32, 1.32, 1.32},
	{KindLength, "1.32\u00a0m", 1.32, 1.32, 1.32},
	{KindLength, "1.32\u202fm", 1.32, 1.32, 1.32},
	{KindLength, "+1.32 m", 1.32, 1.32, 1.32},
	{KindLength, "-0.62 m", -0.62, -0.62, -0.62},
	{KindLength, "−0.62 m", -0.62, -0.62, -0.62},
	{KindLength, "007 mm", 0.007, 0.007, 0.007},
	{KindLength, ".049 in", 0.0012446, 0.0012446, 0.0012446},
	{KindLength, "5/8 in", 0.015875, 0.015875, 0.015875},
	{KindLength, "9/8 in", 0.028575, 0.028575, 0.028575},
	{KindLength, "1 1/2 in", 0.0381, 0.0381, 0.0381},
	{KindLength, "-1 1/2in", -0.0381, -0.0381, -0.0381},
	{KindLength, "4 ft 6 in", 1.3716, 1.3716, 1.3716},
	{KindLength, "4ft 6in", 1.3716, 1.3716, 1.3716},
	{KindLength, "4 ft 6 1/2 in", 1.3843, 1.3843, 1.3843},
	{KindLength, "-4 ft 6 in", -1.3716, -1.3716, -1.3716},
	{KindLength, "4 ft .5 in", 1.2319, 1.2319, 1.2319},
	{KindLength, "1.32 m ± 2 cm", 1.32, 1.30, 1.34},
	{KindLength, "1.32 m±2cm", 1.32, 1.30, 1.34},
	{KindLength, "1.32 m +/- 2 cm", 1.32, 1.30, 1.34},
	{KindLength, "1.32 m +-2 cm", 1.32, 1.30, 1.34},
	{KindLength, "12 in ± 1/8 in", 0.3048, 0.301625, 0.307975},
	{KindLength, "2 m ± 5 %", 2, 1.9, 2.1},
	{KindLength, "-2 m ± 5%", -2, -2.1, -1.9},
	{KindLength, "4 ft 6 in ± 1 in", 1.3716, 1.3462, 1.397},
	{KindLength, "1.30 m to 1.34 m", 1.32, 1.30, 1.34},
	{KindLength, "-10 cm to 10 mm", -0.045, -0.1, 0.01},
	{KindLength, "4 ft to 4 ft 6 in", 1.2954, 1.2192, 1.3716},
	{KindLength, "2 m to 2 m", 2, 2, 2},
	{KindLength, "0 mm", 0, 0, 0},
	{KindLength, "-0 mm", 0, 0, 0},
	{KindArea, "90 cm²", 0.009, 0.009, 0.009},
	{KindArea, "90 cm2", 0.009, 0.009, 0.009},
	{KindVolume, "1/2 m³", 0.5, 0.5, 0.5},
	{KindMass, "20 lb 4 oz", 9.185245492500, 9.185245492500, 9.185245492500},
	{KindWaterMass, "47.6 lb", 21.590996812, 21.590996812, 21.590996812},
	{KindWaterMass, "26.2 L", 26.1738, 26.1738, 26.1738},
	{KindGaugePressure, "11 inH2O", 2739.97801, 2739.97801, 2739.97801},
	{KindGaugePressure, "30 mbar", 3000, 3000, 3000},
	{KindGaugePressure, "-50 Pa", -50, -50, -50},
	{KindAbsolutePressure, "0 Pa", 0, 0, 0},
	{KindTemperature, "-12 degC", 261.15, 261.15, 261.15},
	{KindTemperature, "10.4 °F", 261.15, 261.15, 261.15},
	{KindTemperature, "-40 degC", 233.15, 233.15, 233.15},
	{KindTemperature, "-40 degF", 233.15, 233.15, 233.15},
	{KindTemperature, "-459.67 degF", 0, 0, 0},
	{KindTemperature, "-12 degC ± 2 K", 261.15, 259.15, 263.15},
	{KindTemperature, "-12 degC ± 3.6 degF", 261.15, 259.15, 263.15},
	{KindTemperature, "-12 degC ± 2 degC", 261.15, 259.15, 263.15},
	{KindTemperature, "-5 degC to 40 degC", 290.65, 268.15, 313.15},
	{KindTemperatureDifference, "15 K", 15, 15, 15},
	{KindTemperatureDifference, "9 degF", 5, 5, 5},
	{KindTemperatureDifference, "8 K ± 50 %", 8, 4, 12},
	{KindPower, "3.6 kW", 3600, 3600, 3600},
	{KindRatio, "70 %", 0.7, 0.7, 0.7},
	{KindRatio, "70%", 0.7, 0.7, 0.7},
	{KindRatio, "0.7", 0.7, 0.7, 0.7},
	{KindRatio, " 0.7 ", 0.7, 0.7, 0.7},
	{KindRatio, "1/2", 0.5, 0.5, 0.5},
	{KindRatio, "70 % ± 5 %", 0.7, 0.65, 0.75},
	{KindRatio, "0.7 ± 0.05", 0.7, 0.65, 0.75},
	{KindRatio, "0.7±.05", 0.7, 0.65, 0.75},
	{KindRatio, "0.5 to 0.7", 0.6, 0.5, 0.7},
	{KindRatio, "50 % to 70 %", 0.6, 0.5, 0.7},
	{KindDuration, "1 h 30 min", 5400, 5400, 5400},
	{KindDuration, "1 day", 86400, 86400, 86400},
	{KindDuration, "2 weeks", 1209600, 1209600, 1209600},
	{KindAreaPerMass, "1/7 in2/lb", 0.00020319061867314, 0.00020319061867314, 0.00020319061867314},
	{KindHeatPerMass, "21500 BTU/lb", 50009000, 50009000, 50009000},
	{KindDensity, "1.88 g/L", 1.88, 1.88, 1.88},
	{KindHeatCapacity, "0.6 BTU/(lb.degF)", 2512.08, 2512.08, 2512.08},
	{KindViscosity, "0.008 cP", 8e-6, 8e-6, 8e-6},
	{KindHeatTransfer, "8 W/(m².K) to 20 W/(m².K)", 14, 8, 20},
	{KindCurrent, "60 mA", 0.06, 0.06, 0.06},
	{KindCount, "2", 2, 2, 2},
	{KindCount, "0", 0, 0, 0},
	{KindCount, "4/2", 2, 2, 2},
	{KindCount, "10 ± 1", 10, 9, 11},
	{KindCount, "2 to 4", 3, 2, 4},
}

func TestParseForms(t *testing.T) {
	for _, row := range parseForms {
		got, err := ParseKind(row.kind, row.text)
		if err != nil {
			t.Errorf("%s %q: %v", row.kind, row.text, err)
			continue
		}
		want := Reading{Kind: row.kind, Nominal: row.nominal, Low: row.low, High: row.high, Written: row.text}
		if row.kind == KindAreaPerMass {
			got.Nominal, got.Low, got.High = to14(got.Nominal), to14(got.Low), to14(got.High)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s %q: %s", row.kind, row.text, diff)
		}
		if math.Signbit(got.Nominal) && got.Nominal == 0 {
			t.Errorf("%s %q gives -0", row.kind, row.text)
		}
	}
}

// to14 cuts a number to the 14 significant digits in which the table above
// writes what has no short decimal.
func to14(v float64) float64 {
	scale := math.Pow(10, 13-math.Floor(math.Log10(v)))
	return math.Round(v*scale) / scale
}

func TestParseTyped(t *testing.T) {
	got, err := Parse[Length]("1.32 m ± 2 cm")
	if err != nil {
		t.Fatal(err)
	}
	want := Value[Length]{Nominal: 1.32, Low: 1.3, High: 1.34, Written: "1.32 m ± 2 cm"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if got.Exact() {
		t.Error("a band is not exact")
	}
	if v, _ := Parse[Length]("1 m ± 0 mm"); !v.Exact() {
		t.Error("a tolerance of nothing is exact")
	}
	if v := Exactly(Area(2)); !v.Exact() || v.Nominal != 2 || v.Low != 2 || v.High != 2 || v.Written != "" {
		t.Errorf("Exactly: %+v", v)
	}
}

func TestParseReturnsNothingWithAnError(t *testing.T) {
	v, err := Parse[Temperature]("-300 degC")
	if err == nil || v != (Value[Temperature]{}) {
		t.Errorf("%+v, %v", v, err)
	}
}

func TestMustParsePanics(t *testing.T) {
	defer func() {
		said, _ := recover().(string)
		if !strings.Contains(said, `"1 kg"`) {
			t.Errorf("panicked with %q", said)
		}
	}()
	MustParse[Length]("1 kg")
	t.Error("no panic")
}

// refusedForms pairs refused texts with a piece of the reason and the whole
// suggestion.
var refusedForms = []struct {
	kind           Kind
	text, why, try string
}{
	{KindLength, "", "no number", ""},
	{KindLength, "m", "no number", ""},
	{KindLength, "1.32", "the unit is missing", ""},
	{KindLength, "1,32 m", "a comma", "1.32 m"},
	{KindLength, "1,200 mm", "a comma", ""},
	{KindLength, "1,200,000 mm", "a comma", ""},
	{KindLength, "1 200 mm", "not grouped", ""},
	{KindLength, "1\u202f200 mm", "not grouped", ""},
	{KindLength, "1e3 m", "power of ten", ""},
	{KindLength, "1.5E+3 m", "power of ten", ""},
	{KindLength, "1E-3 m", "power of ten", ""},
	{KindLength, `24"`, "write ft and in", "24 in"},
	{KindLength, `5' 10"`, "write ft and in", "5 ft 10 in"},
	{KindLength, `5′10 1/2″`, "write ft and in", "5 ft 10 1/2 in"},
	{KindLength, "5 ft 10", "the unit is missing", ""},
	{KindLength, "½ in", "with a stroke", "1/2 in"},
	{KindLength, "1½ in", "with a stroke", "1 1/2 in"},
	{KindLength, "1-1/2 in", "a dash", "1 1/2 in"},
	{KindLength, "1.30-1.34 m", "a dash", ""},
	{KindLength, "1.30–1.34 m", "a dash", ""},
	{KindLength, "1.30 to 1.34 m", "the unit is missing", "1.30 m to 1.34 m"},
	{KindLength, "1.32 ± 0.02 m", "the unit is missing", "1.32 m ± 0.02 m"},
	{KindLength, "1.34 m to 1.30 m", "runs backwards", "1.30 m to 1.34 m"},
	{KindLength, "1.30 m to1.34 m", `can't read "to1.34 m"`, ""},
	{KindLength, "1.30 m to 1.34 m to 1.5 m", "can't read", ""},
	{KindLength, "1.30 m to 1.34 m ± 1 cm", "can't read", ""},
	{KindLength, "1.32 m ± 2", "the unit is missing", ""},
	{KindLength, "1.32 m ± -2 cm", "no sign of its own", ""},
	{KindLength, "1.32 m ± +2 cm", "no sign of its own", ""},
	{KindLength, "1.32 m ± 2 cm ± 1 cm", "can't read", ""},
	{KindLength, "1.32 m ±", "no number", ""},
	{KindLength, "1.32 m x", `can't read "x"`, ""},
	{KindLength, "+-1 m", "no number", ""},
	{KindLength, "- 1 m", "no number", ""},
	{KindLength, "5. m", `"." is none of its units`, ""},
	{KindLength, "1.2.3 m", `".3" is none`, ""},
	{KindLength, "1/0 in", "below its stroke", ""},
	{KindLength, "1/08 in", "below its stroke", ""},
	{KindLength, "1 5/4 in", "smaller than one", ""},
	{KindLength, "1 4/4 in", "smaller than one", ""},
	{KindLength, "1.5/2 in", `"/2" is none`, ""},
	{KindLength, "1/", `"/" is none`, ""},
	{KindLength, "1 1/", "the unit is missing", ""},
	{KindLength, "1.", `"." is none`, ""},
	{KindLength, "1/in", `"/in" is none`, ""},
	{KindLength, "1/2/3 in", `"/3" is none`, ""},
	{KindLength, "12345/8 in", "too many digits", ""},
	{KindLength, "1/12345 in", "too many digits", ""},
	{KindLength, "1234567890123 mm", "too many digits", ""},
	{KindLength, "1.1234567890123 mm", "too many digits", ""},
	{KindLength, "1234567890123 1/2 mm", "too many digits", ""},
	{KindLength, "4 ft 12 in", "less than one", ""},
	{KindLength, "4 ft 6 cm", "go together", ""},
	{KindLength, "4 ft 6 ft", "go together", ""},
	{KindLength, "4.5 ft 6 in", "can't read", ""},
	{KindLength, "1/2 ft 6 in", "can't read", ""},
	{KindLength, "4 m 6 cm", "can't read", ""},
	{KindLength, "4 ft -6 in", "can't read", ""},
	{KindLength, "4 ft 1/0 in", "below its stroke", ""},
	{KindLength, "4 ft 6", "the unit is missing", ""},
	{KindLength, "6 in 4 ft", "can't read", ""},
	{KindLength, "3 inches", `"inches" is none`, "3 in"},
	{KindLength, "3 in.", `"in." is none`, "3 in"},
	{KindLength, "3 Feet 2 Inches", `"Feet" is none`, "3 ft 2 in"},
	{KindLength, "3 CM", `"CM" is none`, "3 cm"},
	{KindLength, "3 MM", "large and small letters", ""},
	{KindLength, "3 kg", "a unit of mass, not of length", ""},
	{KindLength, "3 cm2", "a unit of area, not of length", ""},
	{KindLength, "3\nm", "none of its units", "3 m"},
	{KindLength, "３ m", "no number", ""}, // a full-width digit
	{KindLength, "NaN m", "no number", ""},
	{KindLength, "Inf m", "no number", ""},
	{KindLength, "0x10 m", `"x10" is none`, ""},
	{KindLength, "\xff", "no number", ""},
	{KindLength, strings.Repeat(" ", 63) + "1 m", "longer than 64", ""},
	{KindArea, "9 sq in", "none of its units", "9 in2"},
	{KindArea, "9 in^2", "none of its units", "9 in2"},
	{KindVolume, "5 gal", "write galUS or galImp", ""},
	{KindVolume, "5 US gal", "none of its units", "5 galUS"},
	{KindVolume, "5 litres", "none of its units", "5 L"},
	{KindMass, "20 lbs", "none of its units", "20 lb"},
	{KindMass, "20 lb 16 oz", "less than one", ""},
	{KindGaugePressure, `11" wc`, "write ft and in", "11 inH2O"},
	{KindGaugePressure, "11 in wc", "a unit of length", "11 inH2O"},
	{KindGaugePressure, "11 inH20", "none of its units", "11 inH2O"},
	{KindGaugePressure, "11 in. w.c.", "none of its units", "11 inH2O"},
	{KindGaugePressure, "15 psia", "counts from vacuum", ""},
	{KindGaugePressure, "2 mPa", "large and small letters", ""},
	{KindAbsolutePressure, "15 psi", "write psia", ""},
	{KindAbsolutePressure, "15 psig", "write psia", ""},
	{KindAbsolutePressure, "-1 Pa", "below a vacuum", ""},
	{KindAbsolutePressure, "1 Pa ± 2 Pa", "below a vacuum", ""},
	{KindAbsolutePressure, "-1 Pa to 5 Pa", "below a vacuum", ""},
	{KindTemperature, "20 C", "none of its units", "20 degC"},
	{KindTemperature, "20 deg C", "a unit of angle", "20 degC"},
	{KindTemperature, "68F", "none of its units", "68 degF"},
	{KindTemperature, "-273.16 degC", "below absolute zero", ""},
	{KindTemperature, "-1 K", "below absolute zero", ""},
	{KindTemperature, "1 K ± 2 K", "below absolute zero", ""},
	{KindTemperature, "20 degC ± 5 %", "means nothing", ""},
	{KindPower, "3 mW", "large and small letters", ""},
	{KindPower, "3 kw", "none of its units", "3 kW"},
	{KindPower, "30000 BTU/hr", "none of its units", "30000 BTU/h"},
	{KindPower, "30000 btu/h", "none of its units", "30000 BTU/h"},
	{KindPower, "30000 BTU", "a unit of energy, not of power", ""},
	{KindPower, "30,000 BTU/h", "a comma", ""},
	{KindRatio, "70 % ± 0.05", "in the same way", ""},
	{KindRatio, "0.7 ± 5 %", "in the same way", ""},
	{KindRatio, "0.5 to 70 %", "in the same way", ""},
	{KindCount, "2.5", "only whole numbers", ""},
	{KindCount, "2 to 3", "only whole numbers", ""}, // its middle is no count
	{KindCount, "10 ± 5 %", "only whole numbers", ""},
	{KindCount, "-1", "below none at all", ""},
	{KindCount, "2 cylinders", "none of its units", ""},
	{KindRatio, "70 percent", "none of its units", "70 %"},
	{KindRatio, "0.5to 0.7", "can't read", ""},
	{KindDuration, "2 hours", "none of its units", "2 h"},
	{KindDuration, "2 years", "none of its units", ""},
	{KindDuration, "1 h 60 min", "less than one", ""},
	{KindAngle, "30°", "none of its units", "30 deg"},
}

func TestParseRefuses(t *testing.T) {
	for _, row := range refusedForms {
		_, err := ParseKind(row.kind, row.text)
		var refused *ParseError
		if !errors.As(err, &refused) {
			t.Errorf("%s %q: %v", row.kind, row.text, err)
			continue
		}
		if !strings.Contains(refused.Why, row.why) {
			t.Errorf("%s %q: why %q, want %q in it", row.kind, row.text, refused.Why, row.why)
		}
		if refused.Try != row.try {
			t.Errorf("%s %q: try %q, want %q", row.kind, row.text, refused.Try, row.try)
		}
		if refused.Kind != row.kind || refused.Text != row.text {
			t.Errorf("%s %q: error is about %s %q", row.kind, row.text, refused.Kind, refused.Text)
		}
	}
}

// A share of the value is a tolerance of every kind but the two where per cent
// would mean something else or nothing.
func TestTolerancesInPerCent(t *testing.T) {
	for _, k := range Kinds() {
		r, err := ParseKind(k, k.info().example+" ± 10 %")
		switch {
		case k == KindTemperature:
			if err == nil {
				t.Errorf("%s takes a share", k)
			}
		case err != nil:
			t.Errorf("%s: %v", k, err)
		case k == KindRatio:
			if r.Low != 0.6 || r.High != 0.8 {
				t.Errorf("%s: %+v", k, r)
			}
		default:
			if math.Abs(r.Low/r.Nominal-0.9) > 1e-15 || math.Abs(r.High/r.Nominal-1.1) > 1e-15 {
				t.Errorf("%s: %+v", k, r)
			}
		}
	}
}

func TestParseErrorInFull(t *testing.T) {
	_, err := Parse[Length]("1,32 m")
	want := `"1,32 m": a comma is taken neither for a decimal point nor for thousands: write a point, and no grouping; ` +
		`a length is written with mm, cm, m, in, ft, for example "1.32 m"; did you mean "1.32 m"?`
	if diff := cmp.Diff(want, err.Error()); diff != "" {
		t.Error(diff)
	}
	_, err = Parse[AbsolutePressure](strings.Repeat("é", 100))
	want = `"` + strings.Repeat("é", 64) + `…": longer than 64 characters; ` +
		`an absolute pressure is written with Pa, kPa, bar, mbar, psia, for example "101.3 kPa"`
	if diff := cmp.Diff(want, err.Error()); diff != "" {
		t.Error(diff)
	}
}

// Every refusal of every kind lists all the spellings and an example that is
// itself accepted.
func TestErrorsListSpellings(t *testing.T) {
	for _, k := range Kinds() {
		_, err := ParseKind(k, "12 furlongs")
		if err == nil {
			t.Fatalf("%s takes furlongs", k)
		}
		for _, part := range []string{k.Accepted(), k.info().example, `"furlongs"`} {
			if !strings.Contains(err.Error(), part) {
				t.Errorf("%s: %q is not in %q", k, part, err)
			}
		}
		if _, err := ParseKind(k, k.info().example); err != nil {
			t.Errorf("%s: the example is refused: %v", k, err)
		}
	}
}

// The longest and largest texts stay finite: bounded digits cannot overflow.
func TestLargestTexts(t *testing.T) {
	for _, k := range Kinds() {
		for _, s := range k.info().units {
			if k.info().whole {
				continue // a fraction of a thing is no count
			}
			for _, number := range []string{strings.Repeat("9", 12) + "." + strings.Repeat("9", 12), strings.Repeat("9", 12) + " 9998/9999", "0." + strings.Repeat("0", 11) + "1"} {
				r, err := ParseKind(k, withUnit(number, &s))
				if err != nil {
					t.Errorf("%s %s %s: %v", k, number, s.name, err)
				}
				if math.IsInf(r.Nominal, 0) || math.IsNaN(r.Nominal) || r.Nominal <= 0 {
					t.Errorf("%s %s %s = %v", k, number, s.name, r.Nominal)
				}
			}
		}
	}
}
