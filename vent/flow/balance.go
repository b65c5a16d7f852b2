package flow

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve"
	"lowvent.example/schema/unit"
)

// gravity is in m/s².
const gravity = 9.80665

// Sides are the two sides of the openings.
type Sides struct {
	Inside  unit.Density // of the mixture; everything that goes out has it
	Outside unit.Density // of the air; everything that comes in has it
	// Expansion is the volume that 1 m³ of outside air takes once it has the
	// temperature inside, T_inside/T_outside: 1 where both are alike.
	Expansion unit.Ratio
}

// Exchange is what passes when the volumes balance.
type Exchange struct {
	In       unit.VolumeFlow    // of outside air, as it is outside
	Out      unit.VolumeFlow    // of the mixture, as it is inside
	Pressure unit.GaugePressure // inside over outside at height 0, in still air
	// Level is the height at which inside and outside press alike, wind left
	// out; it may lie outside every opening. HasLevel is false where both sides
	// weigh the same, so that there is none.
	Level    unit.Length
	HasLevel bool
}

// Through is what passes one opening; both at once where the flow goes both ways.
type Through struct {
	In, Out unit.VolumeFlow
}

// NoOpeningError says that something has to go out or in and there is no opening.
type NoOpeningError struct{}

// Error tells what is missing.
func (*NoOpeningError) Error() string {
	return "no opening is free; expected at least one with a free area above 0"
}

// Balance finds the pressure inside at which the volumes balance,
//
//	V_out = e·V_in + q
//
// with the expansion e of [Sides] and a source q inside in m³/s (a leak, at the
// temperature inside; below 0 what a fan draws off). At height z the pressure
// across an opening, inside less outside, is
//
//	Δp(z) = p₀ − (ρ_in − ρ_out)·g·z − wind
//
// in Pa, and a strip of it passes C·dA·√(2·|Δp|/ρ) m³/s: outwards where Δp is above
// 0, with ρ of the inside, inwards below, with ρ of the outside. In a wall the
// strips are summed over the height of the opening, so that the neutral level may
// lie within it and one opening passes both ways; a strong source pushes the level
// out of the opening, and none comes in. In a floor or ceiling the pressure at its
// height drives one way; where the heavier side is above, [HorizontalExchange] is
// laid over it both ways. A pipe behind an opening adds its friction, see
// [PipeSpeed], stands for the whole opening at its middle, and passes one way only.
//
// Valid for 0 or 1e-9 to 100 m² an opening, heights within ±100 m, wind within
// ±2000 Pa, densities of 0.05 to 10 kg/m³, expansions of 0.2 to 5 and sources within
// ±100 m³/s, else *[propane.RangeError]. Without any free area it fails with
// *[NoOpeningError]. Over some 10 kPa the pressure no longer means anything, since
// air is compressible; the flows, forced by the source, still do.
//
// Error size: rounding leaves up to 1e-7 m/s through an opening across which nothing
// presses. Else the coefficient's, 0.6 to 0.7 for a plain opening: 10 % to either
// side, more for a cover. What leaves the door of a burning room above its measured
// neutral level is met within 20 % in eleven tests of twelve (tests).
//
// Source: Bernoulli; orifice form as BS 5925 amendment 1 eq. 2 (read); integral
// over a wall opening as NIST CFAST Technical Reference Guide, vents (read).
func Balance(openings []Opening, sides Sides, source unit.VolumeFlow) (Exchange, error) {
	b, err := newBalancer(openings, sides, float64(source))
	if err != nil {
		return Exchange{}, err
	}
	low, high := b.bracket()
	p0, err := solve.Root(b.excess, low, high, 1e-15*(high-low))
	if err != nil {
		return Exchange{}, err
	}
	in, out := b.total(p0)
	e := Exchange{In: unit.VolumeFlow(in), Out: unit.VolumeFlow(out), Pressure: unit.GaugePressure(p0)}
	if level := p0 / b.slope; b.slope != 0 && math.Abs(level) <= math.MaxFloat64 {
		e.Level, e.HasLevel = unit.Length(level), true
	}
	return e, nil
}

// At returns what passes one opening when the pressure inside, at height 0, is
// that of a [Balance] with the same sides. Valid as there.
func (o Opening) At(sides Sides, pressure unit.GaugePressure) (Through, error) {
	err := first(o.valid(), sides.valid(), propane.Within("pressure inside", float64(pressure), -math.MaxFloat64, math.MaxFloat64, "Pa"))
	if err != nil {
		return Through{}, err
	}
	b := balancer{sides: sides, slope: gravity * float64(sides.Inside-sides.Outside)}
	in, out := b.through(&o, float64(pressure))
	return Through{In: unit.VolumeFlow(in), Out: unit.VolumeFlow(out)}, nil
}

