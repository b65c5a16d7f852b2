package handoff

import (
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/layout"
)

// schedules are the tables of load, regulator, pipe and ventilation. The sizes that the
// program solved stand here and nowhere on the builder's pages.
func schedules(m *Matter) []paper.Section {
	return []paper.Section{
		{ID: "loads", Title: "Load schedule", NewPage: true, Blocks: []paper.Block{loads(m), regulators(m)}},
		{ID: "pipes", Title: "Pipe schedule, with the sizes that the program solved", Blocks: []paper.Block{
			&paper.Para{Text: "For the licensed fitter's use. What is built is never to be made narrower on account of a solved size: a code may ask for more than the flow does, and the narrowest that carries the load is the edge.", Strong: true},
			pipes(m), orNone(constants(m, "What the solved sizes were reckoned with", solved), "No size could be solved.")}},
		{ID: "ventilation", Title: "Ventilation schedule", Blocks: []paper.Block{lockerVents(m), spaceVents(m)}},
	}
}

func loads(m *Matter) paper.Block {
	t := &paper.Table{Caption: "Load: connected " + m.figure("dwelling.connected-load", "") + ", all burners on", Small: true,
		Columns: columns([]string{"appliance", "kind", "in", "input", "gross or net", "pressure with everything on", "measured by the fitter"}, 2, 2, 2, 3, 1.4, 3, 2)}
	for _, a := range m.Layout.Appliances.All() {
		input := amount(&a.Plate.Input)
		if !a.Plate.Input.Known() {
			input = amount(&a.Plate.Consumption)
		}
		t.Rows = append(t.Rows, []paper.Cell{text(a.Label()), text(word(&a.Kind)), text(word(&a.In)), text(input), text(word(&a.Plate.Basis)),
			text(m.figure("appliance.running-pressure", a.Spot().Pointer())), blank()})
	}
	return orNone(t, "The file lists no appliance.")
}

func regulators(m *Matter) paper.Block {
	t := &paper.Table{Caption: "Regulators", Small: true,
		Columns: columns([]string{"regulator", "outlet", "capacity", "relief", "lock-up", "feeds in the cold", "if it fails open", "test point"}, 2, 2.4, 2.6, 2, 2.4, 2.6, 2.4, 1.2)}
	for _, r := range m.Layout.Regulators.All() {
		at := r.Spot().Pointer()
		capacity := amount(&r.Capacity)
		if !r.Capacity.Known() {
			capacity = amount(&r.CapacityGas)
		}
		t.Rows = append(t.Rows, []paper.Cell{text(r.Label()), text(amount(&r.Outlet)), text(capacity), text(amount(&r.Relief)), text(amount(&r.LockUp)),
			text(m.figure("regulator.cold-draw", at)), text(m.figure("regulator.failed-pressure", at)), text(yes(&r.TestPoint))})
	}
	return orNone(t, "The file lists no regulator.")
}

func pipes(m *Matter) paper.Block {
	t := &paper.Table{Caption: "Lines, in the order of their names; drops with everything on", Small: true,
		Columns: columns([]string{"line", "from, to", "kind", "outside, wall", "length; with fittings", "load", "drop by the code's equation", "drop by friction", "bore needed", "narrowest standard outside"},
			1.5, 2.4, 1.6, 2, 2.4, 2, 2, 2, 2, 2)}
	for _, line := range m.Layout.Lines.All() {
		at := line.Spot().Pointer()
		t.Rows = append(t.Rows, []paper.Cell{text(line.ID()), text(word(&line.From) + " to " + word(&line.To)), text(word(&line.Kind)),
			text(size(line)), text(amount(&line.Length) + "; " + m.figure("line.length-with-fittings", at)),
			text(m.figure("line.load", at)), text(m.figure("line.drop-by-code", at)), text(m.figure("line.drop-by-friction", at)),
			text(m.figure("line.least-bore", at)), text(m.figure("line.least-size", at))})
	}
	return orNone(t, "The file lists no line.")
}

