package ask

import (
	"slices"
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// set writes one answer. The notes on the way to it told what to fill in there, and
// have served.
func (st *state) set(pointer string, value any) {
	st.answered++
	within, key := parent(pointer)
	if missing := st.musts(within); len(missing) > 0 && !st.whole(within) {
		st.hold(within, key, value, missing)
		return
	}
	st.put(pointer, value)
}

// put writes a value and claims the things that it stands in.
func (st *state) put(pointer string, value any) {
	st.root.set(pointer, value)
	at := ""
	for _, token := range source.Split(pointer) {
		at = source.Join(at, token)
		st.claimed[at] = true
		if o := st.root.object(at); o != nil {
			o.remove("note")
		}
	}
}

// hold keeps an answer back until the other keys that must stand beside it are there.
func (st *state) hold(within, key string, value any, musts []string) {
	o := st.held[within]
	if o == nil {
		o = &object{}
		st.held[within] = o
	}
	o.put(key, value)
	for _, must := range musts {
		if o.get(must) == nil {
			return
		}
	}
	delete(st.held, within)
	for _, m := range o.members {
		st.put(source.Join(within, m.key), m.value)
	}
}

// musts lists the keys that the object at a pointer can't be without.
func (st *state) musts(pointer string) []string {
	var names []string
	for _, key := range layout.Keys(pointer) {
		if key.Must && pointer != "" {
			names = append(names, key.Name)
		}
	}
	return names
}

// whole tells whether the object has every key that it must have.
func (st *state) whole(pointer string) bool {
	o := st.root.object(pointer)
	return o != nil && !slices.ContainsFunc(st.musts(pointer), func(key string) bool { return o.get(key) == nil })
}

// leave takes out what a key says, so that it is not known. What can't be without
// the key goes as a whole.
func (st *state) leave(pointer string) {
	within, key := parent(pointer)
	if slices.Contains(st.musts(within), key) {
		delete(st.held, within)
		st.root.cut(within)
		return
	}
	st.root.cut(pointer)
}

// shed takes out what no longer holds together after a thing was taken out, such as
// a line that led to it, by asking the reader what it has against the rest.
func (st *state) shed() (gone []string) {
	for {
		faults := st.faults()
		if len(faults) == 0 {
			return gone
		}
		before := len(gone)
		for _, f := range faults {
			if at := st.homeless(f.Place.Pointer); st.root.at(at) != nil && at != "" {
				gone = append(gone, at)
				st.root.cut(at)
			}
		}
		if len(gone) == before {
			return gone // what is left, check tells
		}
	}
}

// homeless is what is to be taken out where a reference leads to nothing: of a thing that
// the first layout invented in a place that is gone, all of it, since nobody is asked about
// it any more; else the reference alone.
func (st *state) homeless(pointer string) string {
	thing, key := parent(pointer)
	list, _ := parent(thing)
	section := strings.TrimPrefix(list, "/")
	if slices.Contains(Walked(), section) && PlaceKey(section).Name == key && !st.claimed[thing] {
		return thing
	}
	return pointer
}
