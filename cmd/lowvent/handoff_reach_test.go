package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// TestHandoffCanBeReadByAll: whoever has the papers read aloud, or sees no colours, is told
// the same as everybody.
func TestHandoffCanBeReadByAll(t *testing.T) {
	for _, name := range []string{"sorrel", "sorrel-faulty", "teal"} {
		t.Run(name, func(t *testing.T) {
			page := handoffPage(t, "../../testdata/layouts/"+name+".json")
			if lang := page.all("html", "")[0].attr["lang"]; lang != "en" {
				t.Errorf("the language is %q", lang)
			}
			headingsGoDown(t, page)
			tablesAreTold(t, page)
			drawingsAreTold(t, page)
			wordsAndNotColours(t, page)
		})
	}
}

func handoffPage(t *testing.T, layout string) *node {
	t.Helper()
	file := filepath.Join(t.TempDir(), "page.html")
	if out := run(nil, "handoff", layout, "--on", "2026-11-25", "--out", "html="+file); out.status != statusNothing {
		t.Fatal(out.stderr)
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return wellFormed(t, string(data))
}

// each calls a function with every element below, in order.
func (n *node) each(f func(*node)) {
	for _, below := range n.children {
		if below.name != "" {
			f(below)
		}
		below.each(f)
	}
}

// headingsGoDown: there is one first heading, and none is more than one level below the
// one before it.
func headingsGoDown(t *testing.T, page *node) {
	t.Helper()
	last, count := 0, 0
	page.each(func(n *node) {
		if len(n.name) != 2 || n.name[0] != 'h' || n.name[1] < '1' || n.name[1] > '6' {
			return
		}
		level := int(n.name[1] - '0')
		if count++; level > last+1 || level == 1 && count > 1 {
			t.Errorf("a heading of level %d after one of level %d: %s", level, last, n.says())
		}
		last = level
	})
	if count < 30 {
		t.Errorf("only %d headings", count)
	}
}

// tablesAreTold: each table has a caption and a head, and each of its headings says whether
// it is that of a column or of a row.
func tablesAreTold(t *testing.T, page *node) {
	t.Helper()
	count := 0
	page.each(func(n *node) {
		switch {
		case n.name == "table":
			count++
			if label := n.all("caption", ""); len(label) != 1 {
				t.Errorf("a table without a caption: %.80s", n.says())
			}
			if len(n.all("thead", "")) != 1 {
				t.Errorf("a table without a head: %.80s", n.says())
			}
		case n.name == "th" && n.attr["scope"] != "col" && n.attr["scope"] != "row":
			t.Errorf("a heading of a table without a scope: %s", n.says())
		}
	})
	if count < 15 {
		t.Errorf("only %d tables", count)
	}
}

// drawingsAreTold: each drawing has a title and words for those who can't see it; a symbol
// of a legend is passed over, since its meaning stands beside it.
func drawingsAreTold(t *testing.T, page *node) {
	t.Helper()
	count := 0
	page.each(func(n *node) {
		if n.name != "svg" || n.attr["aria-hidden"] == "true" {
			return
		}
		count++
		ids := strings.Fields(n.attr["aria-labelledby"])
		if n.attr["role"] != "img" || len(ids) != 2 {
			t.Fatalf("a drawing that is not told as one: %v", n.attr)
		}
		for i, each := range []string{"title", "desc"} {
			told := false
			for _, below := range n.children {
				told = told || below.name == each && below.attr["id"] == ids[i] && below.says() != ""
			}
			if !told {
				t.Errorf("the drawing %s has no %s", ids[0], each)
			}
		}
	})
	if count < 4 {
		t.Errorf("only %d drawings", count)
	}
}

// wordsAndNotColours: a coloured word is the signal word itself, and no line of a drawing
// has a colour, so that what it means is told by its pattern.
func wordsAndNotColours(t *testing.T, page *node) {
	t.Helper()
	grey := regexp.MustCompile(`^#(..)(..)(..)$`)
	words, lines := 0, 0
	page.each(func(n *node) {
		if class := n.attr["class"]; strings.HasPrefix(class, "word ") {
			if words++; n.says() != strings.ToUpper(strings.TrimPrefix(class, "word ")) {
				t.Errorf("%q is coloured as %q", n.says(), class)
			}
		}
		if c := grey.FindStringSubmatch(n.attr["stroke"]); c != nil {
			if lines++; c[1] != c[2] || c[2] != c[3] {
				t.Errorf("a line of the colour %s", n.attr["stroke"])
			}
		}
	})
	if words < 5 || lines < 50 {
		t.Errorf("%d signal words, %d lines: the test says little", words, lines)
	}
}

// TestHandoffContrast: letters stand out from their ground by 4.5 to 1 at the least (WCAG
// 2.2, 1.4.3, from memory, as is its formula of relative luminance): each colour of letters
// in the style sheet on the ground of its own rule, else on every ground that stands under
// letters of no colour of their own.
func TestHandoffContrast(t *testing.T) {
	sheet := handoffPage(t, "../../testdata/layouts/sorrel-faulty.json").all("style", "")[0].says()
	ground := regexp.MustCompile(`background:(#[0-9a-f]{3,6})`)
	letters := regexp.MustCompile(`(?:^|[;{])color:(#[0-9a-f]{3,6})`)
	grounds, inks, pairs := []string{"#fff"}, []string{"#000"}, 0
	hold := func(ink, on string) {
		if pairs++; contrast(t, ink, on) < 4.5 {
			t.Errorf("%s on %s has a contrast of %.2f", ink, on, contrast(t, ink, on))
		}
	}
	for _, rule := range regexp.MustCompile(`\{[^{}]*\}`).FindAllString(sheet, -1) {
		g, l := ground.FindStringSubmatch(rule), letters.FindStringSubmatch(rule)
		switch {
		case g != nil && l != nil:
			hold(l[1], g[1])
		case g != nil:
			grounds = append(grounds, g[1])
		case l != nil:
			inks = append(inks, l[1])
		}
	}
	for _, ink := range inks {
		for _, on := range grounds {
			hold(ink, on)
		}
	}
	if len(grounds) < 2 || len(inks) < 3 || pairs < 10 {
		t.Errorf("%d grounds, %d inks, %d pairs: the test says little", len(grounds), len(inks), pairs)
	}
}

func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	one, two := luminance(t, a), luminance(t, b)
	return (max(one, two) + 0.05) / (min(one, two) + 0.05)
}

func luminance(t *testing.T, hex string) (sum float64) {
	t.Helper()
	hex = strings.TrimPrefix(hex, "#")
	if len(hex) == 3 {
		hex = fmt.Sprintf("%c%[1]c%c%[2]c%c%[3]c", hex[0], hex[1], hex[2])
	}
	for i, share := range []float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(hex[2*i:2*i+2], 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		v := float64(n) / 255
		if v <= 0.04045 {
			v /= 12.92
		} else {
			v = math.Pow((v+0.055)/1.055, 2.4)
		}
		sum += share * v
	}
	return sum
}
