package pool

import (
	"cmp"
	"math"
	"slices"
)

// forever is the time in s of what does not happen.
const forever = math.MaxFloat64

// markKind tells what changes when a layer rises to a mark.
type markKind uint8

const (
	pointMark markKind = iota
	drainMark
	sillMark
	topMark
)

// mark is a level of a room at which something changes.
type mark struct {
	level float64 // m
	index int     // of the point, drain or opening
	kind  markKind
}

// filler is the state of one [Space.Fill]. All flows and volumes are of mixture, in
// m³/s and m³. A pool is the rooms whose layers stand at one level and run into each
// other; one of its rooms stands for it.
type filler struct {
	space       *Space
	thin, stand float64 // share of gas; m
	eachWay     bool
	total       float64 // all that leaks

	leaks   []float64 // per room: mixture made
	leakTop []float64 // per room: the highest leak, −forever if none
	marks   []mark    // room by room, in order of level
	start   []int     // per room: where its marks begin, with an end
	passed  []int     // per room: the next mark that has not been passed
	touched []int     // per room: the next mark that has not been looked at for points

	parent []int     // per room: towards the room that stands for its pool
	ring   []int     // per room: the next of its pool, the last the first
	level  []float64 // per pool: where it stands
	area   []float64 // per pool: floor on which it rises
	drain  []float64 // per pool: what its drains can carry
	flow   []float64 // per pool: what comes in
	rise   []float64 // per pool: m/s
	goal   []float64 // per pool: its next mark, m
	drains []float64 // per pool: what its drains do carry
	press  []float64 // per pool: what it presses out
	since  []float64 // per pool: the time from which on both are to be counted
	queued []bool    // per pool: is it in dirty
	listed []bool    // per pool: is it in rising

	into    []int     // per opening: the room into which gas runs, −1 as long as it is dry
	over    []float64 // per opening: what runs over
	spilled []float64 // per opening: since when
	reached []float64 // per point: since when the layer stands there

	dirty  []int // pools whose flows may have changed, by level
	rising []int // pools that rise, and some that no longer do
	hit    []int // rooms whose pools have come to a mark

	time, drained, pressed float64
}

func newFiller(s *Space, layer Layer) *filler {
	n := len(s.Rooms)
	numbers := make([]float64, 11*n) // one block for all that is per room or pool
	of := func() []float64 {
		part := numbers[:n:n]
		numbers = numbers[n:]
		return part
	}
	places, flags := make([]int, 4*n), make([]bool, 2*n)
	f := &filler{space: s, thin: float64(layer.Share), stand: float64(layer.Stand), eachWay: layer.EachWay,
		leaks: of(), leakTop: of(), level: of(), area: of(), drain: of(), flow: of(), rise: of(), goal: of(), drains: of(), press: of(), since: of(),
		passed: places[:n:n], touched: places[n : 2*n : 2*n], parent: places[2*n : 3*n : 3*n], ring: places[3*n:],
		queued: flags[:n:n], listed: flags[n:],
		into: make([]int, len(s.Openings)), over: make([]float64, len(s.Openings)),
		spilled: lasting(len(s.Openings)), reached: lasting(len(s.Points))}
	for i, r := range s.Rooms {
		f.parent[i], f.ring[i], f.level[i], f.area[i], f.leakTop[i] = i, i, float64(r.Floor), float64(r.Area), -forever
	}
	for i := range f.into {
		f.into[i] = -1
	}
	for _, l := range s.Leaks {
		f.leaks[l.Room] += float64(l.Gas) / f.thin
		f.total += float64(l.Gas) / f.thin
		f.leakTop[l.Room] = max(f.leakTop[l.Room], float64(l.Level))
	}
	f.collect()
	return f
}

// lasting makes a list of n times that have not come.
func lasting(n int) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = forever
	}
	return list
}

// collect makes the marks of every room, in order of level.
func (f *filler) collect() {
	s := f.space
	count := make([]int, len(s.Rooms)+1)
	f.each(func(room int, _ mark) { count[room+1]++ })
	for i := range s.Rooms {
		count[i+1] += count[i]
	}
	f.start, f.marks = count, make([]mark, count[len(s.Rooms)])
	copy(f.passed, count)
	f.each(func(room int, m mark) {
		f.marks[f.passed[room]] = m
		f.passed[room]++
	})
	for room := range s.Rooms {
		slices.SortFunc(f.marksOf(room), func(a, b mark) int {
			return cmp.Or(cmp.Compare(a.level, b.level), cmp.Compare(a.kind, b.kind), cmp.Compare(a.index, b.index))
		})
	}
	copy(f.passed, count)
	copy(f.touched, count)
}

// each calls what for every mark of every room.
func (f *filler) each(what func(room int, m mark)) {
	s := f.space
	for i, p := range s.Points {
		what(p.Room, mark{float64(p.Level) - f.stand, i, pointMark})
	}
	for i, d := range s.Drains {
		what(d.Room, mark{float64(d.Level), i, drainMark})
	}
	for i, o := range s.Openings {
		m := mark{s.sill(o), i, sillMark}
		what(o.A, m)
		what(o.B, m)
	}
	for i, r := range s.Rooms {
		what(i, mark{float64(r.Top), i, topMark})
	}
}

// rooms calls what for every room of a pool.
func (f *filler) rooms(pool int, what func(room int)) {
	what(pool)
	for room := f.ring[pool]; room != pool; room = f.ring[room] {
		what(room)
	}
}

func (f *filler) marksOf(room int) []mark { return f.marks[f.start[room]:f.start[room+1]] }

// pool returns the room that stands for the pool of a room.
func (f *filler) pool(room int) int {
	for f.parent[room] != room {
		f.parent[room] = f.parent[f.parent[room]]
		room = f.parent[room]
	}
	return room
}
