package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "alarm.co",
	Asks:       "Is there a carbon monoxide alarm, within its date and live, in the space where people live or sleep or anything burns?",
	Why:        "Carbon monoxide has no smell; people asleep do not wake from it, and a shut door keeps an alarm in the next room deaf.",
	NotCovered: "Its height and distance from burners: its own instructions say. An alarm earns no credit in any other check.",
	Word:       report.Warning,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.AlarmCODuty.Term, code.PracticeAlarmCODuty.Term},
	Reads:      alarmReads,
	Inventory:  []layout.InventoryList{layout.InventoryListAppliances, layout.InventoryListAlarms},
}, spaces, func(s *check.Sheet, space *layout.Space) check.Ruling {
	return check.ByEither(s, code.AlarmCODuty, code.PracticeAlarmCODuty, func(s *check.Sheet, duty code.DutyLimit) check.Ruling {
		return alarmed(s, space, layout.AlarmKindCarbonMonoxide, duty, inThere(space, duty))
	})
}))

// inThere rules that an alarm is in the right place by being in the space at all.
func inThere(space *layout.Space, duty code.DutyLimit) func(*check.Sheet, *layout.Alarm) check.Ruling {
	return func(s *check.Sheet, _ *layout.Alarm) check.Ruling {
		return check.Is(s, true, check.Asked(s, duty, useOf(space)), "in this space", "in this space")
	}
}
