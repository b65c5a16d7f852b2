package main

import (
	"fmt"
	"slices"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// leads refuses a pointer that would put something where no layout has anything, or that
// would make up a thing by the way because its name was mistyped. It names what may be meant.
func leads(root *source.Node, e source.Edit) error {
	node, in := root, ""
	tokens := source.Split(e.Pointer)
	for i, token := range tokens {
		var child *source.Node
		if node != nil {
			child = node.At(source.Join("", token))
		}
		if child == nil && token != "-" {
			if what := deadEnd(node, in, token, e.Delete, i == len(tokens)-1); what != "" {
				return fmt.Errorf("the pointer %s leads nowhere: %s", e.Pointer, what)
			}
		}
		node, in = child, source.Join(in, token)
	}
	return nil
}

// deadEnd says why nothing can stand or be left out under a token that the file does not
// have; "" where a layout can have it and it can be added.
func deadEnd(node *source.Node, in, token string, leftOut, last bool) string {
	keys := layout.KeysAt(in)
	switch {
	case len(keys) > 0 && !slices.Contains(keys, token):
		return fmt.Sprintf("there is no key %q %s%s", token, at(in), meant(token, keys))
	case layout.Template(source.Join(in, token)) == "":
		return fmt.Sprintf("a layout has no %q %s", token, at(in))
	case leftOut || len(keys) == 0 && !last:
		return fmt.Sprintf("the file has no %q %s%s", token, at(in), meant(token, namesIn(node)))
	}
	return ""
}

func at(pointer string) string {
	if pointer == "" {
		return "at the top of a layout"
	}
	return "in " + pointer
}

func namesIn(node *source.Node) []string {
	var names []string
	if node == nil {
		return nil
	}
	for _, child := range node.Children {
		if child.Key != "" {
			names = append(names, child.Key)
		}
	}
	return names
}
