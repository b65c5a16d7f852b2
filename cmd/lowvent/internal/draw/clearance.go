package draw

import (
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

// clearanceRoom is the room about an appliance that its plate asks to be kept free of what
// burns, as far as the plate's figures and the way it faces are stated; false when that is
// no more than its body.
func clearanceRoom(a *layout.Appliance, body solid) (room solid, some bool) {
	c := &a.Clearances
	room = body
	room.to[2] += metres(&c.Above)
	room.from[2] -= metres(&c.Below)
	if faces, known := a.Faces.Get(); known {
		room = besides(room, faces, metres(&c.Front), metres(&c.Rear), metres(&c.Sides))
	}
	return room, room != body
}

// metres is a length of the file, 0 where it is not stated.
func metres(m *layout.Measure[unit.Length]) float64 {
	v, _ := m.Get()
	return float64(v.Nominal)
}

// besides grows a room to the front, rear and sides of a thing that faces a wall.
func besides(room solid, faces layout.Wall, front, rear, sides float64) solid {
	along, across := 0, 1
	switch faces {
	case layout.WallFront:
		front, rear = rear, front
	case layout.WallRear:
	case layout.WallLeft:
		along, across, front, rear = 1, 0, rear, front
	case layout.WallRight:
		along, across = 1, 0
	default:
		return room
	}
	room.to[along] += front
	room.from[along] -= rear
	room.to[across] += sides
	room.from[across] -= sides
	return room
}

// clearances draws those rooms as outlines.
func (w *work) clearances() {
	for _, t := range w.scene.things {
		a, is := t.item.(*layout.Appliance)
		if !is || !t.cleared {
			continue
		}
		r := w.view.rect(t.room)
		w.field.outline(r)
		w.d.Marks = append(w.d.Marks, &Group{Of: a.Clearances.Spot().Pointer(), Label: "clearances of " + a.Label(),
			Marks: []Mark{r.drawn(Pen{Width: thin, Dash: DashDot}, None)}})
	}
}
