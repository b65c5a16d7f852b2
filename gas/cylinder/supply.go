package cylinder

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// Filled is a vessel with the propane in it.
type Filled struct {
	Vessel
	Propane unit.PropaneMass // kg, liquid and vapour
}

// Supply is a bank of vessels and what it is put to.
//
// Without Changeover the vessels are connected together, each behind a
// non-return valve: the warmest alone gives gas until it has cooled to the next,
// those that give have one pressure and so one temperature, and one that would
// take gas up gives none. With Changeover they serve one after another in order;
// one that could not feed is not gone back to, although it may be warm again
// later: an automatic changeover set by hand to the next side.
type Supply struct {
	Vessels    []Filled // 1 to 16
	Changeover bool
	Wall       unit.HeatTransfer // W/(m² K), of every vessel
	Start      unit.Temperature  // K, of liquid and metal, at midnight
	Least      unit.Temperature  // K, of the liquid, at which the pressure no longer feeds the regulator
	Air        Air
	Spells     []Spell       // of each day, the first included
	Horizon    unit.Duration // s, how long to look ahead, up to 3660 days
	Interval   unit.Duration // s between the points of the series; 0 for no series
}

// End tells how a run ended.
type End uint8

const (
	// Fed: the horizon was reached with every spell fed.
	Fed End = iota
	// Chilled: during a draw, or as one began, the liquid was so cold that its
	// pressure no longer feeds the regulator. Propane is left.
	Chilled
	// Emptied: no liquid is left in any vessel.
	Emptied
)

// String tells the end in words.
func (e End) String() string {
	return [...]string{"fed to the end of the time looked at", "too cold to feed the regulator", "empty"}[e]
}

// Sample is the state of a supply at one time.
type Sample struct {
	Time        unit.Duration         // s from midnight of the first day
	Propane     unit.PropaneMass      // kg in all vessels
	Temperature unit.Temperature      // K, of the liquid that feeds the regulator, or would
	Pressure    unit.AbsolutePressure // Pa, over that liquid
}

// Change is when a vessel gave out.
type Change struct {
	Time   unit.Duration
	Vessel int // index in Supply.Vessels
	End    End // Chilled or Emptied
	Left   unit.PropaneMass
}

// Outcome is what came of a run.
type Outcome struct {
	End    End
	Time   unit.Duration    // s, when it ended; the horizon if it was fed to there
	Used   unit.PropaneMass // kg, drawn
	Left   unit.PropaneMass // kg, in all vessels at the end; stranded when End is Chilled, though it may be of use again when warm
	Lowest Sample           // the coldest that the regulator was fed from, or would have been; within 0.05 K

	SpellsFed, SpellsNotFed int // that began before the horizon

	Changes []Change      // in order of time
	Days    int           // whole days until the first vessel, or the whole bank where connected together, is due for a swap, or the horizon
	Spare   unit.Duration // s that the others last from there on

	Series []Sample
}

// The bounds of a supply.
const (
	mostVessels = 16
	mostDays    = 3660.0
	mostSpells  = 64
	mostSamples = 100_000
)

// check reports what is out of range. The vessels must have room for their
// propane as liquid at the hottest temperature met.
func (s *Supply) check() error {
	if n := float64(len(s.Vessels)); n < 1 || n > mostVessels {
		return &propane.RangeError{Quantity: "number of vessels", Value: n, Low: 1, High: mostVessels, Unit: "(count)"}
	}
	if n := float64(len(s.Spells)); n > mostSpells {
		return &propane.RangeError{Quantity: "number of spells", Value: n, Low: 0, High: mostSpells, Unit: "(count)"}
	}
	for _, check := range []func() error{
		s.Air.check,
		func() error { return exchange(s.Wall, s.Air.Coldest) },
		func() error { return tempered("temperature at the start", s.Start) },
		func() error { return tempered("least temperature", s.Least) },
		s.checkTimes, s.checkSpells, s.checkVessels,
	} {
		if err := check(); err != nil {
			return err
		}
	}
	return nil
}

func (s *Supply) checkTimes() error {
	horizon, interval := float64(s.Horizon), float64(s.Interval)
	if !(horizon > 0 && horizon <= mostDays*day) {
		return &propane.RangeError{Quantity: "horizon", Value: horizon, Low: 0, High: mostDays * day, Unit: "s"}
	}
	if !(interval == 0 || interval >= horizon/mostSamples && interval <= mostDays*day) {
		return &propane.RangeError{Quantity: "interval of the series", Value: interval, Low: horizon / mostSamples, High: mostDays * day, Unit: "s"}
	}
	return nil
}

func (s *Supply) checkSpells() error {
	sum := 0.0
	for _, spell := range s.Spells {
		if err := spell.check(); err != nil {
			return err
		}
		sum += float64(spell.Draw)
	}
	return drawable(unit.MassFlow(sum))
}

func (s *Supply) checkVessels() error {
	hottest := max(float64(s.Start), float64(s.Air.Coldest)+float64(s.Air.Swing))
	liquid, err := propane.LiquidDensity(unit.Temperature(min(hottest, float64(propane.GreatestTemperature))))
	if err != nil {
		return err
	}
	for _, v := range s.Vessels {
		if err := v.Check(); err != nil {
			return err
		}
		if err := holds(v.Vessel, v.Propane, liquid); err != nil {
			return err
		}
	}
	return nil
}
