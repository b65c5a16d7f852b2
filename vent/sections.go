package vent

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
)

func alarms(l *layout.Layout) *layout.Section[layout.Alarm]         { return &l.Alarms }
func appliances(l *layout.Layout) *layout.Section[layout.Appliance] { return &l.Appliances }
func cylinders(l *layout.Layout) *layout.Section[layout.Cylinder]   { return &l.Cylinders }
func ignitionSources(l *layout.Layout) *layout.Section[layout.IgnitionSource] {
	return &l.IgnitionSources
}
func lockers(l *layout.Layout) *layout.Section[layout.Locker] { return &l.Lockers }
func spaces(l *layout.Layout) *layout.Section[layout.Space]   { return &l.Spaces }

// occupied are the uses of a space in which people sit, sleep, wash or cook.
var occupied = []layout.SpaceUse{layout.SpaceUseLiving, layout.SpaceUseSleeping, layout.SpaceUseKitchen, layout.SpaceUseWashroom, layout.SpaceUseCab}

func isOccupied(use layout.SpaceUse) bool { return slices.Contains(occupied, use) }

// surveyIn asks that a list is stated complete where a thing stands: in a space,
// in a locker, or in the open air.
func surveyIn(s *check.Sheet, place layout.Item, list layout.SurveyList) {
	switch place := place.(type) {
	case *layout.Space:
		check.Survey(s, place, &place.Surveyed, list)
	case *layout.Locker:
		check.Survey(s, place, &place.Surveyed, list)
	default:
		check.Survey(s, s.Layout(), &s.Layout().Outside.Surveyed, list)
	}
}
