package layout

import (
	"fmt"
	"reflect"
)

// Basis tells what a statement rests on.
type Basis string

// The bases, from weakest to strongest.
const (
	BasisStated       Basis = "stated"
	BasisMeasured     Basis = "measured"
	BasisPlate        Basis = "plate"
	BasisPhotographed Basis = "photographed"
	BasisProved       Basis = "proved"
)

// Choices lists every basis, from weakest to strongest.
func (Basis) Choices() []string {
	return []string{"stated", "measured", "plate", "photographed", "proved"}
}

// Evidence tells what one value of an object rests on. A value that is
// "proved" names the fitter's test that proved it.
type Evidence struct {
	Basis Basis
	By    Ref
}

// Grounds is the evidence for one value of the object it stands in; its id is
// the key of that value.
type Grounds struct {
	spot  Spot
	id    string
	Basis Given[Basis]  `json:"basis" must:"true"`
	By    Given[Ref]    `json:"by" ref:"tests"`
	On    Given[Date]   `json:"on"`
	Note  Given[string] `json:"note"`
}

// Spot is where the evidence stands.
func (g *Grounds) Spot() *Spot { return &g.spot }

// grounds hands each value the evidence that its object gives for it.
func (d *decoder) grounds(v reflect.Value, o *Object) {
	for _, g := range o.Evidence.All() {
		value := d.grounded(v, g)
		if value == nil {
			continue
		}
		basis, _ := g.Basis.Get()
		by, _ := g.By.Get()
		if basis == BasisProved && !g.By.spot.Written() {
			d.beyond(head(g.spot.node), fmt.Sprintf("%q is said to be proved, and no test is named", g.id),
				`"by": the fitter's test, such as "tests/tightness"`, "name the test under \"by\", or write what the value really rests on as its \"basis\"")
		}
		value.setEvidence(Evidence{Basis: basis, By: by})
	}
}

// grounded finds the value that the evidence is for. There must be one: a
// basis for what the file does not state would vouch for nothing.
func (d *decoder) grounded(v reflect.Value, g *Grounds) interface{ setEvidence(Evidence) } {
	f := shapeOf(v.Type()).field(g.id)
	if f == nil || f.name == "note" {
		d.explainBeyond(head(g.spot.node), func() (what, expected, mend string) {
			if mend = suggest(g.id, shapeOf(v.Type()).names); mend == "" {
				mend = "take it out, or write it where the value stands"
			}
			return fmt.Sprintf("evidence for %q, a key that this object does not have", g.id), "the key of a value in the same object", mend
		})
		return nil
	}
	switch value := v.FieldByIndex(f.index).Addr().Interface().(type) {
	case interface {
		Stated
		setEvidence(Evidence)
	}:
		if value.Spot().Written() {
			return value
		}
		d.beyond(head(g.spot.node), fmt.Sprintf("evidence for %q, which this object does not state", g.id), "evidence only for what is stated",
			fmt.Sprintf("write %q: %s", g.id, Describe(value.Spot().Pointer())))
	default:
		d.beyond(head(g.spot.node), fmt.Sprintf("evidence for %q as a whole", g.id), "evidence for single values",
			fmt.Sprintf("write it into an \"evidence\" inside %q, under the key of the value that it is for", g.id))
	}
	return nil
}
