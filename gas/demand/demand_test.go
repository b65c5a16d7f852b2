package demand

import (
	"errors"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

const (
	pound   = 0.45359237    // kg
	btu     = 1055.05585262 // J
	btuHour = btu / 3600    // W
	hour    = 3600.0        // s
)

// physical is this package's heating value in the trade's unit, BTU/lb.
var physical = float64(propane.GrossHeat) * pound / btu

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got/want-1) <= tolerance) {
		t.Errorf("%s: %.6g, want %.6g within %g", what, got, want, tolerance)
	}
}

// hours is a flat-out run time in hours, of pounds at thousands of BTU/h.
func hours(t testing.TB, pounds, kBTU float64) float64 {
	t.Helper()
	d, err := FlatOut(unit.Exactly(unit.PropaneMass(pounds*pound)), unit.Exactly(unit.GrossPower(kBTU*1e3*btuHour)))
	if err != nil {
		t.Fatal(err)
	}
	return float64(d.Nominal) / hour
}

// example finds the one published example of the topic whose inputs match.
func example(t testing.TB, topic, inputs string) physicstest.Row {
	t.Helper()
	var found []physicstest.Row
	for _, row := range physicstest.Published(t, "consumption_examples.csv") {
		if row["topic"] == topic && strings.Contains(row["inputs"], inputs) {
			found = append(found, row)
		}
	}
	if len(found) != 1 {
		t.Fatalf("%d published examples of %q", len(found), inputs)
	}
	return found[0]
}

// Rental shop guide: hours = 21 000 × lb / (BTU/h); 100 lb at 250 000 last 8.4 h,
// 20 lb at 35 000 last 12 h. Its round 21 000 BTU/lb is 3 % under the physical
// figure, and that is the whole difference.
func TestRunTimeAgainstTheRuleOf21000(t *testing.T) {
	row := example(t, "run time", "100 lb at 250000 BTU/h; 20 lb at 35000 BTU/h")
	if row["formula"] != "21000 x lb / BTU/h" || row["published_answer"] != "8.4 h; 12 h" {
		t.Fatalf("another example: %v", row)
	}
	convention := 21000 / physical
	near(t, "100 lb at 250 kBTU/h", hours(t, 100, 250)*convention, 8.4, 1e-6)
	near(t, "20 lb at 35 kBTU/h", hours(t, 20, 35)*convention, 12, 1e-6)
	near(t, "100 lb at 250 kBTU/h, physical", hours(t, 100, 250), 8.4, 0.031)
}

// How-to article: 20 lb hold 430 270 BTU and last "just under 11 h" at 40 000.
func TestRunTimeAgainstTheHowToArticle(t *testing.T) {
	row := example(t, "run time", "20 lb (430270 BTU) at 40000 BTU/h")
	if row["published_answer"] != "just under 11 h" {
		t.Fatalf("another example: %v", row)
	}
	got := hours(t, 20, 40)
	if got >= 11 || got < 10.7 {
		t.Errorf("20 lb at 40 kBTU/h last %.2f h, published just under 11", got)
	}
	near(t, "on its own heat content", got*430270/(20*physical), row.Number(t, "recomputed_here"), 0.0005)
}

// Motorhome manual 2004: a gallon, taken as 92 000 BTU, lasts 9.2 h at 10 000.
// A gallon at 60 °F holds 4.2285 lb.
func TestRunTimeAgainstTheMotorhomeManual(t *testing.T) {
	row := example(t, "run time", "1 gal (92000 BTU) at 10000 BTU/h")
	if row["published_answer"] != "9.2 h" {
		t.Fatalf("another example: %v", row)
	}
	got := hours(t, gallonPounds(t), 10)
	near(t, "1 gal at 10 kBTU/h", got, 9.2, 0.006)
	near(t, "on its own heat content", got*92000/(gallonPounds(t)*physical), 9.2, 1e-9)
}

// gallonPounds is the mass of a US gallon of liquid at 60 °F.
func gallonPounds(t testing.TB) float64 {
	t.Helper()
	for _, row := range physicstest.Published(t, "properties.csv") {
		if row["property"] == "liquid density at 60 F" && row["provenance"] == "computed-from-library" {
			return row.Number(t, "value")
		}
	}
	t.Fatal("the published density is gone")
	return 0
}

