package box

import "lowvent.example/schema/unit"

// Answer is what the tolerances allow one to say. The zero Answer is Unsure.
type Answer uint8

// The answers: Yes holds for every case inside the bands, No for none.
const (
	Unsure Answer = iota
	No
	Yes
)

// String gives the answer as a word.
func (a Answer) String() string {
	switch a {
	case Yes:
		return "yes"
	case No:
		return "no"
	}
	return "unsure"
}

// Meet tells whether two boxes touch or overlap, so that their [Gap] is 0.
func Meet(a, b Box) Answer {
	s, t := a.spans(), b.spans()
	return all(meet(s[0], t[0]), meet(s[1], t[1]), meet(s[2], t[2]))
}

// Above tells whether b, or a part of it, lies over a: whether the two meet in
// plan and b reaches higher than the highest point of a, or lies at that height.
// A curtain that hangs past the edge of a hob is over it although it starts
// below; [Rise] tells whether all of b is. Edges that only touch in plan count,
// so that a thing at the very edge of a flame is over it: the cautious side.
func Above(a, b Box) Answer {
	s, t := a.spans(), b.spans()
	over := either(exceeds(t[2].to, s[2].to), reaches(t[2].from, s[2].to))
	return all(meet(s[0], t[0]), meet(s[1], t[1]), over)
}

// Encloses tells whether the inner box lies in the outer one, touching faces
// included. A box encloses itself when it is exact.
func Encloses(outer, inner Box) Answer {
	s, t := outer.spans(), inner.spans()
	answer := Yes
	for i := range s {
		answer = all(answer, reaches(t[i].from, s[i].from), reaches(s[i].to, t[i].to))
	}
	return answer
}

// Wall names a face of a box, as seen facing the front.
type Wall string

// The walls: the face at the least or greatest coordinate along an axis.
const (
	Left    Wall = "left"    // least y
	Right   Wall = "right"   // greatest y
	Front   Wall = "front"   // least x
	Rear    Wall = "rear"    // greatest x
	Floor   Wall = "floor"   // least z
	Ceiling Wall = "ceiling" // greatest z
)

// OnWall tells whether a point lies on a wall of a box: no farther than slack,
// in m, from the plane of the wall and within its outline widened by slack. The
// slack allows for the thickness of a wall and for a vent that is drawn at its
// middle; one below 0 counts as 0. A name that is no wall gives Unsure.
func OnWall(b Box, p Point, wall Wall, slack unit.Length) Answer {
	s, q := b.spans(), At(p).spans()
	axis, face, ok := wall.face(s)
	if !ok {
		return Unsure
	}
	room := most(bandOf(unit.Exactly(slack)), band{})
	answer := all(reaches(room, face.minus(q[axis].from)), reaches(room, q[axis].from.minus(face)))
	for i := range s {
		if i != axis {
			answer = all(answer,
				reaches(room, s[i].from.minus(q[i].from)), reaches(room, q[i].from.minus(s[i].to)))
		}
	}
	return answer
}

// face gives the axis across the wall and where the wall stands along it.
func (w Wall) face(s [3]span) (axis int, at band, ok bool) {
	switch w {
	case Front:
		return 0, s[0].from, true
	case Rear:
		return 0, s[0].to, true
	case Left:
		return 1, s[1].from, true
	case Right:
		return 1, s[1].to, true
	case Floor:
		return 2, s[2].from, true
	case Ceiling:
		return 2, s[2].to, true
	}
	return 0, band{}, false
}

// reaches tells whether a ≥ b.
func reaches(a, b band) Answer {
	switch d := a.minus(b); {
	case d.low >= 0:
		return Yes
	case d.high < 0:
		return No
	}
	return Unsure
}

// exceeds tells whether a > b.
func exceeds(a, b band) Answer {
	switch d := a.minus(b); {
	case d.low > 0:
		return Yes
	case d.high <= 0:
		return No
	}
	return Unsure
}

// meet tells whether two spans touch or overlap.
func meet(a, b span) Answer { return all(reaches(a.to, b.from), reaches(b.to, a.from)) }

// all joins answers by and: one No settles it, else one Unsure does.
func all(answers ...Answer) Answer {
	joined := Yes
	for _, a := range answers {
		if a == No {
			return No
		}
		if a != Yes {
			joined = Unsure
		}
	}
	return joined
}

// either joins two answers by or: one Yes settles it, else one Unsure does.
func either(a, b Answer) Answer {
	switch {
	case a == Yes || b == Yes:
		return Yes
	case a == No && b == No:
		return No
	}
	return Unsure
}
