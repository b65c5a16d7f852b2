package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
)

// downstream lists the appliances that a thing feeds, by the lines of the file.
// Each list that decides the answer must be stated complete for it to stand.
func downstream(s *check.Sheet, from layout.Ref) []*layout.Appliance {
	check.List(s, &s.Layout().Lines)
	check.List(s, &s.Layout().Appliances)
	check.Inventory(s, layout.InventoryListLines)
	check.Inventory(s, layout.InventoryListAppliances)
	// one that no line reaches may well hang on the very regulator that is judged
	for _, a := range check.Once(s, "gas.unfed", unfed) {
		s.Missing("the lines that bring gas to "+a.Label(), s.Layout().Lines.Spot())
	}
	var found []*layout.Appliance
	walk(s.Layout(), from, func(line *layout.Line, to layout.Ref) bool {
		if a, ok := s.Layout().Find(to).(*layout.Appliance); ok {
			check.Read(s, &line.To)
			found = append(found, a)
		}
		return true
	})
	return found
}

// unfed lists the appliances that no cylinder reaches by the lines of the file.
func unfed(l *layout.Layout) []*layout.Appliance {
	var found []*layout.Appliance
	for _, a := range l.Appliances.All() {
		if !comesFrom(l, a.Ref(), "cylinders") {
			found = append(found, a)
		}
	}
	return found
}

// upstream lists the cylinders that feed a thing, by the lines of the file, which
// must be stated complete.
func upstream(s *check.Sheet, to layout.Ref) []*layout.Cylinder {
	check.List(s, &s.Layout().Lines)
	check.Inventory(s, layout.InventoryListLines)
	var found []*layout.Cylinder
	climb(s.Layout(), to, func(line *layout.Line, from layout.Ref) bool {
		if c, ok := s.Layout().Find(from).(*layout.Cylinder); ok {
			check.Read(s, &line.From)
			found = append(found, c)
		}
		return true
	})
	return found
}

// fedBy lists the appliances that take a regulator's pressure: those that it feeds
// without another regulator between.
func fedBy(s *check.Sheet, r *layout.Regulator) []*layout.Appliance {
	var found []*layout.Appliance
	for _, a := range downstream(s, r.Ref()) {
		feeds := false
		climb(s.Layout(), a.Ref(), func(_ *layout.Line, from layout.Ref) bool {
			feeds = feeds || from == r.Ref()
			return from.Section() != "regulators"
		})
		if feeds {
			found = append(found, a)
		}
	}
	return found
}

// comesFrom tells whether the gas that reaches a thing has been through anything of
// a section, by the lines of the file.
func comesFrom(l *layout.Layout, to layout.Ref, section string) bool {
	met := false
	climb(l, to, func(_ *layout.Line, from layout.Ref) bool {
		met = met || from.Section() == section
		return !met
	})
	return met
}

// walk follows the flow from a thing, each line once, and goes on past each thing
// that it meets for as long as visit says so.
func walk(l *layout.Layout, from layout.Ref, visit func(*layout.Line, layout.Ref) bool) {
	trace(from, l.LeadsTo, func(line *layout.Line) *layout.Given[layout.Ref] { return &line.To }, visit)
}

// climb follows the lines against the flow from a thing to everything before it,
// each line once, and goes on past each thing for as long as visit says so.
func climb(l *layout.Layout, to layout.Ref, visit func(*layout.Line, layout.Ref) bool) {
	trace(to, l.FedBy, func(line *layout.Line) *layout.Given[layout.Ref] { return &line.From }, visit)
}

// trace follows lines to their other ends. Lines that meet again in a changeover
// are followed once: a file of many such would have more ways than anyone can walk.
func trace(start layout.Ref, next func(layout.Ref) []*layout.Line, end func(*layout.Line) *layout.Given[layout.Ref], visit func(*layout.Line, layout.Ref) bool) {
	seen := map[*layout.Line]bool{}
	var follow func(layout.Ref)
	follow = func(at layout.Ref) {
		for _, line := range next(at) {
			if seen[line] {
				continue
			}
			seen[line] = true
			if ref, _ := end(line).Get(); visit(line, ref) {
				follow(ref)
			}
		}
	}
	follow(start)
}
