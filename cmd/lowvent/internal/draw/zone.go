package draw

import "lowvent.example/schema/layout"

// ZonePen is how a gas line is drawn, by the pressure in it, on every drawing alike. A
// zone that the file does not state has a pattern of its own.
func ZonePen(zone layout.PressureZone) Pen {
	switch zone {
	case layout.PressureZoneHigh:
		return Pen{Width: 0.9}
	case layout.PressureZoneMiddle:
		return Pen{Width: 0.7, Dash: DashDot}
	case layout.PressureZoneLow:
		return Pen{Width: 0.4}
	}
	return Pen{Width: 0.6, Dash: Dotted}
}

// zonesExplained is the legend of the patterns.
func zonesExplained() []Explained {
	var all []Explained
	for _, each := range []struct {
		zone  layout.PressureZone
		means string
	}{
		{layout.PressureZoneHigh, "gas line at cylinder pressure"},
		{layout.PressureZoneMiddle, "gas line between two regulators"},
		{layout.PressureZoneLow, "gas line at appliance pressure"},
		{"", "gas line whose pressure the file does not state"},
	} {
		all = append(all, Explained{Marks: []Mark{&Path{Points: []Point{{0.5, 3}, {11.5, 3}}, Pen: ZonePen(each.zone)}}, Means: each.means})
	}
	return all
}
