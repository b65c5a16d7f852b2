package pdf

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/cmd/lowvent/internal/paper"
)

// TestNothingIsLost: whatever the paper, every text of it is placed whole, inside the
// margins, and nothing lies over anything else.
func TestNothingIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyDocument().Draw(t, "document")
		size := rapid.SampledFrom([]Sheet{A4, Letter}).Draw(t, "sheet")
		pages, err := arrange(d, size)
		if err != nil {
			t.Fatal(err)
		}
		holds(t, d, pages)
	})
}

func TestSampleIsArranged(t *testing.T) {
	for _, size := range []Sheet{A4, Letter} {
		pages, err := arrange(sample(), size)
		if err != nil {
			t.Fatal(err)
		}
		holds(t, sample(), pages)
	}
}

type failing interface {
	Fatalf(string, ...any)
	Helper()
}

func holds(t failing, d *paper.Document, pages []*page) {
	t.Helper()
	if diff := cmp.Diff(bareAll(d.Texts()), placedTexts(len(d.Texts()), pages)); diff != "" {
		t.Fatalf("texts of the paper and what was placed (-paper +placed):\n%s", diff)
	}
	titles := headings(d)
	for n, g := range pages {
		insideMargins(t, n, g)
		nothingOverlaps(t, n, g)
		noHeadingAtTheEnd(t, n, g, d, titles)
	}
}

// bareAll is texts as they are printed, without their spaces, which lines swallow.
func bareAll(texts []string) []string {
	var out []string
	for _, text := range texts {
		out = append(out, strings.ReplaceAll(letter.Printable(text), " ", ""))
	}
	return out
}

// placedTexts is what was placed of each text, put together in the order of pages. The
// foot is taken from the first page.
func placedTexts(count int, pages []*page) []string {
	out := make([]string, count)
	for n, g := range pages {
		for _, p := range g.pieces {
			if text, is := p.mark.(*draw.Text); is && p.of > 0 && (p.of != ofFoot || n == 0) {
				out[p.of-1] += strings.ReplaceAll(text.Content, " ", "")
			}
		}
	}
	return out
}

// A hair's breadth, for what only rounding makes overlap.
const hair = 1e-6

func insideMargins(t failing, n int, g *page) {
	t.Helper()
	free := free(g.turned)
	inside := draw.Rectangle{Left: free - hair, Top: free - hair, Right: g.wide - free + hair, Bottom: g.high - free + hair}
	for _, p := range g.pieces {
		if r, some := draw.Extent([]draw.Mark{p.mark}); some && !r.Within(inside) {
			t.Fatalf("page %d: %#v lies at %v and the margins leave %v", n+1, p.mark, r, inside)
		}
	}
}

// nothingOverlaps: no text lies over another, a drawing or a rule; in a filled box lies
// one text, the signal word.
func nothingOverlaps(t failing, n int, g *page) {
	t.Helper()
	var texts, solids []draw.Rectangle
	var words []string
	for _, p := range g.pieces {
		switch m := p.mark.(type) {
		case *draw.Text:
			texts, words = append(texts, smaller(m.Bounds())), append(words, m.Content)
		case *draw.Path:
			r, _ := draw.Extent([]draw.Mark{m})
			if m.Fill == draw.None {
				solids = append(solids, r)
			}
		case *draw.Group:
			if r, some := draw.Extent(m.Marks); some {
				solids = append(solids, smaller(r))
			}
		}
	}
	for i, r := range texts {
		for j, s := range texts[:i] {
			if r.Overlaps(s) {
				t.Fatalf("page %d: %q at %v lies over %q at %v", n+1, words[i], r, words[j], s)
			}
		}
		for _, s := range solids {
			if r.Overlaps(s) {
				t.Fatalf("page %d: %q at %v lies over what is drawn at %v", n+1, words[i], r, s)
			}
		}
	}
}

func smaller(r draw.Rectangle) draw.Rectangle {
	return draw.Rectangle{Left: r.Left + hair, Top: r.Top + hair, Right: r.Right - hair, Bottom: r.Bottom - hair}
}

// headings are the numbers of the texts that are headings.
func headings(d *paper.Document) map[int]bool {
	out := map[int]bool{}
	n := ofFoot
	next := func(text string, is bool) {
		if text != "" {
			n++
			out[n] = is
		}
	}
	for _, part := range d.Parts {
		next(part.Title, true)
		for _, section := range part.Sections {
			next(section.Title, true)
			one := &paper.Document{Parts: []paper.Part{{Sections: []paper.Section{{Blocks: section.Blocks}}}}}
			one.Walk(func(_ *paper.Section, b paper.Block) {
				heading, is := b.(*paper.Heading)
				if is {
					next(heading.Word, true)
					next(heading.Text, true)
					return
				}
				alone := &paper.Document{Parts: []paper.Part{{Sections: []paper.Section{{Blocks: []paper.Block{emptied(b)}}}}}}
				for _, text := range alone.Texts()[3:] {
					next(text, false)
				}
			})
		}
	}
	return out
}

// emptied is a block without the blocks in it, which are walked by themselves.
func emptied(b paper.Block) paper.Block {
	if _, is := b.(*paper.Box); is {
		return &paper.Box{}
	}
	return b
}

func noHeadingAtTheEnd(t failing, n int, g *page, d *paper.Document, titles map[int]bool) {
	t.Helper()
	end := len(g.pieces)
	for end > 0 && !isFootRule(g, g.pieces[end-1]) {
		end--
	}
	if end < 2 {
		return
	}
	last := g.pieces[end-2]
	if titles[last.of] {
		t.Fatalf("page %d ends with the heading %q", n+1, d.Texts()[last.of-1])
	}
}

// isFootRule tells of the rule over the foot, the last thing across the whole page.
func isFootRule(g *page, p piece) bool {
	path, is := p.mark.(*draw.Path)
	return is && len(path.Points) == 2 && path.Points[0].Y == path.Points[1].Y && path.Points[1].X > g.wide-margin-hair && path.Points[0].Y > g.high-margin-30
}
