package gas

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
)

// lines is every line of the file.
func lines(l *layout.Layout) *layout.Section[layout.Line] { return &l.Lines }

// lineFacts is what a rule may read of a line.
func lineFacts(line *layout.Line) check.Facts {
	return check.Facts{
		code.FactLineKind:     func(s *check.Sheet) any { return string(check.Read(s, &line.Kind)) },
		code.FactLinePressure: func(s *check.Sheet) any { return string(check.Read(s, &line.Zone)) },
		code.FactLineFeeds:    func(s *check.Sheet) any { return endUse(s, line) },
		code.FactLineOutside:  func(s *check.Sheet) any { return float64(check.Measure(s, "D_outside", &line.Outside)) },
	}
}

// applianceFacts is what a rule may read of an appliance.
func applianceFacts(a *layout.Appliance) check.Facts {
	return check.Facts{code.FactApplianceKind: func(s *check.Sheet) any { return string(check.Read(s, &a.Kind)) }}
}

// ofPipe asks only where the line is pipe or tube: hose has checks of its own, and
// where one part screws into the next there is nothing between them.
func ofPipe(s *check.Sheet, line *layout.Line, ask func() check.Ruling) check.Ruling {
	switch kind := check.Read(s, &line.Kind); kind {
	case layout.LineKindHose:
		return check.NotApplicable(s, "the line is a hose")
	case layout.LineKindDirect:
		return check.NotApplicable(s, "no pipe is between the two parts")
	}
	return ask()
}

// jointsOf takes the joints of a line. A line has two ends, and each is a joint; a
// list that is shorter than that was not finished.
func jointsOf(s *check.Sheet, line *layout.Line) []*layout.Joint {
	least := 2
	if check.Read(s, &line.Kind) == layout.LineKindDirect {
		least = 1
	}
	all := check.List(s, &line.Joints)
	if !s.Stuck() && len(all) < least {
		s.Missing("the joints at both ends of "+line.Label(), line.Joints.Spot())
	}
	return all
}

// feeding takes the lines that lead to a thing. There is one, or the file does not
// tell how gas comes there.
func feeding(s *check.Sheet, to layout.Ref) []*layout.Line {
	check.List(s, &s.Layout().Lines)
	check.Inventory(s, layout.InventoryListLines)
	lines := s.Layout().FedBy(to)
	for _, line := range lines {
		check.Read(s, &line.To)
	}
	if !s.Stuck() && len(lines) == 0 {
		s.Missing("the line that leads to "+string(to), s.Layout().Lines.Spot())
	}
	return lines
}

// testsOf takes the tests of a kind that cover a thing and are done: one that is
// dated after the day of judgement is a plan.
func testsOf(s *check.Sheet, of layout.Ref, kind layout.TestKind) []*layout.Test {
	var done []*layout.Test
	for _, t := range check.List(s, &s.Layout().Tests) {
		if check.Read(s, &t.Kind) == kind && slices.Contains(check.Read(s, &t.Covers.Given), of) && !s.On().Before(check.Read(s, &t.On).Last()) {
			done = append(done, t)
		}
	}
	return done
}
