package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
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
	"|TestShuffled|TestRespelled|TestExamples|TestWordsForPeople|TestWordsDoNotContradictTheOutcome|TestMendsMend|TestEveryBadExampleOffersAWayOut|TestEveryFigureIsANumber)$"

// tables are those that take longer than the rest of the others, and what the demos tell.
const tables = "^(TestHazardsRaiseExactlyWhatTheyMust)$"

// working is what the figures of the demos come to, and how, and other quick tables.
const working = "^(TestWorkingOfTheDemos|TestParts|TestTheLimitIsAskedFirst|TestDrawn|TestTheFirstOfASort|TestWhatIsLeftOfACrowd)$"

// reckoned is the working of the demos, reckoned again.
const reckoned = "^TestWorkingCanBeReckonedAgain$/^demos$"

// byCheck are sweeps that can be run for some checks.
const byCheck = "^(TestWordsForPeople|TestMendsMend|TestDescriptorsTellTheTruth|TestWorkingCanBeReckonedAgain)$"

// lastStage is that of the sweeps.
const lastStage = 5

// stages are the tests that have to notice a mutant, the likeliest and quickest first: its
// check's own examples, those of all checks that reach it, and then tests of everything.
func stages(path string, reaching []example) [lastStage + 1][]stage {
	quick, slow := stage{pkg: "./vent", skip: strings.Join([]string{sweeps, tables, working}, "|")}, stage{pkg: "./vent", run: sweeps}
	again := stage{pkg: "./vent", run: reckoned}
	table := []stage{{pkg: "./vent", run: tables}}
	folder := filepath.ToSlash(filepath.Dir(path))
	others := ofExamples("./gas", reaching, path, false)
	others = append(others, ofExamples("./vent", reaching, path, false)...)
	told := []stage{{pkg: "./vent", run: working}}
	if len(reaching) > 0 {
		told = append(told, stage{pkg: "./vent", run: byCheck + "/^(" + idsOf(some(reaching)) + ")$"})
	}
	switch folder {
	case "vent", "gas":
		all := [lastStage + 1][]stage{ofExamples("./"+folder, reaching, path, true), others, told, {again, quick}, table, {slow}}
		if folder == "gas" {
			all[3], all[lastStage] = []stage{{pkg: "./gas", skip: "^TestExamples$"}, again, quick}, []stage{{pkg: "./gas", run: "^TestExamples$"}, slow}
		}
		return all
	}
	return [lastStage + 1][]stage{{{pkg: "./" + folder}}, others, told, {{pkg: "./gas", skip: "^TestExamples$"}, again, quick}, table, {{pkg: "./gas", run: "^TestExamples$"}, slow}}
}

// example is the examples of one check.
type example struct{ pkg, id string }

// isOf tells whether they stand beside a file that holds the check.
func (e example) isOf(path string) bool {
	return e.pkg+"/"+strings.NewReplacer(".", "_", "-", "_").Replace(e.id)+".go" == "./"+path
}

// ofExamples is a run of the examples of a package that reach a mutant: those of the check
// whose file it is in, or the others.
func ofExamples(pkg string, reaching []example, path string, own bool) []stage {
	var some []example
	for _, e := range reaching {
		if e.pkg == pkg && e.isOf(path) == own {
			some = append(some, e)
		}
	}
	if len(some) == 0 {
		return nil
	}
	return []stage{{pkg: pkg, run: "^TestExamples$/^(" + idsOf(some) + ")$"}}
}

// some are a few out of many, spread over them: what all checks go through need not be
// tried in each.
func some(all []example) []example {
	const few = 6
	if len(all) <= few {
		return all
	}
	var kept []example
	for i := range few {
		kept = append(kept, all[i*len(all)/few])
	}
	return kept
}

// idsOf is an expression for the ids of checks.
func idsOf(some []example) string {
	var ids []string
	for _, e := range some {
		ids = append(ids, regexp.QuoteMeta(e.id))
	}
	return strings.Join(ids, "|")
}

