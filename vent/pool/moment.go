package pool

import "lowvent.example/schema/unit"

// Moment is a time since the leak began, in s, or never. The zero Moment is at once.
type Moment struct {
	After unit.Duration // 0 if Never
	Never bool
}

// Sooner returns the earlier of two moments.
func Sooner(a, b Moment) Moment {
	if b.Never || (!a.Never && a.After <= b.After) {
		return a
	}
	return b
}

// Later returns the later of two moments; never is later than any.
func Later(a, b Moment) Moment {
	if a.Never || (!b.Never && a.After >= b.After) {
		return a
	}
	return b
}
