package vent_test

import (
	"fmt"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// The theorem of SAFETY.md, proved of every check at once: a finding is within
// its limit only if every value that it read was stated, every limit was read in a
// book, and every list that it ranged over is stated complete. The files
// theorem_*_test.go change the demonstration layouts in every way that the
// descriptors of the checks allow, and ask again. Each failure names the check, the
// subject and the pointer; docs/architecture.md tells where to look.

// TestWhatIsTakenAway is the first part of the theorem. Each key that an answer of a
// good demo rests on is taken out, one after the other. The answer is within no more;
// where the key replaces another (a tape measure, the mass on a sleeve) it may be, and
// then it rests on the key no more. An answer that does not rest on the key is as it
// was.
func TestWhatIsTakenAway(t *testing.T) {
	for _, full := range [][]*scene{good(t)[:2], good(t)[2:]} {
		var slim []*scene
		for _, s := range full {
			slim = append(slim, s.rewritten(t, rewriter{order: onlyRead}))
		}
		root := slim[0].layout.Root()
		var keys []string
		for _, pointer := range memberPointers(root) {
			if slices.ContainsFunc(slim, func(s *scene) bool { return s.hasWithinOn(pointer) }) {
				keys = append(keys, pointer)
			}
		}
		var loaded, shaken atomic.Int64
		forEach(keys, func(pointer string) {
			l, loads := slim[0].changed(t, without(root, pointer)...)
			if !loads {
				return
			}
			loaded.Add(1)
			for _, s := range slim {
				ids := s.restingOn(pointer)
				if len(ids) > 0 {
					shaken.Add(int64(s.shake(t, l, pointer, ids...)))
				}
			}
		})
		if int(loaded.Load()) < len(keys)/2 || shaken.Load() < 500 {
			t.Errorf("%s: of %d files only %d load, and only %d answers were shaken", full[0].base, len(keys), loaded.Load(), shaken.Load())
		}
	}
}

// TestWhatNobodyReads is the converse: a key that no answer rests on changes none, so
// that no check looks at what it does not note. A sample of all keys of the demos is
// taken out, read or not, with their notes, papers and evidence.
func TestWhatNobodyReads(t *testing.T) {
	for _, base := range [][]*scene{good(t)[:2], good(t)[2:], faulty(t)} {
		root := base[0].layout.Root()
		keys := slices.DeleteFunc(memberPointers(root), func(pointer string) bool { return !pick(pointer, 20) })
		var loaded atomic.Int64
		forEach(keys, func(pointer string) {
			l, loads := base[0].changed(t, without(root, pointer)...)
			if !loads {
				return
			}
			loaded.Add(1)
			base[1].shake(t, l, pointer) // by the code that leaves nothing unasked
		})
		if int(loaded.Load()) < len(keys)/2 || len(keys) < 50 {
			t.Errorf("%s: of %d files only %d load", base[0].base, len(keys), loaded.Load())
		}
	}
}

// hasWithinOn tells whether an answer that is within took the value at a pointer.
func (s *scene) hasWithinOn(pointer string) bool {
	for _, f := range s.found {
		if f.Outcome == report.Within && slices.Contains(inputsOf(f), pointer) {
			return true
		}
	}
	return false
}

// shake asks about a layout without a key, and judges every answer by whether it
// rested on that. It gives the number that did.
func (s *scene) shake(t *testing.T, l *layout.Layout, pointer string, ids ...string) (shaken int) {
	after := s.of(t, l, ids...)
	for pair, before := range s.found {
		switch {
		case len(ids) > 0 && !slices.Contains(ids, before.Check):
		case rests(before, pointer):
			shaken++
			outlives(t, s, pair, pointer, before, after[pair])
		default:
			unmoved(t, s, pair, pointer, before, after[pair])
		}
	}
	return shaken
}

// TestWhatIsTakenAwayFromExamples does the same for what the examples reach beyond
// the demos: each key that an answer there rests on, and that no demo has.
func TestWhatIsTakenAwayFromExamples(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range good(t) {
		for _, f := range s.found {
			if f.Outcome == report.Within {
				for _, pointer := range inputsOf(f) {
					seen[f.Check+" "+layout.Template(pointer)] = true
				}
			}
		}
	}
	tried := 0
	for _, a := range actedCases(t) {
		s := &scene{name: a.name, base: a.example.Base, codes: a.codes, layout: a.layout}
		for _, f := range a.findings {
			for _, pointer := range inputsOf(f) {
				what := f.Check + " " + layout.Template(pointer)
				if seen[what] || f.Outcome != report.Within {
					continue
				}
				seen[what] = true
				l, loads := edited(t, s.base, slices.Concat(a.edits.Edits, without(a.layout.Root(), pointer))...)
				if loads {
					tried++
					outlives(t, s, pairOf(f), pointer, f, s.of(t, l, f.Check)[pairOf(f)])
				}
			}
		}
	}
	if tried < 5 {
		t.Errorf("only %d keys were tried", tried)
	}
}

// outlives fails when an answer that rested on a key is still within without it.
func outlives(t *testing.T, s *scene, pair, pointer string, before, after report.Finding) {
	switch {
	case before.Outcome != report.Within || after.Outcome != report.Within:
		return
	case isEntry(pointer) && !slices.Contains(inputsOf(before), pointer):
		return // one thing less to keep clear of is no loss: that nothing else is there, the surveys answer for
	}
	if (isInstead(descriptorOf(before), pointer) || needNotBeSaid[before.Check+" "+layout.Template(pointer)]) && !rests(after, pointer) {
		return
	}
	t.Errorf("%s: %s is still within, without %s that it rested on", s.name, pair, pointer)
}

// needNotBeSaid are the values that a check holds against others where they are
// stated, and that it does not ask for. Each is here for a reason, and an answer
// without it may not rest on it.
var needNotBeSaid = map[string]bool{
	// Where a changeover stands is held against its locker if it is drawn at all; the
	// other half of the question, which cylinders it joins, is asked in any case.
	"layout.consistent /changeovers/*/at": true,
}

// isEntry tells whether a pointer is that of a thing in a list.
func isEntry(pointer string) bool { return strings.HasSuffix(layout.Template(pointer), "/*") }

// sameAnswer compares findings but for the lines and columns of a file.
var sameAnswer = cmp.Options{
	cmp.Comparer(func(a, b report.Place) bool { return a.Pointer == b.Pointer }),
	cmp.FilterPath(func(p cmp.Path) bool { return p.String() == "Waiver" }, cmp.Ignore()),
}

// unmoved fails when an answer changed with a key that it did not rest on. A tape
// measure is read where one is found, so its absence is not noted.
func unmoved(t *testing.T, s *scene, pair, pointer string, before, after report.Finding) {
	switch {
	case after.Check == "" && (before.Subject == pointer || strings.HasPrefix(before.Subject, pointer+"/")):
		return // the subject itself was taken out
	case strings.Contains(pointer, "/evidence"):
		unproved(t, s, pair, pointer, before, after)
		return
	}
	if digest(before) == digest(after) {
		return
	}
	if diff := cmp.Diff(before, after, sameAnswer); diff != "" {
		t.Errorf("%s: %s changed with %s, on which it is not said to rest:\n%s", s.name, pair, pointer, changedLines(diff))
	}
}

// digest holds all of a finding that can differ, but for lines and columns.
func digest(f report.Finding) string {
	var b strings.Builder
	fmt.Fprint(&b, f.Check, f.Subject, f.Outcome, f.Reason, f.Place.Pointer)
	for _, p := range f.Parts {
		fmt.Fprint(&b, p.Outcome, p.Reason, p.About, p.Text, p.Inputs, p.Limits, p.Surveys, p.Place.Pointer)
		for _, a := range []*report.Amount{p.Found, p.Needed, p.Short} {
			if a != nil {
				b.WriteString(a.Text)
			}
		}
		for _, m := range p.Missing {
			fmt.Fprint(&b, m.What, m.Measure, m.Place.Pointer)
		}
		if p.Mend != nil {
			fmt.Fprint(&b, p.Mend.Text, p.Mend.Set)
		}
		if p.Source != nil {
			fmt.Fprint(&b, *p.Source)
		}
	}
	return b.String()
}

// unproved fails when evidence for a value, taken out, changed more than what the
// answer is said to rest on: whether a fitter has yet to prove it.
func unproved(t *testing.T, s *scene, pair, pointer string, before, after report.Finding) {
	proved := before.Outcome == report.Within && before.Reason == "" && after.Reason == report.ToProve
	if before.Outcome != after.Outcome || before.Reason != after.Reason && !proved {
		t.Errorf("%s: %s was %s %s and is %s %s without %s", s.name, pair, before.Outcome, before.Reason, after.Outcome, after.Reason, pointer)
	}
}

// changedLines keeps of a diff the lines that differ, the first few.
func changedLines(diff string) string {
	var kept []string
	for _, line := range strings.Split(diff, "\n") {
		if strings.HasPrefix(line, "-") || strings.HasPrefix(line, "+") {
			kept = append(kept, line)
		}
	}
	return strings.Join(kept[:min(8, len(kept))], "\n")
}

// TestNothingIsGainedBySilence is the other half for what is amiss: in the faulty
// demo no answer comes to be within by leaving out a value, unless that value takes
// another's place, or by leaving out evidence. (A whole thing left out is another
// matter: the surveys answer for that.)
func TestNothingIsGainedBySilence(t *testing.T) {
	var scenes []*scene
	for _, s := range faulty(t) {
		scenes = append(scenes, s.rewritten(t, rewriter{order: onlyRead}))
	}
	root := scenes[0].layout.Root()
	var keys []string
	for _, pointer := range memberPointers(root) {
		read := slices.ContainsFunc(scenes, func(s *scene) bool {
			for _, f := range s.found {
				if f.Outcome == report.NotMet && rests(f, pointer) {
					return true
				}
			}
			return false
		})
		if read && !isEntry(pointer) {
			keys = append(keys, pointer)
		}
	}
	var shaken atomic.Int64
	forEach(keys, func(pointer string) {
		l, loads := scenes[0].changed(t, without(root, pointer)...)
		if !loads {
			return
		}
		for _, s := range scenes {
			ids := s.restingOn(pointer)
			if len(ids) == 0 {
				continue
			}
			for pair, f := range s.of(t, l, ids...) {
				before := s.found[pair]
				if f.Outcome == report.Within && before.Outcome != report.Within && !isInstead(descriptorOf(f), pointer) {
					t.Errorf("%s: %s was %s and is within, without %s", s.name, pair, before.Outcome, pointer)
				}
				shaken.Add(1)
			}
		}
	})
	if shaken.Load() < 500 {
		t.Errorf("only %d answers were shaken", shaken.Load())
	}
}
