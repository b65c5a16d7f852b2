package layout

// PlaceOf is the key that says in which space or locker a thing stands, or nil
// for things of which the contract does not ask it.
func PlaceOf(thing Item) *Given[Ref] {
	switch thing := thing.(type) {
	case *Cylinder:
		return &thing.In
	case *Changeover:
		return &thing.In
	case *Regulator:
		return &thing.In
	case *Junction:
		return &thing.In
	case *Joint:
		return &thing.In
	case *Appliance:
		return &thing.In
	case *OpenEnd:
		return &thing.In
	case *FillPoint:
		return &thing.In
	case *FlueJoint:
		return &thing.In
	}
	return placeAround(thing)
}

// placeAround is PlaceOf for what is no part of the gas installation.
func placeAround(thing Item) *Given[Ref] {
	switch thing := thing.(type) {
	case *IgnitionSource:
		return &thing.In
	case *Combustible:
		return &thing.In
	case *Stored:
		return &thing.In
	case *Fan:
		return &thing.In
	case *Stove:
		return &thing.In
	case *Exhaust:
		return &thing.In
	case *Alarm:
		return &thing.In
	case *Extinguisher:
		return &thing.In
	}
	return nil
}

// PositionOf is where a thing stands, or nil for things that have no position of
// their own.
func PositionOf(thing Item) *Position {
	if p, ok := thing.(interface{ position() *Position }); ok {
		return p.position()
	}
	return nil
}

func (p *Position) position() *Position { return p }

// ID of the whole layout is empty: there is one.
func (l *Layout) ID() string { return "" }

// Label names the layout as the subject of a check.
func (l *Layout) Label() string { return "the dwelling" }
