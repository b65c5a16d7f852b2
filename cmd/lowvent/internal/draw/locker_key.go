package draw

import "lowvent.example/schema/layout"

// lockerKey explains what the detail of a locker uses.
func (w *work) lockerKey(k *layout.Locker) {
	r := around(middle, 9, 3.6)
	w.explain("the locker's inner faces, and its liner about them", r.grown(0.8).drawn(Pen{Width: thin}, Pale), r.drawn(Pen{Width: bold}, White))
	if k.Door.Wall.Known() {
		w.explain("the wall that the door is in, or the lid", line(Pen{Width: 0.7, Dash: LongDash}, Point{0.5, 3}, Point{11.5, 3}))
	}
	w.symbolKey()
	w.lineKey()
	from, tip := middle.plus(0, -2.4), middle.plus(0, 2.6)
	w.explain("the way of the gas out of a low vent", line(Pen{Width: bold}, from, tip), arrow(tip, from, 2.6))
	if k.LowestPoint.Known() {
		w.explain("height of the locker's lowest point", line(Pen{Width: medium, Dash: DashDot}, Point{0.5, 3}, Point{11.5, 3}))
	}
	if edge, some, _ := lowestEdge(k); some && edge > 0 {
		w.explain("gas that lies below the lowest edge of the vents and never drains", hatched(around(middle, 10, 3.6), 1.1, Pen{Width: thin})...)
	}
	w.distanceKey()
	w.dangerKey()
	w.balloonKey()
}
