package layout

import (
	"reflect"
	"slices"
	"strings"
	"sync"
)

// field is what the reader knows of one key of the contract.
type field struct {
	name  string
	index []int
	must  bool
	rule  string   // sign rule of a quantity: positive, nonNegative, share
	refs  []string // sections that a reference may point into; "*" is any
}

// shape is one object type of the contract.
type shape struct {
	fields []field
	names  []string // keys: the object's own first, then those of every object
}

// field returns the key's field, or nil.
func (s *shape) field(name string) *field {
	if i := slices.Index(s.names, name); i >= 0 {
		return &s.fields[i]
	}
	return nil
}

// shapes holds the shape of every object type that was met, *shape by reflect.Type.
var shapes sync.Map

// shapeOf gives the shape of an object type, made when it is first met.
func shapeOf(t reflect.Type) *shape {
	if s, known := shapes.Load(t); known {
		return s.(*shape)
	}
	s, _ := shapes.LoadOrStore(t, newShape(t))
	return s.(*shape)
}

func newShape(t reflect.Type) *shape {
	s := &shape{}
	common := reflect.TypeFor[Object]()
	fields := reflect.VisibleFields(t)
	for _, last := range []bool{false, true} {
		for _, f := range fields {
			shared := f.Name == "Note" || f.Name == "Evidence"
			name := f.Tag.Get("json")
			if name == "" || last != (shared && t != common) {
				continue
			}
			one := field{name: name, index: f.Index, must: f.Tag.Get("must") == "true", rule: f.Tag.Get("rule")}
			if refs := f.Tag.Get("ref"); refs != "" {
				one.refs = strings.Split(refs, ",")
			}
			s.fields, s.names = append(s.fields, one), append(s.names, name)
		}
	}
	return s
}

// walkContract visits every object type that can be reached from t, with the
// template of each place where it can stand, and goes on below it where visit says
// so. The contract has no cycles.
func walkContract(t reflect.Type, at string, visit func(t reflect.Type, at string) bool) {
	if !visit(t, at) {
		return
	}
	for _, f := range reflect.VisibleFields(t) {
		name := f.Tag.Get("json")
		if name == "" {
			continue
		}
		switch part := reflect.New(f.Type).Interface().(type) {
		case interface{ element() reflect.Type }:
			walkContract(part.element(), at+"/"+name+"/*", visit)
		case interface{ base() *Object }:
			walkContract(f.Type, at+"/"+name, visit)
		}
	}
}

// keyHomes tells, for each key of the contract, the templates of the objects
// that have it.
var keyHomes = sync.OnceValue(func() map[string][]string {
	homes := map[string][]string{}
	walkContract(reflect.TypeFor[Layout](), "", func(t reflect.Type, at string) bool {
		for _, name := range shapeOf(t).names {
			homes[name] = append(homes[name], at)
		}
		return true
	})
	return homes
})

// sections lists the keys of the layout under which things are listed.
var sections = sync.OnceValue(func() []string {
	var names []string
	for _, f := range shapeOf(reflect.TypeFor[Layout]()).fields {
		part := reflect.New(reflect.TypeFor[Layout]().FieldByIndex(f.index).Type).Interface()
		if _, ok := part.(interface{ element() reflect.Type }); ok && f.name != "evidence" {
			names = append(names, f.name)
		}
	}
	return names
})
