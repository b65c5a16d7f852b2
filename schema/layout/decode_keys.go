package layout

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/source"
)

// missingKeys tells all keys at once that the object must have and has not.
func (d *decoder) missingKeys(node *source.Node, s *shape) {
	var must, missing []string
	for _, f := range s.fields {
		if !f.must {
			continue
		}
		must = append(must, quote(f.name))
		if node.Member(f.name) == nil {
			missing = append(missing, f.name)
		}
	}
	if len(missing) == 0 {
		return
	}
	d.explain(head(node), func() (what, expected, mend string) {
		keys, how := make([]string, len(missing)), make([]string, len(missing))
		for i, name := range missing {
			keys[i] = quote(name)
			how[i] = fmt.Sprintf("write %q: %s", name, Describe(source.Join(node.Pointer(), name)))
		}
		return entry(node) + " lacks " + strings.Join(keys, " and "), "an object with " + strings.Join(must, ", "), strings.Join(how, " And ")
	})
}

// entry names an object by its key and the list that it stands in.
func entry(n *source.Node) string {
	if n.Parent == nil || n.Parent.Parent == nil {
		return named(n)
	}
	return named(n) + " in " + named(n.Parent)
}

func (d *decoder) unknownKeys(node *source.Node, s *shape) {
	for _, member := range node.Children {
		if slices.Contains(s.names, member.Key) {
			continue
		}
		// What was written under a name like it is not missing: spoil that.
		if len(d.found) < mostFaults {
			if near := nearest(member.Key, s.names); near != "" && node.Member(near) == nil {
				d.spoil(source.Join(node.Pointer(), near))
			}
		}
		d.explain(member.KeyPlace(), func() (what, expected, mend string) {
			expected, mend = unknownKey(member.Key, s.names, Template(node.Pointer()))
			return fmt.Sprintf("the key %s is not known here", quote(member.Key)), expected, mend
		})
	}
}

// unknownKey offers the key that was meant and the objects that do have the
// key, or else all keys of the object at the template.
func unknownKey(key string, known []string, at string) (expected, mend string) {
	expected = fmt.Sprintf("one of the %d keys of %s", len(known), spelledOut(at))
	near, homes := suggest(key, known), homesOf(key, at)
	switch {
	case near != "" && homes != "":
		return expected, near + " Or should it stand in " + homes + "?"
	case near != "":
		return expected, near
	case homes != "":
		return expected, "it belongs in " + homes
	}
	return oneOf(known), `take it out, or write what it says into the "note"`
}

// homesOf lists up to three of the objects that have the key, those nearest to
// the template first.
func homesOf(key, at string) string {
	var homes []string
	for _, home := range keyHomes()[key] {
		if key != "note" && key != "evidence" && !strings.HasSuffix(home, "/evidence/*") {
			homes = append(homes, spelledOut(home))
		}
	}
	if len(homes) == 0 {
		return ""
	}
	slices.SortStableFunc(homes, func(a, b string) int {
		return shared(b, spelledOut(at)) - shared(a, spelledOut(at))
	})
	const most = 3
	if more := len(homes) - most; more > 0 {
		homes = append(homes[:most], fmt.Sprintf("%d other places", more))
	}
	return strings.Join(homes, " or ")
}

// shared counts the bytes that two texts have in common at their ends.
func shared(a, b string) int {
	n := 0
	for n < len(a) && n < len(b) && a[len(a)-1-n] == b[len(b)-1-n] {
		n++
	}
	return n
}

// spelledOut puts a template into words: "/appliances/*/plate" becomes
// "plate" in an entry of "appliances".
func spelledOut(template string) string {
	if template == "" {
		return "the top level of the file"
	}
	tokens := source.Split(template)
	var words []string
	for len(tokens) > 0 {
		last := tokens[len(tokens)-1]
		tokens = tokens[:len(tokens)-1]
		if last == "*" && len(tokens) > 0 {
			last = "an entry of " + quote(tokens[len(tokens)-1])
			tokens = tokens[:len(tokens)-1]
		} else {
			last = quote(last)
		}
		words = append(words, last)
	}
	return strings.Join(words, " in ")
}

// wrongKind tells of a value of the wrong kind. What null is meant to say is
// said by leaving the key out.
func (d *decoder) wrongKind(node *source.Node, expected, mend string) {
	what := node.Kind.String()
	switch node.Kind {
	case source.Number:
		what = "a bare number"
	case source.Array:
		what = "a list"
	case source.Null:
		mend = "leave the key out: what is left out counts as not known"
	}
	d.fault(node.Place(), named(node)+" is "+what, expected, mend)
}

// is faults a value that is not of the kind.
func (d *decoder) is(node *source.Node, kind source.NodeKind, expected, mend string) bool {
	if node.Kind != kind {
		d.wrongKind(node, expected, mend)
		return false
	}
	return true
}
