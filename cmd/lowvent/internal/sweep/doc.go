// Package sweep finds where the questions of a layout begin to end otherwise while one
// quantity goes from one value to another. It judges nothing itself, and advises no value.
package sweep
