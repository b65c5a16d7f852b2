package checktest

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// Day is the day on which examples are judged, the week in which the papers of
// the demonstration layouts were made.
var Day = unit.Date{Year: 2026, Month: 11, Day: 25}

// Bench loads layouts and codes for one module, and judges layouts without a
// patch, each once.
type Bench struct {
	root   string // top of the module
	mu     sync.Mutex
	bases  map[string]*source.Node
	codes  map[string]code.Codes
	before map[[3]string][]report.Finding // by base, code and check
}

// NewBench finds the top of the module from a folder within it.
func NewBench(folder string) (*Bench, error) {
	at, err := filepath.Abs(folder)
	if err != nil {
		return nil, err
	}
	for root := at; ; root = filepath.Dir(root) {
		if _, err := os.Stat(filepath.Join(root, "go.mod")); err == nil {
			return &Bench{root: root, bases: map[string]*source.Node{}, codes: map[string]code.Codes{}, before: map[[3]string][]report.Finding{}}, nil
		}
		if root == filepath.Dir(root) {
			return nil, fmt.Errorf("no go.mod stands in %s or above it", at)
		}
	}
}

// Base gives the parsed file of a layout, by its path from the top of the module.
func (b *Bench) Base(path string) (*source.Node, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if root := b.bases[path]; root != nil {
		return root, nil
	}
	data, err := os.ReadFile(filepath.Join(b.root, filepath.FromSlash(path)))
	if err != nil {
		return nil, err
	}
	root, fault := source.Parse(source.NewFile(filepath.Base(path), data), source.DefaultLimits())
	if fault != nil {
		return nil, fault
	}
	b.bases[path] = root
	return root, nil
}

// Layout loads a layout with edits made to it.
func (b *Bench) Layout(base string, edits []source.Edit) (*layout.Layout, error) {
	root, err := b.Base(base)
	if err != nil {
		return nil, err
	}
	file, err := source.Apply(root.File(), root, edits)
	if err != nil {
		return nil, err
	}
	l, faults := layout.Load(file)
	if faults != nil {
		return nil, faults
	}
	return l, nil
}

// Codes gives the books with a built-in profile, by its id, or one from a file,
// by its path from the top of the module.
func (b *Bench) Codes(name string) (code.Codes, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if c, known := b.codes[name]; known {
		return c, nil
	}
	c, err := b.load(name)
	if err == nil {
		b.codes[name] = c
	}
	return c, err
}

// noCode is the name by which an example asks for no code at all: only the books that
// every run is judged by.
const noCode = "none"

func (b *Bench) load(name string) (code.Codes, error) {
	if name == noCode {
		return code.Use("")
	}
	if !strings.HasSuffix(name, ".json") {
		return code.Use(name)
	}
	c, err := code.Use("")
	if err != nil {
		return c, err
	}
	data, err := os.ReadFile(filepath.Join(b.root, filepath.FromSlash(name)))
	if err != nil {
		return c, err
	}
	p, faults := code.Load(name, data)
	if faults != nil {
		return c, faults
	}
	return c.With(p), nil
}

// Judge asks one check of a set of everything in a layout.
func Judge(set check.Set, id string, l *layout.Layout, codes code.Codes) ([]report.Finding, error) {
	i := slices.IndexFunc(set.Checks, func(c check.Check) bool { return c.ID == id })
	if i < 0 {
		return nil, fmt.Errorf("there is no check %q", id)
	}
	result, err := check.Run(context.Background(), check.Set{Checks: set.Checks[i : i+1]}, l, codes, check.Options{On: Day, Workers: 1})
	return result.Findings, err
}

// Case judges one case of an example: the layout that it makes, and what its
// check says of it.
func (b *Bench) Case(set check.Set, e *Example, c *Case) (*layout.Layout, []report.Finding, error) {
	codes, err := b.Codes(c.Code)
	if err != nil {
		return nil, nil, err
	}
	l, err := b.Layout(e.Base, c.Edits)
	if err != nil {
		return nil, nil, err
	}
	findings, err := Judge(set, e.Check, l, codes)
	return l, findings, err
}

// unpatched is what a check says of an example's base as it is.
func (b *Bench) unpatched(set check.Set, e *Example, code string) ([]report.Finding, error) {
	key := [3]string{e.Base, code, e.Check}
	b.mu.Lock()
	known, ok := b.before[key]
	b.mu.Unlock()
	if ok {
		return known, nil
	}
	_, findings, err := b.Case(set, e, &Case{Code: code})
	if err == nil {
		b.mu.Lock()
		b.before[key] = findings
		b.mu.Unlock()
	}
	return findings, err
}