// Camper furnace article: 30 000 BTU/h burn 0.33 gal/h, and 1.32 gal in 8 h at
// half duty, at 91 500 BTU a gallon.
func TestConsumptionAgainstTheCamperArticle(t *testing.T) {
	row := example(t, "consumption", "30000 BTU/h at 50 % duty, 8 h")
	if row["published_answer"] != "0.33 gal/h running; 1.32 gal" {
		t.Fatalf("another example: %v", row)
	}
	input := unit.Exactly(unit.GrossPower(30e3 * btuHour))
	running := float64(Consumption(input).Nominal) * hour / pound / gallonPounds(t)
	near(t, "running", running, 0.33, 0.01)
	heat := Daily(Use{Input: input, Share: unit.Exactly[unit.Ratio](0.5), PerDay: unit.Exactly[unit.Duration](8 * hour)})
	night := float64(heat.Nominal) / float64(propane.GrossHeat) / pound / gallonPounds(t)
	near(t, "night", night, 1.32, 0.01)
}

// Published heat contents of cylinders: 0.3 to 0.6 % under the physical figure.
func TestHeatAgainstPublishedContents(t *testing.T) {
	content := regexp.MustCompile(`(\d{6}) ?(?:BTU|\()|BTU content (\d{6})`)
	compared := 0
	for _, row := range physicstest.Published(t, "cylinders.csv") {
		m := content.FindStringSubmatch(row["note"])
		if m == nil {
			continue
		}
		compared++
		published := physicstest.Row{"BTU": m[1] + m[2]}.Number(t, "BTU")
		got := float64(Heat(unit.Exactly(unit.PropaneMass(row.Number(t, "propane_lb")*pound))).Nominal) / btu
		if over := got/published - 1; over < 0.002 || over > 0.006 {
			t.Errorf("%s (%s): %.0f BTU, %.2f %% over the published %.0f", row["name"], row["source"], got, over*100, published)
		}
	}
	if compared != 4 {
		t.Errorf("%d contents compared, want 4", compared)
	}
}

// Published heating values by mass: the physical figure is over all of them, by
// no more than 0.5 %.
func TestHeatAgainstPublishedHeatingValues(t *testing.T) {
	compared := 0
	for _, row := range physicstest.Published(t, "properties.csv") {
		if row["property"] != "higher heating value" || row["unit"] != "BTU/lb" {
			continue
		}
		compared++
		got := float64(Heat(unit.Exactly(unit.PropaneMass(pound))).Nominal) / btu
		if over := got/row.Number(t, "value") - 1; over < 0 || over > 0.005 {
			t.Errorf("%s: %.0f BTU/lb against %s", row["source"], got, row["value"])
		}
	}
	if compared != 3 {
		t.Errorf("%d values compared, want 3", compared)
	}
}

// Regulator seller's example: hob 465, heater 500, fridge 35, oven 175 g/h make
// 1175 g/h.
func TestConnectedAgainstTheLoadExample(t *testing.T) {
	rows := physicstest.Published(t, "load_example.csv")
	if len(rows) != 1 || rows[0]["value"] != "465 + 500 + 35 + 175 = 1175" || rows[0]["unit"] != "g/h" {
		t.Fatalf("another example: %v", rows)
	}
	var inputs []unit.Value[unit.GrossPower]
	for _, grams := range []float64{465, 500, 35, 175} {
		inputs = append(inputs, FromConsumption(unit.Exactly(unit.MassFlow(grams*1e-3/hour))))
	}
	total := Consumption(Connected(inputs...))
	near(t, "sum", float64(total.Nominal)*hour*1e3, 1175, 1e-9)
}

func TestConversions(t *testing.T) {
	gross := FromNet(unit.Exactly[unit.NetPower](4200))
	near(t, "4.2 kW net is gross", float64(gross.Nominal), 4200/0.9207, 1e-4)
	near(t, "unlabelled taken as net", float64(FromNet(unit.Exactly[unit.NetPower](1)).Nominal), 1.0862, 1e-4)
	near(t, "1 kg/h", float64(FromConsumption(unit.Exactly(unit.MassFlow(1/hour))).Nominal), 13980, 1e-4)
	near(t, "8000 BTU/h in g/h", float64(Consumption(unit.Exactly(unit.GrossPower(8000*btuHour))).Nominal)*hour*1e3, 8000/physical*pound*1e3, 1e-9)
}

func TestConnectedNothing(t *testing.T) {
	if diff := cmp.Diff(unit.Value[unit.GrossPower]{}, Connected()); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(unit.Value[unit.Energy]{}, Daily()); diff != "" {
		t.Error(diff)
	}
}

