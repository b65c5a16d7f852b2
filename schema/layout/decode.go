package layout

import (
	"reflect"

	"lowvent.example/schema/source"
)

// decoder is the strict typed reader. It goes on after a fault, so that all
// faults of a file are told at once.
type decoder struct {
	found  []finding       // in order of weight
	spoilt map[string]bool // pointers of what could not be read
	refs   []pendingRef
	things map[Ref]Item
	listed int // things and evidence met so far

	listing map[string][]string // references by section, made when a message needs them
}

// decodable is a field of the contract that reads itself from its node; a nil
// node means that the file leaves it out.
type decodable interface {
	decode(d *decoder, at Spot, node *source.Node, f *field)
}

// judged is an object that can state what no real dwelling can have.
type judged interface {
	impossible(d *decoder)
}

// decode finds everything that the published schema finds, and what no schema
// can say: references, the line tree, impossible numbers.
func decode(root *source.Node) (*Layout, *decoder) {
	l := &Layout{byRef: map[Ref]Item{}}
	d := &decoder{spoilt: map[string]bool{}, things: l.byRef}
	if d.otherVersion(root.Member("format")) {
		return l, d
	}
	d.object(reflect.ValueOf(l).Elem(), &l.Object, Spot{node: root})
	if d.listed > mostThings {
		return l, d
	}
	d.resolve(l)
	d.surveys(l)
	l.joinLines(d)
	l.keepTapes()
	return l, d
}

// otherVersion refuses a file that is written in another form, of which
// nothing else that this reader could say would be true.
func (d *decoder) otherVersion(format *source.Node) bool {
	if format == nil || format.Kind != source.String || format.Text() == Format {
		return false
	}
	d.fault(format.Place(), quote(format.Text())+" is a form of layout file that this program does not read", quote(Format),
		"if the file was written by hand for this program, write "+quote(Format)+"; else read it with the program that it was made for")
	return true
}

// object reads an object of the contract. Each field comes to know where it
// stands, even where the object itself was left out.
func (d *decoder) object(v reflect.Value, o *Object, at Spot) {
	o.spot, o.present = at, at.node != nil
	d.keys(v, &o.spot)
	d.grounds(v, o)
	if thing, ok := v.Addr().Interface().(judged); ok && o.present {
		thing.impossible(d)
	}
}

// keys reads every key of v's contract and faults every other key.
func (d *decoder) keys(v reflect.Value, at *Spot) {
	s, node := shapeOf(v.Type()), at.node
	if node != nil && node.Kind != source.Object {
		d.wrongKind(node, "an object: { … }", "write its values between braces, each under its key")
		d.spoil(node.Pointer())
		node = nil
	}
	for i := range s.fields {
		f := &s.fields[i]
		part := v.FieldByIndex(f.index)
		spot := Spot{up: at, key: f.name, node: node.Member(f.name)}
		switch own := part.Addr().Interface().(type) {
		case decodable:
			own.decode(d, spot, spot.node, f)
		case interface{ base() *Object }:
			d.object(part, own.base(), spot)
		}
	}
	if node != nil {
		d.missingKeys(node, s)
		d.unknownKeys(node, s)
	}
}
