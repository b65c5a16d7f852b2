package layout

import (
	"fmt"
	"slices"

	"lowvent.example/schema/unit"
)

// The methods here fault what no real dwelling can have, one value against its
// neighbours. What is merely wrong is left to the checks.

func (c *Cylinder) impossible(d *decoder) {
	water, known := c.WaterCapacity.Get()
	for _, gas := range []*Given[unit.Value[unit.PropaneMass]]{&c.Propane.Given, &c.SleeveMass.Given} {
		if mass, both := gas.Get(); known && both && float64(mass.Low) > float64(water.High) {
			d.beyond(gas.spot.node.Place(), fmt.Sprintf("%s is %s, more than the %s of water that would fill the cylinder", quote(gas.spot.key), mass.Written, water.Written),
				"less than the water capacity", "read both again: the water capacity is stamped WC on the collar, or in litres")
		}
	}
	if words, _ := c.Condition.Get(); len(words) > 1 && slices.Contains(words, DamageNone) {
		d.beyond(c.Condition.spot.node.Place(), `"none" stands beside damage in one list`, `either ["none"] or the damage that was seen`, "take out the one that is not so")
	}
}

func (b *Box) impossible(d *decoder) {
	from, known := b.From.Get()
	to, both := b.To.Get()
	if !known || !both {
		return
	}
	flat := 0
	for i, axis := range axes {
		switch {
		case from[i].Nominal > to[i].Nominal:
			d.beyond(head(b.spot.node), fmt.Sprintf("the box runs backwards along %s, from %s to %s", axis, from[i].Written, to[i].Written),
				`"from" the corner nearest to the front, the left and the floor, and "to" the opposite one`, "change the two lengths over, or measure again")
			return
		case from[i].Nominal == to[i].Nominal:
			flat++
		}
	}
	if flat == len(axes) {
		d.beyond(head(b.spot.node), "the two corners of the box are one point", "two opposite corners", `measure the far corner again; a thing without size stands at a point, "at"`)
	}
}

var axes = [...]string{"x", "y", "z"}

// hollow faults an enclosure that has, or within its tolerance could have, no
// depth: it would hold no air.
func (b *Box) hollow(d *decoder) {
	from, known := b.From.Get()
	to, both := b.To.Get()
	if !known || !both {
		return
	}
	for i, axis := range axes {
		if from[i].High >= to[i].Low {
			d.beyond(head(b.spot.node), fmt.Sprintf("the box has no depth along %s, from %s to %s", axis, from[i].Written, to[i].Written),
				"two opposite corners that differ in x, y and z, over their whole tolerance", "measure the far corner again")
			return
		}
	}
}

func (s *Space) impossible(d *decoder)  { s.Box.hollow(d) }
func (k *Locker) impossible(d *decoder) { k.Box.hollow(d) }

func (c *Climate) impossible(d *decoder) {
	cold, known := c.Coldest.Get()
	hot, both := c.Hottest.Get()
	if known && both && cold.Low > hot.High {
		d.beyond(c.Coldest.spot.node.Place(), fmt.Sprintf("the coldest, %s, is hotter than the hottest, %s", cold.Written, hot.Written),
			"the lower of the two as the coldest", "change the two over, or look at the weather record again")
	}
}

func (p *Plate) impossible(d *decoder) {
	least, known := p.LeastInlet.Get()
	most, both := p.MostInlet.Get()
	if known && both && least.Low > most.High {
		d.beyond(p.LeastInlet.spot.node.Place(), fmt.Sprintf("the least inlet pressure, %s, is above the highest, %s", least.Written, most.Written),
			"the lower of the two as the least", "change the two over, or read the plate again")
	}
}

func (n *Line) impossible(d *decoder) {
	outside, known := n.Outside.Get()
	wall, both := n.Wall.Get()
	if known && both && 2*float64(wall.Low) >= float64(outside.High) {
		d.beyond(n.Wall.spot.node.Place(), fmt.Sprintf("a wall of %s leaves no bore in a tube of %s", wall.Written, outside.Written),
			"a wall of less than half the outside diameter", "measure both again, and look at their units")
	}
}

func (c *Certificate) impossible(d *decoder) {
	signed, known := c.On.Get()
	ends, both := c.Expires.Get()
	if known && both && ends.Before(signed) {
		d.beyond(c.Expires.spot.node.Place(), fmt.Sprintf("the paper ends on %s, before it was signed on %s", ends, signed),
			"a day after it was signed", "read both dates on the paper again")
	}
}
