package draw

import "math"

// symbolReach is how far the symbol of a thing without size reaches from its middle, in mm.
const symbolReach = 1.5

// symbol draws a thing that stands at a point, about it. Meaning hangs on shape alone.
func symbol(s sort, word string, at Point, pen Pen) []Mark {
	pen.Dash = Solid // a small symbol can't be dashed and still be told
	switch s {
	case isIgnition:
		return star(at, pen)
	case isOpening:
		r := around(at, 2.4, 2.4)
		return []Mark{r.drawn(pen, White), line(pen, Point{r.Left, r.Top}, Point{r.Right, r.Bottom}), line(pen, Point{r.Left, r.Bottom}, Point{r.Right, r.Top})}
	case isFixedVent, isLockerVent:
		return ventSymbol(at, word, pen)
	case isAlarm:
		return alarmSymbol(at, word, pen)
	case isFan:
		return fanSymbol(at, pen)
	case isExtinguisher:
		r := around(at, 1.6, 2.8)
		return []Mark{r.drawn(pen, White), line(pen, Point{r.Left, at.Y}, Point{r.Right, at.Y}), line(pen, at.plus(-0.8, -1.9), at.plus(0.8, -1.9))}
	case isAppliance, isStove:
		r := around(at, 2.6, 2.6)
		return []Mark{r.drawn(Pen{Width: bold}, White), dot(at, 0.5)}
	case isExhaust:
		r := around(at, 2.8, 2)
		return []Mark{r.drawn(pen, White), line(pen, Point{r.Left, r.Bottom}, Point{r.Right, r.Top})}
	}
	return gearSymbol(s, at, pen)
}

// gearSymbol draws the gas installation's own parts.
func gearSymbol(s sort, at Point, pen Pen) []Mark {
	switch s {
	case isRegulator:
		return []Mark{&Circle{Centre: at, Radius: 1.4, Pen: pen, Fill: White}, line(pen, at.plus(-1.4, 0), at.plus(1.4, 0)), line(pen, at, at.plus(0, -1.4))}
	case isChangeover:
		return []Mark{area(pen, White, at.plus(0, -1.5), at.plus(1.5, 0), at.plus(0, 1.5), at.plus(-1.5, 0))}
	case isJunction:
		return []Mark{dot(at, 0.8)}
	case isOpenEnd:
		return []Mark{line(Pen{Width: bold}, at.plus(-1.2, -1.2), at.plus(-1.2, 1.2)), line(Pen{Width: bold}, at.plus(-1.2, 0), at.plus(1.2, 0))}
	case isOutlet:
		return []Mark{area(pen, White, at.plus(-1.3, -1.3), at.plus(1.5, 0), at.plus(-1.3, 1.3))}
	case isFillPoint:
		return []Mark{&Circle{Centre: at, Radius: 1.4, Pen: pen, Fill: White}, line(pen, at.plus(-1.4, 0), at.plus(1.4, 0)), line(pen, at.plus(0, -1.4), at.plus(0, 1.4))}
	case isCylinder:
		return []Mark{&Circle{Centre: at, Radius: 1.5, Pen: Pen{Width: bold}, Fill: White}}
	case isShutoff:
		return []Mark{area(pen, White, at.plus(-1.4, -0.8), at.plus(1.4, 0.8), at.plus(1.4, -0.8), at.plus(-1.4, 0.8))}
	case isPenetration:
		return []Mark{around(at, 2, 2).drawn(pen, White), dot(at, 0.45)}
	case isFlue:
		return []Mark{&Circle{Centre: at, Radius: 1.2, Pen: pen, Fill: White}, dot(at, 0.5)}
	}
	return []Mark{area(pen, White, at.plus(-1.1, 1), at.plus(1.1, 1), at.plus(1.1, -1), at.plus(-1.1, -1))}
}

// star is three lines across one another: something that can light gas.
func star(at Point, pen Pen) []Mark {
	marks := []Mark{&Circle{Centre: at, Radius: 1.1, Fill: White}}
	pen.Width = max(pen.Width, 0.3)
	for i := range 3 {
		sine, cosine := math.Sincos(math.Pi * (float64(i)/3 + 0.5))
		marks = append(marks, line(pen, at.plus(-1.3*cosine, -1.3*sine), at.plus(1.3*cosine, 1.3*sine)))
	}
	return marks
}

// ventSymbol points down, filled, for a low vent; up, open, for a high one.
func ventSymbol(at Point, word string, pen Pen) []Mark {
	switch word {
	case "low":
		return []Mark{area(pen, Black, at.plus(-1.4, -1.2), at.plus(1.4, -1.2), at.plus(0, 1.4))}
	case "high":
		return []Mark{area(pen, White, at.plus(-1.4, 1.2), at.plus(1.4, 1.2), at.plus(0, -1.4))}
	}
	return []Mark{area(pen, White, at.plus(0, -1.5), at.plus(1.2, 0), at.plus(0, 1.5), at.plus(-1.2, 0)), line(pen, at.plus(-0.6, 0), at.plus(0.6, 0))}
}

// alarmSymbol is a ring, black below for propane, black above for smoke, with a cross bar
// for carbon monoxide.
func alarmSymbol(at Point, word string, pen Pen) []Mark {
	const r = 1.5
	marks := []Mark{&Circle{Centre: at, Radius: r, Pen: pen, Fill: White}}
	half := func(sense float64) *Path {
		p := &Path{Closed: true, Fill: Black}
		for i := range 13 {
			sine, cosine := math.Sincos(math.Pi * float64(i) / 12)
			p.Points = append(p.Points, at.plus(r*cosine, sense*r*sine))
		}
		return p
	}
	switch word {
	case "propane":
		return append(marks, half(1))
	case "smoke":
		return append(marks, half(-1))
	case "carbon monoxide":
		return append(marks, line(Pen{Width: 0.5}, at.plus(-r, 0), at.plus(r, 0)), line(Pen{Width: 0.5}, at.plus(0, -r), at.plus(0, r)))
	}
	return append(marks, dot(at, 0.4))
}

func fanSymbol(at Point, pen Pen) []Mark {
	marks := []Mark{&Circle{Centre: at, Radius: 1.5, Pen: pen, Fill: White}}
	blade := func(sense float64) *Path {
		return area(pen, Pale, at, at.plus(sense*1.3, -0.7), at.plus(sense*1.3, 0.7))
	}
	return append(marks, blade(1), blade(-1))
}

// endSymbol is where something that began elsewhere comes out.
func endSymbol(what string, at Point, pen Pen) []Mark {
	pen.Dash = Solid
	switch what {
	case "intake":
		return []Mark{&Circle{Centre: at, Radius: 1.2, Pen: pen, Fill: White}}
	case "terminal":
		return []Mark{&Circle{Centre: at, Radius: 1.2, Pen: pen, Fill: White}, dot(at, 0.5)}
	case "exhaust outlet":
		return []Mark{&Circle{Centre: at, Radius: 1.2, Pen: Pen{Width: bold}, Fill: Pale}}
	}
	return []Mark{&Circle{Centre: at, Radius: 0.8, Pen: pen, Fill: White}}
}
