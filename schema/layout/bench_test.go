package layout

import (
	"fmt"
	"strings"
	"testing"

	"lowvent.example/schema/source"
)

// large makes a file of about a megabyte: many copies of one locker, with a
// cylinder in each.
func large(t testing.TB) []byte {
	t.Helper()
	locker := good(t, pontoon).Root().At("/lockers/side").Raw()
	var lockers, cylinders strings.Builder
	for i := range 400 {
		fmt.Fprintf(&lockers, "%q: %s,\n", fmt.Sprintf("l%d", i), locker)
		fmt.Fprintf(&cylinders, `"c%d": { "in": "lockers/l%d", "propane": "9 kg", "waterCapacity": "21.6 L" },`, i, i)
	}
	text := readText(t, pontoon)
	text = strings.Replace(text, `"lockers": {`, `"lockers": {`+lockers.String(), 1)
	return []byte(strings.Replace(text, `"cylinders": {`, `"cylinders": {`+cylinders.String(), 1))
}

func BenchmarkLoad(b *testing.B) {
	for name, data := range map[string][]byte{"6KB": []byte(readText(b, cabin)), "1MB": large(b)} {
		b.Run(name, func(b *testing.B) {
			b.SetBytes(int64(len(data)))
			b.ReportAllocs()
			for b.Loop() {
				if _, faults := Load(source.NewFile("bench.json", data)); len(faults) > 0 {
					b.Fatal(faults)
				}
			}
		})
	}
}

// BenchmarkCompile is what the first file of a run pays for the second opinion.
func BenchmarkCompile(b *testing.B) {
	for name, text := range map[string][]byte{"published": published, "compact": compact} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := compile(name, text); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkDecodeOnly(b *testing.B) {
	root, fault := source.Parse(source.NewFile("bench.json", []byte(readText(b, cabin))), source.DefaultLimits())
	if fault != nil {
		b.Fatal(fault)
	}
	for b.Loop() {
		if _, d := decode(root); len(d.found) > 0 {
			b.Fatal("faults")
		}
	}
}
