package pipe

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// The texts are the functions.
func TestCodeTexts(t *testing.T) {
	gas := CodePropane()
	power, bore, length := unit.GrossPower(20e3), unit.Length(0.0158), unit.Length(9.0)
	drop := must[unit.GaugePressure](t)(CodeDrop(gas, power, bore, length))
	symbols := map[string]float64{
		"P": float64(power), "P_0": float64(gas.Power), "V_0": float64(gas.Flow), "Cr": float64(gas.Cr), "Y": float64(gas.Y),
		"D": float64(bore), "L": float64(length), "dp": float64(drop), "p_1": 170e3,
	}
	symbols["V"] = evaluate(t, CodeFlowFormula, symbols)
	near(t, CodeFlowFormula, gas.flow(power), symbols["V"], 1e-15)
	near(t, CodeDropFormula, float64(drop), evaluate(t, CodeDropFormula, symbols), 1e-12)
	near(t, CodeBoreFormula, float64(bore), evaluate(t, CodeBoreFormula, symbols), 1e-12)
	near(t, CodeCapacityFormula, symbols["V"], evaluate(t, CodeCapacityFormula, symbols), 1e-12)

	outlet := must[unit.AbsolutePressure](t)(CodeHighOutlet(gas, power, bore, length, 170e3))
	symbols["p_2"] = float64(outlet)
	near(t, CodeHighOutletFormula, float64(outlet), evaluate(t, CodeHighOutletFormula, symbols), 1e-12)
	near(t, CodeHighBoreFormula, float64(bore), evaluate(t, CodeHighBoreFormula, symbols), 1e-9)
	near(t, CodeHighCapacityFormula, symbols["V"], evaluate(t, CodeHighCapacityFormula, symbols), 1e-9)
}

// The equation in its own units, worked by hand: ½ in steel, 60 ft, propane, 0.5 in.
// ΔH/(Cr·L) = 0.5/(1.2462·60) = 0.0066869; to the 0.206: 0.356491; 19.17·0.622·0.356491
// = 4.250673; to the 1/0.381: 44.6019 ft³/h, at 2470 BTU/ft³ 110 167 BTU/h; printed 110.
func TestCodeEquationByHand(t *testing.T) {
	load := must[unit.GrossPower](t)(CodeCapacity(CodePropane(), 0.622*inch, 60*foot, 0.5*inchOfWater))
	hand := math.Pow(19.17*0.622*math.Pow(0.5/(1.2462*60), 0.206), 1/0.381)
	near(t, "ft³/h", float64(load)/float64(CodePropane().Power), hand, 1e-12)
	near(t, "BTU/h", float64(load)/btuPerHour, 110167, 2e-4)
}

// One quantity written in either system of units is one quantity.
func TestCodeUnitTwins(t *testing.T) {
	parse := func(kind unit.Kind, text string) float64 {
		q, err := unit.ParseKind(kind, text)
		if err != nil {
			t.Fatal(err)
		}
		return q.Nominal
	}
	drop := func(power, bore, length string) float64 {
		return float64(must[unit.GaugePressure](t)(CodeDrop(CodePropane(), unit.GrossPower(parse(unit.KindGrossPower, power)),
			unit.Length(parse(unit.KindLength, bore)), unit.Length(parse(unit.KindLength, length)))))
	}
	near(t, "US and SI", drop("40000 BTU/h", "0.5 in", "10 ft"), drop("11.7228428069 kW", "12.7 mm", "3.048 m"), 1e-9)
	half := parse(unit.KindGaugePressure, "0.5 inH2O")
	near(t, "the inch of water of this package", 0.5*inchOfWater, half, 1e-9)
	near(t, "the psi of this package", psi, parse(unit.KindGaugePressure, "1 psi"), 1e-9)
	near(t, "the BTU/h of this package", btuPerHour, parse(unit.KindGrossPower, "1 BTU/h"), 1e-9)
	near(t, "the ft³/h of this package", footCubed, parse(unit.KindVolumeFlow, "1 ft3/h"), 1e-12)
}

// run is a run and a load of a dwelling, drawn at random.
type run struct {
	power  unit.GrossPower
	bore   unit.Length
	length unit.Length
}

func drawRun(t *rapid.T) run {
	return run{
		unit.GrossPower(math.Exp(rapid.Float64Range(math.Log(100), math.Log(1e5)).Draw(t, "log power"))),
		unit.Length(rapid.Float64Range(4e-3, 0.1).Draw(t, "bore")),
		unit.Length(rapid.Float64Range(0.1, 100).Draw(t, "length")),
	}
}

// Size → drop → size, and capacity → drop → capacity; both forms.
func TestCodeRoundTrips(t *testing.T) {
	gas := CodePropane()
	rapid.Check(t, func(t *rapid.T) {
		r := drawRun(t)
		drop, err := CodeDrop(gas, r.power, r.bore, r.length)
		if err != nil {
			t.Fatal(err)
		}
		if drop > leastDrop && drop < HighPressureFrom {
			bore, e1 := CodeBore(gas, r.power, r.length, drop)
			power, e2 := CodeCapacity(gas, r.bore, r.length, drop)
			if err := errors.Join(e1, e2); err != nil {
				t.Fatal(err)
			}
			if math.Abs(float64(bore/r.bore)-1) > 1e-9 || math.Abs(float64(power/r.power)-1) > 1e-9 {
				t.Fatalf("%+v loses %g Pa and comes back as %g m, %g W", r, float64(drop), float64(bore), float64(power))
			}
		}
		const inlet = 170e3
		outlet, err := CodeHighOutlet(gas, r.power, r.bore, r.length, inlet)
		var none *ExhaustedError
		if errors.As(err, &none) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if inlet-outlet > 1 {
			bore, e1 := CodeHighBore(gas, r.power, r.length, inlet, outlet)
			power, e2 := CodeHighCapacity(gas, r.bore, r.length, inlet, outlet)
			if err := errors.Join(e1, e2); err != nil {
				t.Fatal(err)
			}
			if math.Abs(float64(bore/r.bore)-1) > 1e-6 || math.Abs(float64(power/r.power)-1) > 1e-6 {
				t.Fatalf("%+v ends at %g Pa and comes back as %g m, %g W", r, float64(outlet), float64(bore), float64(power))
			}
		}
	})
}

