// Package regulator computes what stands before a regulator and behind it: the
// pressure of a cold and of a hot cylinder at its inlet, what it can still pass in
// the cold, at which temperature a rating is passed, and the pressure behind it
// when it fails.
//
// A gauge pressure is the gas's own less that of the air around. Higher above the
// sea the air is thinner and the same cylinder shows more; package air tells its
// pressure.
//
// Left out: how a regulator droops with flow, its lock-up, ice in its seat, liquid
// at its inlet, and a maker's own curve of capacity over inlet pressure, none of
// which could be found in print. The estimate in the cold therefore errs high: it
// may add a finding and never removes one.
package regulator

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve"
	"lowvent.example/schema/unit"
)

// The ranges within which a regulator is looked at.
const (
	leastAir  = 40e3 // Pa
	mostAir   = 120e3
	mostGauge = 3e6    // Pa
	mostLeast = 6e5    // Pa, a least inlet at which gas of 15 °C has not condensed
	mostFlow  = 10.0   // kg/s
	mostSun   = 60.0   // K
	testPoint = 288.15 // K
)

// The formulas as texts: p_gas, p and p_air in Pa absolute; p_gauge, p_inlet and
// p_relief in Pa over the air; m_plate in kg/s; rho in kg/m³ of saturated vapour at
// p, rho_least of vapour at 15 °C and p_least in Pa absolute; T in K.
const (
	GaugeFormula    = "p_gauge = p_gas - p_air"
	HottestFormula  = "T = T_shade + dT_sun"
	CapacityFormula = "m_flow = m_plate * min(1, sqrt(p*rho / (p_least*rho_least)))"
	FailedFormula   = "p_failed = min(p_inlet, p_relief)"
)

// ColdInlet returns the gauge pressure before the regulator when the liquid in the
// cylinder is at its coldest:
//
//	p_gauge = p_mix(T, x) − pₐ
//
// in Pa, below 0 where the cylinder stands under the air's pressure and gives
// nothing; T the temperature of the liquid in K, x the share of propane by mole (1
// for pure propane), pₐ the air's pressure in Pa absolute. Valid from −45 to +70
// °C, x of 0 to 1 and air of 40 to 120 kPa, else [*propane.RangeError].
//
// Error size: that of [propane.MixturePressure], which errs low, the cautious side
// here. The liquid chills below the air while gas is drawn: to take the air's
// temperature for it errs high. The weather moves the result by 3 to 5 kPa.
//
// Source: [propane.MixturePressure].
func ColdInlet(liquid unit.Temperature, share unit.Ratio, air unit.AbsolutePressure) (unit.GaugePressure, error) {
	if err := validAir(air); err != nil {
		return 0, err
	}
	p, err := propane.MixturePressure(liquid, share)
	if err != nil {
		return 0, err
	}
	return gauge(p, air), nil
}

// Hot is what a regulator meets on the hottest day.
type Hot struct {
	Temperature unit.Temperature
	Pure        unit.GaugePressure // of pure propane
	Ceiling     unit.GaugePressure // of the highest that is sold as propane
}

// HotInlet returns the temperature of a cylinder in a place that the sun heats and
// the gauge pressures before the regulator then:
//
//	T = T_shade + ΔT_sun
//	p_gauge = p(T) − pₐ
//
// T_shade the air's hottest temperature in the shade in K, ΔT_sun what the sun adds
// to a dark locker in K, 0 to 60 K; T from −45 to +70 °C; air of 40 to 120 kPa, else
// [*propane.RangeError]. 41 °C and 15 K pass both 16 bar and 250 psig.
//
// Error size: that of the sun's excess, which must be stated or measured. A rating
// is judged by Ceiling, which errs high: the cautious side. A filled cylinder
// follows the day with hours of delay and stays below the locker's peak (common
// practice, no source); that is not counted on.
//
// Source: [propane.SaturationPressure], [propane.CeilingPressure].
func HotInlet(shade unit.Temperature, sun unit.TemperatureDifference, air unit.AbsolutePressure) (Hot, error) {
	if err := validAir(air); err != nil {
		return Hot{}, err
	}
	if err := propane.Within("excess by the sun", float64(sun), 0, mostSun, "K"); err != nil {
		return Hot{}, err
	}
	T := shade + unit.Temperature(sun)
	pure, err := propane.SaturationPressure(T)
	if err != nil {
		return Hot{}, err
	}
	ceiling, err := propane.CeilingPressure(T)
	if err != nil {
		return Hot{}, err
	}
	return Hot{Temperature: T, Pure: gauge(pure, air), Ceiling: gauge(ceiling, air)}, nil
}

