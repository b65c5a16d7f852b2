package main

import (
	"bufio"
	"fmt"
	"os"
	"strconv"
	"strings"
	"sync"
)

// ledger is a file of what has been tried, so that a run goes on where one was stopped:
// on each line a verdict, the last stage that was gone through, and the mutant.
type ledger struct {
	mu   sync.Mutex
	file *os.File
	of   map[string]entry
}

type entry struct {
	verdict verdict
	stage   int
}

// openLedger reads what stands in the file, or begins one. Without a path it keeps nothing.
func openLedger(path string) (*ledger, error) {
	l := &ledger{of: map[string]entry{}}
	if path == "" {
		return l, nil
	}
	file, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_APPEND, 0o600)
	if err != nil {
		return nil, err
	}
	l.file = file
	lines := bufio.NewScanner(file)
	for lines.Scan() {
		parts := strings.SplitN(lines.Text(), "\t", 3)
		if len(parts) != 3 {
			continue // the last line of a run that was stopped
		}
		if stage, err := strconv.Atoi(parts[1]); err == nil {
			l.of[parts[2]] = entry{verdict(parts[0]), stage}
		}
	}
	return l, lines.Err()
}

func (l *ledger) note(name string, e entry) error {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.of[name] = e
	if l.file == nil {
		return nil
	}
	_, err := fmt.Fprintf(l.file, "%s\t%d\t%s\n", e.verdict, e.stage, name)
	return err
}

func (l *ledger) entry(name string) (entry, bool) {
	l.mu.Lock()
	defer l.mu.Unlock()
	e, known := l.of[name]
	return e, known
}

// names gives each mutant its key, and a number where several have the same.
func names(all []mutant) []string {
	count := map[string]int{}
	var list []string
	for _, m := range all {
		key := m.key()
		if count[key]++; count[key] > 1 {
			key = fmt.Sprintf("%s (%d)", key, count[key])
		}
		list = append(list, key)
	}
	return list
}
