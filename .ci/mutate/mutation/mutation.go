// Package mutation chooses, in a program that holds many mutants, the one that is wrong.
package mutation

import (
	"cmp"
	"fmt"
	"os"
	"strconv"
	"sync"
)

var chosen = func() int {
	id, err := strconv.Atoi(os.Getenv("MUTANT"))
	if err != nil {
		return -1
	}
	return id
}()

// Choose chooses another mutant, in tests.
func Choose(id int) { chosen = id }

// On tells whether this is the mutant that was chosen.
func On(id int) bool {
	if trace != nil {
		note(id)
	}
	return id == chosen
}

// trace is where the mutants that are reached are told, each once.
var trace = func() *os.File {
	path := os.Getenv("MUTANTS_REACHED")
	if path == "" {
		return nil
	}
	file, err := os.Create(path)
	if err != nil {
		panic(err)
	}
	return file
}()

var reached sync.Map

func note(id int) {
	if _, known := reached.LoadOrStore(id, true); !known {
		fmt.Fprintln(trace, id)
	}
}

// Either gives the second where the mutant is on.
func Either[T any](id int, a, b T) T {
	if On(id) {
		return b
	}
	return a
}

// Both is "and", or where and is false "or"; a mutant that is on turns it about.
func Both(id int, and bool, a bool, b func() bool) bool {
	if and != On(id) {
		return a && b()
	}
	return a || b()
}

// Compare compares; a mutant that is on is of another mind only about equals.
func Compare[T cmp.Ordered](id int, operator string, a, b T) bool {
	if a == b && On(id) {
		return operator == "<" || operator == ">"
	}
	switch operator {
	case "<":
		return a < b
	case "<=":
		return a <= b
	case ">":
		return a > b
	}
	return a >= b
}

// Number is what can be reckoned with.
type Number interface {
	~int | ~int8 | ~int16 | ~int32 | ~int64 | ~uint | ~uint8 | ~uint16 | ~uint32 | ~uint64 | ~float32 | ~float64
}

var other = map[string]string{"+": "-", "-": "+", "*": "/", "/": "*"}

// Reckon adds, subtracts, multiplies or divides; a mutant that is on does the reverse.
func Reckon[T Number](id int, operator string, a, b T) T {
	if On(id) {
		operator = other[operator]
	}
	switch operator {
	case "+":
		return a + b
	case "-":
		return a - b
	case "*":
		return a * b
	}
	return a / b
}

// Least is min, or max where the mutant is on.
func Least[T cmp.Ordered](id int, first T, more ...T) T { return extreme(On(id), first, more) }

// Most is max, or min where the mutant is on.
func Most[T cmp.Ordered](id int, first T, more ...T) T { return extreme(!On(id), first, more) }

func extreme[T cmp.Ordered](most bool, first T, more []T) T {
	for _, each := range more {
		if most {
			first = max(first, each)
		} else {
			first = min(first, each)
		}
	}
	return first
}

// Without leaves one out where the mutant is on.
func Without[T any](id, i int, all ...T) []T {
	if !On(id) {
		return all
	}
	return append(append([]T{}, all[:i]...), all[i+1:]...)
}
