package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// lift is the edit that raises a thing as it is by a height.
func lift(p *layout.Position, by unit.Length) []report.Edit {
	corners := []*layout.Given[layout.Point]{&p.Box.From, &p.Box.To}
	if p.At.Known() && !p.Box.Present() {
		corners = []*layout.Given[layout.Point]{&p.At}
	}
	var edits []report.Edit
	for _, corner := range corners {
		point, known := corner.Get()
		if !known {
			return nil
		}
		edits = append(edits, check.RaiseAt(corner.Spot().Pointer()+"/2", point[2], point[2].Nominal+by))
	}
	return edits
}
