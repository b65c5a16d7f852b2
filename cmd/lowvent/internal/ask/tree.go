package ask

import (
	"slices"
	"strconv"

	"lowvent.example/schema/source"
)

// object is a JSON object whose keys keep their order. Its values are *object,
// list, string, bool or int.
type object struct{ members []member }

type member struct {
	key   string
	value any
}

// list is a JSON array of texts, or of lists of texts.
type list []any

// treeOf makes a tree of a parsed file.
func treeOf(n *source.Node) any {
	switch n.Kind {
	case source.Object:
		o := &object{}
		for _, child := range n.Children {
			o.members = append(o.members, member{child.Key, treeOf(child)})
		}
		return o
	case source.Array:
		all := list{}
		for _, child := range n.Children {
			all = append(all, treeOf(child))
		}
		return all
	case source.Bool:
		return n.Bool()
	case source.Number:
		count, _ := strconv.Atoi(n.Compact()) // a layout holds no other numbers
		return count
	}
	return n.Text()
}

func (o *object) index(key string) int {
	return slices.IndexFunc(o.members, func(m member) bool { return m.key == key })
}

// get is the value of a key, or nil.
func (o *object) get(key string) any {
	if o == nil {
		return nil
	}
	if i := o.index(key); i >= 0 {
		return o.members[i].value
	}
	return nil
}

func (o *object) put(key string, value any) {
	if i := o.index(key); i >= 0 {
		o.members[i].value = value
		return
	}
	o.members = append(o.members, member{key, value})
}

func (o *object) remove(key string) {
	if i := o.index(key); i >= 0 {
		o.members = slices.Delete(o.members, i, i+1)
	}
}

// keys lists the keys in their order; none of a nil object.
func (o *object) keys() []string {
	var keys []string
	if o != nil {
		for _, m := range o.members {
			keys = append(keys, m.key)
		}
	}
	return keys
}

// at is the value at a JSON Pointer, or nil.
func (o *object) at(pointer string) any {
	var value any = o
	for _, token := range source.Split(pointer) {
		inner, ok := value.(*object)
		if !ok {
			return nil
		}
		value = inner.get(token)
	}
	return value
}

// object is the object at a JSON Pointer, or nil.
func (o *object) object(pointer string) *object {
	inner, _ := o.at(pointer).(*object)
	return inner
}

// set writes a value at a JSON Pointer and makes the objects on the way to it.
func (o *object) set(pointer string, value any) {
	tokens := source.Split(pointer)
	last := len(tokens) - 1
	for _, token := range tokens[:last] {
		inner, ok := o.get(token).(*object)
		if !ok {
			inner = &object{}
			o.put(token, inner)
		}
		o = inner
	}
	o.put(tokens[last], value)
}

// cut takes out what stands at a JSON Pointer.
func (o *object) cut(pointer string) {
	if within, key := parent(pointer); o.object(within) != nil {
		o.object(within).remove(key)
	}
}

// parent splits a JSON Pointer before its last token.
func parent(pointer string) (within, key string) {
	tokens := source.Split(pointer)
	if len(tokens) == 0 {
		return "", ""
	}
	for _, token := range tokens[:len(tokens)-1] {
		within = source.Join(within, token)
	}
	return within, tokens[len(tokens)-1]
}

func (o *object) clone() *object {
	out := &object{members: slices.Clone(o.members)}
	for i, m := range out.members {
		if inner, ok := m.value.(*object); ok {
			out.members[i].value = inner.clone()
		}
	}
	return out
}
