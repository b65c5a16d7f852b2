package handoff

import (
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

// plates is the builder's copy of every data plate, beside a blank for the plate itself.
func plates(m *Matter) paper.Section {
	s := paper.Section{ID: "plates", Title: "Data plates: the owner's copy, and what the plate says", NewPage: true}
	for _, a := range m.Layout.Appliances.All() {
		s.Blocks = append(s.Blocks, plate(a.Label(), appliancePlate(a)))
	}
	for _, r := range m.Layout.Regulators.All() {
		s.Blocks = append(s.Blocks, plate(r.Label(), regulatorPlate(r)))
	}
	for _, c := range m.Layout.Cylinders.All() {
		s.Blocks = append(s.Blocks, plate(c.Label(), cylinderPlate(c)))
	}
	if s.Blocks == nil {
		s.Blocks = []paper.Block{&paper.Para{Text: "The file lists no appliance, regulator or cylinder."}}
	}
	return s
}

// row is one figure of a plate with the ground that the owner's copy rests on.
type row struct{ label, value, basis string }

func plate(label string, rows []row) paper.Block {
	t := &paper.Table{Caption: label, Small: true, Columns: columns([]string{"plate", "owner's copy", "on the ground of", "the plate says"}, 3, 4, 2, 4)}
	for _, r := range append(rows, row{label: "photo no."}) {
		t.Rows = append(t.Rows, []paper.Cell{text(r.label), text(r.value), text(r.basis), blank()})
	}
	return t
}

// stated is a word of the file with its ground, measured a quantity.
func stated[T ~string](label string, g *layout.Given[T]) row { return row{label, word(g), basis(g)} }

func measured[Q unit.Quantity](label string, m *layout.Measure[Q]) row {
	return row{label, amount(m), basis(m)}
}

func basis(g layout.Stated) string {
	if !g.Known() {
		return ""
	}
	return string(g.Evidence().Basis)
}

func appliancePlate(a *layout.Appliance) []row {
	p := &a.Plate
	return []row{stated("kind", &a.Kind), stated("maker", &p.Maker), stated("model", &p.Model), stated("serial number", &p.Serial), stated("kind of gas", &p.Gas),
		stated("jets fitted for", &p.JetsFor), measured("inlet pressure", &p.Inlet), measured("least inlet pressure", &p.LeastInlet), measured("most inlet pressure", &p.MostInlet),
		measured("manifold pressure", &p.Manifold), measured("input", &p.Input), stated("input is gross or net", &p.Basis), measured("consumption", &p.Consumption),
		stated("listed for", &p.ListedFor), {"approved for", words(&p.ApprovedFor), basis(&p.ApprovedFor)}, stated("flue", &a.Flue), stated("flame guard", &a.FlameGuard)}
}

func regulatorPlate(r *layout.Regulator) []row {
	return []row{stated("standard", &r.Standard), stated("serial number", &r.Serial), {"stages", number(&r.Stages), basis(&r.Stages)}, stated("gas", &r.Gas), measured("outlet", &r.Outlet),
		measured("capacity", &r.Capacity), measured("capacity by mass", &r.CapacityGas), measured("least inlet", &r.LeastInlet), measured("inlet rating", &r.InletRating),
		measured("relief", &r.Relief), measured("lock-up", &r.LockUp), {"made", date(&r.Made), basis(&r.Made)}}
}

func cylinderPlate(c *layout.Cylinder) []row {
	return []row{stated("role", &c.Role), stated("specification", &c.Specification), measured("water capacity", &c.WaterCapacity), measured("tare", &c.Tare), measured("weighed empty", &c.WeighedTare),
		measured("propane filled in", &c.Propane), measured("net mass on the sleeve", &c.SleeveMass), {"requalified by", date(&c.RequalifiedBy), basis(&c.RequalifiedBy)},
		{"last qualified", date(&c.LastQualified), basis(&c.LastQualified)}, stated("how it was qualified", &c.Qualification), {"filled on", date(&c.FilledOn), basis(&c.FilledOn)}, stated("valve outlet", &c.ValveOutlet)}
}

// manuals lists the makers' papers with the page of their clearances.
func manuals(m *Matter) paper.Section {
	t := &paper.Table{Caption: "To lie ready on the day", Small: true, Columns: columns([]string{"appliance", "manual", "page of the clearances", "above", "sides", "rear", "front", "below", "seen"}, 2, 3.4, 2, 1.6, 1.6, 1.6, 1.6, 1.6, 1)}
	for _, a := range m.Layout.Appliances.All() {
		c := &a.Clearances
		t.Rows = append(t.Rows, []paper.Cell{text(a.Label()), text(word(&a.Plate.Manual)), text(word(&c.Page)), text(amount(&c.Above)), text(amount(&c.Sides)), text(amount(&c.Rear)),
			text(amount(&c.Front)), text(amount(&c.Below)), blank()})
	}
	return paper.Section{ID: "manuals", Title: "Manuals", Blocks: []paper.Block{orNone(t, "The file lists no appliance.")}}
}
