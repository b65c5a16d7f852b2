// Package gas holds the checks and figures of the supply side: what cylinders
// hold, what appliances ask for, how long it lasts, and how pressure is brought
// down. One file a check, named by its id; the physics they use stands in the
// folders below, without I/O and without a layout.
package gas

import "lowvent.example/schema/check"

// set grows by each file's add, before main begins.
var set check.Set

func add(c check.Check) check.Check {
	set.Checks = append(set.Checks, c)
	return c
}

func show(f check.Shown) check.Shown {
	set.Figures = append(set.Figures, f)
	return f
}

func showAll(all []check.Shown) []check.Shown {
	set.Figures = append(set.Figures, all...)
	return all
}

// Checks is every check and figure of the supply side.
func Checks() check.Set { return check.Join(set) }
