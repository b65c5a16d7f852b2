package vent

import (
	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
)

// flueReads are the keys by which the flues of a thing are found.
var flueReads = []string{"/appliances/*/in", "/appliances/*/flue", "/flues", "/flues/*/of"}

// fired lists what burns in the dwelling and may have a flue: appliances and
// stoves.
func fired(l *layout.Layout) ([]layout.Item, *layout.Spot, bool) {
	var all []layout.Item
	for _, a := range l.Appliances.All() {
		all = append(all, a)
	}
	for _, st := range l.Stoves.All() {
		all = append(all, st)
	}
	if !l.Appliances.Known() {
		return all, l.Appliances.Spot(), false
	}
	return all, l.Stoves.Spot(), l.Stoves.Known()
}

// eachFlue asks of every flue of a thing. A thing that has one must have it listed.
func eachFlue(f func(*check.Sheet, layout.Item, *layout.Flue) check.Ruling) func(*check.Sheet, layout.Item) check.Ruling {
	return func(s *check.Sheet, item layout.Item) check.Ruling {
		if a, ok := item.(*layout.Appliance); ok {
			if check.Read(s, &a.In) == layout.OpenAir {
				return check.NotApplicable(s, "it stands in the open air")
			}
			if check.Read(s, &a.Flue) == layout.FlueKindNone {
				return check.NotApplicable(s, "it has no flue; whether it may be without one is another question")
			}
		}
		flues := fluesOf(s, item)
		if len(flues) == 0 && !s.Stuck() {
			s.Missing("the flue of "+item.Label(), s.Layout().Flues.Spot())
		}
		return check.Every(s, flues, nil, func(s *check.Sheet, x *layout.Flue) check.Ruling { return f(s, item, x) })
	}
}

func fluesOf(s *check.Sheet, item layout.Item) []*layout.Flue {
	check.Inventory(s, layout.InventoryListFlues)
	var found []*layout.Flue
	for _, x := range check.List(s, &s.Layout().Flues) {
		if check.Read(s, &x.Of) == refOf(item) {
			found = append(found, x)
		}
	}
	return found
}

// flueFacts tells a code of a flue and of what it serves. A stove counts as a
// heater of its output.
func flueFacts(item layout.Item, x *layout.Flue) check.Facts {
	facts := check.Facts{
		code.FactFlueKind: func(s *check.Sheet) any { return string(check.Read(s, &x.Kind)) },
		code.FactFlueWall: func(s *check.Sheet) any { return string(check.Read(s, &x.Terminal.Wall)) },
	}
	switch item := item.(type) {
	case *layout.Appliance:
		facts[code.FactApplianceKind] = func(s *check.Sheet) any { return string(check.Read(s, &item.Kind)) }
		facts[code.FactApplianceInput] = func(s *check.Sheet) any { return float64(check.Fig(s, "P_input", gas.ApplianceInput(), item)) }
	case *layout.Stove:
		facts[code.FactApplianceKind] = func(*check.Sheet) any { return string(layout.ApplianceKindSpaceHeater) }
		facts[code.FactApplianceInput] = func(s *check.Sheet) any { return float64(check.Measure(s, "P_input", &item.Output)) }
	}
	return facts
}
