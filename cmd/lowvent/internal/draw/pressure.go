package draw

import (
	"fmt"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// Pressures draws, for each regulator, the pressure along the lines behind it with all
// burners on, by the method that loses the most in each line, from the report's own
// figures. An appliance on whose way a line lacks a length or a figure has no curve; a
// regulator without any has no drawing. Where gas at cylinder pressure can come behind a
// regulator unregulated, no pressure there can be told: such a one is not drawn, and the
// sentences of notDrawn say so for people.
func Pressures(l *layout.Layout, f *report.FileReport) (drawings []*Drawing, notDrawn []string) {
	p := pressures{layout: l, drops: map[string]float64{}}
	for i := range f.Figures {
		one := &f.Figures[i]
		if (one.ID == "line.drop-by-code" || one.ID == "line.drop-by-friction") && one.Value != nil {
			p.drops[one.Subject] = max(p.drops[one.Subject], largest(one.Value))
		}
	}
	z := zonesOf(l)
	for _, r := range l.Regulators.All() {
		if z.spoils(r) {
			notDrawn = append(notDrawn, fmt.Sprintf("Not drawn for %s: gas at cylinder pressure can reach the lines behind it, so no figure behind it holds.", r.Label()))
			continue
		}
		if d := p.behind(r); d != nil {
			drawings = append(drawings, d)
		}
	}
	return drawings, notDrawn
}

// spoils tells whether cylinder pressure can come unregulated to the outlet of a regulator.
func (z *zones) spoils(r *layout.Regulator) bool {
	return z.reach[node{r.Ref(), true}].derived() == layout.PressureZoneHigh
}

func largest(a *report.Amount) float64 {
	if a.High != nil {
		return *a.High
	}
	return *a.SI
}

type pressures struct {
	layout *layout.Layout
	drops  map[string]float64 // by the line's pointer, Pa
	chart  *graph
}

func (p *pressures) behind(r *layout.Regulator) *Drawing {
	outlet, known := r.Outlet.Get()
	if !known {
		return nil
	}
	p.chart = &graph{whole: true, across: unit.KindLength, up: unit.KindGaugePressure, acrossTitle: "length of line from " + r.Label(), upTitle: "pressure, everything on"}
	p.follow(r.Ref(), [][2]float64{{0, float64(outlet.Nominal)}})
	if len(p.chart.courses) == 0 {
		return nil
	}
	return p.chart.drawing("pressure-"+r.ID(), "Pressure along the lines behind "+r.Label()+", by the method that loses more in each line")
}

// follow goes on from a thing, whose point is the last of the way so far.
func (p *pressures) follow(at layout.Ref, way [][2]float64) {
	for _, line := range p.layout.LeadsTo(at) {
		drop, has := p.drops[line.Spot().Pointer()]
		long, known := line.Length.Get()
		to, _ := line.To.Get()
		if kind, _ := line.Kind.Get(); kind == layout.LineKindDirect {
			known = true
		}
		if !has || !known || to.Section() == "regulators" {
			continue
		}
		last := way[len(way)-1]
		on := append(way[:len(way):len(way)], [2]float64{last[0] + float64(long.Nominal), last[1] - drop})
		if a, is := p.layout.Find(to).(*layout.Appliance); is {
			p.end(a, on)
			continue
		}
		p.follow(to, on)
	}
}

// end closes the curve of an appliance, and shows what its plate asks at least.
func (p *pressures) end(a *layout.Appliance, way [][2]float64) {
	p.chart.courses = append(p.chart.courses, way)
	p.chart.against = append(p.chart.against, levelLine{report.Level{Title: "arrives at " + a.Label(), At: way[len(way)-1][1]}, true})
	if least, known := a.Plate.LeastInlet.Get(); known {
		p.chart.against = append(p.chart.against, levelLine{report.Level{Title: fmt.Sprintf("least that the plate of %s asks", a.Label()), At: float64(least.Nominal)}, false})
	}
}
