package vent_test

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"hash/fnv"
	"math"
	"math/big"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	diffs "github.com/google/go-cmp/cmp"

	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// rewriter writes a file anew with some of it changed. What it has no function for
// stays as it is.
type rewriter struct {
	text  func(n *source.Node) string   // what a text becomes; "" keeps it
	point func(n *source.Node) []string // the three coordinates of a point
	key   func(n *source.Node) string   // the name of a member
	order func([]*source.Node) []*source.Node
}

func (r rewriter) file(t testing.TB, root *source.Node) *layout.Layout {
	t.Helper()
	text := r.write(root)
	if text == (rewriter{}).write(root) {
		t.Fatal("nothing was rewritten")
	}
	l, faults := layout.Load(source.NewFile(root.File().Name, []byte(text)))
	if faults != nil {
		t.Fatal(faults)
	}
	return l
}

func (r rewriter) write(n *source.Node) string {
	switch {
	case n.Kind == source.String && r.text != nil && r.text(n) != "":
		return quoted(r.text(n))
	case n.Kind == source.Array && r.point != nil && isPoint(n):
		var coordinates []string
		for _, c := range r.point(n) {
			coordinates = append(coordinates, quoted(c))
		}
		return "[" + strings.Join(coordinates, ", ") + "]"
	case n.Kind != source.Object && n.Kind != source.Array:
		return n.Raw()
	}
	children := n.Children
	if n.Kind == source.Object && r.order != nil {
		children = r.order(slices.Clone(children))
	}
	var parts []string
	for _, child := range children {
		part := r.write(child)
		if n.Kind == source.Object {
			name := child.Key
			if r.key != nil {
				name = r.key(child)
			}
			part = quoted(name) + ": " + part
		}
		parts = append(parts, part)
	}
	if n.Kind == source.Object {
		return "{" + strings.Join(parts, ",\n") + "}"
	}
	return "[" + strings.Join(parts, ", ") + "]"
}

func quoted(text string) string {
	b, err := json.Marshal(text)
	if err != nil {
		panic(err)
	}
	return string(b)
}

// isPoint tells whether an array is a place in the dwelling.
func isPoint(n *source.Node) bool {
	if len(n.Children) != 3 {
		return false
	}
	for _, c := range n.Children {
		a, ok := amountOf(c.Text())
		if c.Kind != source.String || !ok || sizes[a.unit].kind != unit.KindLength {
			return false
		}
	}
	return true
}

func coordinates(n *source.Node) (out [3]amount) {
	for i, c := range n.Children {
		out[i], _ = amountOf(c.Text())
	}
	return out
}

// same fails where a rewritten layout is answered otherwise: another outcome, another
// reason, or another figure of a part. A subject is looked for under its new name.
func same(t *testing.T, s *scene, l *layout.Layout, how string, renamed func(pointer string) string) {
	t.Helper()
	after, err := ask(l, s.codes)
	if err != nil {
		t.Fatal(err)
	}
	if len(after) != len(s.found) {
		t.Errorf("%s, %s: %d answers, %d before", s.name, how, len(after), len(s.found))
	}
	for pair, before := range s.found {
		f := after[pairOf(report.Finding{Check: before.Check, Subject: renamed(before.Subject)})]
		if f.Outcome != before.Outcome || f.Reason != before.Reason {
			t.Errorf("%s, %s: %s is %s %s, was %s %s", s.name, how, pair, f.Outcome, f.Reason, before.Outcome, before.Reason)
			continue
		}
		if diff := diffs.Diff(figuresOf(before), figuresOf(f)); diff != "" {
			t.Errorf("%s, %s: the parts of %s differ:\n%s", s.name, how, pair, diff)
		}
	}
}

// figuresOf lists what the parts of a finding found and needed, sorted and to nine
// digits, without the names of things.
func figuresOf(f report.Finding) []string {
	var all []string
	for _, p := range f.Parts {
		text := fmt.Sprintf("%s %s", p.Outcome, p.Reason)
		if p.Found != nil && p.Found.SI != nil {
			text += fmt.Sprintf(" %.8e of %.8e", *p.Found.SI+0, *p.Needed.SI+0)
		}
		all = append(all, text)
	}
	slices.Sort(all)
	return all
}

