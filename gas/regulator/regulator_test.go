package regulator

import (
	"math"
	"slices"
	"strings"
	"testing"

	"lowvent.example/gas/air"
	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

const (
	celsius = 273.15
	sea     = 101325.0
	hour    = 3600.0
)

// comparison gathers the differences from one set of published figures.
type comparison struct {
	name, unit string
	off        []float64
}

func (c *comparison) add(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	off := math.Abs(got - want)
	c.off = append(c.off, off)
	if !(off <= tolerance) {
		t.Errorf("%s, %s: %.6g, published %.6g, allowed %.2g", c.name, what, got, want, tolerance)
	}
}

func (c *comparison) log(t testing.TB) {
	slices.Sort(c.off)
	t.Logf("%s: %d rows, worst %.3g %s, median %.3g %s", c.name, len(c.off), c.off[len(c.off)-1], c.unit, c.off[len(c.off)/2], c.unit)
}

// got turns a result that must succeed into a plain number.
func got[Q unit.Quantity](t testing.TB) func(Q, error) float64 {
	return func(q Q, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return float64(q)
	}
}

func published(t testing.TB, item string) physicstest.Row {
	t.Helper()
	for _, row := range physicstest.Table(t, "regulators.csv") {
		if row["item"] == item && row["provenance"] == "read" {
			return row
		}
	}
	t.Fatalf("no row %q was read", item)
	return nil
}

// The ratings, ranges and limits are those of the table of regulators (UL 144
// extracts; scope of prEN 16129).
func TestFiguresArePublished(t *testing.T) {
	c := comparison{name: "ratings and limits of UL 144 and EN 16129", unit: "psi, bar or °C"}
	number := func(item, cut string) float64 {
		row := published(t, item)
		return physicstest.Row{"n": strings.TrimPrefix(row["value"], cut)}.Number(t, "n")
	}
	ratings, ambients, reliefs := Ratings(), Ambients(), Reliefs()
	c.add(t, "first stage", float64(ratings[0].Inlet)/psi, number("max inlet rating, first stage/single/integral", ">="), 1e-9)
	c.add(t, "second stage", float64(ratings[1].Inlet)/psi, number("max inlet rating, second stage or 2 psi service", ""), 1e-9)
	supply := strings.Fields(published(t, "EN 16129 max supply pressure")["value"]) // 7.5 butane / 16 propane
	c.add(t, "propane", float64(ratings[2].Inlet)/1e5, physicstest.Row{"n": supply[3]}.Number(t, "n"), 1e-9)
	c.add(t, "butane", float64(ratings[3].Inlet)/1e5, physicstest.Row{"n": supply[0]}.Number(t, "n"), 1e-9)
	for i, item := range []string{"ambient range", "EN 16129 temperature"} {
		ends := strings.Split(published(t, item)["value"], " to ")
		c.add(t, item, float64(ambients[i].Low)-celsius, physicstest.Row{"n": ends[0]}.Number(t, "n"), 1e-9)
		c.add(t, item, float64(ambients[i].High)-celsius, physicstest.Row{"n": ends[1]}.Number(t, "n"), 1e-9)
	}
	limits := map[string]float64{}
	for _, row := range physicstest.Table(t, "regulators.csv") {
		if row["item"] == "Type II relief limits outlet to" {
			limits[row["note"]] = row.Number(t, "value")
		}
	}
	c.add(t, "relief", float64(reliefs[0].Limit)/psi, limits["second stage, integral two-stage, changeover when part of two-stage system"], 1e-9)
	c.add(t, "relief, 2 psi service", float64(reliefs[1].Limit)/psi, limits["2 psi service regulators"], 1e-9)
	c.log(t)
	for _, s := range []Source{ratings[0].Source, ratings[2].Source, ambients[1].Source, reliefs[1].Source} {
		if s.Document == "" || !slices.ContainsFunc(physicstest.Table(t, "regulators.csv"), func(r physicstest.Row) bool { return r["address"] == s.Address }) {
			t.Errorf("%+v is not in the table", s)
		}
	}
}

// Pure propane passes 16 bar at 49.7 °C and 250 psig at 52.9 °C (computed elsewhere
// from the full equation of state).
func TestRatingsPassed(t *testing.T) {
	c := comparison{name: "temperature at which a rating is passed", unit: "K"}
	for _, row := range []struct {
		rating unit.GaugePressure
		pure   float64
	}{{16e5, 49.7}, {250 * psi, 52.9}} {
		passed, err := RatingPassed(row.rating, sea)
		if err != nil {
			t.Fatal(err)
		}
		c.add(t, "pure propane", float64(passed.Pure)-celsius, row.pure, 0.06)
		if sooner := float64(passed.Pure - passed.Ceiling); sooner < 6 || sooner > 8 {
			t.Errorf("%g Pa: the ceiling passes %g K sooner", float64(row.rating), sooner)
		}
	}
	c.log(t)
}

// 41 °C in the shade and 15 K in a dark locker pass both ratings, with pure propane
// already; without the sun 41 °C passes neither.
func TestHotLocker(t *testing.T) {
	hot, err := HotInlet(41+celsius, 15, sea)
	if err != nil {
		t.Fatal(err)
	}
	shade, err := HotInlet(41+celsius, 0, sea)
	if err != nil {
		t.Fatal(err)
	}
	for _, rating := range []unit.GaugePressure{16e5, 250 * psi} {
		if !(hot.Pure > rating && hot.Ceiling > hot.Pure && shade.Ceiling < rating) {
			t.Errorf("%g Pa: hot %+v, in the shade %+v", float64(rating), hot, shade)
		}
	}
	if math.Abs(float64(hot.Temperature)-(56+celsius)) > 1e-9 {
		t.Errorf("%g K", float64(hot.Temperature))
	}
}

// Gauge pressures of the saturation table: 1.4, 9.7, 20.8, 35.4 and 54.1 psig at
// −40 to 0 °C, with 14.696 psi of air.
func TestColdInletAgainstTheTable(t *testing.T) {
	c := comparison{name: "cold inlet by the saturation table", unit: "psi"}
	for _, row := range []struct{ celsius, psig float64 }{{-40, 1.4}, {-30, 9.7}, {-20, 20.8}, {-10, 35.4}, {0, 54.1}} {
		cold := got[unit.GaugePressure](t)(ColdInlet(unit.Temperature(row.celsius+celsius), 1, sea))
		c.add(t, "gauge", cold/psi, row.psig, 0.06)
	}
	for _, row := range physicstest.Published(t, "saturation.csv") {
		cold := got[unit.GaugePressure](t)(ColdInlet(unit.Temperature(row.Number(t, "t_C")+celsius), 1, sea))
		c.add(t, row["t_C"], cold/psi, (row.Number(t, "p_sat_kPa_abs")*1e3-sea)/psi, 0.05)
	}
	c.log(t)
}

// Higher up the same cylinder shows more, and a rating is passed sooner: 1500 m add
// 16.8 kPa.
func TestHeight(t *testing.T) {
	up, err := air.Pressure(1500)
	if err != nil {
		t.Fatal(err)
	}
	low := got[unit.GaugePressure](t)(ColdInlet(263.15, 1, sea))
	high := got[unit.GaugePressure](t)(ColdInlet(263.15, 1, up))
	if math.Abs(high-low-16.8e3) > 50 {
		t.Errorf("%g Pa more", high-low)
	}
	at, err := RatingPassed(250*psi, up)
	down, err2 := RatingPassed(250*psi, sea)
	if err != nil || err2 != nil || at.Pure >= down.Pure || at.Ceiling >= down.Ceiling {
		t.Errorf("%+v up, %+v down, %v %v", at, down, err, err2)
	}
}

func plate() Plate { return Plate{Capacity: 1.5 / hour, Least: 50e3, Outlet: 3e3} }

// The plate holds at its least inlet and above, nothing comes from an inlet that is
// no higher than the outlet, and in between the estimate is the choked flow of the
// same seat with the denser cold gas, worked out here from the saturation table's
// own densities.
func TestCapacityInTheCold(t *testing.T) {
	r := plate()
	for _, c := range []struct{ inlet, want float64 }{{50e3, 1.5}, {800e3, 1.5}, {3e3, 0}, {2e3, 0}, {-5e3, 0}} {
		if kg := hour * got[unit.MassFlow](t)(r.PassedAt(unit.GaugePressure(c.inlet), sea)); math.Abs(kg-c.want) > 1e-12 {
			t.Errorf("at %g Pa %g kg/h, want %g", c.inlet, kg, c.want)
		}
	}
	// −40 °C: 111.12 kPa and 2.633 kg/m³ (saturation.csv). Gas at 15 °C and 151.3 kPa
	// has 2.870 kg/m³ (ideal 2.785 with Z 0.970).
	row := physicstest.Published(t, "saturation.csv")[0]
	p, rho := row.Number(t, "p_sat_kPa_abs")*1e3, row.Number(t, "rho_vap_kg_m3")
	want := 1.5 * math.Sqrt(p*rho/((sea+50e3)*2.870))
	kg := hour * got[unit.MassFlow](t)(r.PassedAt(unit.GaugePressure(p-sea), sea))
	if math.Abs(kg/want-1) > 0.005 || kg >= 1.5 {
		t.Errorf("%.4f kg/h at −40 °C, by the table %.4f", kg, want)
	}
}

func TestCapacityFollows(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		outlet := rapid.Float64Range(1e3, 5e3).Draw(rt, "outlet")
		r := Plate{Capacity: 1e-3, Outlet: unit.GaugePressure(outlet), Least: unit.GaugePressure(outlet + rapid.Float64Range(1e3, 3e5).Draw(rt, "least"))}
		p := unit.AbsolutePressure(rapid.Float64Range(6e4, 1.1e5).Draw(rt, "air"))
		a := rapid.Float64Range(-2e4, 1e6).Draw(rt, "a")
		b := rapid.Float64Range(-2e4, 1e6).Draw(rt, "b")
		at := func(x float64) float64 { return got[unit.MassFlow](t)(r.PassedAt(unit.GaugePressure(x), p)) }
		if low, high := at(min(a, b)), at(max(a, b)); low > high || high > float64(r.Capacity) || low < 0 {
			rt.Fatalf("%g kg/s at the lower, %g at the higher inlet", low, high)
		}
		if just := at(float64(r.Least) - 1e-6); math.Abs(just/float64(r.Capacity)-1) > 1e-6 {
			rt.Fatalf("just below the least inlet %g of %g", just, float64(r.Capacity))
		}
	})
}

