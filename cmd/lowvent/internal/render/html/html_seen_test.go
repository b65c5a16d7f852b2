//go:build seen

package html

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/cmd/lowvent/internal/browser"
	"lowvent.example/cmd/lowvent/internal/paper"
)

// The widths of screens that a paper is read on, in CSS pixels.
var screens = []int{320, 400, 1200}

func TestSeen(t *testing.T) {
	b := browser.Start(t)
	t.Run("on screens", func(t *testing.T) { onScreens(t, b) })
	t.Run("as written", func(t *testing.T) { asWritten(t, b) })
	t.Run("letters", func(t *testing.T) { letters(t, b) })
	t.Run("hands", func(t *testing.T) { hands(t, b) })
	t.Run("printed", func(t *testing.T) { printed(t, b) })
}

// onScreens: on no screen does the page run over its edge, nothing is asked for
// but the page, the browser has nothing to complain of, and drawings are to scale however
// much they were shrunk. Where a variable names a folder, the pictures are put there for
// somebody to look at.
func onScreens(t *testing.T, b *browser.Browser) {
	t.Helper()
	page := written(t, sample())
	for _, width := range screens {
		p := b.Open(t, page, width)
		if out := p.Wide(); len(out) > 0 {
			t.Errorf("at %d px these run over the edge: %q", width, out)
		}
		if all := p.Requests(); len(all) != 1 || !strings.HasPrefix(all[0], "file:///") {
			t.Errorf("asked for %q", all)
		}
		if all := p.Messages(); len(all) > 0 {
			t.Errorf("the browser complains: %q", all)
		}
		toScale(t, p.Spans())
		keep(t, fmt.Sprintf("screen-%d.png", width), p.Screenshot())
	}
}

// toScale holds what is measured against what the drawings claim, to 0.5 %.
func toScale(t *testing.T, spans []browser.Span) {
	t.Helper()
	if len(spans) != 4 {
		t.Errorf("%d distances, want 4", len(spans))
	}
	for _, s := range spans {
		if math.Abs(s.Measured/s.Metres-1) > 0.005 || s.Scale != 40 {
			t.Errorf("%s: %s measures %.4f m", s.Drawing, s.Text, s.Measured)
		}
	}
}

// asWritten: a browser that reads the page as HTML builds the elements that a
// reader of XML finds, whatever the texts hold, and runs nothing of it.
func asWritten(t *testing.T, b *browser.Browser) {
	t.Helper()
	docs := []*paper.Document{sample()}
	for _, hostile := range []string{"x</style></title><script>document.title=1</script>", `x"><img src=x onerror=y>`, "x]]><!--", "x</svg></table><p>"} {
		docs = append(docs, everywhere(hostile))
	}
	for _, d := range docs {
		page := written(t, d)
		p := b.Open(t, page, 400)
		var built []string
		p.Eval(`[...document.querySelectorAll("*")].map(e => e.localName)`, &built)
		if diff := cmp.Diff(elements(parsed(t, page)), append([]string{"document"}, built...)); diff != "" {
			t.Errorf("%q: %s", d.Title, diff)
		}
		if all := p.Messages(); len(all) > 0 || len(p.Requests()) != 1 {
			t.Errorf("%q: the browser complains: %q, or asked for %q", d.Title, all, p.Requests())
		}
	}
}

// letters: letters in a drawing are as wide as they were measured, to 2 %, with
// the fonts that this machine happens to have.
func letters(t *testing.T, b *browser.Browser) {
	t.Helper()
	p := b.Open(t, written(t, sample()), 1200)
	var all []struct {
		Text           string
		Claimed, Found float64
	}
	p.Eval(`[...document.querySelectorAll("svg text")].map(e => ({Text: e.textContent, Claimed: Number(e.getAttribute("textLength")), Found: e.getBBox().width}))`, &all)
	if len(all) != 8 {
		t.Errorf("%d texts, want 8", len(all))
	}
	for _, each := range all {
		if math.Abs(each.Found/each.Claimed-1) > 0.02 {
			t.Errorf("%q is %.2f mm wide, and was measured as %.2f", each.Text, each.Found, each.Claimed)
		}
	}
}

// hands: what is to be filled in is 8 mm high at the least, and what can be
// scrolled can be reached with keys.
func hands(t *testing.T, b *browser.Browser) {
	t.Helper()
	p := b.Open(t, written(t, sample()), 400)
	var low []string
	p.Eval(`[...document.querySelectorAll("dd .blank, td.blank, .lines div")].map(e => e.getBoundingClientRect().height * 25.4 / 96)
		.filter(high => high < 7.99).map(String)`, &low)
	if len(low) > 0 {
		t.Errorf("blanks so many mm high: %v", low)
	}
	var reached, wide int
	p.Eval(`[...document.querySelectorAll(".scroll")].filter(e => e.scrollWidth > e.clientWidth).length`, &wide)
	p.Eval(`[...document.querySelectorAll(".scroll")].filter(e => { e.focus(); return e.scrollWidth > e.clientWidth && document.activeElement == e; }).length`, &reached)
	if wide == 0 || reached != wide {
		t.Errorf("%d of %d wide tables can be reached", reached, wide)
	}
}