func asBefore(pointer string) string { return pointer }

// TestMirrored: left and right changed over, everything else as it was.
func TestMirrored(t *testing.T) {
	over := map[string]string{"left": "right", "right": "left"}
	mirror := rewriter{
		text: func(n *source.Node) string { return over[n.Text()] },
		point: func(n *source.Node) []string {
			own := coordinates(n)
			y := own[1]
			for one, other := range map[string]string{"from": "to", "to": "from"} {
				if n.Key == one && n.Parent.Member(other) != nil {
					y = coordinates(n.Parent.Member(other))[1]
				}
			}
			return []string{own[0].String(), y.negated().String(), own[2].String()}
		},
	}
	for _, s := range scenes(t) {
		same(t, s, mirror.file(t, s.layout.Root()), "mirrored", asBefore)
	}
}

// TestMoved: the corner from which everything is measured is another one. The shift
// is exact in every unit of length: 300 in, 25 ft, 7.62 m.
func TestMoved(t *testing.T) {
	for _, by := range [][3]string{{"7.62", "0", "0"}, {"0", "-7.62", "0"}, {"0", "0", "7.62"}, {"-15.24", "7.62", "-7.62"}} {
		shift := [3]*big.Rat{rat(by[0]), rat(by[1]), rat(by[2])}
		axes := map[string]int{"lowestPoint": 2, "waterline": 2, "frontAxle": 0, "rearAxle": 0, "rearBumper": 0}
		move := rewriter{
			text: func(n *source.Node) string {
				axis, isCoordinate := axes[n.Key]
				a, ok := amountOf(n.Text())
				if !isCoordinate || !ok {
					return ""
				}
				return a.moved(shift[axis]).String()
			},
			point: func(n *source.Node) []string {
				var out []string
				for i, a := range coordinates(n) {
					out = append(out, a.moved(shift[i]).String())
				}
				return out
			},
		}
		for _, s := range scenes(t) {
			same(t, s, move.file(t, s.layout.Root()), fmt.Sprint("moved by ", by), asBefore)
		}
	}
}

// newName is another name for a thing, in another order among its like.
func newName(section, id string) string {
	h := fnv.New64a()
	fmt.Fprint(h, section, " ", id)
	return fmt.Sprintf("n%x", h.Sum64()%1e9)
}

// listOf is the list of which the names are those of a list: seals and doorways go by
// the names of spaces.
func listOf(section string) string {
	if section == "sealedFrom" || section == "openTo" {
		return "spaces"
	}
	return section
}

func renamedPointer(pointer string) string {
	tokens := source.Split(pointer)
	out, at := "", ""
	for i, token := range tokens {
		at = source.Join(at, token)
		if i > 0 && strings.HasSuffix(layout.Template(at), "/*") && tokens[i-1] != "evidence" {
			token = newName(listOf(tokens[i-1]), token)
		}
		out = source.Join(out, token)
	}
	return out
}

// TestRenamed: every thing has another name, and so has every reference to it.
func TestRenamed(t *testing.T) {
	for _, s := range scenes(t) {
		rename := rewriter{
			key: func(n *source.Node) string {
				tokens := source.Split(renamedPointer(n.Pointer()))
				return tokens[len(tokens)-1]
			},
			text: func(n *source.Node) string {
				if s.layout.Find(layout.Ref(n.Text())) == nil {
					return ""
				}
				return strings.TrimPrefix(renamedPointer("/"+n.Text()), "/")
			},
		}
		same(t, s, rename.file(t, s.layout.Root()), "renamed", renamedPointer)
	}
}

// TestShuffled: the order of keys in a file changes nothing but lines and columns.
func TestShuffled(t *testing.T) {
	for seed := range uint64(3) {
		random := rand.New(rand.NewPCG(seed, 1))
		shuffle := rewriter{order: func(children []*source.Node) []*source.Node {
			random.Shuffle(len(children), func(i, j int) { children[i], children[j] = children[j], children[i] })
			return children
		}}
		for _, s := range scenes(t) {
			l := shuffle.file(t, s.layout.Root())
			before, after := whole(t, s, s.layout, 1), whole(t, s, l, 1)
			if placeless(t, before) == placeless(t, after) {
				continue
			}
			t.Errorf("%s, shuffled: findings or figures differ:\n%s", s.name, changedLines(diffs.Diff(before, after, sameAnswer)))
		}
	}
}

