package source

import (
	"errors"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestFaultError(t *testing.T) {
	f := NewFile("van.json", []byte("{\n  \"a\": 1\n}"))
	tests := []struct {
		name  string
		fault Fault
		want  string
	}{
		{"all parts", Fault{Place: Place{File: f, Span: Span{4, 7}}, What: "a", Expected: "b", Mend: "c"}, "van.json:2:3: a; expected b; mend: c"},
		{"only what", Fault{What: "a"}, "a"},
		{"no mend", Fault{Place: Place{File: f}, What: "a", Expected: "b"}, "van.json:1:1: a; expected b"},
		{"no expectation", Fault{Place: Place{File: f}, What: "a", Mend: "c"}, "van.json:1:1: a; mend: c"},
		{"unread file", Fault{Place: Place{File: unreadFile("gone")}, What: "a"}, "gone: a"},
		{"one line, no control characters", Fault{What: "a\nb\x1b"}, "a\ufffdb\ufffd"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := test.fault.Error(); got != test.want {
				t.Errorf("got %q, want %q", got, test.want)
			}
		})
	}
	var err error = Faults{tests[0].fault, tests[1].fault}
	if got, want := err.Error(), tests[0].want+"\n"+tests[1].want; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	var fault *Fault
	if err = &tests[0].fault; !errors.As(err, &fault) || fault.What != "a" {
		t.Error("a fault is not found in an error")
	}
}

func TestFaultsSort(t *testing.T) {
	a, b := NewFile("a", []byte("0123456789")), NewFile("b", []byte("0123456789"))
	at := func(f *File, from, to int32, pointer, what string) Fault {
		return Fault{Place: Place{File: f, Span: Span{from, to}, Pointer: pointer}, What: what}
	}
	want := Faults{
		{What: "nowhere"},
		at(a, 0, 9, "", "whole file"),
		at(a, 2, 4, "/x/y", "deeper first"),
		at(a, 2, 3, "/x", "then shorter"),
		at(a, 2, 8, "/x", "then longer"),
		at(a, 2, 8, "/x", "then words"),
		at(a, 5, 6, "/z", "further on"),
		at(b, 0, 1, "", "other file"),
	}
	rapid.Check(t, func(t *rapid.T) {
		got := Faults(rapid.Permutation(slices.Clone(want)).Draw(t, "shuffled"))
		got.Sort()
		if diff := cmp.Diff(want.Error(), got.Error()); diff != "" {
			t.Fatal(diff)
		}
	})
}
