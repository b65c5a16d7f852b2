package paper

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/cmd/lowvent/internal/draw"
)

func document(blocks ...Block) *Document {
	return &Document{Title: "T", Parts: []Part{{ID: "one", Title: "Part", Sections: []Section{{ID: "s", Title: "Head", Blocks: blocks}}}}}
}

func TestTextsInReadingOrder(t *testing.T) {
	d := document(&Box{Blocks: []Block{&Para{Text: "a"}, &List{Items: []string{"b", "c"}}}},
		&Table{Caption: "d", Columns: []Column{{Title: "e"}}, Rows: [][]Cell{{{Word: "DANGER", Text: "f"}}}},
		&Pairs{Rows: []Pair{{Label: "g", Value: "h"}}}, &Lines{Label: "i"}, &Heading{Text: "j"},
		&Picture{Drawing: &draw.Drawing{Title: "k", Alt: "l"}})
	got := strings.Join(strings.Fields(strings.Join(d.Texts(), " ")), " ")
	if diff := cmp.Diff("T Part Head a b c d e DANGER f g h i j k", got); diff != "" {
		t.Error(diff)
	}
}

func TestCheck(t *testing.T) {
	cases := map[string]struct {
		d    *Document
		want string
	}{
		"whole":        {document(&Table{Columns: []Column{{}}, Rows: [][]Cell{{{}}}}, &Picture{Drawing: &draw.Drawing{Title: "a", Alt: "b"}}), ""},
		"short row":    {document(&Table{Caption: "loads", Columns: []Column{{}, {}}, Rows: [][]Cell{{{}}}}), `row 0 of "loads"`},
		"mute drawing": {document(&Box{Blocks: []Block{&Picture{Drawing: &draw.Drawing{Title: "a"}}}}), "no words"},
		"id twice":     {&Document{Parts: []Part{{ID: "a", Sections: []Section{{ID: "a"}}}}}, "twice"},
		"no id":        {&Document{Parts: []Part{{}}}, "missing"},
	}
	for name, c := range cases {
		err := c.d.Check()
		switch {
		case c.want == "" && err != nil, c.want != "" && err == nil, err != nil && !strings.Contains(err.Error(), c.want):
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}
