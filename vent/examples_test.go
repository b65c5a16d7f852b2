package vent_test

import (
	"testing"

	"lowvent.example/schema/check/checktest"
	"lowvent.example/vent"
)

// TestExamples runs the examples that stand beside the checks; docs/checks.md
// shows the same.
func TestExamples(t *testing.T) { checktest.Run(t, vent.Checks(), "testdata") }