func lockerVents(m *Matter) paper.Block {
	t := &paper.Table{Caption: "Vents of lockers", Small: true,
		Columns: columns([]string{"vent", "level", "in", "gross", "cover, open share", "lower edge over the lowest point", "ends in", "can be shut", "free, all of its level"}, 2.4, 1, 1.2, 2, 2, 2, 2, 1.2, 2.4)}
	for _, k := range m.Layout.Lockers.All() {
		for _, v := range k.Vents.All() {
			free := m.figure("locker.low-vent-free-area", k.Spot().Pointer())
			if level, _ := v.Level.Get(); level == layout.VentLevelHigh {
				free = m.figure("locker.high-vent-free-area", k.Spot().Pointer())
			}
			t.Rows = append(t.Rows, []paper.Cell{text(k.Label() + ", " + v.ID()), text(word(&v.Level)), text(word(&v.Wall)), text(amount(&v.Gross)),
				text(word(&v.Cover.Kind) + ", " + amount(&v.Cover.Open)), text(amount(&v.LowerEdge)), text(word(&v.EndsIn.Kind)), text(yes(&v.Closable)), text(free)})
		}
	}
	return orNone(t, "The file lists no vent of a locker.")
}

func spaceVents(m *Matter) paper.Block {
	t := &paper.Table{Caption: "Fixed vents of spaces", Small: true,
		Columns: columns([]string{"vent", "of", "level", "gross", "cover, open share", "can be shut", "free, all of its level in the space"}, 2.4, 2, 1, 2, 2.4, 1.2, 3)}
	for _, v := range m.Layout.FixedVents.All() {
		of, _ := v.Of.Get()
		free := m.figure("space.low-vent-free-area", "/"+string(of))
		if level, _ := v.Level.Get(); level == layout.VentLevelHigh {
			free = m.figure("space.high-vent-free-area", "/"+string(of))
		}
		t.Rows = append(t.Rows, []paper.Cell{text(v.ID()), text(word(&v.Of)), text(word(&v.Level)), text(amount(&v.Gross)), text(word(&v.Cover.Kind) + ", " + amount(&v.Cover.Open)), text(yes(&v.Closable)), text(free)})
	}
	return orNone(t, "The file lists no fixed vent of a space.")
}

// materials is what the lines are made of, for the fitter to confirm.
func materials(m *Matter) paper.Section {
	t := &paper.Table{Caption: "For the fitter to confirm before anything is bought", Small: true,
		Columns: columns([]string{"part", "kind", "standard", "size", "length or count", "confirmed, or what instead"}, 2, 2.4, 3, 2.4, 2, 4)}
	for _, line := range m.Layout.Lines.All() {
		t.Rows = append(t.Rows, []paper.Cell{text(line.Label()), text(word(&line.Kind)), text(word(&line.Standard)), text(size(line)),
			text(amount(&line.Length)), blank()})
	}
	for _, c := range m.Layout.Changeovers.All() {
		t.Rows = append(t.Rows, []paper.Cell{text(c.Label()), text("changeover, automatic: " + yes(&c.Automatic) + ", non-return: " + yes(&c.NonReturn)), text(""), text("for " + words(&c.Connects)), text("1"), blank()})
	}
	for _, r := range m.Layout.Regulators.All() {
		t.Rows = append(t.Rows, []paper.Cell{text(r.Label()), text("regulator"), text(word(&r.Standard)), text(amount(&r.Outlet)), text("1"), blank()})
	}
	for _, a := range m.Layout.Alarms.All() {
		t.Rows = append(t.Rows, []paper.Cell{text(a.Label()), text("alarm, " + word(&a.Kind)), text(word(&a.Standard)), text(""), text("1"), blank()})
	}
	return paper.Section{ID: "materials", Title: "Materials", Blocks: []paper.Block{orNone(t, "The file lists no line, regulator or alarm.")}}
}
