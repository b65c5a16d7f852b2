package vent

import (
	"slices"

	"lowvent.example/gas"
	"lowvent.example/gas/air"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
	"lowvent.example/vent/pool"
)

// gasArrives is how soon the gas of an appliance that burns on the room's air, its burners
// open and not lit, can lie flammable at an ignition source anywhere in the dwelling: over
// sills and down steps, for the appliance from which it is soonest. The stream that falls
// from a burner or over a sill is left out: whatever lies below one may stand in it at once.
var gasArrives = &check.Figure[unit.Duration, *layout.IgnitionSource]{
	ID: "ignition.gas-arrives", Title: "open burners, not lit: the layer of their gas is there as soon as this (what falls past, sooner; no time of warning)",
	Calc: func(s *check.Sheet, source *layout.IgnitionSource) unit.Duration {
		in, ok := check.Item(s, &source.In).(*layout.Space)
		if !ok {
			s.Missing("an ignition source in a space: gas runs to it there", source.In.Spot())
			return 0
		}
		plan := floorPlan(s)
		z := levelIn(in, at(s, source, &source.Position).box)
		soonest := pool.Moment{Never: true}
		steps := check.Formula{Source: pooled, Valid: "even floors without furniture, doors open; leaves out draughts; errs early"}
		t := check.Try(s, source, "t", steps, func() (unit.Duration, error) {
			for _, a := range plan.burners {
				arrived, err := plan.arrives(a, in, z)
				if err != nil {
					return 0, err
				}
				soonest = pool.Sooner(soonest, arrived)
			}
			return soonest.After, nil
		})
		if soonest.Never {
			s.Missing("a way by which gas runs there: there is none within a day, or no burner is open to the rooms", source.Spot())
		}
		return t
	},
}

// plan is the rooms of a dwelling with what can fill them.
type plan struct {
	index    map[*layout.Space]int
	space    pool.Space
	narrow   unit.Length // the narrowest doorway: gas stands deepest in it
	burners  []burner
	pressure unit.AbsolutePressure
}

// burner is an appliance whose gas comes into a room.
type burner struct {
	room int
	gas  unit.VolumeFlow
}

// floorPlan takes the spaces of the dwelling, their doorways and the appliances in them
// that burn on the air of the room. It is drawn at the values as written.
func floorPlan(s *check.Sheet) *plan {
	p := &plan{index: map[*layout.Space]int{}, pressure: gas.OutsidePressure(s)}
	for _, space := range check.List(s, &s.Layout().Spaces) {
		from, to := check.Corners(s, &space.Box)
		b := boxOf(from, to)
		bottom, _ := box.LowestPoint(b)
		top, _ := box.HighestPoint(b)
		p.index[space] = len(p.space.Rooms)
		p.space.Rooms = append(p.space.Rooms, pool.Room{Floor: bottom.Nominal, Top: top.Nominal, Area: box.FloorArea(b).Nominal})
	}
	for _, space := range s.Layout().Spaces.All() {
		for _, way := range check.List(s, &space.OpenTo) {
			p.join(s, space, way)
		}
	}
	for _, a := range check.List(s, &s.Layout().Appliances) {
		if check.Read(s, &a.Flue) == layout.FlueKindRoomSealed {
			continue
		}
		if space, ok := check.Item(s, &a.In).(*layout.Space); ok {
			p.burners = append(p.burners, burner{room: p.index[space], gas: openBurners(s, a)})
		}
	}
	return p
}

// join adds a doorway. One that both rooms list stands once, with the lower of its sills.
func (p *plan) join(s *check.Sheet, from *layout.Space, way *layout.Doorway) {
	to, ok := s.Layout().Find(layout.Ref("spaces/" + way.ID())).(*layout.Space)
	if !ok {
		return
	}
	sill, width := check.Measure(s, "z_sill", &way.Sill), check.Measure(s, "w", &way.Width)
	if s.Stuck() {
		return
	}
	a, b := p.index[from], p.index[to]
	level := p.space.Rooms[a].Floor + sill
	if float64(p.narrow) == 0 || width < p.narrow {
		p.narrow = width
	}
	i := slices.IndexFunc(p.space.Openings, func(o pool.Opening) bool { return o.A == b && o.B == a })
	if i >= 0 {
		p.space.Openings[i].Sill = min(p.space.Openings[i].Sill, level)
		return
	}
	p.space.Openings = append(p.space.Openings, pool.Opening{A: a, B: b, Sill: level, Width: width})
}

// arrives is how soon the gas of one burner can be flammable at a level of a room.
func (p *plan) arrives(from burner, in *layout.Space, level unit.Length) (pool.Moment, error) {
	filling, err := p.fill(from, unit.Duration(86400), pool.Point{Room: p.index[in], Level: level})
	if err != nil {
		return pool.Moment{}, err
	}
	return pool.Sooner(filling.Arrivals[0].Alone, filling.Arrivals[0].Layer), nil
}

// fill is where the gas of one burner stands after a time, just flammable.
func (p *plan) fill(from burner, after unit.Duration, points ...pool.Point) (pool.Filling, error) {
	filled := p.space
	filled.Leaks = []pool.Leak{{Room: from.room, Level: p.space.Rooms[from.room].Floor, Gas: from.gas}}
	filled.Points = points
	limit := propane.WidestRange().Lower
	stand, err := p.stand(from.gas, limit)
	if err != nil {
		return pool.Filling{}, err
	}
	return filled.Fill(pool.Layer{Share: limit, Stand: stand, EachWay: true}, after)
}

// stand is how deep the mixture stands over a sill while it runs over it.
func (p *plan) stand(flow unit.VolumeFlow, limit unit.Ratio) (unit.Length, error) {
	if float64(p.narrow) == 0 {
		return 0, nil
	}
	vapour, err := propane.VapourAt(warmDay, p.pressure)
	if err != nil {
		return 0, err
	}
	around, err := air.Density(p.pressure, warmDay)
	if err != nil {
		return 0, err
	}
	return pool.SpillDepth(pool.Densities{Gas: vapour.Density, Air: around}, limit, flow, p.narrow)
}

// levelIn is the level of the lowest point of a thing, within its room.
func levelIn(space *layout.Space, thing box.Box) unit.Length {
	z, _ := box.LowestPoint(thing)
	a, _ := space.Box.From.Get() // taken by floorPlan already
	b, _ := space.Box.To.Get()
	return min(max(z.Nominal, a[2].Nominal), b[2].Nominal)
}

var _ = show(check.Detail(check.Show(gasArrives, ignitionSources)))