// reachKept is reach, kept beside the ledger for when the run goes on. It only tells which
// tests are worth while: the last stage runs all.
func (c *campaign) reachKept() ([][]example, error) {
	if c.o.ledger == "" {
		return c.reach()
	}
	path := c.o.ledger + ".reach"
	data, err := os.ReadFile(path)
	if errors.Is(err, os.ErrNotExist) {
		reaching, err := c.reach()
		if err != nil {
			return nil, err
		}
		text := ""
		for i, name := range c.names {
			for _, e := range reaching[i] {
				text += e.pkg + "\t" + e.id + "\t" + name + "\n"
			}
		}
		return reaching, os.WriteFile(path, []byte(text), 0o600)
	}
	byName := map[string][]example{}
	for line := range strings.Lines(string(data)) {
		if parts := strings.SplitN(strings.TrimSuffix(line, "\n"), "\t", 3); len(parts) == 3 {
			byName[parts[2]] = append(byName[parts[2]], example{parts[0], parts[1]})
		}
	}
	reaching := make([][]example, len(c.all))
	for i, name := range c.names {
		reaching[i] = byName[name]
	}
	return reaching, err
}

// reach runs the examples of each check without a mutant, and lists for each mutant
// those that come to it. Clauses that are put together before any test runs are reached by
// all: there only the check's own are counted.
func (c *campaign) reach() ([][]example, error) {
	reaching := make([][]example, len(c.all))
	for _, pkg := range []string{"./gas", "./vent"} {
		before, err := c.reachedBy(pkg, "^$")
		if err != nil {
			return nil, err
		}
		paths, err := filepath.Glob(filepath.Join(c.root, pkg, "testdata", "*.txtar"))
		if err != nil {
			return nil, err
		}
		for _, each := range paths {
			e := example{pkg, strings.TrimSuffix(filepath.Base(each), ".txtar")}
			ids, err := c.reachedBy(pkg, "^TestExamples$/^"+regexp.QuoteMeta(e.id)+"$")
			if err != nil {
				return nil, err
			}
			for id := range ids {
				if !before[id] || e.isOf(c.all[id].path) {
					reaching[id] = append(reaching[id], e)
				}
			}
		}
	}
	return reaching, nil
}

// reachedBy lists the mutants that some tests come to.
func (c *campaign) reachedBy(pkg, run string) (map[int]bool, error) {
	at := filepath.Join(c.folder, "reached")
	command := exec.Command(filepath.Join(c.folder, inTests[pkg]), "-test.run", run)
	command.Dir, command.Env = filepath.Join(c.root, pkg), append(os.Environ(), "MUTANTS_REACHED="+at)
	if out, err := command.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("the tests %s of %s with no mutant on: %w\n%s", run, pkg, err, out)
	}
	text, err := os.ReadFile(at)
	if err != nil {
		return nil, err
	}
	ids := map[int]bool{}
	for _, line := range strings.Fields(string(text)) {
		id, err := strconv.Atoi(line)
		if err != nil {
			return nil, err
		}
		ids[id] = true
	}
	return ids, nil
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
	reaching     [][]example // by mutant
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
	if c.reaching, err = c.reachKept(); err != nil {
		return nil, err
	}
	for stage := range lastStage + 1 {
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
		for _, s := range stages(path, nil)[number] {
			if v := inProgram(c.root, c.folder, -1, s, 10*c.o.timeout); v != alive {
				return fmt.Errorf("the tests of %s with no mutant on: %s", s.pkg, v)
			}
		}
		if number == lastStage {
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
		if stage != lastStage {
			return alive
		}
		return try(c.root, m, c.o.timeout)
	case !c.fitted.beside[i]:
		return broken
	case stage > 2 && c.known[m.key()] != "":
		return alive
	}
	for _, s := range stages(m.path, c.reaching[i])[stage] {
		if v := inProgram(c.root, c.folder, i, s, c.patience(stage)); v != alive {
			return v
		}
	}
	return alive
}

// patience is how long a run of a stage may last: several times what it takes.
func (c *campaign) patience(stage int) time.Duration {
	return c.o.timeout / []time.Duration{20, 10, 5, 3, 3, 1}[stage]
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
