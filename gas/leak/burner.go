package leak

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// mostInput is the greatest input in W that is taken for an appliance's, and
// longest the longest drop-out in s that is taken for a flame guard's.
const (
	mostInput = 1e6
	longest   = 3600.0
)

// DropOutFormula is [DropOut] as a text: m in kg, P in W gross, H in J/kg, t in s.
const DropOutFormula = "m = P / H * t"

// Unlit returns the flow of gas from a burner that is open and does not burn:
// its full input,
//
//	ṁ = P / H
//
// ṁ in kg/s, P in W gross, H = 50.33 MJ/kg ([propane.FuelFormula]). This is the
// leak that happens: a flame blown out, a pot boiled over, a tap turned by a child,
// on a burner without flame supervision. Valid for 0 to 1 MW, else
// [*propane.RangeError]. Error size: that of the plate; a burner with its jet
// drilled up or its pressure too high lets out more.
//
// Source: [propane.Burn].
func Unlit(input unit.GrossPower) (unit.MassFlow, error) {
	if err := propane.Within("heat input", float64(input), 0, mostInput, "W"); err != nil {
		return 0, err
	}
	return propane.Burn(input).Fuel, nil
}

// DropOut returns the mass of gas that a burner with flame supervision lets out
// after the flame has gone, until the guard shuts:
//
//	m = P / H · t
//
// m in kg, P in W gross, t the drop-out time in s, H = 50.33 MJ/kg. Valid for 0 to
// 1 MW and 0 to 3600 s, else [*propane.RangeError]. Error size: that of the time. A
// standard allows up to 60 or 90 s (from memory), a new guard is faster, an old
// one may not shut at all: only a test tells.
//
// Source: definition.
func DropOut(input unit.GrossPower, time unit.Duration) (unit.PropaneMass, error) {
	flow, err := Unlit(input)
	if err != nil {
		return 0, err
	}
	if err := propane.Within("drop-out time", float64(time), 0, longest, "s"); err != nil {
		return 0, err
	}
	return unit.PropaneMass(float64(flow) * float64(time)), nil
}
