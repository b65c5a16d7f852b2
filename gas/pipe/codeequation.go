package pipe

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The units in which the code equation is published, in SI.
const (
	foot        = 0.3048
	inchOfWater = 249.08891
	psi         = 6894.757293
	btuPerHour  = 1055.05585262 / 3600
	footCubed   = foot * foot * foot / 3600 // ft³/h in m³/s
)

// CodeGas is a gas as the sizing equation of the fuel gas codes describes it. The
// heating value is what a flow of gas gives as power: Power over Flow.
type CodeGas struct {
	Power unit.GrossPower // W, of
	Flow  unit.VolumeFlow // m³/s of gas as the tables count it
	Cr    unit.Ratio      // factor of density and viscosity
	Y     unit.Ratio      // factor of compressibility, for 1.5 psi and over
}

// CodePropane returns undiluted propane as the tables of the International Fuel Gas
// Code 2018 have it: Cr = 1.2462 and Y = 0.9910 for a relative density of 1.50, and
// 2470 BTU/ft³. The tables do not state the heating value; 2470 is what they imply
// (their entries at 11 in w.c. fit it with 0.2 % scatter). Physical figures are
// higher, 2488 to 2520 BTU/ft³; by them a pipe would carry up to 2 % more, so that
// 2470 errs on the cautious side.
//
// Source: 2018 International Fuel Gas Code A.4 (Cr, read); Y from memory, proved on
// the 10 psi tables.
func CodePropane() CodeGas {
	return CodeGas{Power: 2470 * btuPerHour, Flow: footCubed, Cr: 1.2462, Y: 0.9910}
}

// HighPressureFrom is the inlet pressure, in Pa over the outside air, from which
// the code has its second form of the equation: 1.5 psi.
//
// Source: International Fuel Gas Code 402.4, equations 4-1 and 4-2 (from memory;
// both forms are proved on the tables).
const HighPressureFrom unit.GaugePressure = 1.5 * psi

// The code equation as texts. V the flow in m³/s, P the power in W; V_0 and P_0 a
// flow and the power that it gives; D the bore and L the length in m; dp the drop,
// p_1 and p_2 the pressures at inlet and outlet, absolute, in Pa; Cr and Y as in
// [CodeGas]. The numbers that are no exponents and not 19.17 or 18.93 turn SI into
// the units of the code: ft³/h, in, in w.c., psi, ft.
const (
	CodeFlowFormula     = "V = P * V_0 / P_0"
	CodeBoreFormula     = "D = pow(V*3600/pow(0.3048, 3), 0.381) * 0.0254 / (19.17 * pow(dp/249.08891 / (Cr*L/0.3048), 0.206))"
	CodeDropFormula     = "dp = Cr*L/0.3048 * 249.08891 * pow(pow(V*3600/pow(0.3048, 3), 0.381) / (19.17*D/0.0254), 1/0.206)"
	CodeCapacityFormula = "V = pow(0.3048, 3)/3600 * pow(19.17*D/0.0254 * pow(dp/249.08891 / (Cr*L/0.3048), 0.206), 1/0.381)"

	CodeHighBoreFormula     = "D = pow(V*3600/pow(0.3048, 3), 0.381) * 0.0254 / (18.93 * pow((p_1*p_1 - p_2*p_2)/pow(6894.757293, 2) * Y / (Cr*L/0.3048), 0.206))"
	CodeHighOutletFormula   = "p_2 = sqrt(p_1*p_1 - pow(6894.757293, 2)/Y * Cr*L/0.3048 * pow(pow(V*3600/pow(0.3048, 3), 0.381) / (18.93*D/0.0254), 1/0.206))"
	CodeHighCapacityFormula = "V = pow(0.3048, 3)/3600 * pow(18.93*D/0.0254 * pow((p_1*p_1 - p_2*p_2)/pow(6894.757293, 2) * Y / (Cr*L/0.3048), 0.206), 1/0.381)"
)

// The exponents of flow and slope.
const (
	flowExponent  = 0.381
	slopeExponent = 0.206
)

// form is one of the two forms of the equation: its factor, and what one unit of
// slope is in Pa per metre (low pressure) or Pa² per metre (high).
type form struct{ factor, slope float64 }

func lowForm(gas CodeGas) form { return form{19.17, inchOfWater * float64(gas.Cr) / foot} }

func highForm(gas CodeGas) form {
	return form{18.93, psi * psi / float64(gas.Y) * float64(gas.Cr) / foot}
}

// slopeOf is the drop per metre, in Pa or Pa², of a flow in m³/s through a bore.
func (f form) slopeOf(flow, bore float64) float64 {
	if flow == 0 {
		return 0
	}
	return f.slope * math.Pow(math.Pow(flow/footCubed, flowExponent)/(f.factor*bore/inch), 1/slopeExponent)
}

// flowOf is the flow in m³/s that makes the drop per metre.
func (f form) flowOf(slope, bore float64) float64 {
	return footCubed * math.Pow(f.factor*bore/inch*math.Pow(slope/f.slope, slopeExponent), 1/flowExponent)
}

// boreOf is the bore in m in which the flow makes the drop per metre.
func (f form) boreOf(flow, slope float64) float64 {
	return inch * math.Pow(flow/footCubed, flowExponent) / (f.factor * math.Pow(slope/f.slope, slopeExponent))
}

func (gas CodeGas) check() error {
	for _, err := range []error{
		propane.Within("power of the gas", float64(gas.Power), 1e-6, 1e12, "W"),
		propane.Within("flow of the gas", float64(gas.Flow), 1e-12, 1e6, "m³/s"),
		propane.Within("Cr", float64(gas.Cr), 0.01, mostCr, ""),
		propane.Within("Y", float64(gas.Y), 0.5, 1.5, ""),
	} {
		if err != nil {
			return err
		}
	}
	return nil
}

// flow is the volume flow in m³/s that gives the power.
func (gas CodeGas) flow(power unit.GrossPower) float64 {
	return float64(power) * float64(gas.Flow) / float64(gas.Power)
}

// power is the power in W that the volume flow gives.
func (gas CodeGas) power(flow float64) unit.GrossPower {
	return unit.GrossPower(flow * float64(gas.Power) / float64(gas.Flow))
}
