package ask

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lowvent.example/schema/layout"
)

// read turns an answer into the value of a key. What is a quantity, a date or a
// reference is left as it was typed: the reader of layouts judges it.
func (st *state) read(k Asked, answer string) (any, error) {
	switch k.Form {
	case layout.FormYesNo:
		return readYesNo(answer)
	case layout.FormCount:
		return readCount(answer)
	case layout.FormPoint:
		return readPoint(answer)
	case layout.FormPoints:
		return readPoints(answer)
	case layout.FormWord:
		return oneOf(answer, k.Words), nil
	case layout.FormRef:
		return st.reference(answer, k.Refs), nil
	case layout.FormWords:
		if strings.EqualFold(answer, "none") && !slices.Contains(k.Words, "none") {
			return list{}, nil
		}
		return several(answer, func(part string) string { return oneOf(part, k.Words) }), nil
	case layout.FormRefs:
		if strings.EqualFold(answer, "none") {
			return list{}, nil
		}
		return several(answer, func(part string) string { return st.reference(part, k.Refs) }), nil
	}
	return answer, nil
}

var errYesNo = errors.New(`that can't be taken: the answer is yes or no`)

func readYesNo(answer string) (any, error) {
	switch strings.ToLower(answer) {
	case "yes", "true":
		return true, nil
	case "no", "false":
		return false, nil
	}
	return nil, errYesNo
}

func readCount(answer string) (any, error) {
	n, err := strconv.Atoi(answer)
	if err != nil || n < 0 {
		return nil, errors.New("that can't be taken: a whole number is wanted, in digits and without a unit")
	}
	return n, nil
}

// readPoint takes three lengths with commas between.
func readPoint(answer string) (any, error) {
	parts := several(strings.Trim(answer, "[]"), func(part string) string { return strings.Trim(part, `"`) })
	if len(parts) != 3 {
		return nil, fmt.Errorf("that can't be taken: three lengths are wanted, x, y and z, with commas between, and here %s", counted(len(parts), "is", "are"))
	}
	return parts, nil
}

func counted(n int, one, more string) string {
	if n == 1 {
		return one + " 1"
	}
	return fmt.Sprintf("%s %d", more, n)
}

func readPoints(answer string) (any, error) {
	points := list{}
	for part := range strings.SplitSeq(answer, ";") {
		point, err := readPoint(strings.TrimSpace(part))
		if err != nil {
			return nil, err
		}
		points = append(points, point)
	}
	return points, nil
}

// several splits an answer at its commas.
func several(answer string, each func(string) string) list {
	all := list{}
	for part := range strings.SplitSeq(answer, ",") {
		if part = strings.TrimSpace(part); part != "" {
			all = append(all, each(part))
		}
	}
	return all
}

// oneOf finds the word that an answer means, by its number or in any case; what is
// none of them is left as it is.
func oneOf(answer string, words []string) string {
	if n, err := strconv.Atoi(answer); err == nil && n >= 1 && n <= len(words) {
		return words[n-1]
	}
	for _, word := range words {
		if strings.EqualFold(word, answer) {
			return word
		}
	}
	return answer
}

// reference finds the thing that an answer means, by its number in the list, by its
// name alone where only one thing is called so, or by its whole reference.
func (st *state) reference(answer string, refs []string) string {
	things := st.things(refs)
	if found := oneOf(answer, things); slices.Contains(things, found) {
		return found
	}
	var named []string
	for _, each := range things {
		if _, id, _ := strings.Cut(each, "/"); id == answer {
			named = append(named, each)
		}
	}
	if len(named) == 1 {
		return named[0]
	}
	return answer
}

// things lists what the layout has of what a reference may name.
func (st *state) things(refs []string) []string {
	var things []string
	for _, section := range refs {
		if section == string(layout.OpenAir) {
			things = append(things, section)
		}
		for _, id := range st.root.object("/" + section).keys() {
			things = append(things, section+"/"+id)
		}
	}
	return things
}
