package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

// needed asks whether a space needs an alarm: people live or sleep there, or a
// propane appliance burns there.
func needed(s *check.Sheet, space *layout.Space) bool {
	use := check.Read(s, &space.Use)
	if use == layout.SpaceUseSleeping || use == layout.SpaceUseLiving {
		return true
	}
	check.Inventory(s, layout.InventoryListAppliances)
	for _, a := range check.List(s, &s.Layout().Appliances) {
		if check.Read(s, &a.In) == space.Ref() {
			return true
		}
	}
	return false
}

// alarmed asks that an alarm of a kind is in a space that needs one.
func alarmed(s *check.Sheet, space *layout.Space, kind layout.AlarmKind, duty code.DutyLimit, placed func(*check.Sheet, *layout.Alarm) check.Ruling) check.Ruling {
	if !needed(s, space) {
		return check.NotApplicable(s, "nobody sleeps or lives there, and no propane burns there")
	}
	return alarmIn(s, space, kind, duty, placed)
}

// alarmIn asks that an alarm of a kind is in the space, alive and within its date.
// Each alarm there is tried; one that is right is enough.
func alarmIn(s *check.Sheet, space *layout.Space, kind layout.AlarmKind, duty code.DutyLimit, placed func(*check.Sheet, *layout.Alarm) check.Ruling) check.Ruling {
	asked := check.Asked(s, duty, useOf(space))
	var tries []func(*check.Sheet) check.Ruling
	for _, a := range check.List(s, &s.Layout().Alarms) {
		if check.Read(s, &a.Kind) != kind || check.Read(s, &a.In) != space.Ref() {
			continue
		}
		tries = append(tries, func(s *check.Sheet) check.Ruling {
			return check.All(s,
				func(s *check.Sheet) check.Ruling { return inDate(s, a, space, duty).About("%s, date", a.Label()) },
				func(s *check.Sheet) check.Ruling { return live(s, a, space, duty).About("%s, power", a.Label()) },
				func(s *check.Sheet) check.Ruling { return placed(s, a).About("%s, place", a.Label()) })
		})
	}
	if len(tries) == 0 {
		check.Whole(s, layout.InventoryListAlarms)
		return check.Is(s, false, asked, "none in this space", "an alarm in this space").Points(space.Spot()).
			Mend("An alarm listed for dwellings of this kind, placed by its own instructions.")
	}
	return check.Any(s, tries...)
}

// useOf tells a code what a space is used for.
func useOf(space *layout.Space) check.Facts {
	return check.Facts{code.FactSpaceUse: func(s *check.Sheet) any { return string(check.Read(s, &space.Use)) }}
}

// inDate asks that the alarm is not past the date on its case.
func inDate(s *check.Sheet, a *layout.Alarm, space *layout.Space, duty code.DutyLimit) check.Ruling {
	asked := check.Asked(s, duty, useOf(space))
	by := check.Read(s, &a.ReplaceBy)
	return check.Is(s, !by.First().Before(s.On()), asked, "to be replaced by "+by.String(), "a date that has not come").
		Mend("Replace the alarm: its sensor is spent by then.")
}

// live asks that the alarm still works with the battery isolator off.
func live(s *check.Sheet, a *layout.Alarm, space *layout.Space, duty code.DutyLimit) check.Ruling {
	asked := check.Asked(s, duty, useOf(space))
	is := check.Read(s, &a.Live)
	return check.Is(s, is, asked, powered(is), powered(true)).
		Mend("Feed it ahead of the isolator, or fit one with its own battery.", check.SetBool(&a.Live, true))
}

func powered(live bool) string {
	if live {
		return "live with the isolator off"
	}
	return "dead with the isolator off"
}

// overFloor takes how high an alarm's lowest point is over the lowest point of
// the floor of its space.
func overFloor(s *check.Sheet, a *layout.Alarm, space *layout.Space) unit.Length {
	alarm := at(s, a, &a.Position)
	from, to := check.Corners(s, &space.Box)
	return check.Band(s, "h", "height of "+a.Spot().Pointer()+" over the floor", heightAbove(boxOf(from, to), alarm.box))
}