// Passed is the temperature at which a pressure rating is passed.
type Passed struct {
	Pure    unit.Temperature // by pure propane
	Ceiling unit.Temperature // by the highest that is sold as propane
}

// RatingPassed returns the temperatures, in K, from which a cylinder stands over a
// gauge pressure rating in Pa. Pure propane at the sea passes 16 bar at 49.7 °C and
// 250 psig at 52.9 °C; what is sold passes them up to 8 K sooner.
//
// Valid for ratings that both gases pass between −45 and +70 °C and air of 40 to
// 120 kPa, else [*propane.RangeError]. Error size: 0.01 K for Pure; Ceiling errs
// low, the cautious side.
//
// Source: [propane.SaturationTemperature]; [propane.CeilingPressure] inverted with
// [solve.Root].
func RatingPassed(rating unit.GaugePressure, air unit.AbsolutePressure) (Passed, error) {
	if err := validAir(air); err != nil {
		return Passed{}, err
	}
	p := air + unit.AbsolutePressure(rating)
	pure, err := propane.SaturationTemperature(p)
	if err != nil {
		return Passed{}, err
	}
	ceiling, err := ceilingTemperature(p)
	if err != nil {
		return Passed{}, err
	}
	return Passed{Pure: pure, Ceiling: ceiling}, nil
}

// ceilingTemperature is the temperature at which the highest gas that is sold as
// propane has the pressure.
func ceilingTemperature(p unit.AbsolutePressure) (unit.Temperature, error) {
	low, err := propane.CeilingPressure(propane.LeastTemperature)
	if err != nil {
		return 0, err
	}
	high, err := propane.CeilingPressure(propane.GreatestTemperature)
	if err != nil {
		return 0, err
	}
	if err := propane.Within("pressure", float64(p), float64(low), float64(high), "Pa"); err != nil {
		return 0, err
	}
	over := func(T float64) float64 {
		ceiling, err := propane.CeilingPressure(unit.Temperature(T))
		if err != nil {
			return math.NaN()
		}
		return float64(ceiling) - float64(p)
	}
	T, err := solve.Root(over, float64(propane.LeastTemperature), float64(propane.GreatestTemperature), 1e-6)
	return unit.Temperature(T), err
}

// Plate is what a regulator's plate or leaflet says.
type Plate struct {
	Capacity unit.MassFlow
	Least    unit.GaugePressure // inlet at and above which it passes the capacity
	Outlet   unit.GaugePressure // set pressure
}

// PassedAt returns an estimate of what the regulator passes at a lower inlet than
// its plate asks for:
//
//	ṁ = ṁ_plate · min(1, √(p·ρ / (p_least·ρ_least)))
//
// ṁ in kg/s, p in Pa absolute of the inlet, ρ in kg/m³ of saturated vapour at p,
// ρ_least of vapour at 15 °C and p_least. At and above the least inlet it is the
// plate's figure, at or below the outlet's set pressure it is 0.
//
// Valid for a capacity over 0 and up to 10 kg/s, an outlet of 0 Pa or more, a least
// inlet above the outlet and up to 600 kPa, an inlet of −120 kPa to 3 MPa gauge and
// air of 40 to 120 kPa, else [*propane.RangeError].
//
// Error size: it is a bound, tens of percent high. The seat is taken as wide open
// and choked down to the outlet's pressure, while a real regulator droops, and
// under 1.7 times the outlet's pressure no seat is choked; ρ_least is that of warm
// gas. Only for a mixture with butane, denser at the same pressure, could it be
// low, by up to 5 %. So it may add a finding and never removes one.
//
// Source: choked flow through a fixed opening; own estimate. No maker's curve was
// found.
func (r Plate) PassedAt(inlet unit.GaugePressure, air unit.AbsolutePressure) (unit.MassFlow, error) {
	if err := r.valid(inlet, air); err != nil {
		return 0, err
	}
	if inlet >= r.Least {
		return r.Capacity, nil
	}
	if inlet <= r.Outlet {
		return 0, nil
	}
	p, least := air+unit.AbsolutePressure(inlet), air+unit.AbsolutePressure(r.Least)
	cold, err := saturated(p)
	if err != nil {
		return 0, err
	}
	warm, err := propane.VapourAt(testPoint, least)
	if err != nil {
		return 0, err
	}
	share := math.Sqrt(float64(p) * float64(cold) / (float64(least) * float64(warm.Density)))
	return unit.MassFlow(float64(r.Capacity) * min(1, share)), nil
}

