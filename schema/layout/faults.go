package layout

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/source"
)

// finding is a fault whose words are not made yet: looking for the nearest of
// thousands of names is only worth it for a fault that will be shown.
type finding struct {
	place  source.Place
	beyond bool // no JSON Schema can say this
	words  func() (what, expected, mend string)
}

// mostFaults bounds what is told of one file, and so the time it takes.
const mostFaults = 100

func (d *decoder) fault(place source.Place, what, expected, mend string) {
	d.explain(place, func() (string, string, string) { return what, expected, mend })
}

func (d *decoder) explain(place source.Place, words func() (what, expected, mend string)) {
	d.found = append(d.found, finding{place: place, words: words})
}

// beyond is fault for what no JSON Schema can say.
func (d *decoder) beyond(place source.Place, what, expected, mend string) {
	d.explainBeyond(place, func() (string, string, string) { return what, expected, mend })
}

func (d *decoder) explainBeyond(place source.Place, words func() (what, expected, mend string)) {
	d.found = append(d.found, finding{place: place, beyond: true, words: words})
}

// faults gives what was found, in file order and one a place. The first that
// was found at a place stays: what follows it there mostly follows from it.
func (d *decoder) faults() source.Faults {
	shown := slices.Clone(d.found)
	slices.SortStableFunc(shown, func(a, b finding) int { return cmp.Compare(a.place.Span.Start, b.place.Span.Start) })
	shown = slices.CompactFunc(shown, func(a, b finding) bool { return a.place.Span.Start == b.place.Span.Start })
	var faults source.Faults
	for i, f := range shown {
		if i == mostFaults {
			return append(faults, source.Fault{Place: f.place, What: fmt.Sprintf("%d more faults from here on", len(shown)-i), Mend: "mend the ones above first"})
		}
		what, expected, mend := f.words()
		faults = append(faults, source.Fault{Place: f.place, What: what, Expected: expected, Mend: mend})
	}
	return faults
}

// spoil notes that the part at the pointer could not be read, so that nobody
// complains of references into it.
func (d *decoder) spoil(pointer string) { d.spoilt[pointer] = true }

// isSpoilt tells whether what the reference names, or a part that it lies in,
// could not be read.
func (d *decoder) isSpoilt(r Ref) bool {
	pointer := "/" + string(r)
	for pointer != "" {
		if d.spoilt[pointer] {
			return true
		}
		pointer = pointer[:strings.LastIndexByte(pointer, '/')]
	}
	return false
}

// spoiltWithin tells whether the part at the pointer, or anything in it, could
// not be read.
func (d *decoder) spoiltWithin(pointer string) bool {
	for spoilt := range d.spoilt {
		if spoilt == pointer || strings.HasPrefix(spoilt, pointer+"/") {
			return true
		}
	}
	return false
}

// head is where an object or list begins to be read: its key, or the first
// character of what has none. A fault of the whole of it stands there.
func head(n *source.Node) source.Place {
	place := n.KeyPlace()
	if n.KeySpan == (source.Span{}) {
		place.Span.End = place.Span.Start + 1
	}
	return place
}

// named names a value in a message by its key.
func named(n *source.Node) string {
	switch {
	case n.Parent == nil:
		return "the file"
	case n.Parent.Kind != source.Array:
		return quote(n.Key)
	case n.Parent.Parent != nil && n.Parent.Parent.Kind == source.Array:
		return "a part of " + named(n.Parent)
	}
	return "an item of " + quote(n.Parent.Key)
}

// quote shows a text of the file, cut if it is long.
func quote(text string) string {
	const most = 60
	if r := []rune(text); len(r) > most {
		text = string(r[:most]) + "…"
	}
	return fmt.Sprintf("%q", text)
}

// oneOf lists words for a message.
func oneOf(words []string) string {
	if len(words) == 1 {
		return words[0]
	}
	return "one of " + strings.Join(words, ", ")
}

// The search for a nearest word takes time in proportion to both.
const (
	mostCandidates = 2000
	longestWord    = 100 // bytes
)

// nearest is the known word nearest to a mistyped one, or "" when there is none
// or it would take long to find.
func nearest(word string, known []string) string {
	if len(known) > mostCandidates || len(word) > longestWord {
		return ""
	}
	return source.Nearest(word, known)
}

// suggest offers the known word nearest to a mistyped one, or "".
func suggest(word string, known []string) string {
	if near := nearest(word, known); near != "" {
		return fmt.Sprintf("did you mean %q?", near)
	}
	return ""
}
