// Package vent holds the checks and figures of air and place: where cylinders
// stand, how lockers are sealed and vented, what is near, what burners do to the
// air, and where alarms hang. One file a check, named by its id; the geometry and
// physics they use stand in the folders below, without I/O and without a layout.
package vent

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

// Checks is every check and figure of air and place.
func Checks() check.Set { return check.Join(set) }
