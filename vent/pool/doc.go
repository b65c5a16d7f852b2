// Package pool computes what heavy gas does that leaks into living space: how soon it
// can reach something that lights it, how late an alarm can hear it, and how little of
// a cylinder makes the whole space flammable.
//
// Nobody knows how a leak mixes on its way down. So the gas is taken as it could be
// worst, and that is not the same for both questions. For what lights it, all of the
// leak lies on the floor as a layer that is just flammable: no thinner mixture burns,
// so no flammable layer grows faster. For the alarm, the gas lies as a thin rich layer,
// or is mixed through the whole space, whichever is heard later. The mixed case is
// never a time of warning: gas pooled on the floor is flammable long before. Near the
// leak it is flammable at once, whatever is said here.
//
// Rooms are boxes joined over sills, see [Space]. Gas fills a room up to its lowest
// sill, then runs over.
//
// Left out, to the side of too late: furniture and bulkheads that take up floor (give
// the free area), a floor out of level, a draught, fans, feet and a jet that carry gas
// up to what no layer has reached, a layer that is deeper on one side. Left out, to the
// side of too soon: gas that is thinned below the limit or escapes through cracks, and
// the time it takes to run along the floor ([Stream]). A figure may add a finding. It
// never makes a vent, a seal or a distance smaller, and the alarm that it hears late
// earns nothing in another check.
//
// Gas is whatever is heavier than air: densities, limits and flows are given. Propane
// is lit from 1.7 % by volume by the widest of the published ranges
// (propane.WidestRange), which errs to the side of too soon.
package pool
