package ask

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"
	"unicode/utf8"

	"lowvent.example/schema/layout"
)

// longest is how long a line may get by having a whole object on it.
const longest = 100

// write puts a layout into the form of the first layouts: keys in the order of the
// contract, small things on one line, an empty line before each list of things.
func write(root *object) []byte {
	var b strings.Builder
	b.WriteString("{\n")
	keys := ordered(root, "")
	for i, m := range keys {
		if isThings(m.key) && (i == 0 || filledIn(m) || filledIn(keys[i-1])) {
			b.WriteByte('\n')
		}
		b.WriteString("  " + quoted(m.key) + ": ")
		value(&b, m.value, "/"+m.key, 1, isThings(m.key))
		b.WriteString(comma(i, len(keys)))
	}
	b.WriteString("}\n")
	return []byte(b.String())
}

// filledIn tells of a list that takes lines of its own.
func filledIn(m member) bool {
	o, ok := m.value.(*object)
	return ok && isThings(m.key) && len(o.members) > 0
}

func comma(i, n int) string {
	if i+1 < n {
		return ",\n"
	}
	return "\n"
}

func isThings(section string) bool {
	return slices.ContainsFunc(layout.Keys(""), func(k layout.Key) bool { return k.Name == section && k.Form == layout.FormThings })
}

// value writes one value; what is open is never put on one line.
func value(b *strings.Builder, v any, at string, depth int, open bool) {
	o, ok := v.(*object)
	if !ok || len(o.members) == 0 {
		b.WriteString(flat(v, at))
		return
	}
	begun := b.String()
	column := utf8.RuneCountInString(begun[strings.LastIndexByte(begun, '\n')+1:])
	if line := flat(v, at); !open && (column+utf8.RuneCountInString(line) <= longest || len(o.members) == 1 && o.members[0].key == "note") {
		b.WriteString(line)
		return
	}
	pad := strings.Repeat("  ", depth)
	b.WriteString("{\n")
	members := ordered(o, at)
	for i, m := range members {
		b.WriteString(pad + "  " + quoted(m.key) + ": ")
		value(b, m.value, at+"/"+m.key, depth+1, false)
		b.WriteString(comma(i, len(members)))
	}
	b.WriteString(pad + "}")
}

// flat is a value on one line.
func flat(v any, at string) string {
	switch v := v.(type) {
	case *object:
		if len(v.members) == 0 {
			return "{}"
		}
		var parts []string
		for _, m := range ordered(v, at) {
			parts = append(parts, quoted(m.key)+": "+flat(m.value, at+"/"+m.key))
		}
		return "{ " + strings.Join(parts, ", ") + " }"
	case list:
		var parts []string
		for _, each := range v {
			parts = append(parts, flat(each, at))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	return quoted(v)
}

// ordered gives the members in the order of the contract; things in a list keep
// theirs, and what the contract does not list, as a note, comes last. The note of the
// whole file stands at its head.
func ordered(o *object, at string) []member {
	var rank []string
	for _, key := range layout.Keys(at) {
		rank = append(rank, key.Name)
	}
	if rank == nil {
		return o.members
	}
	place := func(key string) int {
		i := slices.Index(rank, key)
		switch {
		case i >= 0:
			return 2 * i
		case at == "":
			return 2*slices.Index(rank, "title") + 1
		}
		return 2 * len(rank)
	}
	sorted := slices.Clone(o.members)
	slices.SortStableFunc(sorted, func(a, b member) int { return place(a.key) - place(b.key) })
	return sorted
}

// quoted is a plain value as JSON writes it.
func quoted(v any) string {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		panic("ask: a value that JSON can't hold: " + err.Error()) // it is a text, a count, true or false
	}
	return strings.TrimSuffix(b.String(), "\n")
}
