package pdf

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
	"testing"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/cmd/lowvent/internal/paper"
)

func written(t testing.TB, d *paper.Document, size Sheet) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, d, size); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// TestSamePaperSameBytes: again, and by many at once, which the race detector watches too.
func TestSamePaperSameBytes(t *testing.T) {
	once := written(t, sample(), A4)
	var all sync.WaitGroup
	for range 6 {
		all.Go(func() {
			if !bytes.Equal(once, written(t, sample(), A4)) {
				t.Error("the same paper gave other bytes")
			}
		})
	}
	all.Wait()
	other := sample()
	other.Made = "2026-11-26"
	if bytes.Equal(once, written(t, other, A4)) || bytes.Equal(once, written(t, sample(), Letter)) {
		t.Error("another paper gave the same bytes")
	}
}

// TestTheFontsStayWhole: the library writes into the fonts that it is given.
func TestTheFontsStayWhole(t *testing.T) {
	before := bytes.Clone(letter.Bytes(letter.Bold))
	written(t, sample(), A4)
	if !bytes.Equal(before, letter.Bytes(letter.Bold)) {
		t.Error("the letters of the program were written into")
	}
}

func TestWhatCantBePrinted(t *testing.T) {
	with := func(change func(*paper.Document)) *paper.Document {
		d := sample()
		change(d)
		return d
	}
	many := &paper.Table{Caption: "wide", Columns: make([]paper.Column, 30)}
	words := &paper.Table{Caption: "words", Columns: make([]paper.Column, 12), Rows: [][]paper.Cell{slices.Repeat([]paper.Cell{{Word: "WARNING"}}, 12)}}
	tests := map[string]struct {
		d    *paper.Document
		want string
	}{
		"no date": {with(func(d *paper.Document) { d.Made = "today" }), "YYYY-MM-DD"},
		"a drawing without an alternative": {with(func(d *paper.Document) {
			d.Parts[0].Sections[0].Blocks = []paper.Block{&paper.Picture{Drawing: &draw.Drawing{Title: "a"}}}
		}), "no words"},
		"a foot like a page":    {with(func(d *paper.Document) { d.Foot = strings.Repeat(prose, 5) }), "shorten it"},
		"too many columns":      {with(func(d *paper.Document) { d.Parts[0].Sections[0].Blocks = []paper.Block{many} }), `"wide" has 30 columns that are 240 mm wide at the least; a page has room for 180 mm`},
		"too many signal words": {with(func(d *paper.Document) { d.Parts[0].Sections[0].Blocks = []paper.Block{words} }), `"words" has 12 columns`},
		"no block at all":       {with(func(d *paper.Document) { d.Parts[0].Sections[0].Blocks = []paper.Block{nil} }), "knows no block"},
	}
	for name, tt := range tests {
		var out bytes.Buffer
		err := Write(&out, tt.d, A4)
		if err == nil || !strings.Contains(err.Error(), tt.want) || out.Len() > 0 {
			t.Errorf("%s: %v and %d bytes, want %q and none", name, err, out.Len(), tt.want)
		}
	}
}

// TestADrawingCarriesItsWords for those who can't see it, on the page that it stands on.
func TestADrawingCarriesItsWords(t *testing.T) {
	said := 0
	for _, stream := range bytes.Split(written(t, sample(), A4), []byte("stream\n")) {
		page, err := zlib.NewReader(bytes.NewReader(stream))
		if err != nil {
			continue // no stream, or one that is not packed
		}
		text, _ := io.ReadAll(page)
		said += bytes.Count(text, []byte("/Span <</Alt "+textString("The locker at the left, five lines.")+">> BDC\n"))
		if bytes.Count(text, []byte("BDC\n")) != bytes.Count(text, []byte("EMC\n")) {
			t.Error("a page does not end what it begins")
		}
	}
	if said != 3 {
		t.Errorf("%d of 3 drawings carry their words", said)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no room on the disk") }

func TestTheWritersErrorIsTold(t *testing.T) {
	if err := Write(full{}, sample(), A4); err == nil || !strings.Contains(err.Error(), "no room") {
		t.Errorf("the writer's error was lost: %v", err)
	}
}

func TestAnEmptyPaperIsAPage(t *testing.T) {
	got := written(t, &paper.Document{Title: "Nothing", Made: "2026-11-25"}, A4)
	if bytes.Count(got, []byte("/Type /Page\n")) != 1 || bytes.Contains(got, []byte("/Outlines")) || bytes.Contains(got, []byte("/Lang")) {
		t.Error("an empty paper is not one page without an outline")
	}
}

// BenchmarkSixtyPages writes a paper of some sixty pages.
func BenchmarkSixtyPages(b *testing.B) {
	d := sample()
	for i := range 11 {
		d.Parts = append(d.Parts, paper.Part{ID: fmt.Sprint("more", i), Title: "More", Sections: []paper.Section{{ID: fmt.Sprint("all", i), Title: "Findings", Blocks: []paper.Block{
			&paper.Para{Text: strings.Repeat(prose, 8)},
			&paper.Table{Small: true, Columns: []paper.Column{{Title: "Word"}, {Title: "Subject", Head: true}, {Title: "Found"}, {Title: "Needed"}, {Title: "Source"}}, Rows: findings(60)}}}}})
	}
	for b.Loop() {
		pages, _ := arrange(d, A4)
		written(b, d, A4)
		b.ReportMetric(float64(len(pages)), "pages")
	}
}
