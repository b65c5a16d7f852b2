package code

import (
	"cmp"
	"embed"
	"slices"
	"strings"
	"sync"

	"lowvent.example/schema/source"
)

//go:embed codes/*.json
var files embed.FS

// Profiles lists the built-in profiles of all four books, sorted by id. They
// are shared: nobody may change them.
func Profiles() []*Profile { return slices.Clone(everyBuiltIn()) }

var everyBuiltIn = sync.OnceValue(func() []*Profile {
	var all []*Profile
	for _, read := range builtIn() {
		all = append(all, read())
	}
	slices.SortFunc(all, func(a, b *Profile) int { return cmp.Compare(a.ID, b.ID) })
	return all
})

// builtIn gives a reader for each embedded file, under the profile's id, which is the
// file's name. A file is decoded when it is first asked for, and once: most runs need
// four of them.
var builtIn = sync.OnceValue(func() map[string]func() *Profile {
	entries, err := files.ReadDir("codes")
	if err != nil {
		panic("code: the built-in profiles are missing: " + err.Error())
	}
	all := map[string]func() *Profile{}
	for _, entry := range entries {
		all[strings.TrimSuffix(entry.Name(), ".json")] = sync.OnceValue(func() *Profile { return embedded(entry.Name()) })
	}
	return all
})

// embedded decodes one file. It is part of the program, so one that can't be decoded is
// a fault of the program and stops it; the tests read every one.
func embedded(name string) *Profile {
	data, err := files.ReadFile("codes/" + name)
	if err != nil {
		panic("code: " + err.Error())
	}
	root, fault := source.Parse(source.NewFile(name, data), source.Limits{})
	if fault != nil {
		panic("code: a built-in profile is no JSON: " + fault.Error())
	}
	p, faults := decode(root)
	if faults != nil {
		panic("code: a built-in profile does not decode:\n" + faults.Error())
	}
	return p
}
