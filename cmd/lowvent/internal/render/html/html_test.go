package html

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/text"
)

func TestHead(t *testing.T) {
	page := read(t, sample())
	if page.first(t, "html").attrs["lang"] != "en-GB" || page.first(t, "title").words() != "Papers for the gas fitter" {
		t.Error("the page does not tell its language or its title")
	}
	meta := map[string]string{}
	for _, m := range page.all("meta") {
		meta[m.attrs["name"]+m.attrs["http-equiv"]+m.attrs["charset"]] = m.attrs["content"]
	}
	sheet := sha256.Sum256([]byte(page.first(t, "style").below[0].text))
	want := map[string]string{"utf-8": "", "viewport": "width=device-width, initial-scale=1", "color-scheme": "light", "referrer": "no-referrer",
		"Content-Security-Policy": "default-src 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(sheet[:]) + "'"}
	if diff := cmp.Diff(want, meta); diff != "" {
		t.Error(diff)
	}
	if lang := read(t, &paper.Document{}).first(t, "html").attrs["lang"]; lang != "en" {
		t.Errorf("a document that tells no language is in %q", lang)
	}
}

// headings is every heading with its level.
func headings(page *node) (all []string) {
	for _, h := range page.all("h1", "h2", "h3", "h4", "h5", "h6") {
		all = append(all, h.name+" "+h.words())
	}
	return all
}

func TestHeadingsGoDownInOrder(t *testing.T) {
	want := []string{"h1 Papers for the gas fitter", "h2 Contents",
		"h2 For the licensed fitter", "h3 Before you begin", "h4 DANGER Gas is connected now", "h3 Plates", "h3 Tests, in the order of work",
		"h2 For the owner", "h3 Drawings", "h3 Findings", "h4 DANGER Finding 0", "h4 WARNING Finding 1", "h4 CAUTION Finding 2", "h4 NOTICE Finding 3", "h4 TRIAL Finding 4", "h3 Notes",
		"h2 Files that belong to this paper"}
	if diff := cmp.Diff(want, headings(read(t, sample()))); diff != "" {
		t.Error(diff)
	}
}

// TestNoLevelIsLeftOut: a part or a section without a title takes no level.
func TestNoLevelIsLeftOut(t *testing.T) {
	cases := []struct {
		part, section string
		want          []string
	}{
		{"P", "S", []string{"h1 T", "h2 P", "h3 S", "h4 H", "h4 I"}},
		{"", "S", []string{"h1 T", "h2 S", "h3 H", "h3 I"}},
		{"P", "", []string{"h1 T", "h2 P", "h3 H", "h3 I"}},
		{"", "", []string{"h1 T", "h2 H", "h2 I"}},
	}
	for _, c := range cases {
		d := &paper.Document{Title: "T", Parts: []paper.Part{{ID: "p", Title: c.part, Sections: []paper.Section{{ID: "s", Title: c.section,
			Blocks: []paper.Block{&paper.Heading{Text: "H"}, &paper.Box{Blocks: []paper.Block{&paper.Heading{Text: "I"}}}}}}}}}
		if diff := cmp.Diff(c.want, headings(read(t, d))); diff != "" {
			t.Errorf("part %q, section %q: %s", c.part, c.section, diff)
		}
	}
}

func TestContents(t *testing.T) {
	var links []string
	page := read(t, sample())
	for _, a := range page.first(t, "nav").all("a") {
		links = append(links, a.attrs["href"]+" "+a.words())
	}
	want := []string{"#fitter For the licensed fitter", "#first Before you begin", "#plates Plates", "#tests Tests, in the order of work",
		"#owner For the owner", "#drawings Drawings", "#findings Findings", "#blank Notes", "#page.enclosed Files that belong to this paper"}
	if diff := cmp.Diff(want, links); diff != "" {
		t.Error(diff)
	}
	one := &paper.Document{Parts: []paper.Part{{ID: "p", Sections: []paper.Section{{ID: "s"}}}}}
	if len(read(t, one).all("nav")) > 0 {
		t.Error("a table of contents for one section")
	}
	two := &paper.Document{Parts: []paper.Part{{ID: "p"}, {ID: "q r", Title: "Q"}}}
	if a := read(t, two).all("a"); len(a) != 2 || a[0].words() != "p" || a[1].attrs["href"] != "#q_20_r" {
		t.Error("a part without a title is not named by its word, or a space stands in a link")
	}
}

// TestLinksAndIDs: each id is there once, and whatever points to one finds it.
func TestLinksAndIDs(t *testing.T) {
	page := read(t, sample())
	ids, points := map[string]int{}, 0
	page.each(func(n *node) {
		if id := n.attrs["id"]; id != "" {
			ids[id]++
		}
	})
	page.each(func(n *node) {
		for _, id := range strings.Fields(strings.TrimPrefix(n.attrs["href"], "#") + " " + n.attrs["aria-labelledby"]) {
			if points++; ids[id] != 1 {
				t.Errorf("<%s> points to %q, which is there %d times", n.name, id, ids[id])
			}
		}
	})
	if points < 12 {
		t.Errorf("only %d links", points)
	}
	for id, n := range ids {
		if n > 1 {
			t.Errorf("the id %q is there %d times", id, n)
		}
	}
}

// TestAsksForNothing: nothing in the page runs, and nothing of it leads out of it.
func TestAsksForNothing(t *testing.T) {
	read(t, sample()).each(func(n *node) {
		switch n.name {
		case "script", "link", "img", "iframe", "object", "embed", "base", "form", "use", "image", "foreignObject":
			t.Errorf("<%s>", n.name)
		}
		for name, value := range n.attrs {
			outside := strings.Contains(value, "http:") || strings.Contains(value, "https:") || strings.Contains(value, "data:") || name == "href" && !strings.HasPrefix(value, "#")
			if outside || name == "style" || name == "src" || strings.HasPrefix(name, "on") {
				t.Errorf("<%s %s=%q>", n.name, name, value)
			}
		}
	})
	if sheet := read(t, sample()).first(t, "style").words(); strings.Contains(sheet, "url") || strings.Contains(sheet, "@import") || strings.Contains(sheet, "@font-face") {
		t.Error("the style sheet asks for something")
	}
}

// TestEveryTextInReadingOrder: all that the document says stands in the body, in its order.
func TestEveryTextInReadingOrder(t *testing.T) {
	d := sample()
	readingOrder(t, d, read(t, d))
}

func readingOrder(t interface{ Fatalf(string, ...any) }, d *paper.Document, page *node) {
	var body string
	for _, part := range page.all("header", "main") {
		body += part.words() + " "
	}
	for _, each := range d.Texts() {
		each = strings.Join(strings.Fields(text.Clean(each)), " ")
		before, after, found := strings.Cut(body, each)
		if !found {
			t.Fatalf("%q is not found in what follows: %.200q", each, before)
		}
		body = after
	}
}

func TestFootStandsAtBothEnds(t *testing.T) {
	page := read(t, sample())
	if got := page.first(t, "footer").words(); got != sample().Foot {
		t.Errorf("at the foot: %q", got)
	}
	head := page.first(t, "header").words()
	for _, each := range []string{sample().Foot, "As of 2026-11-25.", "lowvent test"} {
		if !strings.Contains(head, each) {
			t.Errorf("%q does not stand at the head: %s", each, head)
		}
	}
}

func TestEnclosedFilesAreKnownByTheirHash(t *testing.T) {
	page := read(t, sample())
	sum := sha256.Sum256([]byte("{}\n"))
	for _, n := range page.all("section") {
		if n.attrs["id"] == "page.enclosed" {
			if want := "sorrel.json the layout that this was made from 3 " + hex.EncodeToString(sum[:]); !strings.Contains(n.words(), want) {
				t.Errorf("%s, want %s", n.words(), want)
			}
			return
		}
	}
	t.Error("no list of the files")
}

func TestPagesBegin(t *testing.T) {
	var pages []string
	for _, s := range read(t, sample()).classed("page") {
		pages = append(pages, s.attrs["id"])
	}
	// The section "first" asks for a page as well, but its part has just begun one.
	if diff := cmp.Diff([]string{"tests", "blank"}, pages); diff != "" {
		t.Error(diff)
	}
}

func TestWhatCantBeShownIsRefused(t *testing.T) {
	noWords := draw.Drawing{ID: "plan", Title: "Plan"}
	nowhere := draw.Drawing{ID: "plan", Title: "Plan", Alt: "a", Marks: []draw.Mark{&draw.Circle{Radius: math.NaN()}}}
	for _, c := range []struct {
		block paper.Block
		want  string
	}{
		{&paper.Table{Caption: "loads", Columns: []paper.Column{{}}, Rows: [][]paper.Cell{{}}}, `"loads" has 0 cells`},
		{&paper.Picture{Drawing: &noWords}, "no words"},
		{&paper.Picture{Drawing: &nowhere}, "no finite number"},
		{&paper.Picture{Drawing: &draw.Drawing{ID: "plan", Title: "Plan", Alt: "a", Key: []draw.Explained{{Means: "vent", Marks: nowhere.Marks}}}}, `"vent"`},
	} {
		d := &paper.Document{Parts: []paper.Part{{ID: "p", Sections: []paper.Section{{ID: "s", Blocks: []paper.Block{c.block}}}}}}
		var b bytes.Buffer
		if err := Write(&b, d); err == nil || !strings.Contains(err.Error(), c.want) || b.Len() > 0 {
			t.Errorf("%v, want %q; %d bytes were written", err, c.want, b.Len())
		}
	}
}

type broken struct{}

var errBroken = errors.New("the disc is full")

func (broken) Write([]byte) (int, error) { return 0, errBroken }

func TestTheWritersErrorComesBack(t *testing.T) {
	if err := Write(broken{}, sample()); !errors.Is(err, errBroken) {
		t.Error(err)
	}
}

func TestSameBytes(t *testing.T) {
	if !bytes.Equal(written(t, sample()), written(t, sample())) {
		t.Error("the same document came out in two ways")
	}
}

// TestHostileTexts: whatever the texts of a document hold, the page has the elements that
// it has with harmless texts, and each text is found in it.
func TestHostileTexts(t *testing.T) {
	harmless := elements(parsed(t, written(t, everywhere("a"))))
	hostile := rapid.OneOf(rapid.StringN(1, 30, -1), rapid.SampledFrom([]string{`</style></title><script>alert(1)</script>`, `"><img src=x onerror=y>`, "]]>", "<!--", "&lt;", "\x00\x1b[2J", "a\tb\nc", "\u202ereversed", "\xff\xfe"}))
	rapid.Check(t, func(t *rapid.T) {
		d := everywhere("x" + hostile.Draw(t, "text"))
		var b bytes.Buffer
		if err := Write(&b, d); err != nil {
			t.Fatal(err)
		}
		page := parsed(t, b.Bytes())
		if diff := cmp.Diff(harmless, elements(page)); diff != "" {
			t.Fatalf("%s\n%s", diff, b.String())
		}
		readingOrder(t, d, page)
	})
}

// everywhere is a document that has one text wherever a text can stand.
func everywhere(s string) *paper.Document {
	cell := []paper.Cell{{Text: s, Word: s, Strong: true, Blank: true}, {Text: s}}
	d := *plan()
	d.ID, d.Title, d.Alt = s, s, s
	d.Key = []draw.Explained{{Means: s}}
	d.Marks = []draw.Mark{&draw.Group{Of: s, Label: s, Marks: []draw.Mark{&draw.Text{Content: s, Size: 3}}}}
	d.Spans = []draw.Span{{Text: s, Check: s, Subject: s}}
	return &paper.Document{Title: s, Subject: s, Language: s, Made: s, Program: s, Foot: s, Enclosed: []paper.Enclosure{{Name: s, About: s}},
		Parts: []paper.Part{{ID: s, Title: s, Sections: []paper.Section{{ID: s + "2", Title: s, Blocks: []paper.Block{
			&paper.Heading{Text: s, Word: s}, &paper.Para{Text: s, Word: s, Strong: true}, &paper.List{Items: []string{s}}, &paper.Lines{Label: s, Count: 1},
			&paper.Table{Caption: s, Columns: []paper.Column{{Title: s, Head: true}, {Title: s}}, Rows: [][]paper.Cell{cell}},
			&paper.Picture{Drawing: &d}, &paper.Box{Blocks: []paper.Block{&paper.Para{Text: s}}}, &paper.Pairs{Rows: []paper.Pair{{Label: s, Value: s}}}}}}}}}
}

// elements is the names of all elements in order.
func elements(page *node) (names []string) {
	page.each(func(n *node) { names = append(names, n.name) })
	return names
}
