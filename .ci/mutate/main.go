// Mutate changes the checks and the engine in small ways that would make them wrong,
// one at a time, and runs the tests: a change that no test notices is a hole in them.
//
//	go run ./.ci/mutate -ledger ../tried   # all of them, in about an hour; goes on where it was stopped
//	go run ./.ci/mutate -sample 40         # a sample, always the same one
//	go run ./.ci/mutate -only vent/alarms  # those of files whose path holds the text
//	go run ./.ci/mutate -list              # tell them, run nothing
//
// No file of the project is touched: the mutants are given to the go command as an
// overlay. All of them stand beside each other in one program (beside.go), which a
// variable tells which to be; the few that can't, and samples of up to ten, are built one
// at a time. The tests that are likeliest to notice run first (staged.go). The exit status
// is 1 when a mutant survives that equivalent.txt does not explain.
package main

import (
	"bufio"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"time"
)

func main() {
	var o options
	flag.IntVar(&o.sample, "sample", 0, "run so many of the mutants instead of all")
	flag.Uint64Var(&o.seed, "seed", 1, "which sample")
	flag.StringVar(&o.only, "only", "", "only in files whose path holds this text")
	flag.BoolVar(&o.list, "list", false, "list the mutants and run nothing")
	flag.IntVar(&o.workers, "workers", 2, "how many to run at a time")
	flag.DurationVar(&o.timeout, "timeout", 10*time.Minute, "for all the tests; a part of them is given less")
	flag.StringVar(&o.ledger, "ledger", "", "a file, outside the repository, of what has been tried: a run that was stopped goes on from it")
	flag.BoolVar(&o.apart, "apart", false, "build a program for each mutant, as is done for up to ten of them, instead of one for all")
	flag.Parse()
	survived, err := run(o)
	if err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(2)
	}
	if survived > 0 {
		os.Exit(1)
	}
}

type options struct {
	sample, workers int
	seed            uint64
	only            string
	list            bool
	timeout         time.Duration
	ledger          string
	apart           bool
}

// run generates the mutants, tries them, and tells of each survivor. It gives the
// number of those that nothing explains.
func run(o options) (survived int, err error) {
	root, err := moduleRoot()
	if err != nil {
		return 0, err
	}
	all, err := mutants(root)
	if err != nil {
		return 0, err
	}
	equivalent, err := explained(filepath.Join(root, ".ci", "mutate", "equivalent.txt"))
	if err != nil {
		return 0, err
	}
	all = chosen(all, o)
	if o.list {
		for _, m := range all {
			fmt.Println(m)
		}
		return 0, nil
	}
	results, err := tried(root, all, equivalent, o)
	if err != nil {
		return 0, err
	}
	counts := map[verdict]int{}
	for _, r := range results {
		counts[r.verdict]++
		why, known := equivalent[r.mutant.key()]
		switch {
		case r.verdict != alive:
		case known:
			counts["explained"]++
			fmt.Printf("explained %s\n          %s\n", r.mutant, why)
		default:
			survived++
			fmt.Printf("SURVIVED  %s\n          key: %s\n", r.mutant, r.mutant.key())
		}
	}
	fmt.Printf("%d mutants: %d killed, %d timed out, %d do not build, %d survived and are explained, %d SURVIVED\n",
		len(all), counts[killed], counts[timedOut], counts[broken], counts["explained"], survived)
	return survived, nil
}

// tried tries them in one program, or few of them each in its own.
func tried(root string, all []mutant, known map[string]string, o options) ([]result, error) {
	if !o.apart && len(all) > 10 {
		return tryTogether(root, all, known, o)
	}
	var results []result
	for r := range tryAll(root, all, o) {
		results = append(results, r)
	}
	return results, nil
}

// chosen keeps the mutants that were asked for; a sample is the same for one seed.
func chosen(all []mutant, o options) []mutant {
	var kept []mutant
	for _, m := range all {
		if strings.Contains(m.path, o.only) {
			kept = append(kept, m)
		}
	}
	if o.sample > 0 && o.sample < len(kept) {
		random := rand.New(rand.NewPCG(o.seed, 0))
		random.Shuffle(len(kept), func(i, j int) { kept[i], kept[j] = kept[j], kept[i] })
		kept = kept[:o.sample]
	}
	return kept
}

// explained reads the mutants that are known to change nothing: a key on one line, and
// the reason on the next, indented.
func explained(path string) (map[string]string, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	reasons := map[string]string{}
	key := ""
	lines := bufio.NewScanner(file)
	for lines.Scan() {
		line := lines.Text()
		switch {
		case strings.TrimSpace(line) == "" || strings.HasPrefix(line, "#"):
		case strings.HasPrefix(line, " "):
			reasons[key] = strings.TrimSpace(reasons[key] + " " + strings.TrimSpace(line))
		default:
			key = line
			reasons[key] = ""
		}
	}
	for key, why := range reasons {
		if why == "" {
			return nil, fmt.Errorf("%s: no reason is given for %q", path, key)
		}
	}
	return reasons, lines.Err()
}

func moduleRoot() (string, error) {
	at, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for root := at; ; root = filepath.Dir(root) {
		if _, err := os.Stat(filepath.Join(root, "go.mod")); err == nil {
			return root, nil
		}
		if root == filepath.Dir(root) {
			return "", fmt.Errorf("no go.mod stands in %s or above it", at)
		}
	}
}