// Choked flow of one seat at both inlets: the estimate never lies under the flow
// that one-dimensional gas dynamics has for a seat that is not choked any more.
func TestCapacityErrsHigh(t *testing.T) {
	flux := func(p, rho, behind float64) float64 {
		const g = 1.13
		x := min(1, max(behind/p, math.Pow(2/(g+1), g/(g-1))))
		return math.Sqrt(2 * g / (g - 1) * p * rho * (math.Pow(x, 2/g) - math.Pow(x, (g+1)/g)))
	}
	r := plate()
	warm, err := propane.VapourAt(testPoint, sea+50e3)
	if err != nil {
		t.Fatal(err)
	}
	for inlet := 4e3; inlet < 50e3; inlet += 2e3 {
		rho, err := saturated(unit.AbsolutePressure(sea + inlet))
		if err != nil {
			t.Fatal(err)
		}
		behind := sea + 3e3
		real := 1.5 * flux(sea+inlet, float64(rho), behind) / flux(sea+50e3, float64(warm.Density), behind)
		if kg := hour * got[unit.MassFlow](t)(r.PassedAt(unit.GaugePressure(inlet), sea)); kg < min(1.5, real) {
			t.Errorf("at %g Pa the estimate is %.4f kg/h, an open seat passes %.4f", inlet, kg, real)
		}
	}
}

