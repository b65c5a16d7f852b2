package draw

import "lowvent.example/schema/layout"

// zonePen is how a gas line is drawn, by the pressure in it, on every drawing alike. A
// zone that is not known has a pattern of its own. Lines at cylinder pressure have cross
// ticks besides, for a width alone is lost on a copy.
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

// zoneLine draws a gas line through some points, the line itself first.
func zoneLine(zone layout.PressureZone, points ...Point) []Mark {
	marks := []Mark{line(zonePen(zone), points...)}
	if zone != layout.PressureZoneHigh {
		return marks
	}
	for i := 1; i < len(points); i++ {
		marks = append(marks, crossTicks(points[i-1], points[i])...)
	}
	return marks
}

// tickApart is how far apart the cross ticks are, and tickReach how far they stand out to
// each side of the line's middle, in mm.
const (
	tickApart = 3.0
	tickReach = 1.1
)

// crossTicks cross a straight line at even distances; one too short for any has none.
func crossTicks(a, b Point) []Mark {
	long := a.to(b)
	many := min(int(long/tickApart+0.5), 400)
	if many == 0 && long >= tickApart/4 {
		many = 1
	}
	var marks []Mark
	for i := range many {
		share := (float64(i) + 0.5) / float64(many)
		at := Point{a.X + (b.X-a.X)*share, a.Y + (b.Y-a.Y)*share}
		x, y := -(b.Y-a.Y)/long*tickReach, (b.X-a.X)/long*tickReach
		marks = append(marks, line(Pen{Width: 0.35}, at.plus(x, y), at.plus(-x, -y)))
	}
	return marks
}

// zoneMeans explains the line of a pressure zone in a legend.
func zoneMeans(zone layout.PressureZone) string {
	switch zone {
	case layout.PressureZoneHigh:
		return "gas line that cylinder pressure can reach (high): cross ticks"
	case layout.PressureZoneMiddle:
		return "gas line between two regulators (middle)"
	case layout.PressureZoneLow:
		return "gas line at the appliances' pressure (low)"
	}
	return "gas line, pressure not known"
}

func zoneOf(word string) layout.PressureZone { return layout.PressureZone(word) }

// zoneMark is the line of a zone in a legend.
func zoneMark(zone layout.PressureZone) []Mark {
	return zoneLine(zone, Point{0.5, 3}, Point{11.5, 3})
}

// zonesExplained is the legend of the patterns.
func zonesExplained() []Explained {
	var all []Explained
	for _, word := range append(layout.PressureZone("").Choices(), "") {
		zone := zoneOf(word)
		all = append(all, Explained{Marks: zoneMark(zone), Means: zoneMeans(zone)})
	}
	return all
}
