package code

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"lowvent.example/schema/source"
)

// Format is the version word that every profile file carries.
const Format = "lowvent-code/1"

// decoder reads a tree into a profile and gathers all that is wrong with it.
type decoder struct {
	faults source.Faults
}

func (d *decoder) fault(at source.Place, what, expected, mend string) {
	d.faults = append(d.faults, source.Fault{Place: at, What: what, Expected: expected, Mend: mend})
}

// keys is what an object must and may have.
type keys struct{ must, may []string }

// object checks that a value is an object with the right keys. Left-out keys
// are one fault, at the object.
func (d *decoder) object(n *source.Node, k keys) bool {
	if n.Kind != source.Object {
		d.fault(n.Place(), fmt.Sprintf("%s stands here", n.Kind), "an object with "+quoted(k.must, "and"), "")
		return false
	}
	known := slices.Concat(k.must, k.may)
	for _, child := range n.Children {
		if !slices.Contains(known, child.Key) {
			d.fault(child.KeyPlace(), fmt.Sprintf("%q is not known here", child.Key), oneOfThese(known), meant(child.Key, known))
		}
	}
	missing := slices.DeleteFunc(slices.Clone(k.must), func(key string) bool { return n.Member(key) != nil })
	if len(missing) > 0 {
		d.fault(n.Place(), "left out here: "+quoted(missing, "and"), "an object with "+quoted(k.must, "and"), "")
	}
	return true
}

// quoted lists words in double quotes as a sentence would.
func quoted(words []string, last string) string {
	texts := make([]string, len(words))
	for i, w := range words {
		texts[i] = fmt.Sprintf("%q", w)
	}
	return joined(texts, last)
}

// oneOfThese is what a message expects where a choice of words is.
func oneOfThese(words []string) string {
	if len(words) == 1 {
		return quoted(words, "")
	}
	return "one of " + quoted(words, "or")
}

// meant says which word was probably meant, or nothing.
func meant(word string, known []string) string {
	if near := source.Nearest(word, known); near != "" {
		return fmt.Sprintf("%q may be meant", near)
	}
	return ""
}

// text gives a member that is a text, or "" when it is left out.
func (d *decoder) text(n *source.Node, key string) string {
	m := n.Member(key)
	if m == nil {
		return ""
	}
	return d.textOf(m)
}

// textOf gives a value that must be a text that can be printed.
func (d *decoder) textOf(n *source.Node) string {
	text := n.Text()
	switch {
	case n.Kind != source.String:
		d.fault(n.Place(), fmt.Sprintf("%s stands here", n.Kind), "a text in double quotes", "")
	case strings.TrimSpace(text) == "":
		d.fault(n.Place(), "the text is empty", "some words", "write it out, or leave the name out if it is not required")
	case strings.ContainsFunc(text, unprintable):
		d.fault(n.Place(), "a character that can't be printed", "plain text on one line", "take it out")
	default:
		return text
	}
	return ""
}

// unprintable finds what could move a terminal's cursor or reorder its text.
func unprintable(r rune) bool {
	return unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Zl, unicode.Zp)
}

// flag gives a member that can only be true, or false when it is left out.
func (d *decoder) flag(n *source.Node, key string) bool {
	m := n.Member(key)
	if m == nil {
		return false
	}
	if !m.Bool() {
		d.fault(m.Place(), m.Raw()+" stands here", "true", "leave the name out where it is not so")
	}
	return m.Bool()
}

// choice gives a text that must be one of some words, or "".
func (d *decoder) choice(n *source.Node, words []string) string {
	text := d.textOf(n)
	if text != "" && !slices.Contains(words, text) {
		d.fault(n.Place(), fmt.Sprintf("%q is not known here", text), oneOfThese(words), meant(text, words))
		return ""
	}
	return text
}

// elements gives the elements of a member that must be a list, or nil when it
// is left out.
func (d *decoder) elements(n *source.Node, key string, least int) []*source.Node {
	m := n.Member(key)
	switch {
	case m == nil:
		return nil
	case m.Kind != source.Array:
		d.fault(m.Place(), fmt.Sprintf("%s stands here", m.Kind), "a list in square brackets", "")
		return nil
	case len(m.Children) < least:
		d.fault(m.Place(), fmt.Sprintf("the list is too short, it has %d", len(m.Children)), fmt.Sprintf("at least %d", least), "")
	}
	return m.Children
}

// choices gives a list whose elements must be among some words, each once.
func (d *decoder) choices(n *source.Node, key string, least int, words []string) []string {
	var all []string
	for _, e := range d.elements(n, key, least) {
		word := d.choice(e, words)
		if word != "" && slices.Contains(all, word) {
			d.fault(e.Place(), fmt.Sprintf("%q stands here twice", word), "each word once", "take one out")
		}
		all = append(all, word)
	}
	return all
}

// texts gives a list of texts.
func (d *decoder) texts(n *source.Node, key string) []string {
	var all []string
	for _, e := range d.elements(n, key, 0) {
		all = append(all, d.textOf(e))
	}
	return all
}

// decode reads a whole profile. It gives nil when there is any fault.
func decode(root *source.Node) (*Profile, source.Faults) {
	d := &decoder{}
	p := d.profile(root)
	if len(d.faults) > 0 {
		d.faults.Sort()
		return nil, d.faults
	}
	slices.SortFunc(p.Entries, func(a, b Entry) int { return cmp.Compare(a.Term, b.Term) })
	return p, nil
}
