package locker

import (
	"errors"
	"math"
	"slices"

	"lowvent.example/gas/air"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
)

// How much richer than well mixed the richest sensor was at the end of a leak in
// the NIST helium box (2009, read): up to 1.13 for a leak at the far end from where
// the gas collects, 1.38 for a jet at the surface it collects against. For propane
// that surface is the floor.
const (
	Near unit.Ratio = 1.4
	Far  unit.Ratio = 1.13
)

// forever is the time, in s, after which an exchange counts as none: 30 days.
const forever = 30 * 86400.0

// Conditions are a locker, what leaks in it and the air around it.
type Conditions struct {
	Volume   unit.Volume    // free inside, without what stands in it
	Openings []flow.Opening // heights over the floor of the locker
	Gas      flow.Gas
	Leak     unit.MassFlow // of gas; 0 for none
	Source   unit.Length   // height of the leak, as the openings'; only layers depend on it
	// Outside is the temperature outside, Difference how much warmer it is inside.
	Outside    unit.Temperature
	Difference unit.TemperatureDifference
	Pressure   unit.AbsolutePressure // of the air
}

// Model is a locker ready to be computed. Use does not change it, nor does what
// becomes of the conditions afterwards.
type Model struct {
	volume, leak  float64 // m³, m³/s at the temperature inside
	air, gas      float64 // densities inside, kg/m³
	outside       float64 // density of the air outside
	swell         float64
	open, slow    []flow.Opening // while it leaks; afterwards
	free          bool
	gasSinks      bool
	source        unit.Length
	balancedShare float64 // at which inside and outside weigh the same
}

// New makes a model. Valid for volumes of 1e-4 to 1000 m³, leaks up to 1 kg/s,
// differences within ±40 K, and gases, openings and air as package flow has them,
// else *[propane.RangeError].
//
// While it leaks the openings have the coefficients given. Once the leak has
// stopped, a single free opening has [flow.CoefficientOneHole]/[flow.Coefficient]
// of its own, which leaves more gas.
func New(c Conditions) (*Model, error) {
	err := first(
		propane.Within("volume of a locker", float64(c.Volume), 1e-4, 1000, "m³"),
		propane.Within("leak", float64(c.Leak), 0, 1, "kg/s"),
		propane.Within("height of the leak", float64(c.Source), -100, 100, "m"),
		propane.Within("difference of temperature", float64(c.Difference), -40, 40, "K"))
	if err != nil {
		return nil, err
	}
	inside := c.Outside + unit.Temperature(c.Difference)
	gas, err := c.Gas.InAir(inside, c.Pressure)
	if err != nil {
		return nil, err
	}
	airInside, err := air.Density(c.Pressure, inside)
	if err != nil {
		return nil, err
	}
	outside, err := air.Density(c.Pressure, c.Outside)
	if err != nil {
		return nil, err
	}
	m := &Model{
		volume: float64(c.Volume), leak: float64(c.Leak) / float64(gas),
		air: float64(airInside), gas: float64(gas), outside: float64(outside),
		swell: float64(outside) / float64(airInside), gasSinks: gas > airInside, source: c.Source,
		open: slices.Clone(c.Openings),
	}
	m.slow = decaying(m.open)
	m.balancedShare = (m.outside - m.air) / (m.gas - m.air)
	var none *flow.NoOpeningError
	_, err = m.balance(m.open, 0, m.leak)
	m.free = !errors.As(err, &none)
	if m.free && err != nil {
		return nil, err
	}
	return m, nil
}

// decaying returns the openings as they count once nothing pushes.
func decaying(openings []flow.Opening) []flow.Opening {
	only := -1
	for i := range openings {
		if openings[i].Area > 0 {
			if only >= 0 {
				return openings
			}
			only = i
		}
	}
	if only < 0 {
		return openings
	}
	one := openings[only].Covered(unit.Ratio(float64(flow.CoefficientOneHole) / float64(flow.Coefficient)))
	return []flow.Opening{one}
}

// out is the mixture that leaves, in m³/s, at a share of gas inside while q m³/s
// leak; NaN, which every search and integration refuses, if no balance is found.
// Without a free opening it finds its way through cracks.
func (m *Model) out(openings []flow.Opening, share, q float64) float64 {
	if !m.free {
		return q
	}
	e, err := m.balance(openings, share, q)
	if err != nil {
		return math.NaN()
	}
	return float64(e.Out)
}

func (m *Model) balance(openings []flow.Opening, share, q float64) (flow.Exchange, error) {
	share = max(0, min(1, share))
	return flow.Balance(openings, flow.Sides{
		Inside:  unit.Density(m.air + share*(m.gas-m.air)),
		Outside: unit.Density(m.outside), Expansion: unit.Ratio(m.swell),
	}, unit.VolumeFlow(q))
}

// Richest returns the share at the richest place when the mixed share is known: the
// share times the factor, [Near] or [Far], at most 1.
func Richest(mixed, factor unit.Ratio) unit.Ratio {
	return unit.Ratio(min(1, float64(mixed)*float64(factor)))
}

// LeakVolume is the leak in m³/s at the temperature inside, as an ideal gas.
func (m *Model) LeakVolume() unit.VolumeFlow { return unit.VolumeFlow(m.leak) }

// BalancedShare is the share of gas, from 0 to 1, at which inside and outside
// weigh the same, so that nothing but wind and the leak moves. ok is false where
// there is none.
func (m *Model) BalancedShare() (share unit.Ratio, ok bool) {
	if !(m.balancedShare >= 0 && m.balancedShare <= 1) {
		return 0, false
	}
	return unit.Ratio(m.balancedShare), true
}

// first returns the first of several findings that is one.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func validShare(what string, share unit.Ratio) error {
	return propane.Within(what, float64(share), 0, 1, "m³/m³")
}

func validTime(d unit.Duration) error {
	return propane.Within("time", float64(d), 0, 10*forever, "s")
}
