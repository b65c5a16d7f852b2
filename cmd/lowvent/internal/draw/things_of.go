package draw

import "lowvent.example/schema/layout"

func (s *scene) spaces(l *layout.Layout) {
	for _, p := range l.Spaces.All() {
		s.boxed(p, isSpace, &p.Box, stated("use", &p.Use))
	}
	for _, k := range l.Lockers.All() {
		s.boxed(k, isLocker, &k.Box, "")
	}
}

// around is what may light, burn or warn, and is no part of the gas installation.
func (s *scene) around(l *layout.Layout) {
	for _, c := range l.Combustibles.All() {
		s.standing(c, isCombustible, &c.Position, stated("kind", &c.Kind))
	}
	for _, v := range l.Stoves.All() {
		s.standing(v, isStove, &v.Position, stated("fuel", &v.Fuel))
	}
	for _, e := range l.Exhausts.All() {
		s.standing(e, isExhaust, &e.Position, stated("kind", &e.Kind), endsOf(&e.Outlet, "exhaust outlet")...)
	}
	for _, g := range l.Stored.All() {
		s.standing(g, isStored, &g.Position, stated("kind", &g.Kind))
	}
	for _, i := range l.IgnitionSources.All() {
		s.standing(i, isIgnition, &i.Position, stated("kind", &i.Kind))
	}
	for _, f := range l.Fans.All() {
		s.standing(f, isFan, &f.Position, stated("direction", &f.Direction))
	}
	for _, a := range l.Alarms.All() {
		s.standing(a, isAlarm, &a.Position, stated("kind", &a.Kind))
	}
	for _, e := range l.Extinguishers.All() {
		s.standing(e, isExtinguisher, &e.Position, "")
	}
}

// fabric is the ways by which air, gas and fumes go in and out.
func (s *scene) fabric(l *layout.Layout) {
	for _, o := range l.Openings.All() {
		s.standing(o, isOpening, &o.Position, stated("kind", &o.Kind))
	}
	for _, v := range l.FixedVents.All() {
		s.pointed(&thing{item: v, sort: isFixedVent, word: stated("level", &v.Level), means: suffix(stated("level", &v.Level) + endsWords(&v.EndsIn))}, &v.At)
	}
	for _, f := range l.Flues.All() {
		s.flue(f)
	}
}

// flue stands where its terminal is, or where it takes its air.
func (s *scene) flue(f *layout.Flue) {
	ends := append(endsOf(&f.Terminal.At, "terminal"), endsOf(&f.Intake.At, "intake")...)
	t := &thing{item: f, sort: isFlue, point: true, word: stated("kind", &f.Kind), means: suffix(stated("kind", &f.Kind)), ends: ends}
	if len(ends) > 0 {
		t.solid = spot(ends[0].at)
	}
	s.add(t, len(ends) > 0)
}

// gear is the gas installation.
func (s *scene) gear(l *layout.Layout) {
	for _, a := range l.Appliances.All() {
		s.standing(a, isAppliance, &a.Position, stated("kind", &a.Kind))
		if last := len(s.things) - 1; a.Position.Known() && !s.things[last].point {
			s.things[last].room, s.things[last].cleared = clearanceRoom(a, s.things[last].solid)
		}
	}
	for _, n := range l.Lines.All() {
		s.line(n)
	}
	for _, j := range l.Junctions.All() {
		s.standing(j, isJunction, &j.Position, stated("kind", &j.Kind))
	}
	for _, e := range l.OpenEnds.All() {
		s.standing(e, isOpenEnd, &e.Position, stated("how it is closed", &e.End))
	}
	for _, o := range l.Outlets.All() {
		s.standing(o, isOutlet, &o.Position, "")
	}
	for _, p := range l.FillPoints.All() {
		s.standing(p, isFillPoint, &p.Position, "")
	}
	for _, c := range l.Cylinders.All() {
		s.cylinder(c)
	}
	for _, c := range l.Changeovers.All() {
		s.standing(c, isChangeover, &c.Position, "")
	}
	for _, r := range l.Regulators.All() {
		s.standing(r, isRegulator, &r.Position, "")
	}
	for _, k := range l.Lockers.All() {
		for _, v := range k.Vents.All() {
			s.vent(v)
		}
	}
}

// line lies along its route; one without a route has no place.
func (s *scene) line(n *layout.Line) {
	route, known := n.Route.Get()
	t := &thing{item: n, sort: isLine, word: string(s.zones.of(n)), means: suffix(stated("kind", &n.Kind))}
	for _, p := range route {
		t.way = append(t.way, placeAt(p))
	}
	if known = known && len(route) > 0; known {
		t.solid = spot(t.way[0])
	}
	s.add(t, known)
	for _, c := range n.Shutoffs.All() {
		if kind, known := c.Kind.Get(); !known || kind == layout.ShutoffKindManualValve || kind == layout.ShutoffKindSolenoid {
			s.pointed(&thing{item: c, sort: isShutoff, word: stated("kind", &c.Kind), means: " of line " + n.ID() + suffix(stated("kind", &c.Kind)+reachWords(c))}, &c.At)
		}
	}
}

// reachWords tells from where a shut-off is reached.
func reachWords(c *layout.Shutoff) string {
	reach, known := c.Reach.Get()
	if !known {
		return ", from where it is reached is not known"
	}
	return ", reached from " + spelled(string(reach))
}

// cylinder takes the box that is stated, or the circle about its foot.
func (s *scene) cylinder(c *layout.Cylinder) {
	from, to, ok := c.Corners()
	t := &thing{item: c, sort: isCylinder, word: stated("role", &c.Role), means: suffix(stated("role", &c.Role))}
	if ok {
		t.solid = solidOf(from, to)
	}
	diameter, wide := c.Diameter.Get()
	height, high := c.Height.Get()
	if ok && !c.Box.Present() && wide && high {
		t.round = float64(diameter.Nominal)
		t.solid = t.solid.with(t.solid.standing(t.round, float64(height.Nominal)))
	}
	if s.add(t, ok); ok && t.point {
		t.means += ", its size is not known"
	}
}

// standing is the room of a round thing on a place.
func (s solid) standing(diameter, height float64) solid {
	m := s.from
	return solid{place{m[0] - diameter/2, m[1] - diameter/2, m[2]}, place{m[0] + diameter/2, m[1] + diameter/2, m[2] + height}}
}

func (s *scene) vent(v *layout.LockerVent) {
	ends := endsOf(&v.EndsAt, "end")
	t := &thing{item: v, sort: isLockerVent, word: stated("level", &v.Level), means: suffix(stated("level", &v.Level) + endsWords(&v.EndsIn)), ends: ends}
	if !v.At.Known() && len(ends) > 0 {
		t.solid, t.point = spot(ends[0].at), true
		s.add(t, true)
		return
	}
	s.pointed(t, &v.At)
}

func endsOf(p *layout.Given[layout.Point], what string) []end {
	at, known := p.Get()
	if !known {
		return nil
	}
	return []end{{placeAt(at), what}}
}

// endsWords tells what the outer end of a vent opens into.
func endsWords(e *layout.VentEnd) string {
	kind, known := e.Kind.Get()
	if !known {
		return ", what it ends in is not known"
	}
	if kind == layout.VentEndingOverboard {
		return ", ends overboard"
	}
	return ", ends in " + spelled(string(kind))
}
