package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"sync/atomic"
	"time"
)

// stage is a run of some of the tests of one package.
type stage struct {
	pkg       string
	run, skip string // expressions for the names of tests; empty: all, none
}

// sweeps are the tests of vent that ask everything of everything: a minute and a half,
// where all the others take fifteen seconds.
const sweeps = "^(TestWorkingCanBeReckonedAgain|TestDescriptorsTellTheTruth|TestDangersStandWithoutACode|TestTheWorstEndDecides|TestASilentCode|TestABrokenSurvey" +
	"|TestWhatIsTakenAway|TestWhatIsTakenAwayFromExamples|TestWhatNobodyReads|TestNothingIsGainedBySilence|TestHazardsRaiseTheSameHoweverWritten|TestHazardsHaveNoIdleEdit" +
	"|TestShuffled|TestRespelled)$"

// tables are those that take longer than the rest of the others.
const tables = "^(TestExamples|TestHazardsRaiseExactlyWhatTheyMust)$"

// stages are the tests that have to notice a mutant, the likeliest and quickest first.
func stages(root, path string) [4][]stage {
	quick, slow := stage{pkg: "./vent", skip: sweeps + "|" + tables}, stage{pkg: "./vent", run: sweeps}
	table := stage{pkg: "./vent", run: tables}
	folder := filepath.ToSlash(filepath.Dir(path))
	switch folder {
	case "vent":
		return [4][]stage{examples(root, path), {quick}, {table}, {slow}}
	case "gas":
		return [4][]stage{examples(root, path), {{pkg: "./gas"}}, {quick, table}, {slow}}
	}
	return [4][]stage{{{pkg: "./" + folder}}, {{pkg: "./gas"}}, {quick, table}, {slow}}
}

// examples are those of the check that a file holds.
func examples(root, path string) []stage {
	folder, name := filepath.Split(path)
	paths, err := filepath.Glob(filepath.Join(root, folder, "testdata", "*.txtar"))
	if err != nil {
		panic(err)
	}
	for _, each := range paths {
		id := strings.TrimSuffix(filepath.Base(each), ".txtar")
		if strings.NewReplacer(".", "_", "-", "_").Replace(id)+".go" == name {
			return []stage{{pkg: "./" + filepath.Clean(folder), run: "^TestExamples$/^" + regexp.QuoteMeta(id) + "$"}}
		}
	}
	return nil
}

// inProgram runs a stage in the programs that hold the mutants; with -1 none is on.
func inProgram(root, folder string, id int, s stage, timeout time.Duration) verdict {
	ctx, cancel := context.WithTimeout(context.Background(), timeout)
	defer cancel()
	arguments := []string{"-test.failfast", "-test.short", "-test.run", s.run, "-test.skip", s.skip}
	c := exec.CommandContext(ctx, filepath.Join(folder, inTests[s.pkg]), arguments...)
	c.Dir = filepath.Join(root, s.pkg)
	c.Env = append(os.Environ(), fmt.Sprintf("MUTANT=%d", id), "GOMAXPROCS=1")
	err := c.Run()
	var exit *exec.ExitError
	switch {
	case err == nil:
		return alive
	case ctx.Err() != nil:
		return timedOut
	case !errors.As(err, &exit):
		panic(err) // the program can't be run at all
	}
	return killed
}

// campaign is the trying of all mutants in the programs that hold them.
type campaign struct {
	root, folder string
	all          []mutant
	names        []string
	fitted       fitted
	ledger       *ledger
	known        map[string]string // explained: not swept for
	o            options
}

// tryTogether tries every mutant, stage by stage: those that are left go to the next.
func tryTogether(root string, all []mutant, known map[string]string, o options) (results []result, err error) {
	folder, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	c := &campaign{root: root, folder: folder, all: all, names: names(all), known: known, o: o}
	if c.ledger, err = openLedger(o.ledger); err != nil {
		return nil, err
	}
	p, err := listed(root, all)
	if err != nil {
		return nil, err
	}
	c.fitted = p.fit(all)
	tell("%d mutants in one program, %d alone", count(c.fitted.beside), count(c.fitted.alone))
	if err := built(root, folder, all, c.fitted.beside); err != nil {
		return nil, err
	}
	for stage := range 4 {
		if err := c.sound(stage); err != nil {
			return nil, err
		}
		if err := c.round(stage); err != nil {
			return nil, err
		}
	}
	for i, m := range all {
		e, _ := c.ledger.entry(c.names[i])
		results = append(results, result{m, e.verdict})
	}
	return results, nil
}

// sound holds that the tests of a stage pass while no mutant is on.
func (c *campaign) sound(number int) error {
	for _, path := range []string{"schema/check/", "gas/", "vent/"} {
		for _, s := range stages(c.root, path)[number] {
			if v := inProgram(c.root, c.folder, -1, s, 10*c.o.timeout); v != alive {
				return fmt.Errorf("the tests of %s with no mutant on: %s", s.pkg, v)
			}
		}
		if number == 3 {
			break // the same for all
		}
	}
	return nil
}

// round takes the mutants that are left through a stage.
func (c *campaign) round(stage int) error {
	var left []int
	for i := range c.all {
		if e, known := c.ledger.entry(c.names[i]); !known || e.verdict == alive && e.stage < stage {
			left = append(left, i)
		}
	}
	tell("stage %d: %d mutants", stage, len(left))
	var next, killed atomic.Int64
	var failed atomic.Pointer[error]
	var workers sync.WaitGroup
	for range max(1, c.o.workers) {
		workers.Go(func() {
			for n := next.Add(1) - 1; int(n) < len(left) && failed.Load() == nil; n = next.Add(1) - 1 {
				v := c.verdict(left[n], stage)
				if v != alive {
					killed.Add(1)
				}
				if err := c.ledger.note(c.names[left[n]], entry{v, stage}); err != nil {
					failed.Store(&err)
				}
				if n > 0 && n%100 == 0 {
					tell("stage %d: %d of %d, %d noticed", stage, n, len(left), killed.Load())
				}
			}
		})
	}
	workers.Wait()
	if err := failed.Load(); err != nil {
		return *err
	}
	return nil
}

// verdict is what a stage says of a mutant. Those that can't stand beside others have a
// program of their own made and all tests run on it in the last stage but one.
func (c *campaign) verdict(i, stage int) verdict {
	m := c.all[i]
	switch {
	case c.fitted.alone[i]:
		if stage != 2 {
			return alive
		}
		return try(c.root, m, c.o.timeout)
	case !c.fitted.beside[i]:
		return broken
	case stage == 3 && c.known[m.key()] != "":
		return alive
	}
	for _, s := range stages(c.root, m.path)[stage] {
		if v := inProgram(c.root, c.folder, i, s, c.o.timeout); v != alive {
			return v
		}
	}
	return alive
}

func count(of map[int]bool) (n int) {
	for _, is := range of {
		if is {
			n++
		}
	}
	return n
}

func tell(format string, values ...any) {
	fmt.Fprintf(os.Stderr, time.Now().Format("15:04:05 ")+format+"\n", values...)
}
