package pool

import "slices"

// settle passes every mark up to which the rooms in hit stand.
func (f *filler) settle() {
	for _, room := range f.hit {
		for f.passed[room] < f.start[room+1] && f.marks[f.passed[room]].level <= f.level[f.pool(room)] {
			f.passed[room]++
			f.pass(room, f.marks[f.passed[room]-1])
		}
	}
	for _, room := range f.hit {
		f.queue(f.pool(room))
	}
	f.hit = f.hit[:0]
}

// pass does what changes when the layer in a room stands at a mark.
func (f *filler) pass(room int, m mark) {
	pool := f.pool(room)
	switch m.kind {
	case drainMark:
		if f.eachWay {
			return
		}
		f.drain[pool] += float64(f.space.Drains[m.index].Carries)
	case topMark:
		f.area[pool] -= float64(f.space.Rooms[room].Area)
		f.full(pool)
	case sillMark:
		o := f.space.Openings[m.index]
		other := o.A + o.B - room
		if f.level[f.pool(other)] >= m.level {
			f.join(pool, f.pool(other))
		} else {
			f.into[m.index] = other
		}
	}
}

// full takes the last rounding off the floor of a pool whose rooms are all full.
func (f *filler) full(pool int) {
	open := false
	f.rooms(pool, func(room int) { open = open || f.level[pool] < float64(f.space.Rooms[room].Top) })
	if !open {
		f.area[pool] = 0
	}
}

// join makes one pool of two that stand at one level.
func (f *filler) join(a, b int) {
	if a == b {
		return
	}
	f.count(a)
	f.count(b)
	f.parent[b] = a
	f.ring[a], f.ring[b] = f.ring[b], f.ring[a]
	f.area[a] += f.area[b]
	f.drain[a] += f.drain[b]
	f.rise[b] = 0
}

// count adds up what a pool has drained and pressed out until now.
func (f *filler) count(pool int) {
	dt := f.time - f.since[pool]
	f.drained += f.drains[pool] * dt
	f.pressed += f.press[pool] * dt
	f.since[pool] = f.time
}

// queue notes a pool whose flows may have changed.
func (f *filler) queue(pool int) {
	if f.queued[pool] {
		return
	}
	f.queued[pool] = true
	at, _ := slices.BinarySearchFunc(f.dirty, f.level[pool], func(other int, level float64) int {
		if f.level[other] < level {
			return -1
		}
		return 1
	})
	f.dirty = slices.Insert(f.dirty, at, pool)
}

// spread works out the flows of the pools in dirty and of those that they run into. Gas
// only ever runs to a lower level, so that, highest first, each is met once, after all
// that runs into it.
func (f *filler) spread() {
	for len(f.dirty) > 0 {
		last := len(f.dirty) - 1
		pool := f.dirty[last]
		f.dirty, f.queued[pool] = f.dirty[:last], false
		if f.parent[pool] != pool {
			continue
		}
		f.count(pool)
		width := f.gather(pool)
		f.drains[pool] = min(f.flow[pool], f.drain[pool])
		f.pour(pool, width)
		f.lift(pool, width)
	}
}

// gather sums up what comes into a pool and over what width it spills, and notes what
// the layer touches and the next mark.
func (f *filler) gather(pool int) (width float64) {
	f.flow[pool], f.goal[pool] = 0, forever
	f.rooms(pool, func(room int) {
		f.flow[pool] += f.leaks[room]
		f.sills(room, func(i int, in bool) {
			if in {
				f.flow[pool] += f.over[i]
			} else {
				width += float64(f.space.Openings[i].Width)
			}
		})
		if at := f.passed[room]; at < f.start[room+1] {
			f.goal[pool] = min(f.goal[pool], f.marks[at].level)
		}
	})
	if f.eachWay { // ways that meet again would count the gas twice
		f.flow[pool] = min(f.flow[pool], f.total)
	}
	if f.flow[pool] > 0 {
		f.rooms(pool, f.touch)
	}
	return width
}

// sills calls what for every opening of a room over which gas can run, and tells
// whether it runs into the room.
func (f *filler) sills(room int, what func(opening int, in bool)) {
	for _, m := range f.marksOf(room) {
		if m.kind != sillMark || f.into[m.index] < 0 {
			continue
		}
		if o := f.space.Openings[m.index]; f.pool(o.A) != f.pool(o.B) {
			what(m.index, f.into[m.index] == room)
		}
	}
}

// touch notes the points of a room at which the layer stands now.
func (f *filler) touch(room int) {
	level := f.level[f.pool(room)]
	for ; f.touched[room] < f.start[room+1] && f.marks[f.touched[room]].level <= level; f.touched[room]++ {
		if m := f.marks[f.touched[room]]; m.kind == pointMark {
			f.reached[m.index] = f.time
		}
	}
}

// pour parts what a pool does not drain among the openings over which it spills, or
// sends all of it each way.
func (f *filler) pour(pool int, width float64) {
	if width == 0 {
		return
	}
	rest := f.flow[pool] - f.drains[pool]
	f.rooms(pool, func(room int) {
		f.sills(room, func(i int, in bool) {
			over := rest
			if !f.eachWay {
				over *= float64(f.space.Openings[i].Width) / width
			}
			if in || over == f.over[i] {
				return
			}
			f.over[i] = over
			f.spilled[i] = min(f.spilled[i], f.time)
			f.queue(f.pool(f.into[i]))
		})
	})
}

// lift sets how fast a pool rises, or what it presses out.
func (f *filler) lift(pool int, width float64) {
	rest := f.flow[pool] - f.drains[pool]
	f.rise[pool], f.press[pool] = 0, 0
	switch {
	case width > 0 || rest == 0:
	case f.area[pool] > 0:
		f.rise[pool] = rest / f.area[pool]
	case f.goal[pool] < forever:
		f.rise[pool] = atOnce
	default:
		f.press[pool] = rest
	}
	if f.rise[pool] > 0 && !f.listed[pool] {
		f.listed[pool] = true
		f.rising = append(f.rising, pool)
	}
}

// atOnce is how fast, in m/s, gas rises out of a full bay to the hatch above it.
const atOnce = 1e300

// next returns how long it takes until a pool rises to its next mark.
func (f *filler) next() float64 {
	dt, kept := forever, f.rising[:0]
	for _, pool := range f.rising {
		if f.listed[pool] = f.rise[pool] > 0; f.listed[pool] {
			kept = append(kept, pool)
			dt = min(dt, (f.goal[pool]-f.level[pool])/f.rise[pool])
		}
	}
	f.rising = kept
	return dt
}

// advance lets dt pass; the pools that rise to their next mark in just that time, and
// those that rounding would carry over theirs, then stand at it.
func (f *filler) advance(dt, next float64) {
	f.time += dt
	for _, pool := range f.rising {
		to := f.level[pool] + f.rise[pool]*dt
		if to >= f.goal[pool] || (dt == next && (f.goal[pool]-f.level[pool])/f.rise[pool] == next) {
			to = f.goal[pool]
			f.rooms(pool, func(room int) { f.hit = append(f.hit, room) })
		}
		f.level[pool] = to
	}
}
