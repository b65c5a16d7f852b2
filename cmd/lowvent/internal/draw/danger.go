package draw

import (
	"slices"

	"lowvent.example/schema/report"
)

// dangerous are the checks of which a report says DANGER, not met, by the pointer of the
// thing that they are about.
func dangerous(f *report.FileReport) map[string][]string {
	all := map[string][]string{}
	if f == nil {
		return all
	}
	for i := range f.Findings {
		g := &f.Findings[i]
		if g.Outcome == report.NotMet && g.Word == report.Danger && !slices.Contains(all[g.Subject], g.Check) {
			all[g.Subject] = append(all[g.Subject], g.Check)
		}
	}
	return all
}

// dangers warns beside the lines that cylinder pressure can reach unawares, then marks every
// other thing that a finding calls a DANGER; each at most once.
func (w *work) dangers(f *report.FileReport) {
	for _, each := range w.scene.zones.warned() {
		w.warn(each)
	}
	checks := dangerous(f)
	for _, t := range w.scene.things {
		if about := checks[t.pointer()]; len(about) > 0 && w.seen(t) {
			if !w.told(t, about) {
				w.mark(t)
			}
			w.dangerous = append(w.dangerous, t.item.Label()+" ("+listed(about)+")")
		}
	}
}

// told tells whether a distance that is dimensioned here says DANGER of a thing already, by
// each of its checks: another mark would only crowd the paper.
func (w *work) told(t *thing, checks []string) bool {
	return !slices.ContainsFunc(checks, func(check string) bool {
		return !slices.ContainsFunc(w.shown, func(d *distance) bool {
			return slices.ContainsFunc(d.says, func(s saying) bool { return s.subject == t.pointer() && s.check == check })
		})
	})
}

// seen tells whether a thing lies on the part of the dwelling that is drawn.
func (w *work) seen(t *thing) bool {
	return w.view.rect(t.solid).centre().within(w.body.grown(2))
}

// warn writes beside the first line that has room what reaches it and how, and marks the
// others of the same reach with the signal word alone.
func (w *work) warn(each warned) {
	said := false
	for _, line := range each.lines {
		t := w.scene.byItem[line.Spot().Pointer()]
		if t == nil || !slices.Contains(w.scene.things, t) {
			continue
		}
		if stretch, some := w.stretch(t); some {
			said = w.beside(t, stretch, each.reach.reason(), said) || said
		}
	}
}

// stretch is the longest straight part of a line that is seen.
func (w *work) stretch(t *thing) (longest segment, some bool) {
	for i := 1; i < len(t.way); i++ {
		a, b, in := (segment{w.view.at(t.way[i-1]), w.view.at(t.way[i])}).clipped(w.body.grown(4))
		if in && (!some || a.to(b) > longest.a.to(longest.b)) {
			longest, some = segment{a, b}, true
		}
	}
	return longest, some
}

// beside warns beside a line: in full, or by the signal word alone where the full words
// stand elsewhere. It tells whether there was room.
func (w *work) beside(t *thing, at segment, reason string, short bool) bool {
	rows := []row{{word: report.Danger, text: reachesHere, bold: true}, {text: reason}}
	if short {
		rows = []row{{word: report.Danger}}
	}
	b := blockOf(rows)
	want := wanted{of: around(Point{(at.a.X + at.b.X) / 2, (at.a.Y + at.b.Y) / 2}, 1, 1), wide: b.wide, high: b.high, far: 90, along: &at, off: weighed{w.body, w.offBody()}, finely: true}
	r, _, ok := w.field.place(want)
	if ok {
		w.put(r, t, want, append([]Mark{r.drawn(Pen{Width: thin}, White)}, b.at(Point{r.Left, r.Top})...)...)
	}
	return ok
}

// mark sets the signal word beside a thing. Where there is no room, the words that go with
// the drawing still tell it.
func (w *work) mark(t *thing) {
	b := blockOf([]row{{word: report.Danger}})
	want := wanted{of: w.aim(t), wide: b.wide, high: b.high, inside: true, far: 30, round: w.round(t)}
	if r, _, ok := w.field.place(want); ok {
		w.put(r, t, want, b.at(Point{r.Left, r.Top})...)
	}
}

// dangerWords tells what is marked, for those who can't see it.
func (w *work) dangerWords() []string {
	all := w.scene.warnings()
	if len(w.dangerous) > 0 {
		all = append(all, "Marked DANGER: "+listed(w.dangerous)+".")
	}
	return all
}

// warnings warns in words of the lines that a scene shows or can't place.
func (s *scene) warnings() []string {
	var all []string
	for _, each := range s.zones.warned() {
		all = append(all, each.sentence())
	}
	return all
}
