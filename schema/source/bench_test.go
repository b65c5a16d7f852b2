package source

import (
	"fmt"
	"strings"
	"testing"
)

// benchText is a text of at least that many bytes, shaped like a layout.
func benchText(bytes int) string {
	var b strings.Builder
	b.WriteString("{\n  \"lockers\": [")
	for i := 0; b.Len() < bytes; i++ {
		if i > 0 {
			b.WriteByte(',')
		}
		fmt.Fprintf(&b, "\n    {\n      \"id\": \"locker-%d\",\n      \"floor\": \"24 in\",\n      \"low_vents\": [ {\"gross\": \"50 cm2\", \"mesh\": false} ],\n      \"count\": %d\n    }", i, i)
	}
	b.WriteString("\n  ]\n}\n")
	return b.String()
}

func benchmarkParse(b *testing.B, bytes int) {
	f := NewFile("bench.json", []byte(benchText(bytes)))
	b.SetBytes(int64(len(f.Data)))
	b.ReportAllocs()
	for b.Loop() {
		if _, fault := Parse(f, Limits{}); fault != nil {
			b.Fatal(fault)
		}
	}
}

func BenchmarkParse6KB(b *testing.B) { benchmarkParse(b, 6<<10) }
func BenchmarkParse1MB(b *testing.B) { benchmarkParse(b, 1<<20) }

// One object with very many members: linear only with a map.
func BenchmarkParseFlat(b *testing.B) {
	for _, members := range []int{1000, 10_000, 100_000} {
		b.Run(fmt.Sprint(members), func(b *testing.B) {
			var text strings.Builder
			for i := range members {
				fmt.Fprintf(&text, `,"k%d":0`, i)
			}
			f := NewFile("bench.json", []byte("{"+text.String()[1:]+"}"))
			b.SetBytes(int64(len(f.Data)))
			b.ReportAllocs()
			for b.Loop() {
				if _, fault := Parse(f, Limits{}); fault != nil {
					b.Fatal(fault)
				}
			}
		})
	}
}

func BenchmarkApply6KB(b *testing.B) {
	f := NewFile("bench.json", []byte(benchText(6<<10)))
	root, fault := Parse(f, Limits{})
	if fault != nil {
		b.Fatal(fault)
	}
	edits := []Edit{{Pointer: "/lockers/3/floor", Value: `"600 mm"`}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Apply(f, root, edits); err != nil {
			b.Fatal(err)
		}
	}
}

// Places in a file of one line, as a minified file is.
func BenchmarkPositionOfOneLine(b *testing.B) {
	f := NewFile("bench.json", []byte(strings.ReplaceAll(benchText(1<<20), "\n", " ")))
	b.ReportAllocs()
	for i := 0; b.Loop(); i += 7919 {
		if line, _ := f.Position(i % len(f.Data)); line != 1 {
			b.Fatal(line)
		}
	}
}