// valid reports what is wrong with a plate, an inlet or the air.
func (r Plate) valid(inlet unit.GaugePressure, air unit.AbsolutePressure) error {
	if err := validAir(air); err != nil {
		return err
	}
	for _, k := range []struct {
		quantity         string
		value, low, high float64
		unit             string
		open             bool // the lower end is outside
	}{
		{"rated capacity", float64(r.Capacity), 0, mostFlow, "kg/s", true},
		{"outlet pressure", float64(r.Outlet), 0, mostLeast, "Pa", false},
		{"least inlet pressure", float64(r.Least), float64(r.Outlet), mostLeast, "Pa", true},
		{"inlet pressure", float64(inlet), -mostAir, mostGauge, "Pa", false},
	} {
		if err := propane.Within(k.quantity, k.value, k.low, k.high, k.unit); err != nil || k.open && k.value == k.low {
			return &propane.RangeError{Quantity: k.quantity, Value: k.value, Low: k.low, High: k.high, Unit: k.unit}
		}
	}
	return nil
}

// saturated is the density of vapour that has just left liquid at the pressure.
// Below the coldest temperature that is known the vapour at that one stands in,
// which is lighter by no more than a few percent.
func saturated(p unit.AbsolutePressure) (unit.Density, error) {
	coldest, err := propane.SaturationPressure(propane.LeastTemperature)
	if err != nil {
		return 0, err
	}
	if p < coldest {
		vapour, err := propane.VapourAt(propane.LeastTemperature, p)
		return vapour.Density, err
	}
	T, err := propane.SaturationTemperature(p)
	if err != nil {
		return 0, err
	}
	vapour, err := propane.SaturatedVapour(T)
	return vapour.Density, err
}

// Failed returns the gauge pressure behind a regulator that no longer shuts: that
// before it, or the least of the pressures to which a relief is known to limit it,
//
//	p_failed = min(p_inlet, p_relief)
//
// in Pa. With no relief stated it is the inlet's, which is what an unknown relief
// must count as. Valid for an inlet of 0 to 3 MPa and reliefs over 0 and up to 3
// MPa, else [*propane.RangeError].
//
// Error size: a relief starts to discharge below and limits at a pressure above its
// setting; with the setting taken for the limit the figure errs low, with the
// limit of a standard (2 psig behind a Type II relief of UL 144) it is a bound for a
// relief that works and whose vent is open. The gas that it lets out goes where its
// vent goes.
//
// Source: definition; limits in [Reliefs].
func Failed(inlet unit.GaugePressure, reliefs ...unit.GaugePressure) (unit.GaugePressure, error) {
	if err := propane.Within("inlet pressure", float64(inlet), 0, mostGauge, "Pa"); err != nil {
		return 0, err
	}
	behind := inlet
	for _, relief := range reliefs {
		if err := propane.Within("relief pressure", float64(relief), math.SmallestNonzeroFloat64, mostGauge, "Pa"); err != nil {
			return 0, err
		}
		behind = min(behind, relief)
	}
	return behind, nil
}

// gauge is a pressure over that of the air.
func gauge(p, air unit.AbsolutePressure) unit.GaugePressure { return unit.GaugePressure(p - air) }

func validAir(air unit.AbsolutePressure) error {
	return propane.Within("pressure of the air", float64(air), leastAir, mostAir, "Pa")
}
