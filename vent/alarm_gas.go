package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var alarmReads = []string{"/spaces/*/use", "/appliances", "/appliances/*/in", "/alarms", "/alarms/*/kind", "/alarms/*/in",
	"/alarms/*/replaceBy", "/alarms/*/liveWhenIsolated"}

var _ = add(check.For(check.Descriptor{
	ID:         "alarm.gas",
	Asks:       "Is there a propane alarm, low down, within its date and live, in the space where people live or gas burns?",
	Why:        "Propane lies on the floor under the nose of a sleeper; the alarm has to be down there with it, and alive.",
	NotCovered: "Whether it hears gas: only test gas shows that, its button does not. An alarm earns no credit in any other check.",
	Word:       report.Warning,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.AlarmGasDuty.Term, code.AlarmGasHeight.Term, code.PracticeAlarmGasDuty.Term, code.PracticeAlarmGasHeight.Term},
	Reads:      append([]string{"/alarms/*/at", "/alarms/*/box/from", "/alarms/*/box/to", "/spaces/*/box/from", "/spaces/*/box/to"}, alarmReads...),
	Inventory:  []layout.InventoryList{layout.InventoryListAppliances, layout.InventoryListAlarms},
}, spaces, func(s *check.Sheet, space *layout.Space) check.Ruling {
	return check.OrPractice(s,
		func(s *check.Sheet) check.Ruling { return gasAlarm(s, space, code.AlarmGasDuty, code.AlarmGasHeight) },
		func(s *check.Sheet) check.Ruling {
			return gasAlarm(s, space, code.PracticeAlarmGasDuty, code.PracticeAlarmGasHeight)
		})
}))

func gasAlarm(s *check.Sheet, space *layout.Space, duty code.DutyLimit, height lengthLimit) check.Ruling {
	return alarmed(s, space, layout.AlarmKindPropane, duty, func(s *check.Sheet, a *layout.Alarm) check.Ruling {
		most := check.Limit(s, "h_max", height, nil)
		return check.AtMost(s, overFloor(s, a, space), most).Mend("Lower it to where the gas lies, by its own instructions.")
	})
}
