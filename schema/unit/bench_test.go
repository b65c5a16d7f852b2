package unit

import "testing"

func BenchmarkParse(b *testing.B) {
	for _, text := range []string{"1.32 m", "24 in", "5/8 in", "4 ft 6 1/2 in", "1.32 m ± 2 cm", "1.30 m to 1.34 m"} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Parse[Length](text); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkParseRefused(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse[Length]("1,32 m"); err == nil {
			b.Fatal("taken")
		}
	}
}

func BenchmarkText(b *testing.B) {
	q := MustParse[GaugePressure]("11 inH2O")
	b.ReportAllocs()
	for b.Loop() {
		if Text(q) == "" {
			b.Fatal("empty")
		}
	}
}

func BenchmarkTextApart(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if x, y := TextApart(KindArea, 29.96e-4, 30e-4); x == y {
			b.Fatal("alike")
		}
	}
}

func BenchmarkWriteAtLeast(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if WriteAtLeast(KindArea, 43.21e-4, "90 cm2") == "" {
			b.Fatal("empty")
		}
	}
}
