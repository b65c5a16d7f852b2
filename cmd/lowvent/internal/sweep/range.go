package sweep

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// How many values a sweep tries.
const (
	FewestValues = 2
	UsualValues  = 25
	MostValues   = 200
)

// finest is how many steps of the resolution a sweep has at least, from end to end.
const finest = 1000

// Range is what a sweep was asked to try: one quantity, from one value to another.
type Range struct {
	Pointer  string
	From, To string
	Count    int // of values, both ends among them
}

// Parse reads a range from "/path=FROM..TO" or "/path=FROM..TO/COUNT". The error says
// what was expected.
func Parse(text string) (Range, error) {
	pointer, rest, found := strings.Cut(text, "=")
	r := Range{Pointer: strings.TrimSpace(pointer), Count: UsualValues}
	if !found || !strings.HasPrefix(r.Pointer, "/") {
		return Range{}, fmt.Errorf("%q is no sweep; %s", text, form)
	}
	from, to, found := strings.Cut(rest, "..")
	if !found {
		return Range{}, fmt.Errorf("there is no \"..\" between two values in %q; %s", rest, form)
	}
	to, count, err := cutCount(to)
	if err != nil {
		return Range{}, err
	}
	if count > 0 {
		r.Count = count
	}
	r.From, r.To = strings.TrimSpace(from), strings.TrimSpace(to)
	if r.From == "" || r.To == "" {
		return Range{}, fmt.Errorf("a value is missing beside the \"..\" in %q; %s", rest, form)
	}
	return r, nil
}

const form = `it is written /path=FROM..TO, for example "/lockers/side/vents/low/gross=20 cm2..200 cm2"; /40 at its end asks for forty values`

// cutCount takes "/40" from the end of a text: a stroke with nothing but digits after
// it, so that neither "1/2 in" nor "BTU/h" is taken for one.
func cutCount(text string) (rest string, count int, err error) {
	i := strings.LastIndexByte(text, '/')
	digits := strings.TrimSpace(text[i+1:])
	if i < 0 || digits == "" || strings.Trim(digits, "0123456789") != "" {
		return text, 0, nil
	}
	count, err = strconv.Atoi(digits)
	if err != nil || count < FewestValues || count > MostValues {
		return "", 0, fmt.Errorf("a sweep tries %d to %d values, not %s", FewestValues, MostValues, digits)
	}
	return text[:i], count, nil
}

// Scale is the values of a sweep: each lies so many steps of the resolution from zero.
type Scale struct {
	unit.Steps
	At   []int64 // rising
	bare bool    // written as a number of JSON
}

// Scale gives the values that a range stands for. The error tells why there are none:
// no quantity stands there, or an end is none of that kind.
func (r Range) Scale() (Scale, error) {
	kind, bare, known := layout.KindAt(r.Pointer)
	if !known {
		return Scale{}, fmt.Errorf("%s is no quantity, and can't go from one value to another", r.Pointer)
	}
	from, err := end(kind, r.From)
	if err != nil {
		return Scale{}, err
	}
	to, err := end(kind, r.To)
	if err != nil {
		return Scale{}, err
	}
	if from >= to {
		return Scale{}, fmt.Errorf("a sweep goes up: %s is not less than %s", r.From, r.To)
	}
	steps, err := unit.StepsLike(kind, r.From, (to-from)/finest)
	if err != nil {
		return Scale{}, err
	}
	s := Scale{Steps: steps, bare: bare}
	s.spread(steps.Nearest(from), steps.Nearest(to), r.Count)
	if len(s.At) < FewestValues {
		return Scale{}, fmt.Errorf("%s and %s are written alike, and leave nothing to try", r.From, r.To)
	}
	return s, nil
}

// end reads one end of a range, in the SI unit of its kind.
func end(kind unit.Kind, text string) (float64, error) {
	r, err := unit.ParseKind(kind, text)
	if err != nil {
		return 0, err
	}
	if r.Low != r.High {
		return 0, errors.New("an end of a sweep is one value, and " + text + " has a tolerance")
	}
	return r.Nominal, nil
}

// spread puts so many values at equal distances, or all that there are if they are fewer.
func (s *Scale) spread(from, to int64, count int) {
	for i := range int64(count) {
		at := from + (to-from)*i/int64(count-1)
		if len(s.At) == 0 || at > s.At[len(s.At)-1] {
			s.At = append(s.At, at)
		}
	}
}

// JSON writes the value at so many steps as a layout has it.
func (s Scale) JSON(n int64) string {
	if s.bare {
		return s.Text(n)
	}
	return source.Quote(s.Text(n))
}
