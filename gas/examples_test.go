package gas_test

import (
	"testing"

	"lowvent.example/gas"
	"lowvent.example/schema/check/checktest"
)

// TestExamples runs the examples that stand beside the checks; docs/checks.md
// shows the same.
func TestExamples(t *testing.T) { checktest.Run(t, gas.Checks(), "testdata") }
