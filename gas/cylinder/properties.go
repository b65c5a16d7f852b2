package cylinder

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The middle and half the width of the range of the propane properties, in K.
const (
	middle = (float64(propane.LeastTemperature) + float64(propane.GreatestTemperature)) / 2
	half   = (float64(propane.GreatestTemperature) - float64(propane.LeastTemperature)) / 2
)

// reduced maps the range of the propane properties to −1 … 1.
func reduced(T float64) float64 { return (T - middle) / half }

// properties holds what the heat balance of a closed vessel needs of propane, as
// polynomials, so that a step costs no power and no search.
//
// Liquid and vapour in a volume V, together m, have the internal energy
//
//	E = m·g(T) + V·f(T),  f = h/(v″ − v′) − p,  g = u′ − v′·f
//
// with the latent heat h and the volumes v′ and v″ of a kilogram of liquid and
// vapour. Taking a kilogram of vapour away at constant T takes
//
//	λ = h·v″/(v″ − v′)
//
// from the walls: it leaves with the enthalpy g + λ. Both follow from
// E = m′u′ + m″u″ and V = m′v′ + m″v″ alone.
type properties struct {
	liquid, vapour polynomial // densities, kg/m³
	taken          polynomial // λ, J/kg
	g, f           polynomial // J/kg, J/m³
	dg, df         polynomial // their slopes by x
}

// ofPropane fits the polynomials to the functions of package propane.
func ofPropane() (properties, error) {
	var at struct{ liquid, vapour, taken, room, f, heat [terms]float64 }
	var err error
	get := func(v float64, e error) float64 {
		if err == nil {
			err = e
		}
		return v
	}
	for j, x := range places() {
		T := unit.Temperature(middle + half*x)
		liquid, vapour := get(number(propane.LiquidDensity(T))), get(number(propane.VapourDensity(T)))
		latent, p := get(number(propane.LatentHeat(T))), get(number(propane.SaturationPressure(T)))
		at.liquid[j], at.vapour[j] = liquid, vapour
		at.taken[j] = latent / (1 - vapour/liquid)
		perVolume := at.taken[j] * vapour // h/(v″ − v′)
		at.f[j] = perVolume - p
		at.room[j] = perVolume / liquid
	}
	q := properties{liquid: through(&at.liquid), vapour: through(&at.vapour), taken: through(&at.taken), f: through(&at.f)}
	slope := q.liquid.slope()
	for j, x := range places() {
		T := middle + half*x
		at.heat[j] = get(number(propane.LiquidHeatCapacity(unit.Temperature(T)))) + along(T, at.liquid[j], slope.at(x)/half, at.room[j]*at.liquid[j])
		at.heat[j] *= half
	}
	heat, room := through(&at.heat), through(&at.room)
	enthalpy := heat.integral()
	q.g = enthalpy.minus(&room)
	q.dg, q.df = q.g.slope(), q.f.slope()
	return q, err
}

// along is what the enthalpy of saturated liquid gains for each kelvin beside its
// heat capacity, since its pressure rises with it: (v′ − T·dv′/dT)·dp/dT, with
// dp/dT = perVolume/T (Clapeyron) and the liquid taken as no more compressible
// than its saturation line shows; low by 0.4 % of the heat capacity at 60 °C, less
// when colder.
func along(T, density, slope, perVolume float64) float64 {
	return (1/density + T*slope/(density*density)) * perVolume / T
}

func number[Q unit.Quantity](q Q, err error) (float64, error) { return float64(q), err }
