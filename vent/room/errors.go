package room

import (
	"fmt"

	"lowvent.example/schema/unit"
)

// ClosedError says that a steady state was asked of a room without fresh air: it
// has none, its air gets worse for as long as anything burns or breathes.
type ClosedError struct{}

// Error tells it.
func (*ClosedError) Error() string {
	return "a room without fresh air has no steady state; expected a flow of fresh air above zero"
}

// ExhaustedError says that what burns and breathes would use up the last of the
// oxygen: no air is left to tell about. Whoever judges takes it as worse than any
// limit, never as not known.
type ExhaustedError struct {
	After unit.Duration // s from the start at which none is left
}

// Error tells when.
func (e *ExhaustedError) Error() string {
	return fmt.Sprintf("the last oxygen would be used up after %.6g s, which is worse than any limit; expected less burning or more fresh air", float64(e.After))
}

// firstOf returns the first error that is one.
func firstOf(errors ...error) error {
	for _, err := range errors {
		if err != nil {
			return err
		}
	}
	return nil
}
