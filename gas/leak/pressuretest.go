package leak

import (
	"math"

	"lowvent.example/gas/air"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The formulas of the pressure test as texts: d and L the bore and the length of a
// line in m; V_line, V_fixed and V in m³, s the allowance for fittings as a share;
// p_abs and p_air in Pa absolute, T in K, dT in K; dp a change of the gauge in Pa,
// q a leak in m³/s of air as it is outside, t in s. In the last, flows in kg/s,
// densities at the mean of inside and outside pressure in kg/m³, viscosities in
// Pa s.
const (
	LineVolumeFormula = "V_line = 3.141592653589793/4 * d*d * L"
	TestVolumeFormula = "V = V_fixed + V_line * (1 + s)"
	DriftFormula      = "dp = p_abs * dT / T"
	HidingFormula     = "dT = dp * T / p_abs"
	BlindSpotFormula  = "q = V * dp / (p_air * t)"
	DecayFormula      = "dp = q * p_air * t / V"
	LaminarFormula    = "m_gas = m_air * dp_line/dp_test * rho_gas/rho_air * mu_air/mu_gas"
)

// FittingsAllowance is the share that a worked example adds to the volume of the
// pipe for its fittings: 10 %.
//
// Source: test volume example, 0.008 + 9 × 0.00014 + 10 % = 0.009386 m³, read at
// www.scribd.com/document/701330223/Method.
const FittingsAllowance unit.Ratio = 0.1

// The greatest figures that are taken for those of a test.
const (
	mostBore   = 0.2  // m
	mostLength = 1e3  // m
	mostVolume = 10.0 // m³
	mostChange = 1e6  // Pa
	mostTime   = 7 * 86400.0
	mostLeak   = 1.0 // m³/s
	coldest    = 228.15
	hottest    = 343.15
)

// LineVolume returns the volume inside a line:
//
//	V = π/4 · d² · L
//
// V in m³, d the bore and L the length in m. Valid for a bore up to 0.2 m and a
// length of 0 to 1000 m, else [*propane.RangeError]. Error size: twice that of the
// bore; the outside diameter taken for the bore makes it 15 to 50 % too large.
//
// Source: definition.
func LineVolume(bore, length unit.Length) (unit.Volume, error) {
	d, L := float64(bore), float64(length)
	if err := propane.Above("bore", d, 0, mostBore, "m"); err != nil {
		return 0, err
	}
	if err := propane.Within("length", L, 0, mostLength, "m"); err != nil {
		return 0, err
	}
	return unit.Volume(math.Pi / 4 * d * d * L), nil
}

// VolumeUnderTest returns the volume that a pressure test holds under pressure:
//
//	V = V_fixed + V_line · (1 + s)
//
// V_fixed in m³ what is not pipe (a meter, the hose of the gauge, a filter), s the
// allowance for fittings, [FittingsAllowance]. Valid for volumes of 0 to 10 m³ and
// a share of 0 to 1, else [*propane.RangeError].
//
// Error size: that of what was listed. A volume too large makes the blind spot
// seem larger and the drop that a leak makes seem smaller: the cautious side; a
// line that was forgotten does the opposite.
//
// Source: as [FittingsAllowance].
func VolumeUnderTest(lines, fixed unit.Volume, fittings unit.Ratio) (unit.Volume, error) {
	line, other, s := float64(lines), float64(fixed), float64(fittings)
	if err := propane.Within("volume of the lines", line, 0, mostVolume, "m³"); err != nil {
		return 0, err
	}
	if err := propane.Within("volume beside the lines", other, 0, mostVolume, "m³"); err != nil {
		return 0, err
	}
	if err := propane.Within("allowance for fittings", s, 0, 1, "1"); err != nil {
		return 0, err
	}
	return unit.Volume(other + line*(1+s)), nil
}

// Drift returns how far the gauge moves when the gas in the line warms by ΔT:
//
//	Δp = p_abs · ΔT / T
//
// Δp in Pa, below 0 for a cooling; p_abs the pressure inside in Pa absolute, T in
// K. 1 K moves a line at 27 mbar by 3.5 mbar, more than most allowances. Valid for
// p_abs up to 2.72 MPa, −45 to +70 °C and ±60 K, else [*propane.RangeError].
//
// Error size: 0.1 % for air at test pressures. Left out: the barometer, which
// moves the gauge by as much as itself, up to 1 or 2 mbar an hour (from memory).
//
// Source: ideal gas law at constant volume. A guide specification for gas piping,
// UFGS 15195N 3.5, has the same with readings in °C and kPa.
func Drift(inside unit.AbsolutePressure, temperature unit.Temperature, warming unit.TemperatureDifference) (unit.GaugePressure, error) {
	p, T, dT := float64(inside), float64(temperature), float64(warming)
	if err := held(p, T); err != nil {
		return 0, err
	}
	if err := propane.Within("warming", dT, -60, 60, "K"); err != nil {
		return 0, err
	}
	return unit.GaugePressure(p * dT / T), nil
}

// Hiding returns the warming that would hide a drop of the gauge from whoever
// reads it, the inverse of [Drift]:
//
//	ΔT = Δp · T / p_abs
//
// ΔT in K, Δp in Pa from 0 to 1 MPa. Else, and for p_abs and T as there,
// [*propane.RangeError].
//
// Source: as [Drift].
func Hiding(drop unit.GaugePressure, inside unit.AbsolutePressure, temperature unit.Temperature) (unit.TemperatureDifference, error) {
	dp, p, T := float64(drop), float64(inside), float64(temperature)
	if err := held(p, T); err != nil {
		return 0, err
	}
	if err := propane.Within("change of the gauge", dp, 0, mostChange, "Pa"); err != nil {
		return 0, err
	}
	return unit.TemperatureDifference(dp * T / p), nil
}

// held reports what is wrong with the state of the gas under test.
func held(p, T float64) error {
	if err := propane.Within("pressure under test", p, leastPressure, mostGauge+mostPressure, "Pa"); err != nil {
		return err
	}
	return propane.Within("temperature", T, coldest, hottest, "K")
}

// BlindSpot returns the leak that a test does not show: what may escape, on the
// mean over the test, before the gauge has moved by the least change that can be
// read on it:
//
//	q = V · Δp / (pₐ · t)
//
// q in m³/s of the test gas as it is outside, V in m³, Δp the readable change in
// Pa, pₐ the air's pressure in Pa absolute, t in s. Valid for a volume up to 10 m³,
// Δp up to 1 MPa, air of 40 to 120 kPa and t up to a week, all above 0, else
// [*propane.RangeError].
//
// Error size: that of the volume. It errs low when the gas warms while the test
// runs ([Hiding]): then a larger leak stays unseen as well. It is never a pass:
// no bubble anywhere is asked for beside it.
//
// Source: balance of mass of an ideal gas.
func BlindSpot(volume unit.Volume, readable unit.GaugePressure, outside unit.AbsolutePressure, time unit.Duration) (unit.VolumeFlow, error) {
	V, dp, p, t := float64(volume), float64(readable), float64(outside), float64(time)
	if err := propane.Above("change of the gauge", dp, 0, mostChange, "Pa"); err != nil {
		return 0, err
	}
	if err := tested(V, p, t); err != nil {
		return 0, err
	}
	return unit.VolumeFlow(V * dp / (p * t)), nil
}

// Decay returns the drop of the gauge that a leak makes in a time, the inverse of
// [BlindSpot]:
//
//	Δp = q · pₐ · t / V
//
// Δp in Pa, q in m³/s of the test gas as it is outside, on the mean over the time.
// Valid for q of 0 to 1 m³/s and the rest as there, else [*propane.RangeError].
//
// Error size: for a q that was measured at the start it errs high, since a leak
// slackens as the pressure falls: by half the share of the gauge pressure that is
// lost, 5 % when a tenth is lost. A drop beyond the gauge pressure only says that
// all of it is lost.
//
// Source: as [BlindSpot].
func Decay(volume unit.Volume, leak unit.VolumeFlow, outside unit.AbsolutePressure, time unit.Duration) (unit.GaugePressure, error) {
	V, q, p, t := float64(volume), float64(leak), float64(outside), float64(time)
	if err := propane.Within("leak", q, 0, mostLeak, "m³/s"); err != nil {
		return 0, err
	}
	if err := tested(V, p, t); err != nil {
		return 0, err
	}
	return unit.GaugePressure(q * p * t / V), nil
}

// tested reports what is wrong with the volume, the air or the time of a test.
func tested(V, p, t float64) error {
	if err := propane.Above("volume under test", V, 0, mostVolume, "m³"); err != nil {
		return err
	}
	if err := propane.Within("pressure of the air", p, leastPressure, mostPressure, "Pa"); err != nil {
		return err
	}
	return propane.Above("time of the test", t, 0, mostTime, "s")
}

// AsPropane is what would come out, as propane at the line's own pressure, of a
// leak that lets out a known flow of air under test.
type AsPropane struct {
	Laminar unit.MassFlow // through a path so fine that friction rules: a thread, a scratched seat
	Orifice unit.MassFlow // through a hole in which inertia rules
}

// Most returns the greater of the two. Which rules in a leak that nobody has seen
// is not known.
func (a AsPropane) Most() unit.MassFlow { return max(a.Laminar, a.Orifice) }

// FromAir converts a leak of air under test to propane at the line's pressure:
//
//	laminar: ṁ_gas = ṁ_air · Δp_line/Δp_test · ρ_gas/ρ_air · μ_air/μ_gas
//	orifice: ṁ_gas/ṁ_air as [Release] has it for the two gases
//
// ṁ in kg/s, gauge pressures in Pa, ρ at the mean of the pressures inside and
// outside, μ the viscosities. The air's mass flow is the volume flow, in m³/s as
// it is outside, times the density of air there. At one and the same pressure a
// fine path passes 2.3 volumes of propane for one of air, a hole 0.8.
//
// Valid for a leak of 0 to 1 m³/s, a test pressure over 0 and up to 2.6 MPa gauge,
// a line pressure as in [LineGas], air of 40 to 120 kPa and −45 to +70 °C, else
// [*propane.RangeError]. Error size: each within 5 % if its own rule holds; a real
// leak lies between them, so that [AsPropane.Most] errs high: the cautious side.
//
// Source: Poiseuille's law for an ideal gas and the flow of [Release];
// γ = 1.4 for air.
func FromAir(leak unit.VolumeFlow, test, line unit.GaugePressure, outside unit.AbsolutePressure, temperature unit.Temperature) (AsPropane, error) {
	if err := propane.Within("leak", float64(leak), 0, mostLeak, "m³/s"); err != nil {
		return AsPropane{}, err
	}
	if err := propane.Above("test pressure", float64(test), 0, mostGauge, "Pa"); err != nil {
		return AsPropane{}, err
	}
	gas, err := LineGas(temperature, line, outside)
	if err != nil {
		return AsPropane{}, err
	}
	density, err := air.Density(outside, temperature)
	if err != nil {
		return AsPropane{}, err
	}
	c := crossing{q: float64(leak), test: float64(test), line: float64(line), outside: float64(outside),
		T: float64(temperature), airOutside: float64(density), gas: gas}
	return c.convert()
}

// crossing is one leak on its way from air to propane.
type crossing struct {
	q, test, line, outside, T float64 // SI
	airOutside                float64 // kg/m³
	gas                       Gas
}

func (c *crossing) convert() (AsPropane, error) {
	ratio, err := c.laminar()
	if err != nil {
		return AsPropane{}, err
	}
	airFlow := c.q * c.airOutside
	return AsPropane{Laminar: unit.MassFlow(airFlow * ratio), Orifice: unit.MassFlow(airFlow * c.orifice())}, nil
}

// laminar is the ratio of the mass flows where friction rules.
func (c *crossing) laminar() (float64, error) {
	vapour, err := propane.VapourAt(unit.Temperature(c.T), unit.AbsolutePressure(c.outside+c.line/2))
	if err != nil {
		return 0, err
	}
	viscosity, err := air.Viscosity(unit.Temperature(c.T))
	if err != nil {
		return 0, err
	}
	airMean := c.airOutside * (1 + c.test/c.outside/2)
	return c.line / c.test * float64(vapour.Density) / airMean * float64(viscosity) / float64(vapour.Viscosity), nil
}

// orifice is the ratio of the mass flows where inertia rules.
func (c *crossing) orifice() float64 {
	const airRatio = 1.4
	inside := c.outside + c.test
	pressed := flux(inside, c.airOutside*inside/c.outside, airRatio, c.outside)
	return flux(float64(c.gas.Pressure), float64(c.gas.Density), float64(c.gas.Ratio), c.outside) / pressed
}
