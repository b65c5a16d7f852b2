package vent_test

import (
	"context"
	"hash/fnv"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// everyTerm is an invented code that answers every question, so that all checks
// can come out within.
const everyTerm = "testdata/codes/every-term.json"

// scene is one layout, judged by one code.
type scene struct {
	name   string
	base   string
	codes  code.Codes
	layout *layout.Layout
	found  answers
}

// answers are findings by check and subject.
type answers map[string]report.Finding

func pairOf(f report.Finding) string { return f.Check + " " + checktest.Of(f).Subject }

// theBench loads layouts and codes, each once for all tests.
var theBench = sync.OnceValues(func() (*checktest.Bench, error) { return checktest.NewBench(".") })

func bench(t testing.TB) *checktest.Bench {
	t.Helper()
	b, err := theBench()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// good and faulty are the scenes of the tests: what is within is shaken in the good
// ones, what is not is silenced in the faulty one.
func good(t testing.TB) []*scene   { return someScenes(t, judgedScene, goodFiles...) }
func faulty(t testing.TB) []*scene { return someScenes(t, judgedScene, "sorrel-faulty.json") }

// unasked are the scenes of both, of which nothing was asked.
func unasked(t testing.TB) []*scene {
	return slices.Concat(someScenes(t, unjudged, goodFiles...), someScenes(t, unjudged, "sorrel-faulty.json"))
}

var goodFiles = []string{"sorrel.json", "teal.json"}

func someScenes(t testing.TB, of func(t testing.TB, file, codeName string) (*scene, error), files ...string) []*scene {
	t.Helper()
	var all []*scene
	for _, file := range files {
		for _, name := range []string{checktest.DefaultCode, everyTerm} {
			s, err := of(t, file, name)
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, s)
		}
	}
	return all
}

// judgedScene and unjudged make each scene once for all tests.
var judgedScenes, unjudgedScenes sync.Map

func judgedScene(t testing.TB, file, codeName string) (*scene, error) {
	return onceScene(&judgedScenes, file+codeName, func() (*scene, error) { return newScene(t, file, codeName) })
}

func unjudged(t testing.TB, file, codeName string) (*scene, error) {
	return onceScene(&unjudgedScenes, file+codeName, func() (*scene, error) { return bareScene(t, file, codeName) })
}

func onceScene(cache *sync.Map, name string, of func() (*scene, error)) (*scene, error) {
	slot, _ := cache.LoadOrStore(name, sync.OnceValues(of))
	return slot.(func() (*scene, error))()
}

func newScene(t testing.TB, file, codeName string) (*scene, error) {
	s, err := bareScene(t, file, codeName)
	if err != nil {
		return nil, err
	}
	s.found, err = ask(s.layout, s.codes)
	return s, err
}

// bareScene is a scene of which nothing was asked yet.
func bareScene(t testing.TB, file, codeName string) (*scene, error) {
	b := bench(t)
	s := &scene{name: file + " by " + strings.TrimSuffix(filepath.Base(codeName), ".json"), base: "testdata/layouts/" + file}
	var err error
	if s.codes, err = b.Codes(codeName); err != nil {
		return nil, err
	}
	s.layout, err = b.Layout(s.base, nil)
	return s, err
}

// ask puts checks to a layout: those that are named, or all.
func ask(l *layout.Layout, codes code.Codes, ids ...string) (answers, error) {
	set := check.Set{Checks: slices.Clone(allChecks().Checks)}
	if len(ids) > 0 {
		set.Checks = slices.DeleteFunc(set.Checks, func(c check.Check) bool { return !slices.Contains(ids, c.ID) })
	}
	r, err := check.Run(context.Background(), set, l, codes, check.Options{On: checktest.Day, Workers: 1})
	if err != nil {
		return nil, err
	}
	found := answers{}
	for _, f := range r.Findings {
		found[pairOf(f)] = f
	}
	return found, nil
}

// edited loads the layout of a base with edits. A file that no longer loads is told
// apart: nothing is judged of it, so nothing is within.
func edited(t testing.TB, base string, edits ...source.Edit) (l *layout.Layout, loads bool) {
	t.Helper()
	l, err := bench(t).Layout(base, edits)
	return l, err == nil
}

// of asks about a changed layout by the code of the scene.
func (s *scene) of(t testing.TB, l *layout.Layout, ids ...string) answers {
	t.Helper()
	after, err := ask(l, s.codes, ids...)
	if err != nil {
		t.Error(err)
	}
	return after
}

// rewritten is the scene with its file written anew. Edits are then made to that.
func (s *scene) rewritten(t testing.TB, r rewriter) *scene {
	t.Helper()
	twin := &scene{name: s.name, codes: s.codes, layout: r.file(t, s.layout.Root())}
	var err error
	if twin.found, err = ask(twin.layout, s.codes); err != nil {
		t.Fatal(err)
	}
	return twin
}

// changed loads a scene's own file with edits.
func (s *scene) changed(t testing.TB, edits ...source.Edit) (l *layout.Layout, loads bool) {
	t.Helper()
	root := s.layout.Root()
	file, err := source.Apply(root.File(), root, edits)
	if err != nil {
		t.Error(err)
		return nil, false
	}
	l, faults := layout.Load(file)
	return l, faults == nil
}

// onlyRead keeps of an object's members those that some check reads, or that a file
// must have: a file a third as long loads three times as fast, and that the rest
// changes nothing is what TestWhatNobodyReads holds.
func onlyRead(children []*source.Node) []*source.Node {
	return slices.DeleteFunc(children, func(n *source.Node) bool {
		at := layout.Template(n.Pointer())
		return !surveyable[at] && !slices.ContainsFunc(readTemplates(), func(read string) bool {
			return read == at || strings.HasPrefix(read, at+"/") || at == read+"/*"
		})
	})
}

// surveyable are lists that no check reads yet, and that a file which states them
// complete, or leads a line to one of their things, must have.
var surveyable = map[string]bool{"/flues": true, "/stoves": true, "/exhausts": true, "/fans": true, "/storedGoods": true, "/fixedVents": true, "/lockers/*/contents": true,
	"/outdoorOutlets": true, "/outdoorOutlets/*": true, // to which lines lead
	"/flues/*": true} // which tests cover

// readTemplates are the templates that checks declare to read, and those that a file
// must have.
var readTemplates = sync.OnceValue(func() []string {
	all := []string{"/format", "/outside/surveyed/complete", "/surveyedBy/complete", "/spaces/*/surveyed/complete", "/lockers/*/surveyed/complete",
		"/lines/*/from", "/lines/*/to", "/tapeMeasures/*/from", "/tapeMeasures/*/to", "/tapeMeasures/*/is"}
	for _, c := range allChecks().Checks {
		all = append(all, c.Reads...)
	}
	slices.Sort(all)
	return slices.Compact(all)
})

// restingOn lists the checks of which an answer rests on a pointer.
func (s *scene) restingOn(pointer string) []string {
	var ids []string
	for _, f := range s.found {
		if !slices.Contains(ids, f.Check) && rests(f, pointer) {
			ids = append(ids, f.Check)
		}
	}
	return ids
}

// descriptorOf gives the descriptor of the check that a finding answers.
func descriptorOf(f report.Finding) check.Descriptor {
	all := allChecks().Checks
	return all[slices.IndexFunc(all, func(c check.Check) bool { return c.ID == f.Check })].Descriptor
}

// inputsOf lists the pointers that a finding rests on, each once.
func inputsOf(f report.Finding) []string {
	var all []string
	for _, p := range f.Parts {
		for _, in := range p.Inputs {
			all = append(all, in.Pointer)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func surveysOf(f report.Finding) []string {
	var all []string
	for _, p := range f.Parts {
		all = append(all, p.Surveys...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func limitsOf(f report.Finding) []string {
	var all []string
	for _, p := range f.Parts {
		all = append(all, p.Limits...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// forEach runs f on every item, as many at a time as there are processors.
func forEach[T any](items []T, f func(T)) {
	var next atomic.Int64
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Go(func() {
			for i := next.Add(1) - 1; int(i) < len(items); i = next.Add(1) - 1 {
				f(items[i])
			}
		})
	}
	workers.Wait()
}

// pick takes about one in n of the texts, always the same ones.
func pick(text string, n uint32) bool {
	h := fnv.New32a()
	h.Write([]byte(text))
	return h.Sum32()%n == 0
}

// memberPointers lists the pointers of every member of every object of a file.
func memberPointers(n *source.Node) []string {
	var all []string
	for _, child := range n.Children {
		if n.Kind == source.Object {
			all = append(all, child.Pointer())
		}
		all = append(all, memberPointers(child)...)
	}
	return all
}

// without is the edits that take a value out of a file, and with it the evidence
// for it, which can't stand alone.
func without(root *source.Node, pointer string) []source.Edit {
	tokens := source.Split(pointer)
	last := len(tokens) - 1
	at := ""
	for _, token := range tokens[:last] {
		at = source.Join(at, token)
	}
	evidence := source.Join(source.Join(at, "evidence"), tokens[last])
	edits := []source.Edit{{Pointer: pointer, Delete: true}}
	if root.At(evidence) != nil {
		edits = append([]source.Edit{{Pointer: evidence, Delete: true}}, edits...)
	}
	return edits
}

// rests tells whether a finding rests on what stands at a pointer: on the value, on
// something in it, on a survey there, or on a list that it is an entry of.
func rests(f report.Finding, pointer string) bool {
	for _, in := range inputsOf(f) {
		entry, isIn := strings.CutPrefix(pointer, in+"/")
		if in == pointer || strings.HasPrefix(in, pointer+"/") || isIn && !strings.Contains(entry, "/") {
			return true
		}
	}
	return slices.ContainsFunc(surveysOf(f), func(survey string) bool {
		return strings.HasPrefix(survey, pointer+"/") || strings.HasPrefix(survey, pointer+"#")
	})
}

// isInstead tells whether a value takes another's place where it is stated, so that
// without it the answer rests on that other.
func isInstead(d check.Descriptor, pointer string) bool {
	return slices.ContainsFunc(d.Instead, func(template string) bool {
		at := layout.Template(pointer)
		return at == template || strings.HasPrefix(template, at+"/")
	})
}