var linesAndColumns = regexp.MustCompile(`"line":\d+,"column":\d+,"endLine":\d+,"endColumn":\d+`)

// placeless is a result in bytes, but for its lines and columns.
func placeless(t testing.TB, r check.Result) string {
	t.Helper()
	b, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	return linesAndColumns.ReplaceAllString(string(b), "")
}

// TestRespelled: every quantity in another spelling of exactly the same, in the
// other system of units where there is an exact one.
func TestRespelled(t *testing.T) {
	metric := map[string]bool{"mm": true, "cm": true, "m": true, "mm2": true, "cm2": true, "m2": true, "g": true, "kg": true, "Pa": true, "hPa": true, "kPa": true, "mbar": true, "bar": true,
		"W": true, "kW": true, "g/h": true, "kg/h": true, "N": true, "kN": true}
	for name, prefers := range map[string]func(twin string) int{
		"metric":    func(twin string) int { return ranked(metric[unitIn(twin)]) },
		"US":        func(twin string) int { return ranked(!metric[unitIn(twin)]) },
		"the first": func(string) int { return 0 },
		"the last":  func(string) int { return -1 },
	} {
		respelt := 0
		other := func(text string) string {
			all := twins(text)
			if len(all) == 0 {
				return ""
			}
			respelt++
			if name == "the last" {
				return all[len(all)-1]
			}
			return slices.MinFunc(all, func(a, b string) int { return cmp.Compare(prefers(a), prefers(b)) })
		}
		respell := rewriter{
			text: func(n *source.Node) string { return other(n.Text()) },
			point: func(n *source.Node) []string {
				var out []string
				for _, c := range n.Children {
					out = append(out, cmp.Or(other(c.Text()), c.Text()))
				}
				return out
			},
		}
		for _, s := range scenes(t) {
			same(t, s, respell.file(t, s.layout.Root()), "respelled, "+name, asBefore)
		}
		if respelt < 2000 {
			t.Errorf("%s: only %d quantities were respelled", name, respelt)
		}
	}
}

func unitIn(text string) string {
	a, _ := amountOf(text)
	return a.unit
}

func ranked(first bool) int {
	if first {
		return 0
	}
	return 1
}

// whole judges a layout with everything kept, by so many workers.
func whole(t testing.TB, s *scene, l *layout.Layout, workers int) check.Result {
	t.Helper()
	r, err := check.Run(context.Background(), allChecks().WithoutDetail(), l, s.codes, check.Options{On: checktest.Day, Workers: workers, Working: true})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestAnyNumberOfWorkers gives the same bytes.
func TestAnyNumberOfWorkers(t *testing.T) {
	for _, s := range scenes(t) {
		want, err := json.Marshal(whole(t, s, s.layout, 1))
		if err != nil {
			t.Fatal(err)
		}
		for _, workers := range []int{2, 16} {
			got, err := json.Marshal(whole(t, s, s.layout, workers))
			if err != nil || string(got) != string(want) {
				t.Errorf("%s: %d workers give other bytes than one, %v", s.name, workers, err)
			}
		}
	}
}

// TestEveryFigureIsANumber: no report carries a figure that is none.
func TestEveryFigureIsANumber(t *testing.T) {
	finite := func(where string, a *report.Amount) {
		if a == nil || a.SI == nil {
			return
		}
		for _, v := range []*float64{a.SI, a.Low, a.High} {
			if v != nil && (math.IsNaN(*v) || math.IsInf(*v, 0)) {
				t.Errorf("%s: %v", where, *v)
			}
		}
	}
	for _, a := range actedCases(t) {
		for _, f := range a.findings {
			for _, p := range f.Parts {
				finite(a.name, p.Found)
				finite(a.name, p.Needed)
				finite(a.name, p.Short)
				for _, line := range p.Working {
					finite(a.name, line.Value)
				}
			}
		}
		for _, f := range a.figures {
			finite(a.name, f.Value)
		}
	}
}
