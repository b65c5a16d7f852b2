package layout

import (
	"fmt"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

func (m *Measure[Q]) decode(d *decoder, at Spot, node *source.Node, f *field) {
	m.spot = at
	if node != nil {
		m.val, m.known = quantity[Q](d, node, f.rule)
	}
}

// quantity reads a quantity and holds it to its key's rule of sign.
func quantity[Q unit.Quantity](d *decoder, node *source.Node, rule string) (unit.Value[Q], bool) {
	var zero Q
	kind := zero.Kind()
	if node.Kind != source.String {
		mend := fmt.Sprintf("write the number and its unit (%s) between double quotes", kind.Accepted())
		d.wrongKind(node, quantityForm(kind), mend)
		return unit.Value[Q]{}, false
	}
	value, err := unit.Parse[Q](node.Text())
	if err != nil {
		d.unparsed(node, err, quantityForm(kind)+"; its units are "+kind.Accepted())
		return unit.Value[Q]{}, false
	}
	if least := breaks(rule, float64(value.Low), float64(value.High)); least != "" {
		d.beyond(node.Place(), fmt.Sprintf("%s can't be %s", named(node), quote(node.Text())), least, "measure or read it again; where it is not known, leave the key out")
		return unit.Value[Q]{}, false
	}
	return value, true
}

// quantityForm describes a kind of quantity, with an example from the schema.
func quantityForm(kind unit.Kind) string {
	return fmt.Sprintf("%s with its unit, such as %q", kindNames[kind], exampleOf(kind))
}

// kindNames names the kinds of the contract for people who measure.
var kindNames = map[unit.Kind]string{
	unit.KindLength: "a length", unit.KindArea: "an area", unit.KindMass: "a weight", unit.KindPropaneMass: "a weight of propane",
	unit.KindWaterMass: "a water capacity", unit.KindForce: "a force", unit.KindGaugePressure: "a pressure",
	unit.KindTemperature: "a temperature", unit.KindTemperatureDifference: "a difference of temperatures", unit.KindPower: "a rate of heat",
	unit.KindMassFlow: "a weight per hour", unit.KindVolumeFlow: "a volume of air per hour", unit.KindDuration: "a length of time",
	unit.KindRatio: "a share", unit.KindAngle: "an angle",
}

// breaks tells what a rule of sign asks for, or "" when the band keeps to it.
func breaks(rule string, low, high float64) string {
	switch {
	case rule == "positive" && low <= 0:
		return "more than zero over its whole tolerance"
	case rule == "nonNegative" && low < 0:
		return "zero or more over its whole tolerance"
	case rule == "share" && (low < 0 || high > 1):
		return "0 % to 100 % over its whole tolerance"
	}
	return ""
}

// threeLengths shows what a point looks like.
const threeLengths = `three lengths from the floor at the front left corner, such as ["1.20 m", "0.30 m", "0 m"]: x to the rear, y to the right, z up`

func (d *decoder) point(to *Point, node *source.Node) bool {
	mend := "measure all three from that one corner, and write them between square brackets"
	if !d.is(node, source.Array, threeLengths, mend) {
		return false
	}
	if n := len(node.Children); n != len(to) {
		d.fault(node.Place(), fmt.Sprintf("%s has %s, and a point has three", named(node), counted(n, "length")), threeLengths, mend)
	}
	ok := len(node.Children) == len(to)
	for i, child := range node.Children {
		length, known := quantity[unit.Length](d, child, "")
		if ok = ok && known; ok {
			to[i] = length
		}
	}
	return ok
}

func (d *decoder) points(to *[]Point, node *source.Node) bool {
	expected := `two points or more: [["0 m", "0 m", "0 m"], ["1 m", "0 m", "0 m"]]`
	if !d.is(node, source.Array, expected, "list the corners of the run in order") {
		return false
	}
	if n := len(node.Children); n < 2 {
		d.fault(node.Place(), fmt.Sprintf("%s has %s, and a run has two ends", named(node), counted(n, "point")), expected, "list the corners of the run in order")
	}
	ok := len(node.Children) > 1
	for _, child := range node.Children {
		var p Point
		ok = d.point(&p, child) && ok
		*to = append(*to, p)
	}
	return ok
}

func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
