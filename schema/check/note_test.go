package check

import (
	"slices"
	"testing"

	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
)

// TestNotesAreWrittenOnce: each in the order in which it was met, those of the sheet that
// signed first before the others', whether they are looked through or, being many, are
// gone through with a map; and a notebook is as good the second time.
func TestNotesAreWrittenOnce(t *testing.T) {
	terms := make([]*code.Term, 100)
	for i := range terms {
		terms[i] = &code.Term{ID: string(rune('A' + i))}
	}
	of := func(before *Sheet, from, to int) *Sheet {
		s := &Sheet{before: before}
		for _, each := range terms[from:to] {
			s.notes = append(s.notes, each)
		}
		return s
	}
	ids := func(from, to int) (list []string) {
		for _, each := range terms[from:to] {
			list = append(list, each.ID)
		}
		return list
	}
	figure := &Sheet{notes: []note{terms[3], of(nil, 1, 5), terms[7]}}
	var book notebook
	for _, c := range []struct {
		name string
		last *Sheet
		want []string
	}{
		{"none signed", nil, nil},
		{"few, some twice", of(of(nil, 2, 4), 0, 4), slices.Concat(ids(2, 4), ids(0, 2))},
		{"just as many as are looked through", of(of(nil, 0, 40), 20, 64), ids(0, 64)},
		{"one more", of(of(nil, 0, 40), 20, 65), ids(0, 65)},
		{"many, some twice", of(of(of(nil, 0, 40), 20, 70), 50, 90), ids(0, 90)},
		{"of figures, the notes of figures too", figure, slices.Concat(ids(3, 4), ids(1, 3), ids(4, 5), ids(7, 8))},
		{"few again", of(nil, 0, 3), ids(0, 3)},
	} {
		var out report.Part
		book.write(&out, c.last)
		if !slices.Equal(out.Limits, c.want) {
			t.Errorf("%s: %v, want %v", c.name, out.Limits, c.want)
		}
	}
}
