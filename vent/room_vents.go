package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

type areaLimit = code.Limit[unit.Area]

// fixedReads are the keys by which the vents of a space are found that count.
var fixedReads = []string{"/fixedVents", "/fixedVents/*/of", "/fixedVents/*/level", "/fixedVents/*/closable", "/fixedVents/*/endsIn/kind"}

// fixedVentsAt takes the vents of a space at one level that count: that nothing can
// shut, and that end outside. What can be shut is shut on the first cold night.
func fixedVentsAt(s *check.Sheet, space *layout.Space, level layout.VentLevel) []*layout.FixedVent {
	var found []*layout.FixedVent
	for _, v := range check.List(s, &s.Layout().FixedVents) {
		if check.Read(s, &v.Of) != space.Ref() || check.Read(s, &v.Level) != level || check.Read(s, &v.Closable) {
			continue
		}
		if ends := check.Read(s, &v.EndsIn.Kind); ends == layout.VentEndingOpenAir || ends == layout.VentEndingOverboard {
			found = append(found, v)
		}
	}
	return found
}

var fixedFree = &check.Figure[unit.Area, *layout.FixedVent]{
	ID: "space.vent-free-area", Title: "free area of the vent",
	Calc: func(s *check.Sheet, v *layout.FixedVent) unit.Area { return behind(s, &v.Gross, &v.Cover) },
}

// lowAir and highAir are the free areas of the vents of a space that count.
var (
	lowAir  = spaceFree("space.low-vent-free-area", "free area of the fixed low vents", layout.VentLevelLow)
	highAir = spaceFree("space.high-vent-free-area", "free area of the fixed high vents", layout.VentLevelHigh)
	allAir  = spaceFree("space.vents-free-area", "free area of all fixed vents", layout.VentLevelLow, layout.VentLevelHigh)
	_       = show(check.Show(lowAir, spaces))
	_       = show(check.Show(highAir, spaces))
)

func spaceFree(id, title string, levels ...layout.VentLevel) *check.Figure[unit.Area, *layout.Space] {
	return &check.Figure[unit.Area, *layout.Space]{ID: id, Title: title, Calc: func(s *check.Sheet, space *layout.Space) unit.Area {
		var sum float64
		text := "A = 0"
		for _, level := range levels {
			for _, v := range fixedVentsAt(s, space, level) {
				symbol := check.Symbol("A", v.ID())
				sum += float64(check.Fig(s, symbol, fixedFree, v))
				text += " + " + symbol
			}
		}
		return check.Step(s, "A", check.Formula{Text: text, Source: "definition", Valid: "vents that nothing can shut and that end outside"},
			func() unit.Area { return unit.Area(sum) })
	}}
}

// both asks that a space has a low and a high vent that count.
func both(s *check.Sheet, space *layout.Space, duty code.DutyLimit) check.Ruling {
	return check.All(s, one(space, duty, layout.VentLevelLow), one(space, duty, layout.VentLevelHigh))
}

func one(space *layout.Space, duty code.DutyLimit, level layout.VentLevel) func(*check.Sheet) check.Ruling {
	return func(s *check.Sheet) check.Ruling {
		asked := check.Asked(s, duty, roomFacts(space))
		found := len(fixedVentsAt(s, space, level)) > 0
		name := string(level) + " vent to the outside that nothing can shut"
		return check.Is(s, found, asked, either(found, "a ", "no ")+name, "a "+name).Points(space.Spot()).
			Mend("Cut a " + name + ", where and as large as the fitter says.")
	}
}
