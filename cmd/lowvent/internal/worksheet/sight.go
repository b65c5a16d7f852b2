package worksheet

// The drawing's measures, in its own units.
const (
	drawn  = 780.0
	border = 46.0
)

// sight turns metres into places on the paper.
type sight struct {
	v                view
	scale, left, top float64
	width, height    float64
	lowest, highest  [3]float64
}

func sightOf(v view, boxes []box) sight {
	s := sight{v: v, lowest: boxes[0].from, highest: boxes[0].to}
	for _, b := range boxes {
		for i := range 3 {
			s.lowest[i], s.highest[i] = min(s.lowest[i], b.from[i]), max(s.highest[i], b.to[i])
		}
	}
	s.scale = min((drawn-2*border)/(s.highest[v.across]-s.lowest[v.across]), 225/(s.highest[v.down]-s.lowest[v.down]))
	s.width = drawn
	s.height = 2*border + s.scale*(s.highest[v.down]-s.lowest[v.down])
	s.left = (drawn - s.scale*(s.highest[v.across]-s.lowest[v.across])) / 2
	s.top = border
	return s
}

func (s sight) at(point [3]float64) (x, y float64) {
	x = s.left + s.scale*(point[s.v.across]-s.lowest[s.v.across])
	y = s.top + s.scale*(point[s.v.down]-s.lowest[s.v.down])
	if s.v.flip {
		y = s.top + s.scale*(s.highest[s.v.down]-point[s.v.down])
	}
	return x, y
}
