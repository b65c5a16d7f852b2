//go:build unix

package source

import (
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A pipe that nobody writes to is refused at once instead of being waited for.
func TestReadPathRefusesPipes(t *testing.T) {
	path := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(path, 0o600); err != nil {
		t.Fatal(err)
	}
	_, fault := ReadPath(path, Limits{})
	if fault == nil || !strings.Contains(fault.What, "a pipe") || !strings.Contains(fault.Mend, "standard input") {
		t.Errorf("got %v", fault)
	}
}
