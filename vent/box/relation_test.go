package box

import (
	"math"
	"testing"

	"lowvent.example/schema/unit"
)

// Each row: two boxes and the answers by hand. The hob is 0.5 × 0.5 m with its
// top at 0.90 m.
func TestRelations(t *testing.T) {
	hob := boxed(1, 1.5, 1, 1.5, 0.85, 0.90)
	for _, c := range []struct {
		name               string
		b                  Box
		meet, above, inner Answer
	}{
		{"shelf over it", boxed(1.1, 1.4, 1.1, 1.4, 1.4, 1.5), No, Yes, No},
		{"shelf that touches the edge in plan", boxed(1.5, 1.9, 1.1, 1.4, 1.4, 1.5), No, Yes, No},
		{"shelf a millimetre beside", boxed(1.501, 1.9, 1.1, 1.4, 1.4, 1.5), No, No, No},
		{"curtain that hangs past its edge", boxed(1.4, 1.45, 0, 3, 0.2, 2), Yes, Yes, No},
		{"curtain beside it", boxed(1.6, 1.65, 0, 3, 0.2, 2), No, No, No},
		{"worktop that it stands in", boxed(0, 3, 1, 1.6, 0.86, 0.90), Yes, No, No},
		{"pan on it", boxed(1.1, 1.3, 1.1, 1.3, 0.90, 1.0), Yes, Yes, No},
		{"cloth on it, no thickness", boxed(1.1, 1.3, 1.1, 1.3, 0.90, 0.90), Yes, Yes, Yes},
		{"drawer under it", boxed(1, 1.5, 1, 1.5, 0.5, 0.80), No, No, No},
		{"burner within it", boxed(1.1, 1.2, 1.1, 1.2, 0.86, 0.88), Yes, No, Yes},
		{"itself", hob, Yes, No, Yes},
		{"perhaps touching in plan", loose(boxed(1.51, 1.9, 1.1, 1.4, 1.4, 1.5), 0.01), No, Unsure, No},
		{"perhaps higher", loose(boxed(1.1, 1.4, 1.1, 1.4, 0.5, 0.895), 0.01), Yes, Unsure, No},
		{"perhaps within", loose(boxed(1, 1.5, 1.1, 1.4, 0.86, 0.88), 0.001), Yes, No, Unsure},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := Meet(hob, c.b); got != c.meet {
				t.Errorf("Meet = %v, want %v", got, c.meet)
			}
			if got := Above(hob, c.b); got != c.above {
				t.Errorf("Above = %v, want %v", got, c.above)
			}
			if got := Encloses(hob, c.b); got != c.inner {
				t.Errorf("Encloses = %v, want %v", got, c.inner)
			}
		})
	}
}

// The same locker, a point on or off each wall. Left and right are those of
// somebody who faces the front.
func TestOnWall(t *testing.T) {
	locker := boxed(2, 3, 0, 1, -0.1, 0.5)
	for _, c := range []struct {
		name  string
		p     Point
		wall  Wall
		slack float64
		want  Answer
	}{
		{"left", point(2.5, 0, 0.2), Left, 0, Yes},
		{"left is not right", point(2.5, 0, 0.2), Right, 0.02, No},
		{"right", point(2.5, 1, 0.2), Right, 0, Yes},
		{"front", point(2, 0.5, 0.2), Front, 0, Yes},
		{"rear", point(3, 0.5, 0.2), Rear, 0, Yes},
		{"rear is not front", point(3, 0.5, 0.2), Front, 0.02, No},
		{"floor", point(2.5, 0.5, -0.1), Floor, 0, Yes},
		{"ceiling", point(2.5, 0.5, 0.5), Ceiling, 0, Yes},
		{"floor is not ceiling", point(2.5, 0.5, -0.1), Ceiling, 0.02, No},
		{"outside skin, within slack", point(2.5, -0.02, 0.2), Left, 0.02, Yes},
		{"inside lining, within slack", point(2.5, 0.02, 0.2), Left, 0.02, Yes},
		{"just past the slack", point(2.5, -0.020001, 0.2), Left, 0.02, No},
		{"in the plane, beside the wall", point(3.5, 0, 0.2), Left, 0.02, No},
		{"in the plane, ahead of the wall", point(1.5, 0, 0.2), Left, 0.02, No},
		{"in the plane, over the wall", point(2.5, 0, 0.6), Left, 0.02, No},
		{"in the plane, under the wall", point(2.5, 0, -0.2), Left, 0.02, No},
		{"at the corner", point(3, 1, 0.5), Ceiling, 0, Yes},
		{"within slack of the corner", point(3.02, 1.02, 0.52), Ceiling, 0.02, Yes},
		{"in the middle", point(2.5, 0.5, 0.2), Left, 0.02, No},
		{"a slack below nothing", point(2.5, 0, 0.2), Left, -1, Yes},
		{"a slack below nothing, off the wall", point(2.5, 0.001, 0.2), Left, -1, No},
		{"an undefined slack", point(2.5, 0.3, 0.2), Left, math.NaN(), Unsure},
		{"no wall", point(2.5, 0, 0.2), "", 0, Unsure},
		{"no such wall", point(2.5, 0, 0.2), "port", 0, Unsure},
		{"taped loosely", Point{exact(2.5), about(0.01, 0.015), exact(0.2)}, Left, 0.02, Unsure},
		{"taped loosely, but enough", Point{exact(2.5), about(0, 0.015), exact(0.2)}, Left, 0.02, Yes},
	} {
		if got := OnWall(locker, c.p, c.wall, unit.Length(c.slack)); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

func TestAnswers(t *testing.T) {
	var zero Answer
	if zero != Unsure {
		t.Error("the zero answer says something")
	}
	for a, want := range map[Answer]string{Unsure: "unsure", No: "no", Yes: "yes", Answer(9): "unsure"} {
		if a.String() != want {
			t.Errorf("%d is %q, want %q", a, a.String(), want)
		}
	}
	for _, c := range []struct{ a, b, all, either Answer }{
		{Yes, Yes, Yes, Yes}, {Yes, Unsure, Unsure, Yes}, {Yes, No, No, Yes},
		{Unsure, Unsure, Unsure, Unsure}, {Unsure, No, No, Unsure}, {No, No, No, No},
	} {
		if all(c.a, c.b) != c.all || all(c.b, c.a) != c.all {
			t.Errorf("%v and %v is %v, want %v", c.a, c.b, all(c.a, c.b), c.all)
		}
		if either(c.a, c.b) != c.either || either(c.b, c.a) != c.either {
			t.Errorf("%v or %v is %v, want %v", c.a, c.b, either(c.a, c.b), c.either)
		}
	}
}