// Longer, narrower or more flow never loses less.
func TestCodeDropIsMonotone(t *testing.T) {
	gas := CodePropane()
	rapid.Check(t, func(t *rapid.T) {
		r := drawRun(t)
		more := rapid.Float64Range(1, 3).Draw(t, "more")
		drop := func(r run) float64 {
			d, err := CodeDrop(gas, r.power, r.bore, r.length)
			if err != nil {
				t.Fatal(err)
			}
			return float64(d)
		}
		least := drop(r) * (1 - 1e-12)
		longer, fuller, narrower := r, r, r
		longer.length *= unit.Length(more)
		fuller.power *= unit.GrossPower(more)
		narrower.bore /= unit.Length(more)
		if drop(longer) < least || drop(fuller) < least || drop(narrower) < least {
			t.Fatalf("%+v: more loses less", r)
		}
		if math.Abs(drop(longer)/(least*more)-1) > 1e-9 {
			t.Fatalf("%+v: drop does not follow length", r)
		}
	})
}

func TestCodeNothing(t *testing.T) {
	gas := CodePropane()
	for _, c := range []run{{0, 0.01, 10}, {1000, 0.01, 0}, {0, 0.01, 0}} {
		if d, err := CodeDrop(gas, c.power, c.bore, c.length); d != 0 || err != nil {
			t.Errorf("%+v loses %g Pa, %v", c, float64(d), err)
		}
		if p, err := CodeHighOutlet(gas, c.power, c.bore, c.length, 170e3); p != 170e3 || err != nil {
			t.Errorf("%+v ends at %g Pa, %v", c, float64(p), err)
		}
	}
	if b, err := CodeBore(gas, 0, 10, 100); b != 0 || err != nil {
		t.Errorf("a load of 0 needs %g m, %v", float64(b), err)
	}
	if b, err := CodeHighBore(gas, 0, 10, 170e3, 160e3); b != 0 || err != nil {
		t.Errorf("a load of 0 needs %g m, %v", float64(b), err)
	}
}

func TestCodeRefuses(t *testing.T) {
	gas := CodePropane()
	for _, bad := range nonsense {
		for what, err := range map[string]error{
			"drop, power":       second(CodeDrop(gas, unit.GrossPower(bad), 0.01, 1)),
			"drop, bore":        second(CodeDrop(gas, 1, unit.Length(bad), 1)),
			"drop, length":      second(CodeDrop(gas, 1, 0.01, unit.Length(bad))),
			"drop, gas":         second(CodeDrop(CodeGas{unit.GrossPower(bad), 1, 1, 1}, 1, 0.01, 1)),
			"drop, flow of gas": second(CodeDrop(CodeGas{1, unit.VolumeFlow(bad), 1, 1}, 1, 0.01, 1)),
			"drop, Cr":          second(CodeDrop(CodeGas{1, 1, unit.Ratio(bad), 1}, 1, 0.01, 1)),
			"drop, Y":           second(CodeDrop(CodeGas{1, 1, 1, unit.Ratio(bad)}, 1, 0.01, 1)),
			"capacity, bore":    second(CodeCapacity(gas, unit.Length(bad), 1, 100)),
			"capacity, length":  second(CodeCapacity(gas, 0.01, unit.Length(bad), 100)),
			"capacity, drop":    second(CodeCapacity(gas, 0.01, 1, unit.GaugePressure(bad))),
			"bore, power":       second(CodeBore(gas, unit.GrossPower(bad), 1, 100)),
			"bore, drop":        second(CodeBore(gas, 1, 1, unit.GaugePressure(bad))),
			"outlet, inlet":     second(CodeHighOutlet(gas, 1, 0.01, 1, unit.AbsolutePressure(bad))),
			"outlet, power":     second(CodeHighOutlet(gas, unit.GrossPower(bad), 0.01, 1, 170e3)),
			"high capacity in":  second(CodeHighCapacity(gas, 0.01, 1, unit.AbsolutePressure(bad), 1e5)),
			"high capacity out": second(CodeHighCapacity(gas, 0.01, 1, 170e3, unit.AbsolutePressure(bad))),
			"high capacity D":   second(CodeHighCapacity(gas, unit.Length(bad), 1, 170e3, 160e3)),
			"high bore, length": second(CodeHighBore(gas, 1, unit.Length(bad), 170e3, 160e3)),
			"high bore, power":  second(CodeHighBore(gas, unit.GrossPower(bad), 1, 170e3, 160e3)),
		} {
			outOfRange(t, fmt.Sprint(what, " ", bad), err)
		}
	}
	outOfRange(t, "an outlet over the inlet", second(CodeHighCapacity(gas, 0.01, 1, 160e3, 170e3)))
	outOfRange(t, "no gas", second(CodeHighBore(CodeGas{}, 1, 1, 170e3, 160e3)))
	outOfRange(t, "no gas", second(CodeCapacity(CodeGas{}, 0.01, 1, 100)))
	var none *ExhaustedError
	if err := second(CodeHighOutlet(gas, 1e6, 5e-3, 100, 170e3)); !errors.As(err, &none) || none.Error() == "" {
		t.Errorf("error %v, want an ExhaustedError", err)
	}
}

func second[V any](_ V, err error) error { return err }
