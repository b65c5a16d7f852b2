package gas

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

// wayTo follows the gas from the last regulator before a thing to that thing: the
// regulator, and the lines in the order of the flow.
func wayTo(s *check.Sheet, to layout.Item, at layout.Ref) (*layout.Regulator, []*layout.Line) {
	check.List(s, &s.Layout().Lines)
	var way []*layout.Line
	for !s.Stuck() {
		fed := s.Layout().FedBy(at)
		if len(fed) != 1 {
			s.Missing("the lines that bring gas from a regulator to "+to.Label(), s.Layout().Lines.Spot())
			break
		}
		check.Read(s, &fed[0].To)
		way = append(way, fed[0])
		at = check.Read(s, &fed[0].From)
		if r, ok := s.Layout().Find(at).(*layout.Regulator); ok {
			slices.Reverse(way)
			return r, way
		}
	}
	return nil, nil
}

// regulatorBefore is the last regulator before a line, or nil where something is
// missing on the way.
func regulatorBefore(s *check.Sheet, line *layout.Line) *layout.Regulator {
	at := check.Read(s, &line.From)
	if r, ok := s.Layout().Find(at).(*layout.Regulator); ok {
		return r
	}
	r, _ := wayTo(s, line, at)
	return r
}

// wayLength and evenWay are the length of the lines between the last regulator and an
// appliance, as measured and with the fittings as lengths of pipe.
var (
	wayLength = lengthOfWay("appliance.way-length", "length of the lines from the regulator", lengthOf)
	evenWay   = lengthOfWay("appliance.way-with-fittings", "length of the lines from the regulator, fittings as pipe", evenLengthOf)
)

func lengthOfWay(id, title string, lengthOf func(*check.Sheet, string, *layout.Line) unit.Length) *check.Figure[unit.Length, *layout.Appliance] {
	return &check.Figure[unit.Length, *layout.Appliance]{ID: id, Title: title, Calc: func(s *check.Sheet, a *layout.Appliance) unit.Length {
		_, way := wayTo(s, a, a.Ref())
		text, lengths := "L_way = 0", make([]float64, 0, len(way))
		for _, line := range way {
			symbol := check.Symbol("L", line.ID())
			text += " + " + symbol
			lengths = append(lengths, float64(lengthOf(s, symbol, line)))
		}
		return check.Step(s, "L_way", check.Formula{Text: text, Source: "definition"}, func() unit.Length { return total[unit.Length](lengths) })
	}}
}

// lengthOf is the length of a line: none where one part screws into the next.
func lengthOf(s *check.Sheet, symbol string, line *layout.Line) unit.Length {
	if check.Read(s, &line.Kind) == layout.LineKindDirect {
		check.Constant(s, symbol, "one part screws into the next", "definition", unit.Length(0))
		return 0
	}
	return check.Measure(s, symbol, &line.Length)
}

// evenLengthOf is the length of a line with its fittings as pipe. That of hose and of
// corrugated tube is their own: their tables count the fittings that they come with.
func evenLengthOf(s *check.Sheet, symbol string, line *layout.Line) unit.Length {
	switch check.Read(s, &line.Kind) {
	case layout.LineKindDirect, layout.LineKindHose, layout.LineKindCorrugatedStainless:
		return lengthOf(s, symbol, line)
	}
	return check.Fig(s, symbol, lineWithFittings, line)
}

// lineWithFittings is the length of straight pipe that loses as much as a line.
var lineWithFittings = &check.Figure[unit.Length, *layout.Line]{
	ID: "line.length-with-fittings", Title: "length of the line, fittings as pipe",
	Calc: func(s *check.Sheet, line *layout.Line) unit.Length { return withFittings(s, line, boreOf(s, line)) },
}

// longestRun and longestEvenRun are the length of the longest way from a regulator to
// an appliance that takes its pressure.
var (
	longestRun     = longestOf("regulator.longest-run", "length of the way to the farthest appliance", wayLength)
	longestEvenRun = longestOf("regulator.longest-run-with-fittings", "length of the way to the farthest appliance, fittings as pipe", evenWay)
)

func longestOf(id, title string, way *check.Figure[unit.Length, *layout.Appliance]) *check.Figure[unit.Length, *layout.Regulator] {
	return &check.Figure[unit.Length, *layout.Regulator]{ID: id, Title: title, Calc: func(s *check.Sheet, r *layout.Regulator) unit.Length {
		text, longest := "0", unit.Length(0)
		for _, a := range fedBy(s, r) {
			symbol := check.Symbol("L", a.ID())
			text = "max(" + text + ", " + symbol + ")"
			longest = max(longest, check.Fig(s, symbol, way, a))
		}
		return check.Step(s, "L_run", check.Formula{Text: "L_run = " + text, Source: "definition"}, func() unit.Length { return longest })
	}}
}

// lineLoad is every appliance behind a line at full flame.
var lineLoad = &check.Figure[unit.GrossPower, *layout.Line]{
	ID: "line.load", Title: "connected load behind the line",
	Calc: func(s *check.Sheet, line *layout.Line) unit.GrossPower { return loadOf(s, behind(s, line)) },
}

// behind lists the appliances that a line feeds: the one that it ends at, or those
// behind what it ends at.
func behind(s *check.Sheet, line *layout.Line) []*layout.Appliance {
	to := check.Read(s, &line.To)
	if a, ok := s.Layout().Find(to).(*layout.Appliance); ok {
		return []*layout.Appliance{a}
	}
	return downstream(s, to)
}

// atLastPressure asks only of a line between the last regulator and what burns: what
// leads to a regulator has another pressure, and where nothing burns nothing flows.
func atLastPressure(s *check.Sheet, line *layout.Line, ask func() check.Ruling) check.Ruling {
	further := false
	to := check.Read(s, &line.To)
	visit := func(to layout.Ref) bool {
		further = further || to.Section() == "regulators" || to.Section() == "changeovers"
		return !further
	}
	if visit(to) {
		walk(s.Layout(), to, func(next *layout.Line, to layout.Ref) bool {
			check.Read(s, &next.To)
			return visit(to)
		})
	}
	if further {
		return check.NotApplicable(s, "the line brings gas to a regulator")
	}
	if len(behind(s, line)) == 0 {
		return check.NotApplicable(s, "nothing that burns is behind the line")
	}
	return ask()
}

var _ = showAll([]check.Shown{
	check.Detail(check.Show(longestRun, regulators)),
	check.Detail(check.Show(longestEvenRun, regulators)),
})
