package draw

import "lowvent.example/schema/layout"

// zonePen is how a gas line is drawn, by the pressure in it, on every drawing alike. A
// zone that the file does not state has a pattern of its own.
func zonePen(zone layout.PressureZone) Pen {
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

// zoneMeans explains the line of a pressure zone in a legend.
func zoneMeans(zone layout.PressureZone) string {
	switch zone {
	case layout.PressureZoneHigh:
		return "gas line at cylinder pressure (high)"
	case layout.PressureZoneMiddle:
		return "gas line between two regulators (middle)"
	case layout.PressureZoneLow:
		return "gas line at the appliances' pressure (low)"
	}
	return "gas line, pressure not stated"
}

// zonesExplained is the legend of the patterns.
func zonesExplained() []Explained {
	var all []Explained
	for _, word := range append(layout.PressureZone("").Choices(), "") {
		zone := layout.PressureZone(word)
		all = append(all, Explained{Marks: []Mark{&Path{Points: []Point{{0.5, 3}, {11.5, 3}}, Pen: zonePen(zone)}}, Means: zoneMeans(zone)})
	}
	return all
}
