package draw

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// unknown is written where the file is silent.
const unknown = "? "

// unknowns is what a fitter wants to know of a thing in a locker and the file does not state.
func unknowns(item layout.Item) []string {
	var all []string
	want := func(known bool, what string) {
		if !known {
			all = append(all, unknown+what+" not known")
		}
	}
	switch item := item.(type) {
	case *layout.LockerVent:
		level, _ := item.Level.Get()
		want(item.Level.Known(), "level")
		want(level != layout.VentLevelLow || item.LowerEdge.Known(), "lower edge")
		want(item.Gross.Known() && item.Cover.Open.Known(), "free area")
		want(item.EndsIn.Kind.Known(), "what it ends in")
	case *layout.Cylinder:
		want(item.Box.Present() || item.Diameter.Known() && item.Height.Known(), "size")
	case *layout.Penetration:
		want(item.Gland.Known(), "gland")
	}
	return all
}

// lockerFacts tells in words what can't be drawn of a locker: liner, door, free areas, and
// each vent's edge and end.
func lockerFacts(k *layout.Locker, f *report.FileReport) []string {
	facts := []string{linerWords(k), doorWords(k), figureWords(k, f)}
	if !k.Vents.Known() {
		return append(facts, unknown+"vents: not known.")
	}
	if len(k.Vents.All()) == 0 {
		facts = append(facts, "Vents: the file states that there is none.")
	}
	for _, v := range k.Vents.All() {
		facts = append(facts, ventWords(v))
	}
	if !k.Penetrations.Known() {
		facts = append(facts, unknown+"penetrations: not known.")
	}
	return facts
}

func linerWords(k *layout.Locker) string {
	return "Liner: " + said(&k.Liner.Material) + ", thickness " + measured(&k.Liner.Thickness) + ", joints " + said(&k.Liner.Joints) + ". False floor or mat: " + yes(&k.FalseFloor) + "."
}

func doorWords(k *layout.Locker) string {
	d := &k.Door
	return "Door: in wall " + said(&d.Wall) + ", where along it the file has no key for; opens to " + said(&d.OpensTo) + "; clear opening " + measured(&d.Width) + " by " + measured(&d.Height) +
		"; seal " + said(&d.Seal) + "; sill " + measured(&d.Sill) + " over the floor."
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
	edge := "lower edge " + measured(&v.LowerEdge) + " over the lowest point"
	if level, _ := v.Level.Get(); level == layout.VentLevelHigh {
		edge = "lower edge " + measured(&v.BelowTop) + " below the ceiling"
	}
	return fmt.Sprintf("Vent %s: %s, in wall %s; hole %s, cover %s, open share %s; %s; ends in %s, %s over the ground.", v.ID(), said(&v.Level), said(&v.Wall),
		measured(&v.Gross), said(&v.Cover.Kind), measured(&v.Cover.Open), edge, said(&v.EndsIn.Kind), measured(&v.EndsIn.OverGround))
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
	return spelled(string(word))
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
