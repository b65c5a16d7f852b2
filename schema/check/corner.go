package check

import "math/bits"

// maxCorners bounds how many values with a tolerance one clause may take: each
// doubles the corners to be tried. Clauses that are joined by and count apart.
const maxCorners = 10

// picker chooses, for every value that has a tolerance, the end of its band that
// belongs to the corner being tried. The first pass meets the values and takes
// each as written; each later pass is one corner.
type picker struct {
	up     *picker // of the clause that this one is a part of: its choices stand
	index  map[string]int
	corner uint64
	first  bool
}

func (p *picker) knows(name string) bool {
	if p == nil {
		return false
	}
	_, met := p.index[name]
	return met || p.up.knows(name)
}

func (p *picker) choose(name string, low, nominal, high float64) float64 {
	if p == nil || low == high {
		return nominal
	}
	if p.up.knows(name) {
		return p.up.choose(name, low, nominal, high)
	}
	i, met := p.index[name]
	if !met {
		i = len(p.index)
		p.index[name] = i
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
	p := &picker{up: up, index: map[string]int{}, first: true}
	try(p)
	p.first = false
	for p.corner = 0; len(p.index) > 0 && len(p.index) <= maxCorners && bits.Len64(p.corner) <= len(p.index); p.corner++ {
		try(p)
	}
	return len(p.index) <= maxCorners
}
