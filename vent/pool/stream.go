package pool

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// gravity is the acceleration of gravity in m/s².
const gravity = 9.80665

// The two Froude numbers of the front of a heavy current under deep air.
//
// FrontFastest, √2, is that of a current without any loss: T. B. Benjamin, J. Fluid
// Mech. 31 (1968) 209 (the paper's abstract was read, the figure is from memory). It
// errs early. FrontMeasured, 1.19, is what tanks show for a current shallower than
// 0.075 of the space: Huppert and Simpson, J. Fluid Mech. 99 (1980) 785; Britter and
// Simpson 1978 have the same order (both from memory).
const (
	FrontFastest  unit.Ratio = math.Sqrt2
	FrontMeasured unit.Ratio = 1.19
)

// The formulas of a current along a floor as texts: u in m/s, Fr the Froude number,
// rho and rho_air in kg/m³ of the gas and of the air, x the share of gas in the
// current, h its depth in m, q the flow of gas in m³/s, w the width it has in m, s the
// depth in m that runs over a sill of width w.
const (
	FrontFormula  = "u = Fr * sqrt(9.80665*(rho/rho_air - 1)*x*h)"
	StreamFormula = "u = pow(Fr*Fr * 9.80665*(rho/rho_air - 1) * q/w, 1.0/3)"
	DepthFormula  = "h = q / (x*w*u)"
	SpillFormula  = "s = pow(q/(x*w), 2.0/3) * 1.5 / pow(9.80665*(rho/rho_air - 1)*x, 1.0/3)"
)

// Densities are those of the undiluted gas and of the air around it, in kg/m³.
type Densities struct{ Gas, Air unit.Density }

// reduced returns g·(ρ/ρₐ − 1) in m/s², the reduced gravity of the undiluted gas.
func (d Densities) reduced() (float64, error) {
	err := propane.Within("density of the air", float64(d.Air), least, mostDensity, "kg/m³")
	if err == nil {
		err = propane.Within("density of the gas over that of air", float64(d.Gas)/float64(d.Air), leastRatio, mostDensity, "1")
	}
	return gravity * (float64(d.Gas)/float64(d.Air) - 1), err
}

// leastRatio is how much heavier than air a gas must be to count as heavy.
const leastRatio = 1.001

// FrontSpeed returns how fast the front of a heavy layer of depth h that holds a share
// x of gas runs along a floor under still air:
//
//	u = Fr·√(g′·h),  g′ = g·(ρ/ρₐ − 1)·x
//
// u in m/s, h in m, g = 9.80665 m/s². Valid for a gas at least 1.001 times as heavy as
// air, x from 1e-6 to 1, h from 0 to 1000 m, Fr above 0 up to 2, else
// [*propane.RangeError].
//
// Error: with [FrontFastest] it errs fast for a level floor; the floor's friction slows
// a layer of a centimetre to less than half (from memory). A slope, or a draught
// along, makes it faster.
//
// Source: the references of [FrontFastest].
func FrontSpeed(d Densities, froude, share unit.Ratio, depth unit.Length) (unit.Speed, error) {
	g, err := d.reduced()
	if err = first(err, validFroude(froude), validShare(share), validHeight(depth)); err != nil {
		return 0, err
	}
	return unit.Speed(float64(froude) * math.Sqrt(g*float64(share)*float64(depth))), nil
}

// Stream is gas that runs along a floor from a leak that goes on.
type Stream struct {
	Speed unit.Speed
	Depth unit.Length // at the share that was asked for
}

// StreamOf returns the current that a leak q of gas feeds along a floor strip of width
// w, thinned to a share x:
//
//	u = (Fr²·g·(ρ/ρₐ − 1)·q/w)^(1/3),  h = q/(x·w·u)
//
// u in m/s, h in m, q in m³/s, w in m. It is [FrontSpeed] with the depth that carries
// the flow. The speed does not depend on how thin the gas has become: what it loses in
// weight it gains in depth. At x the lower flammable limit, Depth is the greatest depth
// that is flammable.
//
// Valid as [FrontSpeed], q from 1e-12 to 1000 m³/s, w up to 1000 m, else
// [*propane.RangeError].
//
// Error: as FrontSpeed; a small leak creeps as a film that friction holds back, so
// that it errs fast and too shallow then. Gas that spreads to all sides is slower.
//
// Source: [FrontSpeed] and the balance of volume.
func StreamOf(d Densities, froude, share unit.Ratio, gas unit.VolumeFlow, width unit.Length) (Stream, error) {
	g, err := d.reduced()
	if err = first(err, validFroude(froude), validShare(share), validGas(gas), validWidth(width)); err != nil {
		return Stream{}, err
	}
	Fr, q, w := float64(froude), float64(gas), float64(width)
	u := math.Cbrt(Fr * Fr * g * q / w)
	return Stream{Speed: unit.Speed(u), Depth: unit.Length(q / (float64(share) * w * u))}, nil
}

// Reach returns when the front has run a distance along the floor and meets what
// stands no higher than the stream is deep; never for what stands higher, which waits
// for the layer to grow. For the soonest time take the earlier of both.
//
// Valid for a distance and a height from 0 to 1000 m and a speed above 0, else
// [*propane.RangeError]. Error: that of the speed; with [FrontFastest] it errs early.
//
// Source: definition.
func (s Stream) Reach(distance, height unit.Length) (Moment, error) {
	err := first(propane.Within("distance along the floor", float64(distance), 0, mostLength, "m"), validHeight(height),
		propane.Within("speed of the front", float64(s.Speed), least, mostLength, "m/s"))
	if err != nil || height > s.Depth {
		return Moment{Never: err == nil}, err
	}
	return Moment{After: unit.Duration(float64(distance) / float64(s.Speed))}, nil
}

// SpillDepth returns how high a layer that holds a share x of gas has to stand over a
// sill or the threshold of a doorway of width w before all of a leak q runs over it:
//
//	s = (q/(x·w))^(2/3) · 1.5 / (g·(ρ/ρₐ − 1)·x)^(1/3)
//
// s and w in m, q in m³/s. A layer behind a sill stands by as much higher than the sill:
// the least sensible stand for [Space.Fill] when it asks how soon.
//
// Valid as [StreamOf], else [*propane.RangeError]. Error: the broad weir without loss,
// 10 to 20 % too low for a sharp sill (from memory).
//
// Source: critical flow over a broad-crested weir with the reduced gravity of the
// layer (textbook, from memory).
func SpillDepth(d Densities, share unit.Ratio, gas unit.VolumeFlow, width unit.Length) (unit.Length, error) {
	g, err := d.reduced()
	if err = first(err, validShare(share), validGas(gas), validWidth(width)); err != nil {
		return 0, err
	}
	x := float64(share)
	Q := float64(gas) / (x * float64(width))
	return unit.Length(1.5 * math.Cbrt(Q*Q) / math.Cbrt(g*x)), nil
}

func validFroude(Fr unit.Ratio) error {
	return propane.Within("Froude number", float64(Fr), least, 2, "1")
}
