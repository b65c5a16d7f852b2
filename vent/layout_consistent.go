package vent

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

var _ = add(check.ForItems(check.Descriptor{
	ID:         "layout.consistent",
	Asks:       "Do the file's statements about this thing agree with each other?",
	Why:        "A vent that is outside its wall or a cylinder outside its locker is a slip of the tape, and every distance from it is wrong.",
	NotCovered: "Whether what agrees is true.",
	Word:       report.Warning,
	Instead:    []string{"/lockers/*/vents/*/endsAt"},
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.OwnConsistent.Term, code.OwnTapeAgreement.Term},
	Reads: slices.Concat([]string{"/cylinders/*/in", "/cylinders/*/diameter", "/cylinders/*/height", "/changeovers/*/in", "/changeovers/*/connects",
		"/regulators/*/in", "/appliances/*/in", "/ignitionSources/*/in", "/alarms/*/in", "/lines", "/lines/*/from", "/lines/*/to",
		"/lockers/*/box/from", "/lockers/*/box/to", "/lockers/*/vents/*/at", "/lockers/*/vents/*/endsAt", "/lockers/*/vents/*/wall",
		"/spaces", "/spaces/*/box/from", "/spaces/*/box/to", "/tapeMeasures/*/from", "/tapeMeasures/*/to", "/tapeMeasures/*/is"},
		placesOf("cylinders", "changeovers", "regulators", "junctions", "openEnds", "outdoorOutlets", "appliances", "stoves", "exhausts", "openings", "fans",
			"ignitionSources", "combustibles", "storedGoods", "alarms", "extinguishers", "fillPoints")), // whatever a tape can run to
	Sources: []string{"Euclid, least distance between boxes"},
}, placed, func(s *check.Sheet, item layout.Item) check.Ruling {
	switch item := item.(type) {
	case *layout.Cylinder:
		return standsWhereSaid(s, item, func(s *check.Sheet) thing { return cylinderAt(s, item) })
	case *layout.Changeover:
		return check.All(s,
			func(s *check.Sheet) check.Ruling { return drawnWhereSaid(s, item) },
			func(s *check.Sheet) check.Ruling { return tailsAgree(s, item) })
	case *layout.Regulator, *layout.Appliance, *layout.Alarm, *layout.IgnitionSource:
		return drawnWhereSaid(s, item)
	case *layout.LockerVent:
		return ventAgrees(s, item)
	case *layout.Junction:
		return junctionFed(s, item)
	case *layout.TapeMeasure:
		return tapeAgrees(s, item)
	}
	panic("vent: nothing to compare for " + item.Label())
}))

// placesOf are the keys that say where the things of some lists are.
func placesOf(sections ...string) []string {
	var keys []string
	for _, section := range sections {
		keys = append(keys, "/"+section+"/*/at", "/"+section+"/*/box/from", "/"+section+"/*/box/to")
	}
	return keys
}

// placed lists the things about which a file says the same in two ways.
func placed(l *layout.Layout) ([]layout.Item, *layout.Spot, bool) {
	var items []layout.Item
	items = appendAll(items, &l.Cylinders)
	for _, k := range l.Lockers.All() {
		items = appendAll(items, &k.Vents)
	}
	items = appendAll(items, &l.Changeovers)
	items = appendAll(items, &l.Regulators)
	items = appendAll(items, &l.Junctions)
	items = appendAll(items, &l.Appliances)
	items = appendAll(items, &l.IgnitionSources)
	items = appendAll(items, &l.Alarms)
	items = appendAll(items, &l.TapeMeasures)
	return items, l.Cylinders.Spot(), l.Cylinders.Known()
}

func appendAll[T any, P interface {
	*T
	layout.Item
}](items []layout.Item, section *layout.Section[T]) []layout.Item {
	for _, each := range section.All() {
		items = append(items, P(each))
	}
	return items
}

// agree rules on a question of geometry that tolerances may leave open.
func agree(s *check.Sheet, answer box.Answer, found, needed string, spot *layout.Spot) check.Ruling {
	duty := check.Asked(s, code.OwnConsistent, nil)
	if s.Stuck() {
		return check.Ruling{}
	}
	if answer == box.Unsure {
		s.Missing("a measurement exact enough to tell", spot)
		return check.Ruling{}
	}
	if answer == box.Yes {
		found = needed
	}
	return check.Is(s, answer == box.Yes, duty, found, needed).Mend("Measure again which of the two is right, and correct the other.")
}

// drawnWhereSaid asks the same of a thing whose position the file need not give.
func drawnWhereSaid(s *check.Sheet, item layout.Item) check.Ruling {
	p := layout.PositionOf(item)
	if !p.Known() {
		return check.NotApplicable(s, "the file does not say where in it the thing is")
	}
	return standsWhereSaid(s, item, func(s *check.Sheet) thing { return at(s, item, p) })
}

// standsWhereSaid asks that a thing lies inside the locker or space that it is
// said to stand in, and one in the open air in no space.
func standsWhereSaid(s *check.Sheet, item layout.Item, where func(*check.Sheet) thing) check.Ruling {
	here := where(s)
	switch place := check.Item(s, layout.PlaceOf(item)).(type) {
	case *layout.Locker:
		return liesIn(s, here, &place.Box, "locker")
	case *layout.Space:
		return liesIn(s, here, &place.Box, "space")
	}
	none := func() check.Ruling { return check.NotApplicable(s, "there is no space for it to be in") }
	return check.Every(s, check.List(s, &s.Layout().Spaces), none, func(s *check.Sheet, space *layout.Space) check.Ruling {
		from, to := check.Corners(s, &space.Box)
		return agree(s, outsideOf(boxOf(from, to), where(s).box), "its box lies in the space", "in the open air, as said", item.Spot())
	})
}

