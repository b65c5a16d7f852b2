package pipe

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// CodeDrop returns the pressure that a load loses in a run by the low-pressure
// equation of the fuel gas codes, in Pa:
//
//	ΔH = Cr·L·(Q^0.381/(19.17·D))^(1/0.206)
//
// with Q in ft³/h, D in in, ΔH in in w.c. and L in ft; [CodeDropFormula] has it in
// SI. A load of 0 or a length of 0 loses nothing.
//
// Valid for inlets below 1.5 psi ([HighPressureFrom]), bores of 1 mm to 1 m, lengths
// to 100 km, loads to 100 MW, else *[propane.RangeError].
//
// Error size: against the 2018 tables within 1 % of the load or one printed unit.
// Against Darcy over those tables it mostly errs high, by up to half; it errs low, by
// a few per cent, where a tube of under 10 mm is barely turbulent.
//
// Source: 2018 International Fuel Gas Code, 402.4 and A.4, equation for less than
// 1.5 psi (symbols and Cr read; exponents and 19.17 from memory, proved on every
// entry of the tables).
func CodeDrop(gas CodeGas, power unit.GrossPower, bore, length unit.Length) (unit.GaugePressure, error) {
	if err := checkRun(gas, power, bore, length); err != nil {
		return 0, err
	}
	return unit.GaugePressure(lowForm(gas).slopeOf(gas.flow(power), float64(bore)) * float64(length)), nil
}

// CodeCapacity returns the load, in W, at which a run loses just the given pressure:
// [CodeDrop] turned round. The drop is 0.01 Pa to 10 kPa, the length from 1 mm,
// else *[propane.RangeError]; range, error and source as there.
func CodeCapacity(gas CodeGas, bore, length unit.Length, drop unit.GaugePressure) (unit.GrossPower, error) {
	if err := checkSlope(gas, length, drop); err != nil {
		return 0, err
	}
	if err := checkBore(bore); err != nil {
		return 0, err
	}
	return gas.power(lowForm(gas).flowOf(float64(drop)/float64(length), float64(bore))), nil
}

// CodeBore returns the least bore, in m, in which the load loses no more than the
// given pressure: [CodeDrop] turned round. Ranges as [CodeCapacity]; the bore that
// comes out is not checked against what can be bought. A load of 0 needs no bore.
func CodeBore(gas CodeGas, power unit.GrossPower, length unit.Length, drop unit.GaugePressure) (unit.Length, error) {
	if err := checkSlope(gas, length, drop); err != nil {
		return 0, err
	}
	if err := checkPower(power); err != nil {
		return 0, err
	}
	return unit.Length(lowForm(gas).boreOf(gas.flow(power), float64(drop)/float64(length))), nil
}

// CodeHighOutlet returns the absolute pressure at the end of a run, in Pa, by the
// equation of the fuel gas codes for 1.5 psi and over:
//
//	P1² − P2² = Cr·L/Y·(Q^0.381/(18.93·D))^(1/0.206)
//
// with P in psia and the rest as in [CodeDrop]; [CodeHighOutletFormula] has it in
// SI. Ranges as there, inlet to 2 MPa. With no pressure left it fails with
// *[ExhaustedError].
//
// Error size: against the 10 psi tables within 1 % of the load or one printed unit.
//
// Source: 2018 International Fuel Gas Code, 402.4, equation for 1.5 psi and over
// (from memory, proved on the tables).
func CodeHighOutlet(gas CodeGas, power unit.GrossPower, bore, length unit.Length, inlet unit.AbsolutePressure) (unit.AbsolutePressure, error) {
	if err := checkRun(gas, power, bore, length); err != nil {
		return 0, err
	}
	p := float64(inlet)
	if err := propane.Within("inlet pressure", p, leastOutside, 2e6, "Pa"); err != nil {
		return 0, err
	}
	left := p*p - highForm(gas).slopeOf(gas.flow(power), float64(bore))*float64(length)
	if !(left > 0) {
		return 0, &ExhaustedError{Segment: -1, Inlet: inlet, Method: codeMethod}
	}
	return unit.AbsolutePressure(math.Sqrt(left)), nil
}

const (
	codeMethod  = "code equation"
	darcyMethod = "Darcy"
	tableMethod = "table"
)

// CodeHighCapacity returns the load, in W, that takes the pressure from inlet to
// outlet: [CodeHighOutlet] turned round. The outlet lies below the inlet, else
// *[propane.RangeError].
func CodeHighCapacity(gas CodeGas, bore, length unit.Length, inlet, outlet unit.AbsolutePressure) (unit.GrossPower, error) {
	slope, err := highSlope(gas, length, inlet, outlet)
	if err != nil {
		return 0, err
	}
	if err := checkBore(bore); err != nil {
		return 0, err
	}
	return gas.power(highForm(gas).flowOf(slope, float64(bore))), nil
}

// CodeHighBore returns the least bore, in m, in which the load takes the pressure no
// lower than from inlet to outlet: [CodeHighOutlet] turned round.
func CodeHighBore(gas CodeGas, power unit.GrossPower, length unit.Length, inlet, outlet unit.AbsolutePressure) (unit.Length, error) {
	slope, err := highSlope(gas, length, inlet, outlet)
	if err != nil {
		return 0, err
	}
	if err := checkPower(power); err != nil {
		return 0, err
	}
	return unit.Length(highForm(gas).boreOf(gas.flow(power), slope)), nil
}

// highSlope is (p1² − p2²)/L in Pa²/m.
func highSlope(gas CodeGas, length unit.Length, inlet, outlet unit.AbsolutePressure) (float64, error) {
	if err := gas.check(); err != nil {
		return 0, err
	}
	if err := propane.Within("length", float64(length), leastLength, mostLength, "m"); err != nil {
		return 0, err
	}
	p1, p2 := float64(inlet), float64(outlet)
	if err := propane.Within("inlet pressure", p1, leastOutside, 2e6, "Pa"); err != nil {
		return 0, err
	}
	if err := propane.Within("outlet pressure", p2, 0, p1-leastDrop, "Pa"); err != nil {
		return 0, err
	}
	return (p1*p1 - p2*p2) / float64(length), nil
}

// The least drop in Pa and the least length in m that capacity and bore are asked
// for: below them the equation says nothing that anyone could measure.
const (
	leastDrop   = 0.01
	leastLength = 1e-3
)

func checkRun(gas CodeGas, power unit.GrossPower, bore, length unit.Length) error {
	for _, err := range []error{gas.check(), checkPower(power), checkBore(bore), checkLength(length)} {
		if err != nil {
			return err
		}
	}
	return nil
}

func checkSlope(gas CodeGas, length unit.Length, drop unit.GaugePressure) error {
	for _, err := range []error{
		gas.check(),
		propane.Within("length", float64(length), leastLength, mostLength, "m"),
		propane.Within("drop", float64(drop), leastDrop, float64(HighPressureFrom), "Pa"),
	} {
		if err != nil {
			return err
		}
	}
	return nil
}
