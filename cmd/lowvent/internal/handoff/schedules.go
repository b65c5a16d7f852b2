package handoff

import (
	"fmt"
	"strings"

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
			pipes(m), flows(m), orNone(constants(m, "What the solved sizes were reckoned with", solved), "No size could be solved.")}},
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
	t := &paper.Table{Caption: "Lines as built, in the order of their names", Small: true,
		Columns: columns([]string{"line", "from", "to", "kind", "outside, wall", "length", "length with fittings"}, 1.6, 2, 2, 1.6, 2.6, 2, 2)}
	for _, line := range m.Layout.Lines.All() {
		t.Rows = append(t.Rows, []paper.Cell{text(line.ID()), text(word(&line.From)), text(word(&line.To)), text(word(&line.Kind)),
			text(size(line)), text(amount(&line.Length)), text(m.figure("line.length-with-fittings", line.Spot().Pointer()))})
	}
	return orNone(t, "The file lists no line.")
}

// flows is what goes through each line with everything on, and what it needs for that.
func flows(m *Matter) paper.Block {
	t := &paper.Table{Caption: "Flow with everything on, behind a regulator that works", Small: true,
		Columns: columns([]string{"line", "load", "drop by the code's equation", "drop by friction", "bore needed", "narrowest standard outside"}, 1.6, 2.4, 2.2, 2.2, 2.2, 2.2)}
	for _, line := range m.Layout.Lines.All() {
		row := []paper.Cell{text(line.ID())}
		for _, id := range []string{"line.load", "line.drop-by-code", "line.drop-by-friction", "line.least-bore", "line.least-size"} {
			row = append(row, text(m.figure(id, line.Spot().Pointer())))
		}
		t.Rows = append(t.Rows, row)
	}
	return orNone(t, "No flow is known: the file lists no line.")
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

// materials is what is built in now, for the fitter to confirm. A part with an open finding
// is named as one not to be bought again as it is.
func materials(m *Matter) paper.Section {
	t := &paper.Table{Caption: "For the fitter to confirm before anything is bought", Small: true,
		Columns: columns([]string{"part as built", "kind", "standard", "size", "length", "open findings", "confirmed, or what instead"}, 2, 2.2, 2.6, 2.4, 1.8, 2, 3.4)}
	add := func(thing layout.Item, cells ...string) {
		row := []paper.Cell{text(thing.Label())}
		for _, c := range cells {
			row = append(row, text(c))
		}
		t.Rows = append(t.Rows, append(row, text(m.openOf(thing.Spot().Pointer())), blank()))
	}
	for _, line := range m.Layout.Lines.All() {
		if to, _ := line.To.Get(); to.Section() != "openEnds" { // what leads nowhere is bought by nobody
			add(line, word(&line.Kind), word(&line.Standard), size(line), amount(&line.Length))
		}
	}
	for _, c := range m.Layout.Changeovers.All() {
		add(c, "changeover, automatic: "+yes(&c.Automatic)+", non-return: "+yes(&c.NonReturn), "", "for "+words(&c.Connects), "")
	}
	for _, r := range m.Layout.Regulators.All() {
		add(r, "regulator", word(&r.Standard), amount(&r.Outlet), "")
	}
	for _, a := range m.Layout.Alarms.All() {
		add(a, "alarm, "+word(&a.Kind), word(&a.Standard), "", "")
	}
	return paper.Section{ID: "materials", Title: "Materials", Blocks: []paper.Block{orNone(t, "The file lists no line, regulator or alarm.")}}
}

// openOf names the open findings of a thing by their numbers.
func (m *Matter) openOf(pointer string) string {
	var all []string
	for i, f := range m.numbered() {
		if f.Subject == pointer {
			all = append(all, fmt.Sprint(i+1))
		}
	}
	if all == nil {
		return ""
	}
	return "not again as it is: " + strings.Join(all, ", ")
}
