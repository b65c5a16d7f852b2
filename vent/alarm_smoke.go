package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

var _ = add(check.For(check.Descriptor{
	ID:         "alarm.smoke",
	Asks:       "Is there a smoke alarm, close under the ceiling, within its date and live, in the space where people live, cook or sleep?",
	Why:        "A small dwelling burns out in minutes, and smoke does not wake a sleeper: it stuns.",
	NotCovered: "Its kind near a cooker, corners where air stands still, and whether alarms set each other off: its own instructions say.",
	Word:       report.Warning,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.AlarmSmokeDuty.Term, code.AlarmSmokeDepth.Term, code.PracticeAlarmSmokeDuty.Term, code.PracticeAlarmSmokeDepth.Term},
	Reads:      append([]string{"/alarms/*/at", "/alarms/*/box/from", "/alarms/*/box/to", "/spaces/*/box/from", "/spaces/*/box/to"}, alarmReads...),
	Inventory:  []layout.InventoryList{layout.InventoryListAppliances, layout.InventoryListAlarms},
}, spaces, func(s *check.Sheet, space *layout.Space) check.Ruling {
	return check.OrPractice(s,
		func(s *check.Sheet) check.Ruling {
			return smokeAlarm(s, space, code.AlarmSmokeDuty, code.AlarmSmokeDepth)
		},
		func(s *check.Sheet) check.Ruling {
			return smokeAlarm(s, space, code.PracticeAlarmSmokeDuty, code.PracticeAlarmSmokeDepth)
		})
}))

func smokeAlarm(s *check.Sheet, space *layout.Space, duty code.DutyLimit, depth lengthLimit) check.Ruling {
	return alarmed(s, space, layout.AlarmKindSmoke, duty, func(s *check.Sheet, a *layout.Alarm) check.Ruling {
		most := check.Limit(s, "h_max", depth, useOf(space))
		return check.AtMost(s, underTop(s, a, space), most).Mend("Raise it to where the smoke gathers first, by its own instructions.")
	})
}

// underTop takes how far an alarm's highest point is below the ceiling of its space.
func underTop(s *check.Sheet, a *layout.Alarm, space *layout.Space) unit.Length {
	alarm := at(s, a, &a.Position)
	from, to := check.Corners(s, &space.Box)
	return check.Band(s, "h", "depth of "+a.Spot().Pointer()+" below the ceiling", depthBelow(boxOf(from, to), alarm.box))
}

// depthBelow is how far the highest point of a thing lies below the ceiling of a
// space.
func depthBelow(space, thing box.Box) unit.Value[unit.Length] {
	ceiling, _ := box.HighestPoint(space)
	top, _ := box.HighestPoint(thing)
	return less(ceiling, top)
}
