package check

import (
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// Descriptor is all that is said of a check, once. Help, docs, reports and the
// generated tests read it here.
type Descriptor struct {
	ID         string        // "locker.low-vent"; the check's file is locker_low_vent.go
	Asks       string        // the question, one sentence
	Why        string        // what happens to people when the answer is no
	NotCovered string        // what the question leaves out
	Word       report.Signal // for the case that it is not met
	MayAct     report.Who
	Limits     []*code.Term // every limit that it may take
	Reads      []string     // templates of the keys it may read: "/lockers/*/vents/*/gross"
	Surveys    []layout.SurveyList
	Inventory  []layout.InventoryList
	Sources    []string // of its physics, beside the limits' own
	Instead    []string // of Reads, those that take another's place where they are stated
	Claims     []string // of Reads, those that an owner can state and only a fitter can prove
	NeverWaive bool     // no waiver and no local overlay sets it aside
}

// Check is one question with the function that answers it.
type Check struct {
	Descriptor
	subjects func(*layout.Layout) ([]layout.Item, *layout.Spot, bool)
	clauses  []clause
}

type clause func(*Sheet, layout.Item) Ruling

// item lets a generic function name the pointer type of a section's things.
type item[T any] interface {
	*T
	layout.Item
}

// For makes a check that is asked of everything in a section. Its clauses are
// joined by and: one that is not met outweighs one that is not known, and that
// outweighs one that is within.
func For[T any, P item[T]](d Descriptor, section func(*layout.Layout) *layout.Section[T], clauses ...func(*Sheet, P) Ruling) Check {
	c := Check{Descriptor: d}
	c.subjects = func(l *layout.Layout) ([]layout.Item, *layout.Spot, bool) {
		s := section(l)
		var items []layout.Item
		for _, each := range s.All() {
			items = append(items, P(each))
		}
		return items, s.Spot(), s.Known()
	}
	for _, f := range clauses {
		c.clauses = append(c.clauses, func(s *Sheet, subject layout.Item) Ruling { return f(s, subject.(P)) })
	}
	return c
}

// ForDwelling makes a check that is asked once, of the whole layout.
func ForDwelling(d Descriptor, clauses ...func(*Sheet, *layout.Layout) Ruling) Check {
	c := Check{Descriptor: d}
	c.subjects = func(l *layout.Layout) ([]layout.Item, *layout.Spot, bool) { return []layout.Item{l}, l.Spot(), true }
	for _, f := range clauses {
		c.clauses = append(c.clauses, func(s *Sheet, subject layout.Item) Ruling { return f(s, subject.(*layout.Layout)) })
	}
	return c
}

// ForItems makes a check that is asked of things out of several sections.
// subjects lists them, with the section whose absence makes the whole list not
// known.
func ForItems(d Descriptor, subjects func(*layout.Layout) (items []layout.Item, section *layout.Spot, known bool), clauses ...func(*Sheet, layout.Item) Ruling) Check {
	c := Check{Descriptor: d, subjects: subjects}
	for _, f := range clauses {
		c.clauses = append(c.clauses, f)
	}
	return c
}
