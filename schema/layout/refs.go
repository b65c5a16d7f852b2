package layout

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/source"
)

// anything marks a reference that may name whatever the file lists, parts of
// things as well.
const anything = "*"

// pendingRef is a reference whose target may stand further on in the file.
type pendingRef struct {
	ref     Ref
	node    *source.Node
	allowed []string
}

func (d *decoder) reference(to *Ref, node *source.Node, f *field) bool {
	if !d.is(node, source.String, "a reference: "+refForm(f.refs), "write the list and the name, with a stroke between them, between double quotes") {
		return false
	}
	*to = Ref(node.Text())
	d.refs = append(d.refs, pendingRef{ref: *to, node: node, allowed: f.refs})
	return true
}

// resolve faults every reference that names nothing, or a thing of the wrong kind.
func (d *decoder) resolve(l *Layout) {
	for _, p := range d.refs {
		switch {
		case d.isSpoilt(p.ref):
		case !p.wellFormed():
			d.explain(p.node.Place(), func() (string, string, string) { return d.wrongRef(p) })
		case p.ref != OpenAir && d.things[p.ref] == nil:
			d.explainBeyond(p.node.Place(), func() (string, string, string) { return d.dangling(p) })
		}
	}
	for _, k := range l.Lockers.All() {
		for _, seal := range k.SealedFrom.All() {
			d.namesSpace(seal.id, seal.spot.node)
		}
	}
	for _, s := range l.Spaces.All() {
		for _, way := range s.OpenTo.All() {
			d.namesSpace(way.id, way.spot.node)
			if way.id == s.id {
				d.beyond(head(way.spot.node), fmt.Sprintf("the space %q is said to be open to itself", s.id), "the name of another space", "write the name of the space on the other side")
			}
		}
	}
}

// wellFormed tells whether the reference has the form that the schema's
// pattern asks for at its place.
func (p pendingRef) wellFormed() bool {
	if p.ref == OpenAir {
		return slices.Contains(p.allowed, string(OpenAir))
	}
	parts := strings.Split(string(p.ref), "/")
	if slices.Contains(p.allowed, anything) {
		return len(parts)%2 == 0 && wellFormedParts(parts)
	}
	return len(parts) == 2 && parts[0] != string(OpenAir) && slices.Contains(p.allowed, parts[0]) && isID(parts[1])
}

func wellFormedParts(parts []string) bool {
	if !slices.Contains(sections(), parts[0]) {
		return false
	}
	for i, part := range parts {
		if i%2 == 1 && !isID(part) || i%2 == 0 && strings.Trim(part, letters) != "" || part == "" {
			return false
		}
	}
	return true
}

const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"

// namesSpace holds a key to the names of the file's spaces.
func (d *decoder) namesSpace(id string, node *source.Node) {
	ref := Ref("spaces/" + id)
	if d.things[ref] != nil || d.isSpoilt(ref) {
		return
	}
	d.explainBeyond(head(node), func() (what, expected, mend string) {
		known := d.idsIn("spaces")
		if mend = suggest(id, known); mend == "" {
			mend = `list it under "spaces", or write the name of one that is listed`
		}
		if expected = oneOf(known); len(known) == 0 {
			expected = `a name from the list "spaces", and this file lists none`
		}
		return fmt.Sprintf("%q is not one of this file's spaces", id), expected, mend
	})
}
