package cylinder

import "lowvent.example/schema/unit"

// Draw is one vessel put to one steady draw in air of one temperature.
type Draw struct {
	From  Filled
	Wall  unit.HeatTransfer // W/(m² K)
	Air   unit.Temperature  // K
	Start unit.Temperature  // K, of liquid and metal
	Least unit.Temperature  // K, see Supply.Least
	Flow  unit.MassFlow     // kg/s
}

// Hold is how long a draw is held.
type Hold struct {
	End  End           // Fed: for good, since nothing is drawn, or past ten years
	Time unit.Duration // s; 0 for good
	Used unit.PropaneMass
	Left unit.PropaneMass
}

// Holds returns how long a vessel feeds a steady draw: until the liquid has
// cooled to the least temperature, or until it is empty. Liquid and metal give
// their own heat first, the wall goes on giving, and the wetted wall shrinks with
// the mass, so that a draw above [Sustained] ends cold, and one below it can still
// end cold when little is left.
//
// A draw of zero holds for good. One that lasts past ten years is followed no further.
//
// Valid and errors as [Run]; error size as there, with the air as it is
// given: the coldest of a night is the cautious choice.
//
// Source: as [Run].
func Holds(d Draw) (Hold, error) {
	flow := float64(d.Flow)
	s := Supply{
		Vessels: []Filled{d.From}, Wall: d.Wall, Start: d.Start, Least: d.Least, Air: Air{Coldest: d.Air},
		Spells: []Spell{{Start: 0, Lasts: day, Draw: d.Flow}}, Horizon: mostDays * day,
	}
	if lasts := float64(d.From.Propane)/flow + day; lasts < mostDays*day {
		s.Horizon = unit.Duration(lasts)
	}
	if flow == 0 {
		s.Horizon = day
	}
	out, err := Run(s)
	if err != nil {
		return Hold{}, err
	}
	h := Hold{End: out.End, Time: out.Time, Used: out.Used, Left: out.Left}
	if flow == 0 {
		h.Time = 0
	}
	return h, nil
}
