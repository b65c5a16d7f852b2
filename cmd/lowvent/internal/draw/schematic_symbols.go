package draw

import (
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// symbol draws one thing at its place, with what is told of it.
func (s *schematic) symbol(ref layout.Ref) {
	at, thing := s.at[ref], s.layout.Find(ref)
	marks := symbolOf(ref.Section(), at)
	words, anchor, corner := s.nodeWords(thing), Middle, Point{at.X, at.Y - 5.4}
	switch {
	case len(s.layout.LeadsTo(ref)) == 0 && ref.Section() != "cylinders":
		anchor, corner = Start, Point{at.X + 6, at.Y - 1 + schematicLead}
		corner.Y += float64(len(words)-2) * schematicLead / 2
	case ref.Section() == "cylinders":
		anchor, corner = Start, Point{at.X - 4, at.Y - 6}
	case len(s.layout.LeadsTo(ref)) > 1:
		anchor, corner = End, Point{at.X + schematicBus - 1, at.Y - 4.4}
	default:
		anchor, corner = Start, Point{at.X - schematicBus + 1, at.Y - 4.4}
	}
	for i, w := range words {
		y := corner.Y - float64(len(words)-1-i)*schematicLead
		marks = append(marks, backed(&Text{At: Point{corner.X, y}, Size: schematicBody, Bold: i == 0, Anchor: anchor, Content: w})...)
	}
	s.marks = append(s.marks, &Group{Of: thing.Spot().Pointer(), Label: thing.Label(), Marks: marks})
}

// symbolOf is the sign for a thing of a section of the layout.
func symbolOf(section string, at Point) []Mark {
	thin := Pen{Width: 0.35}
	switch section {
	case "cylinders":
		return []Mark{oblong(at, 3, 4.6, thin), &Path{Points: []Point{{at.X - 1, at.Y - 2.3}, {at.X - 1, at.Y - 3.3}, {at.X + 1, at.Y - 3.3}, {at.X + 1, at.Y - 2.3}}, Pen: thin}}
	case "changeovers":
		return []Mark{&Path{Points: []Point{{at.X - 2.6, at.Y}, {at.X, at.Y - 2.6}, {at.X + 2.6, at.Y}, {at.X, at.Y + 2.6}}, Closed: true, Pen: thin, Fill: White}}
	case "regulators":
		return []Mark{oblong(at, 5, 5, thin), &Path{Points: []Point{{at.X - 2.5, at.Y - 2.5}, {at.X + 2.5, at.Y}, {at.X - 2.5, at.Y + 2.5}}, Closed: true, Pen: thin}}
	case "junctions":
		return []Mark{&Circle{Centre: at, Radius: 1.2, Pen: thin, Fill: Black}}
	case "openEnds":
		return []Mark{&Path{Points: []Point{{at.X, at.Y - 2.2}, {at.X, at.Y + 2.2}}, Pen: Pen{Width: 0.9}}}
	case "outdoorOutlets":
		return []Mark{&Circle{Centre: at, Radius: 2.2, Pen: thin, Fill: White}, &Circle{Centre: at, Radius: 0.7, Pen: thin, Fill: Black}}
	}
	return []Mark{oblong(at, 9, 6, thin)}
}

// oblong is a rectangle about its middle.
func oblong(at Point, wide, high float64, pen Pen) *Path {
	left, right, top, bottom := at.X-wide/2, at.X+wide/2, at.Y-high/2, at.Y+high/2
	return &Path{Points: []Point{{left, top}, {right, top}, {right, bottom}, {left, bottom}}, Closed: true, Pen: pen, Fill: White}
}

// nodeWords is what is told of a thing.
func (s *schematic) nodeWords(thing layout.Item) []string {
	words := []string{thing.Label()}
	switch thing := thing.(type) {
	case *layout.Cylinder:
		words = append(words, quantityWords("propane ", &thing.Propane))
	case *layout.Regulator:
		words = append(words, quantityWords("outlet ", &thing.Outlet), capacity(thing))
	case *layout.Appliance:
		words = append(words, s.applianceWords(thing)...)
	case *layout.OpenEnd:
		words = append(words, word("end: ", &thing.End))
	}
	if len(s.layout.FedBy(layoutRef(thing))) == 0 && !suppliesGas(thing) {
		words = append(words, "no line to it is stated")
	}
	return words
}

func (s *schematic) applianceWords(a *layout.Appliance) []string {
	words := []string{word("", &a.Kind) + ", " + input(a)}
	if p := s.told["appliance.running-pressure"+a.Spot().Pointer()]; p != "" {
		words = append(words, "all on "+p)
	}
	return words
}

func input(a *layout.Appliance) string {
	if a.Plate.Input.Known() {
		return quantityWords("", &a.Plate.Input)
	}
	return quantityWords("burns ", &a.Plate.Consumption)
}

func capacity(r *layout.Regulator) string {
	if r.Capacity.Known() {
		return quantityWords("passes ", &r.Capacity)
	}
	return quantityWords("passes ", &r.CapacityGas)
}

func layoutRef(thing layout.Item) layout.Ref {
	return layout.Ref(strings.TrimPrefix(thing.Spot().Pointer(), "/"))
}

// suppliesGas tells whether gas flows from a thing without a line to it.
func suppliesGas(thing layout.Item) bool {
	_, is := thing.(*layout.Cylinder)
	return is
}

// quantityWords is a quantity in both unit systems, or that it is not known.
func quantityWords[Q unit.Quantity](before string, m *layout.Measure[Q]) string {
	v, known := m.Get()
	if !known {
		return before + "not known"
	}
	return before + report.Quantity(v.Nominal.Kind(), float64(v.Nominal)).Text
}

// word is a word of the layout for people, or that it is not known.
func word[T ~string](before string, g *layout.Given[T]) string {
	v, known := g.Get()
	if !known {
		return before + "not known"
	}
	return before + strings.ReplaceAll(string(v), "-", " ")
}

// schematicKey is the legend.
func schematicKey() []Explained {
	at := Point{6, 3}
	key := []Explained{
		{symbolOf("cylinders", at), "cylinder"},
		{symbolOf("changeovers", at), "changeover"},
		{symbolOf("regulators", at), "regulator"},
		{symbolOf("junctions", at), "where lines meet or part"},
		{symbolOf("appliances", at), "appliance"},
		{symbolOf("openEnds", at), "open end"},
		{symbolOf("outdoorOutlets", at), "outlet outside"},
		{valveMark(at), "shut-off"},
		{jointMark(Point{6, 4}, 7), "joint, with its number in the list of joints"},
	}
	return append(key, zonesExplained()...)
}
