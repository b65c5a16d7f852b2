// Package demand computes how much gas the appliances ask for and how long a
// mass of propane lasts.
//
// All of it is on the gross (higher) heating value, as rating plates in North
// America are. A European plate in kW that names no basis is net: taken so, it
// asks for 8.6 % more gas than if it were gross, which is the cautious side.
//
// Inputs and results carry bands. Every formula here rises or falls steadily
// with each input, so the ends of a result's band are the formula at the ends of
// the inputs' bands, and no case inside is worse.
//
// What a run time leaves out, and all of it makes the time shorter: a cylinder
// delivered short, the vapour and the last liquid that a cold cylinder cannot
// give up, leaks, and pilots that nobody listed.
package demand

import (
	"fmt"
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The formulas as texts, symbols in SI units: P, P_1, P_2 gross powers in W,
// P_net a net power in W, H and H_net the heats of combustion in J/kg (see
// propane.GrossHeat and propane.NetHeat), m a mass of propane in kg, m_flow a
// consumption in kg/s, E energies in J, t, t_use and t_run durations in s, s a
// share of full input.
const (
	ConnectedFormula   = "P = P_1 + P_2" // and so on for each appliance
	HeatFormula        = "E = m * H"
	FlatOutFormula     = "t = m * H / P"
	UseFormula         = "E_day = P * s * t_use" // summed over the uses of a day
	RunTimeFormula     = "t_run = m * H / E_day * 86400"
	ConsumptionFormula = "m_flow = P / H"
	PowerFormula       = "P = m_flow * H"
	GrossFormula       = "P = P_net * H / H_net"
	NetFormula         = "P_net = P * H_net / H"
)

// day is the length of a day in s.
const day = 86400

// NoLoadError says that a run time was asked for without anything that burns:
// the least load is not above zero, so that there is no greatest time, or a
// figure was not a number.
type NoLoadError struct {
	What string  // the load that was asked about
	Low  float64 // the least load in its SI unit
}

// Error tells which load has no least value above zero.
func (e *NoLoadError) Error() string {
	return fmt.Sprintf("%s can be as low as %g: a run time needs a load above zero", e.What, e.Low)
}

// Connected returns the input of all appliances burning at once:
//
//	P = P₁ + P₂ + …
//
// P in W gross. Without any input it is zero, which says nothing about what is
// connected. Error size: none but the plates'. All at once is the most that can
// be asked: it errs high, on the cautious side for pipe and regulator.
//
// Source: definition.
func Connected(inputs ...unit.Value[unit.GrossPower]) unit.Value[unit.GrossPower] {
	return sum(inputs)
}

// Heat returns the heat of combustion in a mass of propane:
//
//	E = m · H
//
// E in J gross, m in kg, H = 50.33 MJ/kg. Valid for any mass. Error size: 0.02 %
// for pure propane; published contents of a 20 lb cylinder stand 0.3 to 0.6 %
// lower, so that the figure errs high and a run time long.
//
// Source: [propane.GrossHeat].
func Heat(m unit.Value[unit.PropaneMass]) unit.Value[unit.Energy] {
	return rising(m, func(m float64) unit.Energy { return unit.Energy(m * float64(propane.GrossHeat)) })
}

// FlatOut returns how long a mass of propane feeds a load without a pause:
//
//	t = m · H / P
//
// t in s, m in kg, H in J/kg, P in W gross. The least time is the least mass at
// the greatest load. It fails with [*NoLoadError] when the load can be zero.
//
// Error size: that of [Heat], long by up to 0.6 % against published contents and
// by 3 % against the rule of 21 000 BTU/lb; far too long when the cylinder is
// too cold to make vapour that fast, which is not looked at here.
//
// Source: definition.
func FlatOut(m unit.Value[unit.PropaneMass], load unit.Value[unit.GrossPower]) (unit.Value[unit.Duration], error) {
	return lasting(Heat(m), load, "the load", 1)
}

// Use is one appliance's part in a day.
type Use struct {
	Input  unit.Value[unit.GrossPower] // at full flame
	Share  unit.Value[unit.Ratio]      // of the full flame, averaged over the time it is on
	PerDay unit.Value[unit.Duration]   // time that it is on in 24 h
}

// Daily returns the heat that a day's uses burn:
//
//	E = Σ P · s · t
//
// E in J gross a day, P in W, s the share of full input, t in s a day. Without
// any use it is zero. Error size: that of the pattern, which people estimate
// low: tens of percent, to the side of a run time too long.
//
// Source: definition.
func Daily(uses ...Use) unit.Value[unit.Energy] {
	burned := make([]unit.Value[unit.Energy], 0, len(uses))
	for _, u := range uses {
		burned = append(burned, unit.Value[unit.Energy]{
			Nominal: burn(u.Input.Nominal, u.Share.Nominal, u.PerDay.Nominal),
			Low:     burn(u.Input.Low, u.Share.Low, u.PerDay.Low),
			High:    burn(u.Input.High, u.Share.High, u.PerDay.High),
		})
	}
	return sum(burned)
}

func burn(input unit.GrossPower, share unit.Ratio, on unit.Duration) unit.Energy {
	P, s, t := float64(input), float64(share), float64(on)
	return unit.Energy(P * s * t)
}

// RunTime returns how long a mass of propane lasts when each day burns the same:
//
//	t = m · H / E_day · 86 400 s
//
// t in s, m in kg, H in J/kg, E_day in J a day as from
// [Daily]. It fails with [*NoLoadError] when a day can burn nothing.
//
// Error size: that of [Daily]. It errs long; the Low of the band is the figure
// to plan by.
//
// Source: definition.
func RunTime(m unit.Value[unit.PropaneMass], daily unit.Value[unit.Energy]) (unit.Value[unit.Duration], error) {
	return lasting(Heat(m), daily, "the heat burned in a day", day)
}

// SwapDays returns the whole days after which a cylinder is due for a swap: the
// days of the least run time, rounded down. Zero says that it does not last a
// day. The run time is in s; one that is not a number, negative or past a
// thousand years gives zero.
//
// Rounding down errs towards swapping early, by less than a day.
//
// Source: common practice, no source.
func SwapDays(runTime unit.Value[unit.Duration]) int {
	days := math.Floor(float64(runTime.Low) / day)
	if !(days >= 0 && days <= 365_000) {
		return 0
	}
	return int(days)
}

// Consumption returns the propane that a gross input burns:
//
//	ṁ = P / H
//
// ṁ in kg/s, P in W gross, H = 50.33 MJ/kg. Valid for any input. Error size:
// 0.02 % for pure propane; low by up to 0.6 % against trade heating values.
//
// Source: [propane.GrossHeat].
func Consumption(input unit.Value[unit.GrossPower]) unit.Value[unit.MassFlow] {
	return rising(input, func(P float64) unit.MassFlow { return unit.MassFlow(P / float64(propane.GrossHeat)) })
}

// FromConsumption returns the gross input of an appliance from the consumption
// on its plate, the inverse of [Consumption]:
//
//	P = ṁ · H
//
// P in W gross, ṁ in kg/s (1 kg/h is 13.98 kW), H = 50.33 MJ/kg. Valid for any
// consumption. Error size: 0.02 % for pure propane; a plate for butane, or for a
// mixture, comes out up to 1.6 % high (from memory): the cautious side.
//
// Source: [propane.GrossHeat].
func FromConsumption(consumption unit.Value[unit.MassFlow]) unit.Value[unit.GrossPower] {
	return rising(consumption, func(flow float64) unit.GrossPower { return unit.GrossPower(flow * float64(propane.GrossHeat)) })
}

// FromNet returns the gross input of an appliance whose plate is net:
//
//	P = P_net · H / H_net
//
// P in W gross, P_net in W net, H/H_net = 1/0.9207. A European kW that names no
// basis is taken as net. Valid for any input. Error size: 0.1 %; on a plate that
// was gross after all it errs high by 8.6 %, the cautious side.
//
// Source: [propane.GrossHeat], [propane.NetHeat]; the reading of unlabelled
// plates is common practice, no source.
func FromNet(input unit.Value[unit.NetPower]) unit.Value[unit.GrossPower] {
	return rising(input, func(P float64) unit.GrossPower {
		return unit.GrossPower(P * float64(propane.GrossHeat) / float64(propane.NetHeat))
	})
}

// ToNet returns the net input that a European plate would give for a gross one,
// the inverse of [FromNet]:
//
//	P_net = P · H_net / H
//
// Powers in W. Valid for any input. Error size: 0.1 %.
//
// Source: as [FromNet].
func ToNet(input unit.Value[unit.GrossPower]) unit.Value[unit.NetPower] {
	return rising(input, func(P float64) unit.NetPower {
		return unit.NetPower(P * float64(propane.NetHeat) / float64(propane.GrossHeat))
	})
}