func liesIn(s *check.Sheet, here thing, enclosure *layout.Box, what string) check.Ruling {
	from, to := check.Corners(s, enclosure)
	return agree(s, box.Encloses(boxOf(from, to), here.box), "its place reaches out of the "+what, "inside the "+what+" it is said to stand in", here.item.Spot())
}

// tailsAgree asks that a changeover joins the cylinders from which lines lead to
// it, and no others.
func tailsAgree(s *check.Sheet, c *layout.Changeover) check.Ruling {
	duty := check.Asked(s, code.OwnConsistent, nil)
	check.List(s, &s.Layout().Lines)
	connects := slices.Clone(check.Read(s, &c.Connects.Given))
	var led []layout.Ref
	for _, line := range s.Layout().FedBy(c.Ref()) {
		led = append(led, check.Read(s, &line.From))
	}
	slices.Sort(connects)
	slices.Sort(led)
	agrees, found, needed := slices.Equal(connects, led), "lines from "+listed(led), "lines from "+listed(connects)
	if !agrees && gas.RegulatedMeetsUnregulated(s, c) {
		return check.Is(s, agrees, duty, "a regulated and an unregulated supply meet here: "+found, needed).
			Mend(gas.PartSupplies).OnlyFitter().Points(c.Spot())
	}
	return check.Is(s, agrees, duty, found, needed).Mend(tailsMend)
}

// tailsMend puts the pipes before the file: one that is tidied tells nobody any more
// what is joined to what.
const tailsMend = "Look at the pipes first. If they are as the lines say, don't edit the file to make it agree: the licensed fitter looks. " +
	"Else correct \"connects\", or add the line that is lacking."

func listed(refs []layout.Ref) string {
	words := make([]string, len(refs))
	for i, r := range refs {
		words[i] = string(r)
	}
	return cmp.Or(strings.Join(words, ", "), "nowhere")
}

// outsideOf tells whether nothing of the thing, be it a mere point, lies within the
// space: along some axis it ends where the space begins, or before. What only touches
// the space is outside.
func outsideOf(space, thing box.Box) box.Answer {
	answer := box.No
	for _, ends := range [][2]unit.Value[unit.Length]{
		{thing.To.X, space.From.X}, {space.To.X, thing.From.X},
		{thing.To.Y, space.From.Y}, {space.To.Y, thing.From.Y},
		{thing.To.Z, space.From.Z}, {space.To.Z, thing.From.Z},
	} {
		switch end, begin := ends[0], ends[1]; {
		case nanometre(float64(end.High)-float64(begin.Low)) <= 0:
			return box.Yes
		case nanometre(float64(end.Low)-float64(begin.High)) <= 0:
			answer = box.Unsure
		}
	}
	return answer
}

// wallSlack is how far from the plane of its wall a vent may be drawn: the
// thickness of a wall, and a vent measured to its middle.
const wallSlack unit.Length = 0.10

func ventAgrees(s *check.Sheet, v *layout.LockerVent) check.Ruling {
	k := lockerOf(s, v)
	from, to := check.Corners(s, &k.Box)
	on := box.OnWall(boxOf(from, to), pointOf(check.Read(s, &v.At)), box.Wall(check.Read(s, &v.Wall)), wallSlack)
	return agree(s, on, "its place is off the wall it is said to be in", "on its wall", v.Spot())
}

// junctionFed asks that gas can reach a junction at all.
func junctionFed(s *check.Sheet, j *layout.Junction) check.Ruling {
	duty := check.Asked(s, code.OwnConsistent, nil)
	check.List(s, &s.Layout().Lines)
	fed := len(s.Layout().FedBy(j.Ref())) > 0
	found := "no line leads to it"
	if fed {
		found = "a line leads to it"
	}
	return check.Is(s, fed, duty, found, "a line leads to it").Mend("Add the line that brings gas there, or remove the junction.")
}

// tapeAgrees asks that a tape measure and the coordinates of its two things do
// not contradict each other.
func tapeAgrees(s *check.Sheet, t *layout.TapeMeasure) check.Ruling {
	limit := check.Limit(s, "d_max", code.OwnTapeAgreement, nil)
	a, b := positioned(s, check.Item(s, &t.From)), positioned(s, check.Item(s, &t.To))
	check.Read(s, &t.Is.Given)
	taped, _ := t.Is.Get()
	off := leastDifference(taped, box.Gap(a.box, b.box))
	return check.AtMost(s, check.Band(s, "d_off", "tape against coordinates of "+t.Spot().Pointer(), unit.Exactly(off)), limit).
		Says("the tape and the coordinates differ; the tape is used").
		Mend("Measure both things again from the same corner.")
}

// leastDifference is the least that two values within their bands can differ by.
func leastDifference(a, b unit.Value[unit.Length]) unit.Length {
	return nanometre(math.Max(0, math.Max(float64(a.Low)-float64(b.High), float64(b.Low)-float64(a.High))))
}

// positioned takes where a thing stands, whatever it is.
func positioned(s *check.Sheet, item layout.Item) thing {
	switch item := item.(type) {
	case nil:
		return thing{item: s.Layout()}
	case *layout.LockerVent:
		return ventAt(s, item)
	case *layout.Cylinder:
		return cylinderAt(s, item)
	case *layout.Locker:
		return enclosure(s, item, &item.Box)
	case *layout.Space:
		return enclosure(s, item, &item.Box)
	}
	p := layout.PositionOf(item)
	if p == nil {
		s.Missing("a position for "+item.Label(), item.Spot())
		return thing{item: item}
	}
	return at(s, item, p)
}

func enclosure(s *check.Sheet, item layout.Item, b *layout.Box) thing {
	from, to := check.Corners(s, b)
	return thing{item: item, box: boxOf(from, to)}
}
