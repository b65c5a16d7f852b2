package draw

import (
	"slices"
	"strconv"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// lines draws every line with its words, its joints and its shut-offs.
func (s *schematic) lines() {
	numbers := map[*layout.Line][]int{}
	for _, j := range Joints(s.layout) {
		numbers[j.Line] = append(numbers[j.Line], j.Number)
	}
	for _, line := range inFlow(s.layout) {
		from, _ := line.From.Get()
		to, _ := line.To.Get()
		s.line(line, s.at[from], s.at[to], numbers[line])
	}
}

// line goes level from its beginning or to its end, whichever side has the lines of its
// own: past the place where lines part, or up to the place where they meet.
func (s *schematic) line(line *layout.Line, a, b Point, joints []int) {
	from, _ := line.From.Get()
	left, right, level := a.X+schematicBus, b.X-schematicBus, b.Y
	points := []Point{a, {left, a.Y}, {left, b.Y}, b}
	if len(s.layout.LeadsTo(from)) == 1 {
		points, level = []Point{a, {right, a.Y}, {right, b.Y}, b}, a.Y
	}
	marks := zoneLine(s.zones.of(line), points...)
	marks = append(marks, s.fittings(line, left, right, level, joints)...)
	marks = append(marks, s.beside(line, Point{left + 5, level + 4.6})...)
	s.marks = append(s.marks, &Group{Of: line.Spot().Pointer(), Label: line.Label(), Marks: marks})
}

// beside writes what is told of a line from a corner on: its name, a warning where there is
// one to give, then the rest.
func (s *schematic) beside(line *layout.Line, at Point) []Mark {
	words, warning := s.lineWords(line), s.warning(line)
	var marks []Mark
	for i, w := range slices.Concat(words[:1], warning, words[1:]) {
		text := &Text{At: at.plus(0, float64(i)*schematicLead), Size: schematicBody, Bold: i == 0, Content: w}
		marks = append(marks, backed(text)...)
		if i == 0 && len(warning) > 0 {
			tag, _ := signalTag(text.At.plus(text.Wide()+1.5, 0), report.Danger, schematicBody)
			marks = append(marks, tag...)
		}
	}
	return marks
}

// fittings puts a line's joints and shut-offs on it: the first joint at its beginning, the
// last at its end, and everything else between them, the shut-offs after the first joint.
func (s *schematic) fittings(line *layout.Line, left, right, level float64, joints []int) []Mark {
	shutoffs := line.Shutoffs.All()
	n := len(joints) + len(shutoffs)
	from, to := left+4, right-4
	place := func(i int) Point {
		if n == 1 {
			return Point{(from + to) / 2, level}
		}
		return Point{from + (to-from)*float64(i)/float64(n-1), level}
	}
	var marks []Mark
	for i, number := range joints {
		if i > 0 {
			i += len(shutoffs)
		}
		marks = append(marks, jointMark(place(i), number)...)
	}
	for i := range shutoffs {
		marks = append(marks, valveMark(place(min(len(joints), 1)+i))...)
	}
	return marks
}

// jointMark is a joint: a ring on the line with its number over it.
func jointMark(at Point, number int) []Mark {
	return []Mark{
		&Circle{Centre: at, Radius: 0.9, Pen: Pen{Width: 0.3}, Fill: White},
		&Text{At: Point{at.X, at.Y - 1.7}, Size: 2.2, Anchor: Middle, Content: strconv.Itoa(number)},
	}
}

// valveMark is a shut-off: two triangles, point to point.
func valveMark(at Point) []Mark {
	return []Mark{&Path{Closed: true, Pen: Pen{Width: 0.3}, Fill: White,
		Points: []Point{{at.X - 1.8, at.Y - 1.1}, {at.X - 1.8, at.Y + 1.1}, {at.X + 1.8, at.Y - 1.1}, {at.X + 1.8, at.Y + 1.1}}}}
}

// backed puts white behind a text, so that no line runs through it.
func backed(t *Text) []Mark {
	r := t.Bounds()
	return []Mark{&Path{Points: []Point{{r.Left, r.Top}, {r.Right, r.Top}, {r.Right, r.Bottom}, {r.Left, r.Bottom}}, Closed: true, Fill: White}, t}
}
