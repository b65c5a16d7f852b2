package main

import (
	"path/filepath"
	"testing"
)

// A few whole reports, to be read as a stranger would read them.
func TestGoldenReports(t *testing.T) {
	t.Chdir(filepath.Join(home(t), "testdata", "layouts"))
	tests := []struct {
		golden string
		status int
		args   []string
	}{
		{"sedge-60.txt", statusFindings, []string{"check", "sedge.json", "--width", "60"}},
		{"sedge-200.txt", statusFindings, []string{"check", "sedge.json", "--width", "200"}},
		{"willow-80.txt", statusNothing, []string{"check", "willow.json"}},
		{"broken-80.txt", statusUnusable, []string{"check", "broken.json"}},
		{"broken.json", statusUnusable, []string{"check", "broken.json", "--format", "json"}},
		{"explain-low-vent.txt", statusNothing, []string{"explain", "locker.low-vent"}},
		{"working-low-vent.txt", statusNothing, []string{"explain", "locker.low-vent", "sedge.json"}},
		{"working-load.txt", statusNothing, []string{"explain", "dwelling.connected-load", "willow.json"}},
		{"help.txt", statusNothing, []string{"help"}},
		{"help-check.txt", statusNothing, []string{"help", "check"}},
		{"help-explain.txt", statusNothing, []string{"help", "explain"}},
		{"help-handoff.txt", statusNothing, []string{"help", "handoff"}},
		{"help-trial.txt", statusNothing, []string{"help", "trial"}},
	}
	for _, tt := range tests {
		t.Run(tt.golden, func(t *testing.T) {
			got := run(nil, tt.args...)
			if got.status != tt.status {
				t.Errorf("exit status %d, want %d; standard error:\n%s", got.status, tt.status, got.stderr)
			}
			golden(t, tt.golden, got.stdout)
		})
	}
}