// balancer holds one balance while it is solved.
type balancer struct {
	openings []Opening
	sides    Sides
	slope    float64 // (ρ_in − ρ_out)·g in Pa/m
	source   float64 // m³/s
}

func newBalancer(openings []Opening, sides Sides, source float64) (balancer, error) {
	if err := first(sides.valid(), propane.Within("source", source, -mostSource, mostSource, "m³/s")); err != nil {
		return balancer{}, err
	}
	free := false
	for i := range openings {
		if err := openings[i].valid(); err != nil {
			return balancer{}, err
		}
		free = free || openings[i].Area > 0
	}
	if !free {
		return balancer{}, &NoOpeningError{}
	}
	return balancer{openings, sides, gravity * float64(sides.Inside-sides.Outside), source}, nil
}

// bracket returns pressures between which the balance lies: from where nothing
// goes out to where nothing comes in, and further as far as the source asks.
func (b *balancer) bracket() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for i := range b.openings {
		if o := &b.openings[i]; o.Area > 0 {
			bottom := b.slope*float64(o.Bottom()) + float64(o.Wind)
			top := b.slope*float64(o.Top()) + float64(o.Wind)
			low, high = min(low, bottom, top), max(high, bottom, top)
		}
	}
	step := max(high-low, 1e-9*math.Abs(high), 1e-12)
	for s := step; b.excess(high) < 0; s *= 8 {
		low, high = high, high+s
	}
	for s := step; b.excess(low) > 0; s *= 8 {
		low, high = low-s, low
	}
	return low, high
}

// excess is the volume that goes out beyond what comes in; it rises with p0.
func (b *balancer) excess(p0 float64) float64 {
	in, out := b.total(p0)
	return out - in*float64(b.sides.Expansion) - b.source
}

func (b *balancer) total(p0 float64) (in, out float64) {
	for i := range b.openings {
		if b.openings[i].Area > 0 {
			more, gone := b.through(&b.openings[i], p0)
			in, out = in+more, out+gone
		}
	}
	return in, out
}

// through is what passes one opening when the pressure at height 0 is p0.
func (b *balancer) through(o *Opening, p0 float64) (in, out float64) {
	bottom := p0 - b.slope*float64(o.Bottom()) - float64(o.Wind)
	top := p0 - b.slope*float64(o.Top()) - float64(o.Wind)
	if o.PipeLength > 0 {
		return b.pipe(o, (bottom+top)/2)
	}
	out, in = wall(bottom, top)
	scale := float64(o.Coefficient) * float64(o.Area) * math.Sqrt2
	out *= scale / math.Sqrt(float64(b.sides.Inside))
	in *= scale / math.Sqrt(float64(b.sides.Outside))
	if o.Face != Wall {
		both := b.horizontal(o, bottom)
		out, in = out+both, in+both/float64(b.sides.Expansion)
	}
	return in, out
}

// wall returns the means of √Δp over an opening across which Δp goes evenly from
// one value to the other: of the part above 0 and of the part below.
func wall(a, c float64) (above, below float64) {
	if a < c {
		a, c = c, a
	}
	switch {
	case c >= 0:
		return rootMean(a, c), 0
	case a <= 0:
		return 0, rootMean(-c, -a)
	}
	return 2. / 3 * a / (a - c) * math.Sqrt(a), 2. / 3 * -c / (a - c) * math.Sqrt(-c)
}

// rootMean is the mean of √p for p spread evenly from a to c, both not below 0:
// (2/3)·(a^1.5 − c^1.5)/(a − c), written so that nothing cancels.
func rootMean(a, c float64) float64 {
	if a == c {
		return math.Sqrt(a)
	}
	r, s := math.Sqrt(a), math.Sqrt(c)
	return 2. / 3 * (r*r + r*s + s*s) / (r + s)
}

// pipe is what passes an opening with a pipe behind it.
func (b *balancer) pipe(o *Opening, dp float64) (in, out float64) {
	rho := float64(b.sides.Inside)
	if dp < 0 {
		rho = float64(b.sides.Outside)
	}
	v := float64(o.Area) * pipeSpeed(math.Abs(dp), rho, float64(o.Coefficient), float64(o.PipeLength), float64(o.PipeBore))
	if dp < 0 {
		return v, 0
	}
	return 0, v
}

// horizontal is the exchange both ways through a hole in floor or ceiling, in m³/s,
// when dp presses across it.
func (b *balancer) horizontal(o *Opening, dp float64) float64 {
	contrast := float64(b.sides.Inside - b.sides.Outside)
	if o.Face == Ceiling {
		contrast = -contrast
	}
	if contrast <= 0 {
		return 0
	}
	mean := float64(b.sides.Inside+b.sides.Outside) / 2
	return float64(o.Coefficient) / float64(Coefficient) * horizontalExchange(float64(o.Area), contrast, mean, math.Abs(dp))
}
