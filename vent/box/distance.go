package box

import (
	"math"

	"lowvent.example/schema/unit"
)

// The formulas of this file as texts: d_x, d_y and d_z are the free distances
// along the axes in m, 0 where the boxes overlap along that axis; z_a is the
// highest point of the one, z_b the lowest point of the other.
const (
	GapFormula     = "d = sqrt(d_x*d_x + d_y*d_y + d_z*d_z)"
	PlanGapFormula = "d_plan = sqrt(d_x*d_x + d_y*d_y)"
	RiseFormula    = "h = z_b - z_a"
)

// Gap returns the least straight distance between two boxes in m, 0 when they
// touch or overlap:
//
//	d = √(dx² + dy² + dz²)
//
// Valid for all boxes. Error size: 1 nm and the bands of the coordinates. What
// stands between the boxes is not looked at: a way round it is longer, so the
// distance errs short, the cautious side for a separation. For round things it
// errs short as well, since their boxes have corners that they lack.
//
// Source: Euclid.
func Gap(a, b Box) unit.Value[unit.Length] {
	s, t := a.spans(), b.spans()
	return value[unit.Length](slant(slant(apart(s[0], t[0]), apart(s[1], t[1])), apart(s[2], t[2])))
}

// PlanGap returns the least distance between two boxes seen from above, in m: as
// [Gap], with the heights left out. It is never more than Gap.
//
//	d = √(dx² + dy²)
//
// Valid for all boxes; error size and side as [Gap]. Source: Euclid.
func PlanGap(a, b Box) unit.Value[unit.Length] {
	s, t := a.spans(), b.spans()
	return value[unit.Length](slant(apart(s[0], t[0]), apart(s[1], t[1])))
}

// VerticalGap returns the free height between two boxes in m, whichever is the
// higher, and 0 when their heights touch or overlap. Plan is left out: the boxes
// need not be one over the other. It is never more than [Gap].
//
// Valid for all boxes. Error size: 1 nm and the bands of the coordinates.
func VerticalGap(a, b Box) unit.Value[unit.Length] {
	return value[unit.Length](apart(a.spans()[2], b.spans()[2]))
}

// Rise returns how far the lowest point of b lies over the highest point of a,
// in m:
//
//	h = z_b − z_a
//
// It is negative when b reaches below the top of a. Plan is left out, as in
// [VerticalGap]. Valid for all boxes. Error size: 1 nm and the bands of the
// coordinates.
func Rise(a, b Box) unit.Value[unit.Length] {
	return value[unit.Length](b.spans()[2].from.minus(a.spans()[2].to))
}

// LowestPoint returns the height of the lowest point of the boxes in m, and
// false when there is none. With bands, Low is the least that any of them can
// be, High the most that the lowest can be.
func LowestPoint(boxes ...Box) (unit.Value[unit.Length], bool) {
	return extreme(boxes, func(s span) band { return s.from }, least)
}

// HighestPoint returns the height of the highest point of the boxes in m, and
// false when there is none; its band as that of [LowestPoint].
func HighestPoint(boxes ...Box) (unit.Value[unit.Length], bool) {
	return extreme(boxes, func(s span) band { return s.to }, most)
}

func extreme(boxes []Box, end func(span) band, pick func(a, b band) band) (unit.Value[unit.Length], bool) {
	if len(boxes) == 0 {
		return unit.Value[unit.Length]{}, false
	}
	found := end(boxes[0].spans()[2])
	for _, b := range boxes[1:] {
		found = pick(found, end(b.spans()[2]))
	}
	return value[unit.Length](found.minus(band{})), true // minus rounds
}

// slant joins two distances at a right angle; both are 0 or more.
func slant(a, b band) band {
	return band{snap(math.Hypot(a.low, b.low)), snap(math.Hypot(a.nominal, b.nominal)), snap(math.Hypot(a.high, b.high))}
}