// Where the inlet lies under the coldest saturation pressure that is known, the
// density goes on without a jump.
func TestThinInlet(t *testing.T) {
	coldest := got[unit.AbsolutePressure](t)(propane.SaturationPressure(propane.LeastTemperature))
	below := got[unit.Density](t)(saturated(unit.AbsolutePressure(coldest * (1 - 1e-9))))
	above := got[unit.Density](t)(saturated(unit.AbsolutePressure(coldest * (1 + 1e-9))))
	if math.Abs(below/above-1) > 1e-6 {
		t.Errorf("%g below, %g above", below, above)
	}
	r := plate()
	if kg := hour * got[unit.MassFlow](t)(r.PassedAt(10e3, 70e3)); !(kg > 0 && kg < 1.5) {
		t.Errorf("%g kg/h high up in the cold", kg)
	}
}

func TestFailed(t *testing.T) {
	for _, c := range []struct {
		inlet   float64
		reliefs []unit.GaugePressure
		want    float64
	}{
		{8e5, nil, 8e5}, {8e5, []unit.GaugePressure{2 * psi}, 2 * psi}, {8e5, []unit.GaugePressure{5 * psi, 2 * psi}, 2 * psi},
		{1e4, []unit.GaugePressure{2 * psi}, 1e4}, {0, nil, 0},
	} {
		if behind := got[unit.GaugePressure](t)(Failed(unit.GaugePressure(c.inlet), c.reliefs...)); behind != c.want {
			t.Errorf("%v: %g Pa behind", c, behind)
		}
	}
}

