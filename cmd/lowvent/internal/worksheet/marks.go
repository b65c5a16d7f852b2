package worksheet

import (
	"strings"

	"lowvent.example/schema/layout"
)

// box is one space of the frame.
type box struct {
	name     string
	from, to [3]float64
}

func spacesOf(l *layout.Layout) []box {
	var boxes []box
	for _, s := range l.Spaces.All() {
		from, known := s.Box.From.Get()
		to, both := s.Box.To.Get()
		if !known || !both {
			continue
		}
		b := box{name: s.ID()}
		for i := range 3 {
			b.from[i], b.to[i] = float64(from[i].Nominal), float64(to[i].Nominal)
		}
		boxes = append(boxes, b)
	}
	return boxes
}

// standsAt tells where on the frame a thing is drawn, as shares of the main living
// space: no more than a place for its mark.
var standsAt = map[string][3]float64{
	"lockers": {0.82, 0, 0}, "cylinders": {0.92, 0.16, 0.03}, "regulators": {0.88, 0.2, 0.42}, "appliances": {0.45, 0.9, 0.5},
	"openings": {0.2, 1, 0.4}, "alarms": {0.65, 0.6, 0.95}, "ignitionSources": {0.3, 0.08, 0.3}, "combustibles": {0.6, 0.86, 0.8}, "fixedVents": {0.08, 0.3, 0.97},
}

// marksOf takes the marks from the rows themselves: the corners of the first box of each
// kind of thing, or its middle where only that is asked.
func marksOf(all []sheet, boxes []box) []mark {
	var marks []mark
	seen := map[string]bool{}
	for _, one := range all {
		section, id, _ := strings.Cut(strings.TrimPrefix(one.at, "/"), "/")
		if seen[section] && section != "spaces" || id == spare && section == "spaces" {
			continue
		}
		for _, t := range one.tables[:min(1, len(one.tables))] {
			for _, r := range t.rows {
				if at, ok := pointOf(section, id, r, boxes); ok {
					marks = append(marks, mark{r.code, one.title + ": " + r.label, at})
					seen[section] = true
				}
			}
		}
	}
	return marks
}

// pointOf is where the point of a row is drawn, if it is one that the drawing shows.
func pointOf(section, id string, r row, boxes []box) (at [3]float64, ok bool) {
	far := strings.HasSuffix(r.asked.Template, "/box/to")
	near := strings.HasSuffix(r.asked.Template, "/box/from")
	for _, b := range boxes {
		switch {
		case section == "spaces" && b.name == id && near:
			return b.from, true
		case section == "spaces" && b.name == id && far:
			return b.to, true
		}
	}
	share, drawn := standsAt[section]
	middle := r.asked.Template == "/"+section+"/*/at"
	if !drawn || !middle && section != "lockers" || section == "lockers" && !near && !far {
		return at, false
	}
	if far {
		share = farOfLocker
	}
	return within(share, living(boxes).to), true
}

// farOfLocker is where the far corner of the locker is drawn.
var farOfLocker = [3]float64{1, 0.34, 0.5}

// within turns shares of the frame into metres.
func within(share, frame [3]float64) (at [3]float64) {
	for i := range 3 {
		at[i] = share[i] * frame[i]
	}
	return at
}

// living is the space in whose corner the frame begins.
func living(boxes []box) box {
	for _, b := range boxes {
		if b.from == [3]float64{} {
			return b
		}
	}
	return boxes[0]
}
