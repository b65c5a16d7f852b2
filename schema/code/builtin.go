package code

import (
	"cmp"
	"embed"
	"slices"
	"sync"

	"lowvent.example/schema/source"
)

//go:embed codes/*.json
var files embed.FS

// Profiles lists the built-in profiles of all four books, sorted by id. They
// are shared: nobody may change them.
func Profiles() []*Profile { return slices.Clone(builtIn()) }

// builtIn decodes the embedded files, once. They are part of the program, so a
// file that can't be decoded is a fault of the program and stops it; the tests
// read every one.
var builtIn = sync.OnceValue(func() []*Profile {
	entries, err := files.ReadDir("codes")
	if err != nil {
		panic("code: the built-in profiles are missing: " + err.Error())
	}
	var all []*Profile
	for _, entry := range entries {
		data, err := files.ReadFile("codes/" + entry.Name())
		if err != nil {
			panic("code: " + err.Error())
		}
		root, fault := source.Parse(source.NewFile(entry.Name(), data), source.Limits{})
		if fault != nil {
			panic("code: a built-in profile is no JSON: " + fault.Error())
		}
		p, faults := decode(root)
		if faults != nil {
			panic("code: a built-in profile does not decode:\n" + faults.Error())
		}
		all = append(all, p)
	}
	slices.SortFunc(all, func(a, b *Profile) int { return cmp.Compare(a.ID, b.ID) })
	return all
})
