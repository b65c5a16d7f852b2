package cylinder

import "lowvent.example/schema/unit"

// BusyTime is one time of the day with its draws, told from its own start.
type BusyTime struct {
	Start  unit.Duration // s from midnight
	Lasts  unit.Duration // s
	Spells []Spell       // one after another, the first at 0
}

// BusyTimes returns the times of an ordinary day in which more is drawn than on the
// average of the whole day, in the order in which they begin; one that goes past
// midnight is one time. A day that draws evenly has none.
//
// They are what chills a cylinder: between them it warms up again. It fails with
// [*propane.RangeError] for spells that [Run] refuses.
//
// Source: definition.
func BusyTimes(spells []Spell) ([]BusyTime, error) {
	all := Supply{Spells: spells}
	if err := all.checkSpells(); err != nil {
		return nil, err
	}
	parts := stretches(spells)
	mean := 0.0
	for _, p := range parts {
		mean += p.flow * (p.end - p.start) / day
	}
	const rounding = 1 + 1e-9
	busy := func(i int) bool { return parts[i%len(parts)].flow > mean*rounding }
	var times []BusyTime
	for i := range parts {
		if before := i + len(parts) - 1; busy(i) && !busy(before) {
			times = append(times, busyFrom(parts, i, busy))
		}
	}
	return times, nil
}

// busyFrom takes the busy stretches from the i-th on, past midnight where they go on.
func busyFrom(parts []stretch, i int, busy func(int) bool) BusyTime {
	b := BusyTime{Start: unit.Duration(parts[i].start)}
	for ; busy(i); i++ {
		p := parts[i%len(parts)]
		lasts := unit.Duration(p.end - p.start)
		b.Spells = append(b.Spells, Spell{Start: b.Lasts, Lasts: lasts, Draw: unit.MassFlow(p.flow)})
		b.Lasts += lasts
	}
	return b
}
