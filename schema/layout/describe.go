package layout

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"sync"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// Describe gives the published schema's description of the key at a JSON
// Pointer of a layout: what to measure or read there, how, and in which units.
// Names that the file gives to its things are free. It is "" for a pointer
// that no layout can have.
func Describe(pointer string) string {
	_, node := schemaAt(pointer)
	for node != nil && node.Description == "" && node.Ref != "" {
		node = node.target()
	}
	if node == nil {
		return ""
	}
	return node.Description
}

// HowTo tells what to do to find out the value of the key at a JSON Pointer: its
// description, with the words that can be written there, where it takes words.
func HowTo(pointer string) string {
	_, node := schemaAt(pointer)
	text := Describe(pointer)
	if node = node.target(); node == nil || len(node.OneOf) == 0 {
		return text
	}
	words := make([]string, len(node.OneOf))
	for i, choice := range node.OneOf {
		words[i] = choice.Const
	}
	return text + " One of: " + strings.Join(words, ", ") + "."
}

// Template gives the pointer with the names of things and the numbers of list
// items replaced by "*": "/lockers/side/vents/low/gross" becomes
// "/lockers/*/vents/*/gross". It is "" for the whole file, and for a pointer
// that no layout can have.
func Template(pointer string) string {
	template, _ := schemaAt(pointer)
	return template
}

// Meaning gives the published schema's description of one word of the choice
// at a JSON Pointer of a layout, or "" when it is not one of its words.
func Meaning(pointer, word string) string {
	_, node := schemaAt(pointer)
	if node = node.target(); node != nil && node.Items != nil {
		node = node.Items.target()
	}
	if node != nil {
		for _, choice := range node.OneOf {
			if choice.Const == word {
				return choice.Description
			}
		}
	}
	return ""
}

// schemaNode is what this package reads of the published schema.
type schemaNode struct {
	Ref               string                 `json:"$ref"`
	Type              string                 `json:"type"`
	Description       string                 `json:"description"`
	Const             string                 `json:"const"`
	OneOf             []*schemaNode          `json:"oneOf"`
	Properties        map[string]*schemaNode `json:"properties"`
	PatternProperties map[string]*schemaNode `json:"patternProperties"`
	Items             *schemaNode            `json:"items"`
	Examples          []json.RawMessage      `json:"examples"`
	Defs              map[string]*schemaNode `json:"$defs"`
}

// schemaTree reads the published schema once, and only when its words are
// needed. A test holds that it can be read.
var schemaTree = sync.OnceValue(func() *schemaNode {
	root := &schemaNode{}
	if err := json.Unmarshal(published, root); err != nil {
		panic("layout: the embedded schema is not JSON: " + err.Error())
	}
	return root
})

// target is what a reference refers to, and the node itself when it is none.
func (n *schemaNode) target() *schemaNode {
	if n == nil || n.Ref == "" {
		return n
	}
	return schemaTree().Defs[strings.TrimPrefix(n.Ref, "#/$defs/")]
}

// schemaAt walks the published schema along a pointer of a layout.
func schemaAt(pointer string) (template string, node *schemaNode) {
	if pointer != "" && !strings.HasPrefix(pointer, "/") {
		return "", nil
	}
	node = schemaTree()
	for _, token := range source.Split(pointer) {
		if node, token = node.target().child(token); node == nil {
			return "", nil
		}
		template = source.Join(template, token)
	}
	return template, node
}

// child gives the schema of one member or item, and the template's token.
func (n *schemaNode) child(token string) (*schemaNode, string) {
	if n == nil {
		return nil, ""
	}
	if property := n.Properties[token]; property != nil {
		return property, token
	}
	if n.Items != nil && token != "" && strings.Trim(token, "0123456789") == "" {
		return n.Items, "*"
	}
	for _, listed := range n.PatternProperties {
		if isID(token) {
			return listed, "*"
		}
	}
	return nil, ""
}

// exampleOf gives the schema's first example of a kind of quantity.
func exampleOf(kind unit.Kind) string {
	var example string
	if node := schemaTree().Defs[kind.String()]; node != nil && len(node.Examples) > 0 {
		_ = json.Unmarshal(node.Examples[0], &example) // "" for what is no text
	}
	return example
}

// KindAt tells what kind of quantity stands at a JSON Pointer of a layout, and whether
// it is written as a bare number of JSON, as counts are. Of what is no quantity, known
// is false.
func KindAt(pointer string) (kind unit.Kind, bare, known bool) {
	_, node := schemaAt(pointer)
	for ; node != nil && node.Ref != ""; node = node.target() {
		name := strings.TrimPrefix(node.Ref, "#/$defs/")
		if name == "count" {
			return unit.KindCount, true, true
		}
		if k, is := unit.KindNamed(name); is {
			return k, false, true
		}
	}
	return 0, false, false
}

// KeysAt lists, sorted, the keys that a layout can have in the object at a JSON Pointer.
// There are none for what is no object, or whose names the file gives.
func KeysAt(pointer string) []string {
	_, node := schemaAt(pointer)
	if node = node.target(); node == nil {
		return nil
	}
	return slices.Sorted(maps.Keys(node.Properties))
}
