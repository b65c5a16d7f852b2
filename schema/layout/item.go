package layout

import (
	"slices"
	"strings"
)

// Object is the common part of every object of a layout: a note for people, and
// what its values rest on.
type Object struct {
	spot     Spot
	present  bool
	Note     Given[string]    `json:"note"`
	Evidence Section[Grounds] `json:"evidence"`
}

// Present tells whether the file has this object at all.
func (o *Object) Present() bool { return o.present }

// Spot is where the object stands or would stand.
func (o *Object) Spot() *Spot { return &o.spot }

func (o *Object) base() *Object { return o }

// Item is one listed thing: a check's subject.
type Item interface {
	ID() string
	Spot() *Spot
	Label() string
}

// Thing is the common part of everything that stands in a list under an id.
type Thing struct {
	Object
	id   string
	kind string
	ref  Ref
}

// ID is the key under which the thing is listed.
func (t *Thing) ID() string { return t.id }

// Label names the thing for people: "cylinder A".
func (t *Thing) Label() string { return t.kind + " " + t.id }

// Ref is how this thing is referred to from elsewhere in the file:
// "lockers/side", or "lockers/side/vents/low" for a part of a thing.
func (t *Thing) Ref() Ref { return t.ref }

func (t *Thing) thing() *Thing { return t }

// Section is a list of things by id. A section that was left out is not known;
// an empty one states that there are none.
type Section[T any] struct {
	items []*T
	byID  map[string]*T
	known bool
	spot  Spot
}

// Known tells whether the file has the section at all.
func (s *Section[T]) Known() bool { return s.known }

// Spot is where the section stands or would stand.
func (s *Section[T]) Spot() *Spot { return &s.spot }

// All returns the things sorted by id, so that no key order of a file shows.
// The slice is the section's own and must not be changed.
func (s *Section[T]) All() []*T { return s.items }

// Get returns the thing with that id, or nil.
func (s *Section[T]) Get(id string) *T { return s.byID[id] }

// Words is a list of choices, in the order written.
type Words[T ~string] struct {
	Given[[]T]
}

// Has tells whether the list is stated and holds the word.
func (w *Words[T]) Has(word T) bool { return w.known && slices.Contains(w.val, word) }

// Ref points at another thing of the file: "lockers/side".
type Ref string

// OpenAir is the place of what stands outside, in no enclosure at all.
const OpenAir Ref = "open-air"

// Section is the list that the reference points into: "lockers".
func (r Ref) Section() string {
	section, _, _ := strings.Cut(string(r), "/")
	return section
}

// ID is the key within the list: "side" for "lockers/side/vents/low".
func (r Ref) ID() string {
	_, rest, _ := strings.Cut(string(r), "/")
	id, _, _ := strings.Cut(rest, "/")
	return id
}

// singular names one thing of a section, for people.
func singular(section string) string {
	if word, ok := singulars[section]; ok {
		return word
	}
	return strings.TrimSuffix(section, "s")
}

// singulars holds those that are not the section's name less its last letter.
var singulars = map[string]string{
	"openEnds": "open end", "outdoorOutlets": "outdoor outlet", "fixedVents": "fixed vent",
	"ignitionSources": "ignition source", "storedGoods": "stored", "fillPoints": "fill point",
	"tapeMeasures": "tape measure", "sealedFrom": "seal from", "openTo": "way to",
	"through": "passage", "use": "use", "shutoffs": "shut-off",
}
