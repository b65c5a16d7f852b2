package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"time"
)

// verdict is how a mutant ended.
type verdict string

const (
	killed   verdict = "killed"
	timedOut verdict = "timed out" // a mutant that hangs is noticed too
	broken   verdict = "does not build"
	alive    verdict = "alive"
)

type result struct {
	mutant  mutant
	verdict verdict
}

// tryAll runs the tests on every mutant, some at a time, and gives the results as they
// come.
func tryAll(root string, all []mutant, o options) <-chan result {
	jobs, results := make(chan mutant), make(chan result)
	var workers sync.WaitGroup
	for range max(1, o.workers) {
		workers.Go(func() {
			for m := range jobs {
				results <- result{m, try(root, m, o.timeout)}
			}
		})
	}
	go func() {
		for _, m := range all {
			jobs <- m
		}
		close(jobs)
		workers.Wait()
		close(results)
	}()
	return results
}

// testedBy lists the packages whose tests have to notice a mutant, nearest first.
func testedBy(path string) []string {
	switch {
	case strings.HasPrefix(path, "vent/"):
		return []string{"./vent"}
	case strings.HasPrefix(path, "gas/"):
		return []string{"./gas", "./vent"}
	}
	return []string{"./schema/check", "./gas", "./vent"}
}

// try runs the tests of one mutant until one fails.
func try(root string, m mutant, timeout time.Duration) verdict {
	folder, err := os.MkdirTemp("", "mutant")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(folder)
	changed := filepath.Join(folder, filepath.Base(m.path))
	overlay := filepath.Join(folder, "overlay.json")
	replace := map[string]map[string]string{"Replace": {filepath.Join(root, filepath.FromSlash(m.path)): changed}}
	text, err := json.Marshal(replace)
	if err == nil {
		err = errors.Join(os.WriteFile(changed, m.bytes(), 0o600), os.WriteFile(overlay, text, 0o600))
	}
	if err != nil {
		panic(err)
	}
	for _, pkg := range testedBy(m.path) {
		if v := test(root, overlay, pkg, timeout); v != alive {
			return v
		}
	}
	return alive
}

func test(root, overlay, pkg string, timeout time.Duration) verdict {
	var out bytes.Buffer
	c := exec.Command("go", "test", "-overlay", overlay, "-vet=off", "-short", "-failfast", "-timeout", timeout.String(), pkg)
	c.Dir, c.Stdout, c.Stderr = root, &out, &out
	err := c.Run()
	switch text := out.String(); {
	case err == nil:
		return alive
	case strings.Contains(text, "[build failed]") || strings.Contains(text, "[setup failed]"):
		return broken
	case strings.Contains(text, "panic: test timed out"):
		return timedOut
	}
	return killed
}
