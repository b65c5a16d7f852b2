package vent_test

import (
	"context"
	"testing"

	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/code"
)

// BenchmarkDemo judges the demonstration bus by every check, its layout already read.
func BenchmarkDemo(b *testing.B) {
	l := readDemo(b, sorrelFile)
	codes, err := code.Use("us-mobile-structure")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := check.Run(context.Background(), allChecks().WithoutDetail(), l, codes, check.Options{On: checktest.Day, Workers: 1}); err != nil {
			b.Fatal(err)
		}
	}
}
