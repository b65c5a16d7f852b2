package draw

import (
	"fmt"
	"slices"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// middle is the middle of a legend's small drawing.
var middle = Point{6, 3}

// key explains the symbols and lines that the drawing uses, then lists its balloons.
func (w *work) key() {
	w.bodyKey()
	w.symbolKey()
	w.lineKey()
	w.markKey()
	w.distanceKey()
	w.dangerKey()
	w.balloonKey()
}

// balloonKey is the schedule of the numbers.
func (w *work) balloonKey() {
	slices.SortFunc(w.balloons, func(a, b *thing) int { return a.number - b.number })
	for _, t := range w.balloons {
		marks := []Mark{&Circle{Centre: middle, Radius: balloonReach, Pen: Pen{Width: thin}, Fill: White},
			&Text{At: middle.plus(0, 0.35*small), Size: small, Anchor: Middle, Content: fmt.Sprint(t.number)}}
		w.explain(t.means, marks...)
	}
}

func (w *work) explain(means string, marks ...Mark) {
	rounded(marks)
	w.d.Key = append(w.d.Key, Explained{Marks: marks, Means: means})
}

// first finds a thing that a part of the legend is about.
func (w *work) first(is func(*thing) bool) bool { return slices.ContainsFunc(w.scene.things, is) }

// bodyKey explains outlines.
func (w *work) bodyKey() {
	r := around(middle, 10, 4.4)
	for _, b := range []struct {
		sort  sort
		means string
	}{{isSpace, "space, its inner faces"}, {isLocker, "gas locker, its inner faces"}, {isAppliance, "gas appliance"}, {isStove, "stove for solid fuel"},
		{isCombustible, "something that burns: wall, cabinet, curtain, bedding"}, {isExhaust, "engine, generator or fuel heater"}, {isStored, "stored goods"}} {
		t := &thing{sort: b.sort}
		if w.first(func(t *thing) bool { return t.sort == b.sort && !t.point }) {
			w.explain(b.means, append([]Mark{r.drawn(penOf(b.sort), fillOf(b.sort))}, t.sign(r, penOf(b.sort))...)...)
		}
	}
	if w.first(func(t *thing) bool { return t.sort == isCylinder }) {
		w.explain("gas cylinder", &Circle{Centre: middle, Radius: 2.2, Pen: penOf(isCylinder)}, line(Pen{Width: hair}, middle.plus(-1, 0), middle.plus(1, 0)), line(Pen{Width: hair}, middle.plus(0, -1), middle.plus(0, 1)))
	}
}

// signs are the symbols, in the order of the legend; the word tells one kind from another.
var signs = []struct {
	sort        sort
	word, means string
}{
	{isLockerVent, "low", "vent, low"}, {isLockerVent, "high", "vent, high"}, {isLockerVent, "level not stated", "vent, level not stated"},
	{isFixedVent, "low", "vent, low"}, {isFixedVent, "high", "vent, high"}, {isFixedVent, "level not stated", "vent, level not stated"},
	{isPenetration, "", "pipe or cable through the locker's wall"}, {isShutoff, "", "shut-off in a gas line"}, {isRegulator, "", "regulator"}, {isChangeover, "", "changeover"}, {isJunction, "", "tee, manifold or valve block"}, {isOpenEnd, "", "open end of a gas line"},
	{isOutlet, "", "outdoor gas outlet"}, {isFillPoint, "", "fill point"}, {isIgnition, "", "ignition source"}, {isOpening, "", "opening: hatch, drain, cable entry, filler"},
	{isAlarm, "propane", "alarm, propane"}, {isAlarm, "carbon monoxide", "alarm, carbon monoxide"}, {isAlarm, "smoke", "alarm, smoke"},
	{isAlarm, "kind not stated", "alarm, kind not stated"}, {isExtinguisher, "", "extinguisher or fire blanket"}, {isFan, "", "fan"},
}

// symbolKey explains the symbols that occur.
func (w *work) symbolKey() {
	var told []string
	for _, s := range signs {
		is := func(t *thing) bool { return t.sort == s.sort && (s.word == "" || t.word == s.word) }
		if w.first(is) && !slices.Contains(told, s.means) {
			told = append(told, s.means)
			w.explain(s.means, symbol(s.sort, s.word, middle, Pen{Width: medium})...)
		}
	}
	if w.first(func(t *thing) bool { return t.sort == isOpening && !t.point }) {
		w.explain("door, window or hatch in a wall", inWall(around(middle, 8, 0), Pen{Width: medium})...)
	}
	for _, e := range []struct{ what, means string }{{"end", "where a locker's vent ends"}, {"terminal", "end of a flue"}, {"intake", "air intake of a flue"}, {"exhaust outlet", "end of an exhaust"}} {
		if w.first(func(t *thing) bool { return slices.ContainsFunc(t.ends, func(x end) bool { return x.what == e.what }) }) {
			w.explain(e.means, endSymbol(e.what, middle, Pen{Width: medium})...)
		}
	}
}

// lineKey explains how gas lines are drawn.
func (w *work) lineKey() {
	for _, zone := range []layout.PressureZone{layout.PressureZoneHigh, layout.PressureZoneMiddle, layout.PressureZoneLow, ""} {
		if w.first(func(t *thing) bool { return t.sort == isLine && t.word == string(zone) }) {
			w.explain(zoneMeans(zone), zoneMark(zone)...)
		}
	}
}

// markKey explains what is neither thing nor line of gas.
func (w *work) markKey() {
	hidden := "dashed outline: hidden by a floor, a wall or what stands before it"
	w.explain(hidden, line(Pen{Width: medium, Dash: Dashed}, Point{0.5, 3}, Point{11.5, 3}))
	if w.marked {
		w.explain("where the file's lengths begin: x to the rear, y to the right, z up", originMark(middle)...)
	}
	if w.first(func(t *thing) bool { return t.cleared }) {
		w.explain("room that an appliance's plate asks to be kept clear of what burns", around(middle, 10, 4.4).drawn(Pen{Width: thin, Dash: DashDot}, None))
	}
}

// dangerKey explains the signal word beside a thing.
func (w *work) dangerKey() {
	if len(w.dangerous) == 0 && len(w.scene.zones.warned()) == 0 {
		return
	}
	_, wide := signalTag(Point{}, report.Danger, small)
	tag, _ := signalTag(Point{6 - wide/2, 3.6}, report.Danger, small)
	w.explain("beside a thing: a finding about it is not met and says DANGER; beside a line: cylinder pressure can reach it, whatever the file states", tag...)
}

// distanceKey explains the distances that are not as needed.
func (w *work) distanceKey() {
	if len(w.shown) == 0 {
		return
	}
	w.explain("distance that is not as needed", dimension(Point{0.5, 3}, Point{11.5, 3}, Pen{Width: medium})...)
	w.explain("the same, sloping: not seen at its true length", dimension(Point{0.5, 3}, Point{11.5, 3}, Pen{Width: medium, Dash: Dashed})...)
	if w.first(w.round) {
		w.explain("box round a cylinder, to which distances are taken", around(middle, 5, 5).drawn(Pen{Width: hair, Dash: Dotted}, None))
	}
}
