package layout

// pair is two things, in the order in which their references sort.
type pair struct{ one, other Ref }

func pairOf(a, b Ref) pair { return pair{min(a, b), max(a, b)} }

// TapeBetween returns the tape measure from one thing to the other, taken either way;
// of several the first by its id. It is nil when there is none.
func (l *Layout) TapeBetween(a, b Ref) *TapeMeasure { return l.tapes[pairOf(a, b)] }

// keepTapes notes each tape measure by the things that it joins.
func (l *Layout) keepTapes() {
	l.tapes = map[pair]*TapeMeasure{}
	for _, t := range l.TapeMeasures.All() {
		from, _ := t.From.Get()
		to, _ := t.To.Get()
		if ends := pairOf(from, to); l.tapes[ends] == nil {
			l.tapes[ends] = t
		}
	}
}
