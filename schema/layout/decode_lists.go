package layout

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"lowvent.example/schema/source"
)

// idForm is what an id may look like: it must survive as a part of a reference,
// a JSON Pointer, a file name and a drawing's label.
const idForm = `[A-Za-z0-9][A-Za-z0-9_.-]{0,63}`

// isID tells what idForm tells: to compile it costs more than to read a file's ids.
func isID(key string) bool {
	for i := range len(key) {
		c := key[i]
		letter := 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || '0' <= c && c <= '9'
		if !letter && (i == 0 || c != '_' && c != '.' && c != '-') {
			return false
		}
	}
	return 0 < len(key) && len(key) <= 64
}

func (s *Section[T]) element() reflect.Type { return reflect.TypeFor[T]() }

func (s *Section[T]) decode(d *decoder, at Spot, node *source.Node, f *field) {
	s.spot = at
	if node == nil {
		return
	}
	if node.Kind != source.Object {
		d.wrongKind(node, `things by name: { "my-name": { … } }`, "give each thing a name of your own as its key; {} states that there is none")
		d.spoil(node.Pointer())
		return
	}
	s.known = true
	s.items = make([]*T, 0, len(node.Children))
	s.byID = make(map[string]*T, len(node.Children))
	for _, child := range node.Children {
		if !isID(child.Key) {
			d.badID(child)
			continue
		}
		if d.listed++; d.listed > mostThings {
			d.tooMany(child)
			return
		}
		item := new(T)
		d.item(item, f.name, Spot{up: &s.spot, key: child.Key, node: child})
		s.items = append(s.items, item)
		s.byID[child.Key] = item
	}
	slices.SortFunc(s.items, func(a, b *T) int { return strings.Compare(idOf(a), idOf(b)) })
}

// mostThings bounds what one file may list, parts of things included. A listed
// thing takes some kilobytes, however few bytes the file spends on it.
const mostThings = 20_000

// tooMany ends the reading of a file; it is told once, by itself.
func (d *decoder) tooMany(child *source.Node) {
	if d.listed == mostThings+1 {
		d.beyond(child.KeyPlace(), fmt.Sprintf("more than %d things in one file", mostThings), "what one small dwelling holds",
			"check that this is the file that was meant; put one dwelling in one file")
	}
}

func (d *decoder) badID(child *source.Node) {
	d.spoil(child.Pointer())
	d.fault(child.KeyPlace(), fmt.Sprintf("%s can't be a name here", quote(child.Key)),
		"1 to 64 letters from A to Z, digits, hyphens, dots or underscores, the first a letter or digit",
		"write another name, here and wherever the file refers to it")
}

// item reads one listed thing and makes it known under its reference.
func (d *decoder) item(item any, section string, spot Spot) {
	v := reflect.ValueOf(item).Elem()
	if g, ok := item.(*Grounds); ok {
		g.spot, g.id = spot, spot.key
		d.keys(v, &g.spot)
		return
	}
	thing := item.(interface{ thing() *Thing }).thing()
	thing.id, thing.kind = spot.key, singular(section)
	thing.ref = Ref(strings.TrimPrefix(spot.Pointer(), "/"))
	d.things[thing.ref] = item.(Item)
	d.object(v, &thing.Object, spot)
}

func idOf(item any) string {
	if g, ok := item.(*Grounds); ok {
		return g.id
	}
	return item.(interface{ thing() *Thing }).thing().id
}

func (w *Words[T]) decode(d *decoder, at Spot, node *source.Node, f *field) {
	w.spot = at
	if node == nil || !d.is(node, source.Array, "a list: [ … ]", "write the words between square brackets, with commas between them; [] states that there is none") {
		return
	}
	w.known = true
	seen := make(map[T]bool, len(node.Children))
	for _, child := range node.Children {
		var one T
		switch {
		case !d.value(reflect.ValueOf(&one).Elem(), child, f):
		case seen[one]:
			d.fault(child.Place(), quote(string(one))+" stands in this list twice", "each word once", "take one of them out")
		default:
			seen[one] = true
			w.val = append(w.val, one)
		}
	}
}
