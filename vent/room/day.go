package room

import (
	"slices"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// day is the length of a day in s.
const day = 86400.0

// Spell is one stretch of use in a day; it repeats each day. Spells that overlap
// add up.
type Spell struct {
	Start    unit.Duration // s from midnight, below 24 h
	Lasts    unit.Duration // s, above 0, up to 24 h; it may go past midnight
	Exchange Exchange
	// Fan is outside air that comes in only while the spell lasts, m³/s as it is
	// outside; 0 for none. A fan that someone must switch on is no fresh air to
	// count on.
	Fan unit.VolumeFlow
}

// Use is what goes on in a room, from midnight of the first day, which begins
// with outside air, for a number of days.
type Use struct {
	Spells []Spell
	Days   int // 1 to 1000
}

// At returns what goes on at a time of the day, in s from midnight and below 24 h; fans
// left out.
func (u Use) At(t unit.Duration) Exchange {
	sum, _ := going(u.Spells, float64(t))
	return sum
}

func (u Use) valid() error {
	err := propane.Within("days", float64(u.Days), 1, 1000, "1")
	for _, s := range u.Spells {
		err = firstOf(err,
			propane.Within("start of a spell", float64(s.Start), 0, day, "s"),
			propane.Within("length of a spell", float64(s.Lasts), 1e-3, day, "s"),
			propane.Within("flow of a fan", float64(s.Fan), 0, 100, "m³/s"),
			s.Exchange.valid(),
		)
	}
	return err
}

// Moment is the air at a time.
type Moment struct {
	At  unit.Duration // s from midnight of the first day
	Air Air
}

// Outcome is what a use makes of the air. Each of the three is a peak, never a
// mean over hours.
type Outcome struct {
	CarbonDioxide Moment // where its dry share is highest
	Oxygen        Moment // where its share of the air as it is is lowest
	Water         Moment // where its share is highest
	End           Air
	// Exhausted says that the last oxygen would be used up. The course ends there:
	// worse than any limit.
	Exhausted bool
}

// Follow returns what a use makes of the air of a room over its days, with the
// room's fresh air and the fans of the spells.
//
// From one change of use to the next the flows are constant and [After] holds
// exactly; each share, the dry one too, then goes one way only, so that no peak
// lies between the changes.
//
// Valid as [After], and for spells as they say, else *[propane.RangeError]. Error
// size: as [After]; that of the pattern, which people estimate short, is larger.
//
// Source: balance of mass.
func Follow(r Room, use Use) (Outcome, error) {
	if err := firstOf(r.valid(), use.valid()); err != nil {
		return Outcome{}, err
	}
	parts := r.stretches(use.Spells)
	var out Outcome
	now := Moment{Air: r.Air}
	out.CarbonDioxide, out.Oxygen, out.Water = now, now, now
	for d := range use.Days {
		dawn := now.Air
		for _, p := range parts {
			length := p.end - p.start
			if last, ends := p.until(now.Air, [3]float64{1, 0, 0}, 0); ends && last <= length {
				length, out.Exhausted = last, true
			}
			now = Moment{At: unit.Duration(float64(d)*day + p.start + length), Air: p.at(now.Air, length)}
			if out.Exhausted {
				now.Air.Oxygen = 0 // it is all used up; what is left is the rounding of a float
				out.mark(now)
				out.End = now.Air
				return out, nil
			}
			out.mark(now)
		}
		if now.Air == dawn {
			break // each day that follows is the same
		}
	}
	out.End = now.Air
	return out, nil
}

func (o *Outcome) mark(now Moment) {
	if now.Air.Dry().CarbonDioxide > o.CarbonDioxide.Air.Dry().CarbonDioxide {
		o.CarbonDioxide = now
	}
	if now.Air.Oxygen < o.Oxygen.Air.Oxygen {
		o.Oxygen = now
	}
	if now.Air.Water > o.Water.Air.Water {
		o.Water = now
	}
}

// stretch is a part of the day, from start to end in s, with constant flows.
type stretch struct {
	start, end float64
	course
}

// stretches cuts a day where a spell starts or ends.
func (r Room) stretches(spells []Spell) []stretch {
	edges := []float64{0, day}
	for _, s := range spells {
		edges = append(edges, wrapped(float64(s.Start)), wrapped(float64(s.Start)+float64(s.Lasts)))
	}
	slices.Sort(edges)
	var parts []stretch
	for i, end := range edges[1:] {
		if start := edges[i]; end > start {
			e, fan := going(spells, start+(end-start)/2)
			parts = append(parts, stretch{start, end, r.course(e, r.Fresh+fan)})
		}
	}
	return parts
}

// wrapped brings a time of up to two days back into one.
func wrapped(t float64) float64 {
	if t >= day {
		return t - day
	}
	return t
}

// going is what goes on at a time of the day in s.
func going(spells []Spell, t float64) (sum Exchange, fan unit.VolumeFlow) {
	for _, s := range spells {
		since := t - wrapped(float64(s.Start))
		if since < 0 {
			since += day
		}
		if since < float64(s.Lasts) {
			sum = Together(sum, s.Exchange)
			fan += s.Fan
		}
	}
	return sum, fan
}
