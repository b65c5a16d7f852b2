package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:   "room.solid-fuel",
	Asks: "Does the stove for solid fuel count as what it is: a carbon monoxide alarm in its space, and a place among what lights gas?",
	Why:  "A banked stove gives off carbon monoxide all night, draws on the air of the gas flames, and lights what leaks.",
	NotCovered: "Its hearth, its distances and its sweeping. The air it needs is in room.vent-area, its flue in flue.terminal and flue.route, " +
		"and what it may light in ignition.near-gas.",
	Word:   report.Danger,
	MayAct: report.LicensedFitter,
	Limits: []*code.Term{code.PracticeStoveAlarm.Term, code.OwnStoveIsASpark.Term},
	Reads: []string{"/stoves/*/in", "/alarms", "/alarms/*/kind", "/alarms/*/in", "/alarms/*/replaceBy", "/alarms/*/liveWhenIsolated",
		"/ignitionSources", "/ignitionSources/*/kind", "/ignitionSources/*/in"},
	Inventory: []layout.InventoryList{layout.InventoryListAlarms},
}, stoves, alarmByStove, stoveIsASpark))

func stoves(l *layout.Layout) *layout.Section[layout.Stove] { return &l.Stoves }

func alarmByStove(s *check.Sheet, st *layout.Stove) check.Ruling {
	space, ok := check.Item(s, &st.In).(*layout.Space)
	if !ok {
		return check.Ruling{} // not stated: the contract has stoves in spaces only
	}
	return alarmIn(s, space, layout.AlarmKindCarbonMonoxide, code.PracticeStoveAlarm, inThere(space, code.PracticeStoveAlarm))
}

func stoveIsASpark(s *check.Sheet, st *layout.Stove) check.Ruling {
	asked := check.Asked(s, code.OwnStoveIsASpark, nil)
	in, listed := check.Read(s, &st.In), false
	for _, i := range check.List(s, &s.Layout().IgnitionSources) {
		listed = listed || check.Read(s, &i.Kind) == layout.IgnitionKindSolidFuelStove && check.Read(s, &i.In) == in
	}
	return check.Is(s, listed, asked, either(listed, "listed among them", "not listed among them"), "listed among the ignition sources of its space").
		Points(st.Spot()).Mend("List it under ignitionSources too, as solid-fuel-stove, with its place.")
}
