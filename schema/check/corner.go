package check

import (
	"math/bits"
	"slices"
)

// maxCorners bounds how many values with a tolerance one clause may take: each
// doubles the corners to be tried. Clauses that are joined by and count apart.
const maxCorners = 10

// picker chooses, for every value that has a tolerance, the end of its band that
// belongs to the corner being tried. The first pass meets the values and takes
// each as written; each later pass is one corner.
type picker struct {
	up     *picker    // of the clause that this one is a part of: its choices stand
	met    []variable // in the order in which they were met
	corner uint64
	first  bool
}

// variable names a value with a tolerance: the *layout.Spot at which it is stated, the
// *computed of a figure, or in words what was computed.
type variable any

func (p *picker) knows(v variable) bool {
	return p != nil && (slices.Contains(p.met, v) || p.up.knows(v))
}

func (p *picker) choose(v variable, low, nominal, high float64) float64 {
	if p == nil || low == high {
		return nominal
	}
	if p.up.knows(v) {
		return p.up.choose(v, low, nominal, high)
	}
	i := slices.Index(p.met, v)
	if i < 0 {
		i = len(p.met)
		p.met = append(p.met, v)
	}
	switch {
	case p.first || i >= maxCorners:
		return nominal
	case p.corner&(1<<i) != 0:
		return high
	}
	return low
}

// corners calls try once with every value as written, then at every corner of
// the bands that it met, at the corner at which up is. A branch that meets further
// values widens the search. It reports false when there were more bands than it
// can try.
func corners(up *picker, try func(*picker)) bool {
	p := &picker{up: up, first: true}
	try(p)
	p.first = false
	for p.corner = 0; len(p.met) > 0 && len(p.met) <= maxCorners && bits.Len64(p.corner) <= len(p.met); p.corner++ {
		try(p)
	}
	return len(p.met) <= maxCorners
}
