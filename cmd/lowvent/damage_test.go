package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func readLayout(t interface {
	Helper()
	Fatal(...any)
}, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func stdin(data []byte) func(*app) { return func(a *app) { a.stdin = bytes.NewReader(data) } }

// A file that ends too soon is never taken for one in which nothing was found.
func TestATornLayoutIsUnusable(t *testing.T) {
	whole := bytes.TrimSpace(readLayout(t, in(t, "willow.json")))
	rapid.Check(t, func(t *rapid.T) {
		cut := rapid.IntRange(0, len(whole)-1).Draw(t, "cut")
		if got := run(stdin(whole[:cut]), "check", "-"); got.status != statusUnusable {
			t.Fatalf("cut after %d bytes: status %d\n%s", cut, got.status, got.stdout)
		}
	})
}

// Whatever is done to a file, the program ends with a status that it names, in
// words, and never through a fault of its own.
func TestADamagedLayoutIsNeverAFaultOfTheProgram(t *testing.T) {
	whole := readLayout(t, in(t, "willow.json"))
	rapid.Check(t, func(t *rapid.T) {
		data := bytes.Clone(whole)
		for range rapid.IntRange(1, 4).Draw(t, "slips") {
			at := rapid.IntRange(0, len(data)-1).Draw(t, "at")
			switch rapid.IntRange(0, 2).Draw(t, "how") {
			case 0:
				data[at] = rapid.Byte().Draw(t, "byte")
			case 1:
				data = append(data[:at:at], data[min(len(data), at+rapid.IntRange(1, 40).Draw(t, "less")):]...)
			default:
				again := data[at:min(len(data), at+rapid.IntRange(1, 40).Draw(t, "twice"))]
				data = bytes.Join([][]byte{data[:at], again, data[at:]}, nil)
			}
		}
		got := run(stdin(data), "check", "-")
		if got.status == statusFault || got.stderr != "" || !strings.Contains(got.stdout, "Result of this file check:") {
			t.Fatalf("status %d, %s\n%s", got.status, got.stderr, data)
		}
	})
}

func FuzzCheck(f *testing.F) {
	for _, name := range []string{"willow.json", "sedge.json", "broken.json"} {
		f.Add(readLayout(f, "testdata/layouts/"+name))
	}
	f.Add([]byte(`{"format":"lowvent-layout/1"}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		for _, form := range formatNames() {
			got := run(stdin(data), "check", "--format", form, "-")
			if got.status == statusFault || got.stdout == "" {
				t.Fatalf("status %d as %s, %s", got.status, form, got.stderr)
			}
		}
	})
}

func BenchmarkCheck(b *testing.B) {
	data := readLayout(b, "testdata/layouts/sedge.json")
	b.ReportAllocs()
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if got := run(stdin(data), "check", "--workers", "1", "-"); got.status != statusFindings {
			b.Fatalf("status %d: %s", got.status, got.stderr)
		}
	}
}
