package draw

import (
	"fmt"
	"strings"

	"lowvent.example/schema/layout"
)

// sort is what a thing counts as on a drawing.
type sort int

const (
	isSpace sort = iota
	isLocker
	isCombustible
	isAppliance
	isStove
	isExhaust
	isStored
	isIgnition
	isFan
	isOpening
	isFixedVent
	isFlue
	isAlarm
	isExtinguisher
	isLine
	isJunction
	isOpenEnd
	isOutlet
	isFillPoint
	isCylinder
	isChangeover
	isRegulator
	isLockerVent
	isPenetration
	isShutoff
)

// thing is something of the layout that has a place on the drawings.
type thing struct {
	item   layout.Item
	sort   sort
	number int    // in its balloon, on every drawing of the layout
	means  string // for the schedule: "ignition source bandsaw: motor"
	solid  solid
	point  bool    // the file gives its place and not its size
	round  float64 // diameter in m, of what is round in plan
	word   string  // what kind of its sort: "low", "propane"
	way    []place // of a line
	ends   []end

	room    solid // what the plate of an appliance asks to be kept clear
	cleared bool  // it asks for more than its body
}

// end is a further place of a thing: where a vent or a flue ends.
type end struct {
	at   place
	what string // "end", "terminal", "intake", "outlet"
}

func (t *thing) pointer() string { return t.item.Spot().Pointer() }

// extent is the room that the thing and its ends take.
func (t *thing) extent() solid {
	all := t.solid
	for _, p := range t.way {
		all = all.with(spot(p))
	}
	for _, e := range t.ends {
		all = all.with(spot(e.at))
	}
	if t.cleared {
		all = all.with(t.room)
	}
	return all
}

// scene is what the drawings of a layout show, and what they can't.
type scene struct {
	things   []*thing
	unplaced []layout.Item
	byItem   map[string]*thing // by JSON Pointer
	zones    *zones
}

// sceneOf collects everything of the drawn kinds, in the order of the file's sections.
func sceneOf(l *layout.Layout) *scene {
	s := &scene{byItem: map[string]*thing{}, zones: zonesOf(l)}
	s.spaces(l)
	s.around(l)
	s.fabric(l)
	s.gear(l)
	for i, t := range s.things {
		t.number = i + 1
		s.byItem[t.pointer()] = t
	}
	return s
}

// add takes a thing in, if it has a place.
func (s *scene) add(t *thing, placed bool) {
	if !placed {
		s.unplaced = append(s.unplaced, t.item)
		return
	}
	t.point = t.point || t.solid.from == t.solid.to
	t.means = t.item.Label() + t.means
	s.things = append(s.things, t)
}

// standing takes in a thing that stands at its own position.
func (s *scene) standing(item layout.Item, sort sort, p *layout.Position, word string, ends ...end) {
	from, to, ok := p.Corners()
	t := &thing{item: item, sort: sort, word: word, means: suffix(word), ends: ends}
	if ok {
		t.solid = solidOf(from, to)
	}
	s.add(t, ok)
}

// boxed takes in a thing that has a box and nothing else to place it.
func (s *scene) boxed(item layout.Item, sort sort, b *layout.Box, word string) {
	from, known := b.From.Get()
	to, both := b.To.Get()
	t := &thing{item: item, sort: sort, word: word, means: suffix(word)}
	if known && both {
		t.solid = solidOf(from, to)
	}
	s.add(t, known && both)
}

// pointed takes in a thing that has a point and no size.
func (s *scene) pointed(t *thing, at *layout.Given[layout.Point]) {
	p, known := at.Get()
	t.solid, t.point = spot(placeAt(p)), true
	s.add(t, known)
}

// stated is a word of the file, or that it has none for what is asked: "use not stated".
func stated[T ~string](what string, g *layout.Given[T]) string {
	word, known := g.Get()
	if !known {
		return what + " not stated"
	}
	return spelled(string(word))
}

// spelled is a word of the file as people write it: "fuse panel".
func spelled(word string) string { return strings.ReplaceAll(word, "-", " ") }

func suffix(word string) string {
	if word == "" {
		return ""
	}
	return fmt.Sprintf(": %s", word)
}
