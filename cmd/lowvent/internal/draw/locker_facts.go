package draw

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// unknown is written where the file is silent.
const unknown = "? "

// facts are what stands below a thing's name: in the section what its vent's edge and end
// are, and what a fitter wants to know of it and the file does not state.
func (w *work) facts(t *thing) []string {
	var all []string
	want := func(known bool, what string) {
		if !known {
			all = append(all, unknown+what+" not known")
		}
	}
	switch item := t.item.(type) {
	case *layout.LockerVent:
		if w.view.near.of == 2 {
			return nil
		}
		return ventFacts(item)
	case *layout.Cylinder:
		want(item.Box.Present() || item.Diameter.Known() && item.Height.Known(), "size")
	case *layout.Penetration:
		want(item.Gland.Known(), "gland")
	}
	return all
}

// ventFacts are a vent's edge and end, in short.
func ventFacts(v *layout.LockerVent) []string {
	edge := "lower edge " + over(&v.LowerEdge, " over lowest point")
	if level, _ := v.Level.Get(); level == layout.VentLevelHigh {
		edge = "lower edge " + over(&v.BelowTop, " below ceiling")
	}
	all := []string{edge, endWords(v)}
	if !v.Gross.Known() || !v.Cover.Open.Known() {
		all = append(all, unknown+"free area not known")
	}
	return all
}

// endWords tells in what a vent ends, and how high.
func endWords(v *layout.LockerVent) string {
	e := &v.EndsIn
	if !e.Kind.Known() {
		return unknown + "what it ends in not known"
	}
	text := "ends in " + said(&e.Kind)
	if kind, _ := e.Kind.Get(); kind == layout.VentEndingOverboard {
		text = "ends overboard"
	}
	if e.OverWater.Known() {
		return text + ", " + over(&e.OverWater, " over the waterline")
	}
	return text + ", " + over(&e.OverGround, " over the ground")
}

// over is a height with what it is over.
func over(m *layout.Measure[unit.Length], what string) string {
	if !m.Known() {
		return unknown + "not known"
	}
	return measured(m) + what
}

// lockerFacts tells in words what can't be drawn of a locker: liner, door, free areas, and
// each vent's edge and end.
func lockerFacts(k *layout.Locker, f *report.FileReport) []string {
	facts := []string{linerWords(k), doorWords(k), figureWords(k, f)}
	for _, v := range k.Vents.All() {
		facts = append(facts, ventWords(v))
	}
	return append(facts, listWords("Vents", k.Vents.Known(), len(k.Vents.All())), listWords("Penetrations", k.Penetrations.Known(), len(k.Penetrations.All())))
}

// listWords tells of a list that the file left out, and of one that it states to be empty;
// nothing of others.
func listWords(name string, known bool, many int) string {
	switch {
	case !known:
		return unknown + name + ": not known."
	case many == 0:
		return name + ": the file states that there are none."
	}
	return ""
}

func linerWords(k *layout.Locker) string {
	return "Liner: " + said(&k.Liner.Material) + ", thickness " + measured(&k.Liner.Thickness) + ", joints " + said(&k.Liner.Joints) + ". False floor or mat: " + yes(&k.FalseFloor) + "."
}

func doorWords(k *layout.Locker) string {
	d := &k.Door
	where := "in the " + said(&d.Wall) + " wall (a file does not say where along it)"
	switch wall, known := d.Wall.Get(); {
	case !known:
		where = unknown + "in which wall not known"
	case wall == layout.WallCeiling:
		where = "a lid on top"
	}
	return "Door: " + where + "; opens to " + said(&d.OpensTo) + "; clear opening " + measured(&d.Width) + " by " + measured(&d.Height) +
		"; seal " + said(&d.Seal) + "; sill " + over(&d.Sill, " over the floor") + "."
}

// figureWords is the free areas that the report reckoned.
func figureWords(k *layout.Locker, f *report.FileReport) string {
	area := func(id string) string {
		if f != nil {
			i := slices.IndexFunc(f.Figures, func(g report.Figure) bool { return g.ID == id && g.Subject == k.Spot().Pointer() })
			if i >= 0 && f.Figures[i].Value != nil {
				return f.Figures[i].Value.Text
			}
		}
		return unknown + "not known"
	}
	return "Free area, all low vents: " + area("locker.low-vent-free-area") + "; all high vents: " + area("locker.high-vent-free-area") + "."
}

// ventWords tells what is stated of one vent.
func ventWords(v *layout.LockerVent) string {
	return fmt.Sprintf("Vent %s: %s, in the %s; hole %s, cover %s, open share %s; %s.", v.ID(), said(&v.Level), wallWords(&v.Wall),
		measured(&v.Gross), said(&v.Cover.Kind), measured(&v.Cover.Open), strings.Join(ventFacts(v)[:2], "; "))
}

// wallWords names a side of the locker.
func wallWords(g *layout.Given[layout.Wall]) string {
	switch wall, _ := g.Get(); wall {
	case layout.WallLeft, layout.WallRight, layout.WallFront, layout.WallRear:
		return string(wall) + " wall"
	}
	return said(g)
}

// said is a word of the file, or that it is not known.
func said[T ~string](g *layout.Given[T]) string {
	word, known := g.Get()
	if !known {
		return unknown + "not known"
	}
	if word, is := strings.CutPrefix(string(word), "spaces/"); is {
		return "space " + word
	}
	return printable(spelled(string(word)))
}

// printable leaves out what no letter stands for.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return ' '
	}, text)
}

func yes(g *layout.Given[bool]) string {
	switch is, known := g.Get(); {
	case !known:
		return unknown + "not known"
	case is:
		return "yes"
	}
	return "no"
}

// measured is a quantity in both systems of units, or that it is not known.
func measured[Q unit.Quantity](m *layout.Measure[Q]) string {
	v, known := m.Get()
	if !known {
		return unknown + "not known"
	}
	return unit.Text(v.Nominal)
}

// lowestEdge is how high the lowest edge of the low vents lies over the lowest point: what
// lies below it never drains. It is sure only when every edge is known, or one is level.
func lowestEdge(k *layout.Locker) (edge float64, some, sure bool) {
	edge, sure = math.Inf(1), true
	for _, v := range k.Vents.All() {
		level, _ := v.Level.Get()
		m, known := v.LowerEdge.Get()
		if level == layout.VentLevelHigh {
			continue
		}
		if !known {
			sure = false
			continue
		}
		edge, some = min(edge, float64(m.Nominal)), true
	}
	return edge, some, some && (sure || edge == 0)
}
