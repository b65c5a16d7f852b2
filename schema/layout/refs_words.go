package layout

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// wrongRef explains a reference that can't stand at its place, whether what it
// names is there or not.
func (d *decoder) wrongRef(p pendingRef) (what, expected, mend string) {
	what = quote(string(p.ref)) + " is not a reference that can stand here"
	known := d.refsInto(p.allowed)
	if thing, ok := d.things[p.ref]; ok {
		what = fmt.Sprintf("%q is the %s, which can't stand here", p.ref, thing.Label())
	}
	for _, ref := range known {
		whole := Ref(ref)
		if whole.ID() == string(p.ref) || strings.HasPrefix(string(p.ref), ref+"/") {
			return what, refForm(p.allowed), fmt.Sprintf("did you mean %q?", ref)
		}
	}
	if mend = suggest(string(p.ref), known); mend == "" {
		mend = "write one of those; where it is not known, leave the key out"
	}
	return what, d.options(p.allowed), mend
}

func (d *decoder) dangling(p pendingRef) (what, expected, mend string) {
	section, allowed := p.ref.Section(), p.allowed
	if slices.Contains(allowed, anything) {
		allowed = []string{section}
	}
	near := ""
	if strings.Count(string(p.ref), "/") > 1 {
		near = nearest(string(p.ref), d.refsInto(p.allowed))
	} else if id := nearest(p.ref.ID(), d.idsIn(section)); id != "" {
		// A short name is far from every other, however long its list's name is.
		near = section + "/" + id
	}
	if mend = fmt.Sprintf("did you mean %q?", near); near == "" {
		mend = fmt.Sprintf("list it under %q, or name one that is listed", section)
	}
	return "nothing in this file is called " + quote(string(p.ref)), d.options(allowed), mend
}

// refsInto lists, sorted, every reference that could stand where those
// sections may.
func (d *decoder) refsInto(allowed []string) []string {
	if d.listing == nil {
		d.listing = listing(d.things)
	}
	if slices.Contains(allowed, anything) {
		return d.listing[anything]
	}
	var refs []string
	for _, section := range slices.Sorted(slices.Values(allowed)) {
		if section == string(OpenAir) {
			refs = append(refs, section)
		}
		refs = append(refs, d.listing[section]...)
	}
	return refs
}

// listing sorts the references to all things by section; under "*" stand all,
// parts of things as well.
func listing(things map[Ref]Item) map[string][]string {
	lists := map[string][]string{}
	for _, ref := range slices.Sorted(maps.Keys(things)) {
		lists[anything] = append(lists[anything], string(ref))
		if strings.Count(string(ref), "/") == 1 {
			lists[ref.Section()] = append(lists[ref.Section()], string(ref))
		}
	}
	return lists
}

// idsIn lists, sorted, the ids in one section.
func (d *decoder) idsIn(section string) []string {
	refs := d.refsInto([]string{section})
	known := make([]string, len(refs))
	for i, ref := range refs {
		known[i] = Ref(ref).ID()
	}
	return known
}

// options tells, for the message, what a reference could have named.
func (d *decoder) options(allowed []string) string {
	const most = 8
	refs := d.refsInto(allowed)
	switch {
	case len(refs) == 0:
		return refForm(allowed) + ", and this file lists none"
	case len(refs) > most:
		return fmt.Sprintf("%s or %d more", oneOf(refs[:most]), len(refs)-most)
	}
	return oneOf(refs)
}

// refForm tells what a reference into those sections looks like.
func refForm(allowed []string) string {
	forms := make([]string, len(allowed))
	for i, section := range allowed {
		switch section {
		case anything:
			forms[i] = `the list and the name of any listed thing, such as "openings/door"`
		case string(OpenAir):
			forms[i] = quote(section)
		default:
			forms[i] = quote(section + "/…")
		}
	}
	return strings.Join(forms, " or ")
}
