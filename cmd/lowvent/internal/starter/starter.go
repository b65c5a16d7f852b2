// Package starter holds the first layouts that the program writes for a builder
// to fill in: one for each kind of dwelling, all of them invented. They state
// what such a dwelling has and how it hangs together, and leave out whatever
// decides on safety, so that a check of one finds nothing to be within a limit.
package starter

import (
	"embed"
	"slices"
)

//go:embed *.json
var files embed.FS

// Scenes lists the kinds of dwelling that there is a first layout for, the usual
// one first.
func Scenes() []string { return []string{"van", "bus", "boat", "cabin"} }

// Layout is the text of the first layout of a scene, and nil for what is none.
func Layout(scene string) []byte {
	if !slices.Contains(Scenes(), scene) {
		return nil
	}
	text, err := files.ReadFile(scene + ".json")
	if err != nil {
		panic("starter: the layout of a scene is missing: " + err.Error())
	}
	return text
}