func TestRatingAndPressureAreInverse(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		T := rapid.Float64Range(-20+celsius, 60+celsius).Draw(rt, "T")
		p := unit.AbsolutePressure(rapid.Float64Range(6e4, 1.1e5).Draw(rt, "air"))
		hot, err := HotInlet(unit.Temperature(T), 0, p)
		if err != nil {
			rt.Fatal(err)
		}
		pure, err := RatingPassed(hot.Pure, p)
		ceiling, err2 := RatingPassed(hot.Ceiling, p)
		if err != nil || err2 != nil || math.Abs(float64(pure.Pure)-T) > 3e-6 || math.Abs(float64(ceiling.Ceiling)-T) > 3e-6 {
			rt.Fatalf("%g K → %+v → %+v, %+v, %v %v", T, hot, pure, ceiling, err, err2)
		}
		cold := got[unit.GaugePressure](t)(ColdInlet(unit.Temperature(T), 1, p))
		if math.Abs(cold-float64(hot.Pure)) > 1e-6 {
			rt.Fatalf("pure propane is %g Pa cold and %g Pa hot", cold, float64(hot.Pure))
		}
		x := rapid.Float64Range(0, 0.99).Draw(rt, "share")
		if mixed := got[unit.GaugePressure](t)(ColdInlet(unit.Temperature(T), unit.Ratio(x), p)); mixed >= cold {
			rt.Fatal("butane raises the pressure")
		}
	})
}

func TestTexts(t *testing.T) {
	const inlet, least = 20e3, 50e3
	rho := got[unit.Density](t)(saturated(sea + inlet))
	warm, err := propane.VapourAt(testPoint, sea+least)
	if err != nil {
		t.Fatal(err)
	}
	hot, err := HotInlet(314.15, 15, sea)
	if err != nil {
		t.Fatal(err)
	}
	symbols := map[string]float64{
		"p_gas": got[unit.AbsolutePressure](t)(propane.SaturationPressure(263.15)), "p_air": sea,
		"T_shade": 314.15, "dT_sun": 15, "m_plate": 1.5 / hour, "p": sea + inlet, "rho": rho,
		"p_least": sea + least, "rho_least": float64(warm.Density), "p_inlet": 8e5, "p_relief": 2 * psi,
	}
	for _, k := range []struct {
		text, symbol string
		want         float64
	}{
		{GaugeFormula, "p_gauge", got[unit.GaugePressure](t)(ColdInlet(263.15, 1, sea))},
		{HottestFormula, "T", float64(hot.Temperature)},
		{CapacityFormula, "m_flow", got[unit.MassFlow](t)(plate().PassedAt(inlet, sea))},
		{FailedFormula, "p_failed", got[unit.GaugePressure](t)(Failed(8e5, 2*psi))},
	} {
		symbol, value, err := physicstest.Evaluate(k.text, symbols)
		if err != nil || symbol != k.symbol || math.Abs(value/k.want-1) > 1e-12 {
			t.Errorf("%s: %s = %.12g, %v; want %.12g", k.text, symbol, value, err, k.want)
		}
	}
}

