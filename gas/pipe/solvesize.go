package pipe

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// Solution is the narrowest standard size for each run of a tree.
type Solution struct {
	Sizes    []Size    // by the index of the segment; a zero Size where the run keeps the bore it has
	Segments []Segment // the tree with those sizes
	Result   *Result   // what it loses
}

// SolveSizes returns the narrowest standard size for every run so that no sink loses
// more than the allowance, in Pa, by any of the methods of [Network]: the code
// equation over the longest length, its sum along the way, and Darcy with height.
//
// Each run starts from the narrowest size of its own material and is widened while
// its own code drop over the longest length is above the allowance; wider fittings
// lengthen the tree, so that this goes on until nothing changes. By the longest-length
// method no run could then be narrower with the others as they are. If a sink still
// loses too much by Darcy (a tall climb), the steepest run on its way is widened, which
// is the quick way and not proved to be the least pipe.
//
// Runs of a material without standard sizes keep the bore they have and count as they
// are. It fails as [Network], with *[NoSizeError] when the widest size does not do,
// and with *[NoTableError] or *[ExhaustedError] when a drop can't be known even so (a
// hose; corrugated tube at high pressure). The allowance is 1 Pa up to the outlet
// pressure, else *[propane.RangeError].
//
// The sizes are for the fitter's sheet: what is built is never to be made narrower on
// their account, and a code may ask for a least size.
func SolveSizes(supply Supply, segments []Segment, allowance unit.GaugePressure) (*Solution, error) {
	if err := supply.check(); err != nil {
		return nil, err
	}
	if err := propane.Within("allowance", float64(allowance), 1, float64(supply.Outlet), "Pa"); err != nil {
		return nil, err
	}
	z := sizing{allowance: allowance, at: make([]int, len(segments)), ladders: map[Material][]Size{}}
	z.segments = append(z.segments, segments...)
	for i := range z.segments {
		if z.ladder(i) != nil {
			z.set(i, 0)
		}
	}
	result, err := z.settle(supply)
	if err != nil {
		return nil, err
	}
	return z.solution(result), nil
}

// sizing is one search.
type sizing struct {
	allowance unit.GaugePressure
	segments  []Segment
	at        []int // the rung of each segment
	ladders   map[Material][]Size
}

// ladder is the standard sizes for a segment, nil when it has none.
func (z *sizing) ladder(i int) []Size {
	m := z.segments[i].Material
	sizes, found := z.ladders[m]
	if !found {
		sizes = Sizes(m)
		z.ladders[m] = sizes
	}
	return sizes
}

// set gives a segment the size of a rung.
func (z *sizing) set(i, rung int) {
	size := z.ladder(i)[rung]
	z.at[i], z.segments[i].Bore, z.segments[i].EHD = rung, size.Bore, size.EHD
}

// widen puts a segment one rung up.
func (z *sizing) widen(i int) error {
	if z.at[i]+1 >= len(z.ladder(i)) {
		return &NoSizeError{Segment: i, Material: z.segments[i].Material, Allowance: z.allowance}
	}
	z.set(i, z.at[i]+1)
	return nil
}

// settle widens first by the code, then by Darcy. Each round widens a run or ends, so
// that there are at most as many as there are rungs.
func (z *sizing) settle(supply Supply) (*Result, error) {
	if err := checkAll(z.segments); err != nil {
		return nil, err
	}
	order, err := upstreamLast(z.segments)
	if err != nil {
		return nil, err
	}
	n := newNetwork(supply, z.segments, order)
	n.loads()
	for changed := true; changed; {
		n.lengths()
		if changed, err = z.byCode(n); err != nil {
			return nil, err
		}
	}
	for {
		result, err := Network(supply, z.segments)
		done := false
		if err == nil {
			done, err = z.byDarcy(result)
		}
		if done || err != nil {
			return result, err
		}
	}
}

// byCode widens every run until its own drop over the longest length is within the
// allowance, at the lengths as they are.
func (z *sizing) byCode(n *network) (changed bool, err error) {
	for i := range z.segments {
		for {
			slope, reason := n.slope(i)
			drop := slope * float64(n.result.Longest)
			if reason == nil && (!n.high || drop < n.source*n.source) && n.drop(drop) <= z.allowance {
				break
			}
			if err := z.widen(i); err != nil {
				if reason != nil {
					err = reason
				}
				return changed, err
			}
			changed = true
		}
	}
	return changed, nil
}

// byDarcy widens the steepest run on the way to the first sink that loses too much.
func (z *sizing) byDarcy(result *Result) (done bool, err error) {
	for _, s := range result.Sinks {
		if s.NotKnown != nil {
			return false, s.NotKnown
		}
		if s.Worst() > z.allowance {
			return false, z.widenSteepest(result, s.Segment)
		}
	}
	return true, nil
}

func (z *sizing) widenSteepest(result *Result, sink int) error {
	steepest, most := -1, 0.0
	for i := sink; i != FromSource; i = z.segments[i].Parent {
		r := &result.Segments[i]
		slope := float64(r.Drop-r.Head) / max(float64(r.Equivalent), leastLength)
		if z.at[i]+1 < len(z.ladder(i)) && slope > most {
			steepest, most = i, slope
		}
	}
	if steepest < 0 {
		return &NoSizeError{Segment: sink, Material: z.segments[sink].Material, Allowance: z.allowance}
	}
	return z.widen(steepest)
}

func (z *sizing) solution(result *Result) *Solution {
	s := &Solution{Sizes: make([]Size, len(z.segments)), Segments: z.segments, Result: result}
	for i := range z.segments {
		if sizes := z.ladder(i); sizes != nil {
			s.Sizes[i] = sizes[z.at[i]]
		}
	}
	return s
}
