package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// choosing is the package by which a program with many mutants chooses one.
const choosing = "lowvent.example/.ci/mutate/mutation"

// fitted says how each mutant can be tried.
type fitted struct {
	beside map[int]bool // in one program with the others
	alone  map[int]bool // only in a program of its own
	// The others do not build.
}

// packages is what is known of the packages that mutants are in.
type packages struct {
	root   string
	files  map[string][]string // by folder, from the top of the module
	export map[string]string   // compiled packages, by import path
}

// listed asks the go command for the packages and for what they import, compiled.
func listed(root string, all []mutant) (*packages, error) {
	p := &packages{root: root, files: map[string][]string{}, export: map[string]string{}}
	folders := map[string]bool{}
	arguments := []string{"list", "-export", "-deps", "-json=ImportPath,Dir,Export,GoFiles", "./.ci/mutate/mutation"}
	for _, m := range all {
		if folder := filepath.Dir(m.path); !folders[folder] {
			folders[folder] = true
			arguments = append(arguments, "./"+folder)
		}
	}
	c := exec.Command("go", arguments...)
	c.Dir, c.Stderr = root, os.Stderr
	out, err := c.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	for decoder := json.NewDecoder(bytes.NewReader(out)); ; {
		var each struct {
			ImportPath, Dir, Export string
			GoFiles                 []string
		}
		if err := decoder.Decode(&each); err == io.EOF {
			return p, nil
		} else if err != nil {
			return nil, err
		}
		p.export[each.ImportPath] = each.Export
		if folder, err := filepath.Rel(root, each.Dir); err == nil && folders[filepath.ToSlash(folder)] {
			p.files[filepath.ToSlash(folder)] = each.GoFiles
		}
	}
}

// faults type-checks a package with some of its files changed (by path from the top of
// the module), and lists in which file and at which byte something is amiss.
func (p *packages) faults(folder string, changed map[string][]byte) map[string][]int {
	files := token.NewFileSet()
	found := map[string][]int{}
	note := func(at token.Position) { found[at.Filename] = append(found[at.Filename], at.Offset) }
	var parsed []*ast.File
	for _, name := range p.files[folder] {
		path := folder + "/" + name
		var text any
		if data, ok := changed[path]; ok {
			text = data
		}
		file, err := parseAs(files, p.root, path, text)
		if err != nil {
			note(files.Position(file.Pos()))
			continue
		}
		parsed = append(parsed, file)
	}
	lookup := func(path string) (io.ReadCloser, error) { return os.Open(p.export[path]) }
	config := types.Config{Importer: importer.ForCompiler(files, "gc", lookup), Error: func(err error) { note(files.Position(err.(types.Error).Pos)) }}
	config.Check("lowvent.example/"+folder, files, parsed, nil) // what it gives stands in found
	return found
}

func parseAs(files *token.FileSet, root, path string, text any) (*ast.File, error) {
	if text == nil {
		data, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(path)))
		if err != nil {
			return &ast.File{}, err
		}
		text = data
	}
	return parser.ParseFile(files, path, text, parser.SkipObjectResolution)
}

// fit finds out which mutants can stand beside each other: those around a place that the
// type checker refuses are taken out until it refuses none, and looked at alone.
func (p *packages) fit(all []mutant) fitted {
	f := fitted{beside: map[int]bool{}, alone: map[int]bool{}}
	for i, m := range all {
		f.beside[i] = m.beside.exists()
	}
	for folder := range p.files {
		for p.takenOut(folder, all, f.beside) {
		}
	}
	for i, m := range all {
		if !f.beside[i] && len(p.faults(filepath.Dir(m.path), map[string][]byte{m.path: m.bytes()})) == 0 {
			f.alone[i] = true
		}
	}
	return f
}

// takenOut tells whether any had to be.
func (p *packages) takenOut(folder string, all []mutant, beside map[int]bool) bool {
	texts, spans := mergedFiles(folder, all, beside)
	any := false
	for path, places := range p.faults(folder, texts) {
		for _, at := range places {
			id := innermost(spans[path], at)
			if id < 0 {
				panic(fmt.Sprintf("%s does not build, and no mutant is to blame at byte %d:\n%s", path, at, around(texts[path], at)))
			}
			any = any || beside[id]
			beside[id] = false
		}
	}
	return any
}

func around(text []byte, at int) []byte { return text[max(0, at-200):min(len(text), at+200)] }

// innermost is the mutant with the shortest span around a byte.
func innermost(spans map[int][2]int, at int) int {
	found, least := -1, 0
	for id, span := range spans {
		if width := span[1] - span[0]; span[0] <= at && at < span[1] && (found < 0 || width < least || width == least && id < found) {
			found, least = id, width
		}
	}
	return found
}

// mergedFiles gives the files of a folder, or of all folders, with the mutants in them.
func mergedFiles(folder string, all []mutant, beside map[int]bool) (texts map[string][]byte, spans map[string]map[int][2]int) {
	byPath := map[string]map[int]mutant{}
	for i, m := range all {
		if !beside[i] || folder != "" && filepath.Dir(m.path) != folder {
			continue
		}
		if byPath[m.path] == nil {
			byPath[m.path] = map[int]mutant{}
		}
		byPath[m.path][i] = m
	}
	texts, spans = map[string][]byte{}, map[string]map[int][2]int{}
	for path, some := range byPath {
		first := slices.Min(slices.Collect(maps.Keys(some)))
		texts[path], spans[path] = merged(some[first].wholeBytes, some)
	}
	return texts, spans
}

// inTests is the packages whose tests try mutants, with the name of the program of each.
var inTests = map[string]string{"./schema/check": "check", "./gas": "gas", "./vent": "vent"}

// built makes the programs of tests, each with all mutants in it, in a folder.
func built(root, folder string, all []mutant, beside map[int]bool) error {
	texts, _ := mergedFiles("", all, beside)
	replace := map[string]string{}
	for path, text := range texts {
		at := filepath.Join(folder, strings.ReplaceAll(path, "/", "_"))
		replace[filepath.Join(root, filepath.FromSlash(path))] = at
		if err := os.WriteFile(at, text, 0o600); err != nil {
			return err
		}
	}
	overlay := filepath.Join(folder, "overlay.json")
	text, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return err
	}
	if err := os.WriteFile(overlay, text, 0o600); err != nil {
		return err
	}
	for pkg, name := range inTests {
		c := exec.Command("go", "test", "-c", "-vet=off", "-overlay", overlay, "-o", filepath.Join(folder, name), pkg)
		c.Dir, c.Stderr = root, os.Stderr
		if err := c.Run(); err != nil {
			return fmt.Errorf("%s with the mutants: %w", pkg, err)
		}
	}
	return nil
}
