package layout

import (
	"reflect"
	"slices"
	"strings"
	"sync"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// Form is the kind of value that a key takes, for whoever asks people for it.
type Form string

// The forms of a key.
const (
	FormThings   Form = "things" // a list of things by name
	FormObject   Form = "object"
	FormQuantity Form = "quantity" // a number and its unit, with a tolerance or without
	FormWord     Form = "word"     // one of Words
	FormWords    Form = "words"    // any of Words
	FormYesNo    Form = "yes-no"
	FormCount    Form = "count"
	FormText     Form = "text"
	FormDate     Form = "date"
	FormClock    Form = "clock"
	FormPoint    Form = "point"     // three lengths
	FormPoints   Form = "points"    // two points or more
	FormRef      Form = "reference" // to a thing out of one of Refs
	FormRefs     Form = "references"
)

// Key is one key of the contract, as a form or a questionnaire needs it. What it
// means and how to measure it, [Describe] tells.
type Key struct {
	Name  string
	Form  Form
	Kind  unit.Kind // of a quantity
	Words []string  // of a choice, in the contract's order
	Refs  []string  // lists that a reference may name a thing of; "open-air" as well, "*" for any
	Must  bool      // the object can't be without it
}

// Keys lists the keys of the object at a template, such as "/lockers/*/vents/*", in
// the contract's order, without the notes and the evidence that every object may have.
// It is nil where a layout has no object; "" is the whole file. The slice is shared
// and must not be changed.
func Keys(template string) []Key {
	t := typeAt(template)
	if t == nil {
		return nil
	}
	if known, ok := keysOf.Load(t); ok {
		return known.([]Key)
	}
	known, _ := keysOf.LoadOrStore(t, newKeys(t))
	return known.([]Key)
}

// keysOf holds the keys of every object type that was asked for, []Key by reflect.Type.
var keysOf sync.Map

func newKeys(t reflect.Type) []Key {
	var keys []Key
	for _, f := range shapeOf(t).fields {
		if f.name != "note" && f.name != "evidence" {
			keys = append(keys, keyOf(t.FieldByIndex(f.index).Type, f))
		}
	}
	return keys
}

// typeAt walks the contract along a template or a pointer.
func typeAt(template string) reflect.Type {
	t, listed := reflect.TypeFor[Layout](), false
	for _, token := range source.Split(template) {
		if listed {
			listed = false
			continue
		}
		f := shapeOf(t).field(token)
		if f == nil {
			return nil
		}
		t = t.FieldByIndex(f.index).Type
		switch part := reflect.New(t).Interface().(type) {
		case interface{ element() reflect.Type }:
			t, listed = part.element(), true
		case interface{ base() *Object }:
		default:
			return nil
		}
	}
	if listed {
		return nil
	}
	return t
}

func keyOf(t reflect.Type, f field) Key {
	key := Key{Name: f.name, Must: f.must, Refs: slices.Clone(f.refs)}
	value, several := t, false
	if stated, ok := t.FieldByName("val"); ok { // what a Given holds
		value = stated.Type
	}
	if strings.HasPrefix(t.Name(), "Words[") {
		value, several = value.Elem(), true
	}
	switch part := reflect.New(t).Interface().(type) {
	case interface{ element() reflect.Type }:
		key.Form = FormThings
		return key
	case interface{ base() *Object }:
		key.Form = FormObject
		return key
	case interface{ kind() unit.Kind }:
		key.Form, key.Kind = FormQuantity, part.kind()
		return key
	}
	key.Form, key.Words = formOf(value)
	switch {
	case several && key.Form == FormWord:
		key.Form = FormWords
	case several && key.Form == FormRef:
		key.Form = FormRefs
	}
	return key
}

// formOf tells the form of a plain value by its Go type, as the reader does.
func formOf(t reflect.Type) (form Form, words []string) {
	switch to := reflect.New(t).Interface().(type) {
	case *Ref:
		return FormRef, nil
	case *unit.Date:
		return FormDate, nil
	case *unit.ClockTime:
		return FormClock, nil
	case *Point:
		return FormPoint, nil
	case *[]Point:
		return FormPoints, nil
	case interface{ Choices() []string }:
		return FormWord, to.Choices()
	}
	switch t.Kind() {
	case reflect.Bool:
		return FormYesNo, nil
	case reflect.Int:
		return FormCount, nil
	}
	return FormText, nil
}

func (m *Measure[Q]) kind() unit.Kind {
	var q Q
	return q.Kind()
}
