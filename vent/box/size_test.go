package box

import "testing"

func TestSizes(t *testing.T) {
	for _, c := range []struct {
		name                 string
		b                    Box
		height, area, volume [3]float64
	}{
		{"a locker", boxed(0.2, 0.5, 0, 0.2, -0.1, 0.5), [3]float64{0.6, 0.6, 0.6}, [3]float64{0.06, 0.06, 0.06}, [3]float64{0.036, 0.036, 0.036}},
		{"flat", boxed(0, 2, 0, 3, 1, 1), [3]float64{}, [3]float64{6, 6, 6}, [3]float64{}},
		{"a point", At(point(1, 2, 3)), [3]float64{}, [3]float64{}, [3]float64{}},
		{"corners exchanged", Box{point(2, 3, 4), point(0, 0, 0)}, [3]float64{4, 4, 4}, [3]float64{6, 6, 6}, [3]float64{24, 24, 24}},
		{"±5 cm", loose(boxed(0, 2, 0, 3, 0, 4), 0.05), [3]float64{3.9, 4, 4.1}, [3]float64{5.51, 6, 6.51}, [3]float64{21.489, 24, 26.691}},
		{"perhaps nothing", loose(boxed(0, 1, 0, 1, 0, 0.05), 0.05), [3]float64{0, 0.05, 0.15}, [3]float64{0.81, 1, 1.21}, [3]float64{0, 0.05, 0.1815}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := three(Height(c.b)); got != c.height {
				t.Errorf("height %v, want %v", got, c.height)
			}
			if got := three(FloorArea(c.b)); got != c.area {
				t.Errorf("floor %v, want %v", got, c.area)
			}
			if got := three(Volume(c.b)); got != c.volume {
				t.Errorf("volume %v, want %v", got, c.volume)
			}
		})
	}
}

func TestOverlaps(t *testing.T) {
	a := boxed(0, 2, 0, 2, 0, 2)
	for _, c := range []struct {
		name         string
		b            Box
		plan, volume [3]float64
	}{
		{"a corner of 1 × 1 × 1", boxed(1, 3, 1, 3, 1, 3), [3]float64{1, 1, 1}, [3]float64{1, 1, 1}},
		{"inside", boxed(0.5, 1, 0.5, 1.5, 1, 1.5), [3]float64{0.5, 0.5, 0.5}, [3]float64{0.25, 0.25, 0.25}},
		{"around", boxed(-1, 3, -1, 3, -1, 3), [3]float64{4, 4, 4}, [3]float64{8, 8, 8}},
		{"itself", a, [3]float64{4, 4, 4}, [3]float64{8, 8, 8}},
		{"over it", boxed(1, 3, 1, 3, 5, 6), [3]float64{1, 1, 1}, [3]float64{}},
		{"touching", boxed(2, 3, 0, 2, 0, 2), [3]float64{}, [3]float64{}},
		{"apart", boxed(3, 4, 3, 4, 3, 4), [3]float64{}, [3]float64{}},
		{"perhaps touching", loose(boxed(2, 3, 0, 2, 0, 1), 0.1), [3]float64{0, 0, 0.2}, [3]float64{0, 0, 0.22}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := three(PlanOverlap(a, c.b)); got != c.plan {
				t.Errorf("plan %v, want %v", got, c.plan)
			}
			if got := three(Overlap(a, c.b)); got != c.volume {
				t.Errorf("volume %v, want %v", got, c.volume)
			}
		})
	}
}
