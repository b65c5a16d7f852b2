package vent

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:   "space.depressurised",
	Asks: "Have the fans of the space enough fixed vents, so that they don't draw air out of lockers, from under the floor or down a flue?",
	Why:  "A fan takes its air where it finds it: through the cracks of a gas locker, up from where a leak has pooled, or out of a flue.",
	NotCovered: "Where the cracks are and what lies behind them; vents that people block; wind. Open flues are asked more strictly, in " +
		"room.make-up-air.",
	Word:      report.Warning,
	MayAct:    report.Owner,
	Limits:    []*code.Term{code.PracticeDraw.Term, code.PracticeFanInlet.Term},
	Reads:     slices.Concat([]string{"/spaces/*/use"}, burnReads, fanReads),
	Inventory: []layout.InventoryList{layout.InventoryListAppliances, layout.InventoryListStoves, layout.InventoryListFans},
	Sources:   []string{drawnSource},
}, spaces, func(s *check.Sheet, space *layout.Space) check.Ruling {
	if !aired(s, space) {
		return check.NotApplicable(s, "nobody lives or sleeps there, and nothing burns there")
	}
	return pulledDown(s, space, code.PracticeDraw, "Fixed vents large enough for the fans, or weaker fans.")
}))