// refusal is one function of one plain number, of which the bad ones are refused.
type refusal struct {
	name string
	f    func(float64) (float64, error)
	good float64
	bad  []float64
}

func TestRefusals(t *testing.T) {
	passed := func(change func(*Plate, float64)) func(float64) (float64, error) {
		return func(x float64) (float64, error) {
			r := plate()
			change(&r, x)
			m, err := r.PassedAt(20e3, sea)
			return float64(m), err
		}
	}
	for _, c := range []refusal{
		{"cold temperature", func(x float64) (float64, error) {
			p, err := ColdInlet(unit.Temperature(x), 1, sea)
			return float64(p), err
		}, 263.15, []float64{0, 228, 344}},
		{"share", func(x float64) (float64, error) {
			p, err := ColdInlet(263.15, unit.Ratio(x), sea)
			return float64(p), err
		}, 0.5, []float64{-0.1, 1.1}},
		{"cold air", func(x float64) (float64, error) {
			p, err := ColdInlet(263.15, 1, unit.AbsolutePressure(x))
			return float64(p), err
		}, 8e4, []float64{0, 3e4, 2e5}},
		{"shade", func(x float64) (float64, error) {
			h, err := HotInlet(unit.Temperature(x), 15, sea)
			return float64(h.Pure), err
		}, 314.15, []float64{0, 200, 330}},
		{"sun", func(x float64) (float64, error) {
			h, err := HotInlet(300, unit.TemperatureDifference(x), sea)
			return float64(h.Pure), err
		}, 0, []float64{-1, 61}},
		{"hot air", func(x float64) (float64, error) {
			h, err := HotInlet(300, 0, unit.AbsolutePressure(x))
			return float64(h.Pure), err
		}, 8e4, []float64{0, 3e4, 2e5}},
		{"rating", func(x float64) (float64, error) {
			p, err := RatingPassed(unit.GaugePressure(x), sea)
			return float64(p.Pure), err
		}, 1e6, []float64{-2e4, -1e5, 3e6}},
		{"rating below the ceiling's range", func(x float64) (float64, error) {
			p, err := RatingPassed(unit.GaugePressure(x), 9e4)
			return float64(p.Pure), err
		}, 2e4, []float64{1e3}},
		{"rating air", func(x float64) (float64, error) {
			p, err := RatingPassed(1e6, unit.AbsolutePressure(x))
			return float64(p.Pure), err
		}, 8e4, []float64{0, 3e4, 2e5}},
		{"capacity", passed(func(r *Plate, x float64) { r.Capacity = unit.MassFlow(x) }), 1e-4, []float64{0, -1, 11}},
		{"least inlet", passed(func(r *Plate, x float64) { r.Least = unit.GaugePressure(x) }), 5e4, []float64{0, 3e3, -1, 7e5}},
		{"outlet", passed(func(r *Plate, x float64) { r.Outlet = unit.GaugePressure(x) }), 0, []float64{-1, 5e4, 7e5}},
		{"inlet", func(x float64) (float64, error) {
			m, err := plate().PassedAt(unit.GaugePressure(x), sea)
			return float64(m), err
		}, 0, []float64{-2e5, 4e6}},
		{"inlet air", func(x float64) (float64, error) {
			m, err := plate().PassedAt(2e4, unit.AbsolutePressure(x))
			return float64(m), err
		}, 8e4, []float64{0, 3e4, 2e5}},
		{"failed inlet", func(x float64) (float64, error) { p, err := Failed(unit.GaugePressure(x)); return float64(p), err }, 0, []float64{-1, 4e6}},
		{"relief", func(x float64) (float64, error) { p, err := Failed(8e5, unit.GaugePressure(x)); return float64(p), err }, 1e4, []float64{0, -1, 4e6}},
	} {
		physicstest.Refuses[*propane.RangeError](t, c.name, c.f, c.good, c.bad)
	}
}

func BenchmarkPassedAt(b *testing.B) {
	b.ReportAllocs()
	r := plate()
	for b.Loop() {
		if m, err := r.PassedAt(20e3, sea); err != nil || m == 0 {
			b.Fatal(err)
		}
	}
}