// A pattern worked by hand: 2.34 kW for 1 h at full flame, 3.5 kW for 6 h at 40 %,
// 120 W all day. E = 8.424 + 30.24 + 10.368 MJ; 9 kg hold 452.94 MJ.
func TestDaysByPattern(t *testing.T) {
	daily := Daily(
		Use{unit.Exactly[unit.GrossPower](2340), unit.Exactly[unit.Ratio](1), unit.Exactly[unit.Duration](hour)},
		Use{unit.Exactly[unit.GrossPower](3500), unit.Exactly[unit.Ratio](0.4), unit.Exactly[unit.Duration](6 * hour)},
		Use{unit.Exactly[unit.GrossPower](120), unit.Exactly[unit.Ratio](1), unit.Exactly[unit.Duration](day)},
	)
	near(t, "heat of a day", float64(daily.Nominal), 49.032e6, 1e-9)
	run, err := RunTime(unit.Exactly[unit.PropaneMass](9), daily)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "days", float64(run.Nominal)/day, 9.2377, 1e-4)
	if got := SwapDays(run); got != 9 {
		t.Errorf("swap after %d days, want 9", got)
	}
}

func TestSwapDays(t *testing.T) {
	for _, c := range []struct {
		low  float64
		want int
	}{
		{0, 0}, {86399, 0}, {86400, 1}, {172799, 1}, {172800, 2}, {9.99 * day, 9},
		{-1, 0}, {math.NaN(), 0}, {math.Inf(1), 0}, {math.Inf(-1), 0}, {365_000 * day, 365_000}, {365_001 * day, 0}, {1e300, 0},
	} {
		run := unit.Value[unit.Duration]{Low: unit.Duration(c.low), Nominal: 1e9, High: 1e9}
		if got := SwapDays(run); got != c.want {
			t.Errorf("a least run time of %g s gives %d days, want %d", c.low, got, c.want)
		}
	}
}

func TestNoLoad(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	mass := unit.Exactly[unit.PropaneMass](9)
	for _, low := range []float64{0, -5, nan, 5e-324, inf * 0} {
		load := unit.Value[unit.GrossPower]{Low: unit.GrossPower(low), Nominal: 100, High: 200}
		_, err := FlatOut(mass, load)
		var none *NoLoadError
		if !errors.As(err, &none) || !strings.Contains(err.Error(), "the load") {
			t.Errorf("least load %g: error %v, want a NoLoadError", low, err)
		}
		_, err = RunTime(mass, unit.Value[unit.Energy]{Low: unit.Energy(low), Nominal: 100, High: 200})
		if !errors.As(err, &none) || !strings.Contains(err.Error(), "in a day") {
			t.Errorf("least heat %g: error %v, want a NoLoadError", low, err)
		}
	}
	if _, err := FlatOut(unit.Exactly(unit.PropaneMass(nan)), unit.Exactly[unit.GrossPower](100)); err == nil {
		t.Error("a run time of an undefined mass")
	}
	empty, err := FlatOut(unit.Exactly[unit.PropaneMass](0), unit.Exactly[unit.GrossPower](100))
	if err != nil || empty.High != 0 {
		t.Errorf("an empty cylinder lasts %v, %v", empty, err)
	}
}

// band draws a value with a band and a point inside it.
func band[Q unit.Quantity](t *rapid.T, name string, most float64) (v unit.Value[Q], inside Q) {
	low := rapid.Float64Range(most/1e6, most/2).Draw(t, name+" low")
	high := rapid.Float64Range(low, most).Draw(t, name+" high")
	v = unit.Value[Q]{Low: Q(low), Nominal: Q(low + (high-low)/2), High: Q(high)}
	return v, Q(rapid.Float64Range(low, high).Draw(t, name))
}

// holds tells whether q lies in the band, give or take rounding.
func holds[Q unit.Quantity](v unit.Value[Q], q Q) bool {
	slack := 1e-12 * math.Abs(float64(q))
	return v.Low <= v.Nominal && v.Nominal <= v.High && float64(v.Low) <= float64(q)+slack && float64(q) <= float64(v.High)+slack
}

// Whatever the inputs are inside their bands, the result is inside its band.
func TestBandsHoldEveryCase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mass, m := band[unit.PropaneMass](t, "mass", 50)
		input, p := band[unit.GrossPower](t, "input", 2e4)
		share, s := band[unit.Ratio](t, "share", 1)
		perDay, d := band[unit.Duration](t, "per day", day)
		other, q := band[unit.GrossPower](t, "other", 2e4)
		if !holds(Connected(input, other), p+q) {
			t.Fatal("connected")
		}
		if !holds(Heat(mass), Heat(unit.Exactly(m)).Nominal) {
			t.Fatal("heat")
		}
		flat, err := FlatOut(mass, input)
		one, err2 := FlatOut(unit.Exactly(m), unit.Exactly(p))
		if err != nil || err2 != nil || !holds(flat, one.Nominal) {
			t.Fatal("flat out", err, err2)
		}
		uses := Daily(Use{input, share, perDay}, Use{other, share, perDay})
		single := Daily(Use{unit.Exactly(p), unit.Exactly(s), unit.Exactly(d)}, Use{unit.Exactly(q), unit.Exactly(s), unit.Exactly(d)})
		if !holds(uses, single.Nominal) {
			t.Fatal("daily")
		}
		run, err := RunTime(mass, uses)
		exact, err2 := RunTime(unit.Exactly(m), single)
		if err != nil || err2 != nil || !holds(run, exact.Nominal) {
			t.Fatal("run time", err, err2)
		}
		if days := float64(SwapDays(run)) * day; days > float64(exact.Nominal)*(1+1e-12) {
			t.Fatalf("swap after %g s, empty after %g s", days, float64(exact.Nominal))
		}
	})
}

func TestConversionsAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		input, p := band[unit.GrossPower](t, "input", 2e4)
		if back := FromNet(ToNet(input)); !holds(back, p) {
			t.Fatalf("gross → net → gross: %v → %v", input, back)
		}
		back := FromConsumption(Consumption(input))
		for _, pair := range [][2]unit.GrossPower{{back.Low, input.Low}, {back.Nominal, input.Nominal}, {back.High, input.High}} {
			if math.Abs(float64(pair[0])/float64(pair[1])-1) > 1e-12 {
				t.Fatalf("gross → kg/s → gross: %v → %v", input, back)
			}
		}
		if net := ToNet(input); net.High >= unit.NetPower(input.High) {
			t.Fatal("net is not less than gross")
		}
	})
}

// A day of one use at full flame all day is the flat-out run time.
func TestPatternMeetsFlatOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, m := band[unit.PropaneMass](t, "mass", 50)
		_, p := band[unit.GrossPower](t, "input", 2e4)
		flat, err := FlatOut(unit.Exactly(m), unit.Exactly(p))
		if err != nil {
			t.Fatal(err)
		}
		all := Daily(Use{unit.Exactly(p), unit.Exactly[unit.Ratio](1), unit.Exactly[unit.Duration](day)})
		run, err := RunTime(unit.Exactly(m), all)
		if err != nil || math.Abs(float64(run.Nominal)/float64(flat.Nominal)-1) > 1e-12 {
			t.Fatalf("%g s flat out, %g s by pattern, %v", float64(flat.Nominal), float64(run.Nominal), err)
		}
	})
}

func TestFormulaTexts(t *testing.T) {
	const m, p1, p2, s, on, flow, net = 9.07, 2340.0, 3500.0, 0.4, 7200.0, 6e-5, 4200.0
	exactP := unit.Exactly[unit.GrossPower](p1)
	mass := unit.Exactly[unit.PropaneMass](m)
	daily := Daily(Use{exactP, unit.Exactly[unit.Ratio](s), unit.Exactly[unit.Duration](on)})
	flat, err := FlatOut(mass, exactP)
	if err != nil {
		t.Fatal(err)
	}
	run, err := RunTime(mass, daily)
	if err != nil {
		t.Fatal(err)
	}
	symbols := map[string]float64{
		"m": m, "P": p1, "P_1": p1, "P_2": p2, "s": s, "t_use": on, "m_flow": flow, "P_net": net,
		"H": float64(propane.GrossHeat), "H_net": float64(propane.NetHeat), "E_day": float64(daily.Nominal),
	}
	for _, c := range []struct {
		text, symbol string
		want         float64
	}{
		{ConnectedFormula, "P", float64(Connected(exactP, unit.Exactly[unit.GrossPower](p2)).Nominal)},
		{HeatFormula, "E", float64(Heat(mass).Nominal)},
		{FlatOutFormula, "t", float64(flat.Nominal)},
		{UseFormula, "E_day", float64(daily.Nominal)},
		{RunTimeFormula, "t_run", float64(run.Nominal)},
		{ConsumptionFormula, "m_flow", float64(Consumption(exactP).Nominal)},
		{PowerFormula, "P", float64(FromConsumption(unit.Exactly[unit.MassFlow](flow)).Nominal)},
		{GrossFormula, "P", float64(FromNet(unit.Exactly[unit.NetPower](net)).Nominal)},
		{NetFormula, "P_net", float64(ToNet(exactP).Nominal)},
	} {
		symbol, value, err := physicstest.Evaluate(c.text, symbols)
		if err != nil || symbol != c.symbol || math.Abs(value/c.want-1) > 1e-12 {
			t.Errorf("%s: %s = %.12g, %v; the function gives %.12g", c.text, symbol, value, err, c.want)
		}
	}
}

func BenchmarkRunTime(b *testing.B) {
	mass := unit.Exactly[unit.PropaneMass](9)
	use := Use{unit.Exactly[unit.GrossPower](2340), unit.Exactly[unit.Ratio](1), unit.Exactly[unit.Duration](hour)}
	for b.Loop() {
		if _, err := RunTime(mass, Daily(use, use, use)); err != nil {
			b.Fatal(err)
		}
	}
}