// printed: on both papers each page has the foot, nothing lies under it or beyond
// the margins, parts and pages begin where they should, heads of tables come again, and a
// drawing has its true size.
func printed(t *testing.T, b *browser.Browser) {
	t.Helper()
	long := sample()
	long.Foot = strings.Repeat("Prepared by the owner from tape and plates. ", 9) + "Not a certificate."
	for _, d := range []*paper.Document{sample(), long} {
		p := b.Open(t, written(t, d), 1200)
		for _, on := range []browser.Paper{browser.A4, browser.Letter} {
			pdf := p.Print(on)
			keep(t, fmt.Sprintf("%s-foot-%d.pdf", on.Name, len(d.Foot)), pdf)
			texts := browser.Texts(t, pdf)
			bodies := feet(t, d, on, browser.Words(t, pdf))
			begins(t, texts)
			company(t, d, bodies)
			trueSize(t, browser.Words(t, pdf))
		}
	}
}

// feet: in the lower margin of each page stand the foot and the number of the page, and
// nothing else; every word lies within the margins. It gives the words above the foot.
func feet(t *testing.T, d *paper.Document, on browser.Paper, pages [][]browser.Word) (bodies []string) {
	t.Helper()
	const side = 14.4 // mm
	if len(pages) < 8 {
		t.Fatalf("%s: only %d pages", on.Name, len(pages))
	}
	top := on.High - float64(footHeight(d.Foot)+lowest)
	for i, words := range pages {
		var low, body []string
		for _, w := range words {
			if w.Left < side || w.Right > on.Wide-side || w.Top < side || w.Bottom > on.High-5 || w.Top < top && w.Bottom > top {
				t.Errorf("%s, page %d: %+v lies in the margin", on.Name, i+1, w)
			}
			if w.Top > top {
				low = append(low, w.Text)
			} else {
				body = append(body, w.Text)
			}
		}
		want := strings.Fields(fmt.Sprintf("%s %d of %d", d.Foot, i+1, len(pages)))
		slices.Sort(low)
		slices.Sort(want)
		if diff := cmp.Diff(want, low); diff != "" {
			t.Errorf("%s, foot of page %d: %s", on.Name, i+1, diff)
		}
		bodies = append(bodies, strings.Join(body, " "))
	}
	return bodies
}

// begins: what begins on a page of its own does, and a table's head stands on each page
// that the table is on.
func begins(t *testing.T, texts []string) {
	t.Helper()
	for _, start := range []string{"For the licensed fitter Before you begin", "For the owner Drawings", "Tests, in the order of work", "Notes What was found", "Files that belong to this paper"} {
		n := 0
		for _, text := range texts {
			if strings.HasPrefix(text, start) {
				n++
			}
		}
		if n != 1 {
			t.Errorf("%d pages begin with %q, want 1", n, start)
		}
	}
	for i, text := range texts {
		if strings.Contains(text, "8,000 BTU/h") && !strings.Contains(text, "As the builder read it") {
			t.Errorf("page %d has rows without the head of their table", i+1)
		}
	}
}

// company: no page ends with a heading or with the caption of a table.
func company(t *testing.T, d *paper.Document, texts []string) {
	t.Helper()
	alone := []string{"Data plates", "More than fits"}
	for _, h := range headings(read(t, d)) {
		alone = append(alone, h[len("h1 "):])
	}
	for i, text := range texts[1:] { // the first ends with the contents
		for _, heading := range alone {
			if strings.HasSuffix(text, heading) {
				t.Errorf("page %d ends with %q alone", i+2, heading)
			}
		}
	}
}

// trueSize: two marks of the plan lie 170 mm apart on paper.
func trueSize(t *testing.T, pages [][]browser.Word) {
	t.Helper()
	left, found := 0.0, 0
	for _, words := range pages {
		for _, w := range words {
			switch w.Text {
			case "WESTMARK":
				left = w.Left
			case "EASTMARK":
				if found++; math.Abs((w.Right-left)/170-1) > 0.005 {
					t.Errorf("the marks lie %.2f mm apart, want 170", w.Right-left)
				}
			}
		}
	}
	if found != 2 {
		t.Errorf("%d plans on paper, want 2", found)
	}
}

// keep puts a picture where somebody wants to look at it.
func keep(t *testing.T, name string, data []byte) {
	t.Helper()
	folder := os.Getenv("SEEN")
	if folder == "" {
		return
	}
	if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
		t.Fatal(err)
	}
}
