package html

import (
	"crypto/sha256"
	_ "embed" // the style sheet
	"encoding/base64"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/markup"
	"lowvent.example/cmd/lowvent/internal/render/text"
)

//go:embed page.css
var fixed string

// head writes the head. The policy allows this style sheet, known by its hash, and
// nothing else: no script, no picture, no font, no address.
func head(w *markup.Writer, d *paper.Document, sheet string) {
	sum := sha256.Sum256([]byte(sheet))
	w.Open("head")
	w.Empty("meta", "charset", "utf-8")
	w.Empty("meta", "http-equiv", "Content-Security-Policy",
		"content", "default-src 'none'; style-src 'sha256-"+base64.StdEncoding.EncodeToString(sum[:])+"'")
	w.Line()
	w.Empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1")
	w.Empty("meta", "name", "color-scheme", "content", "light")
	w.Empty("meta", "name", "referrer", "content", "no-referrer")
	w.Element("title", d.Title)
	w.Line()
	w.Open("style")
	w.WriteString(sheet) // has no sign that means anything to HTML or XML
	w.Close()
	w.Close()
	w.Line()
}

// sheet is the style sheet of one document: what all have in common, and what hangs on
// its own tables and on how long its foot is.
func (p *page) sheet(d *paper.Document) string {
	var b strings.Builder
	b.WriteString("\n" + fixed)
	for _, each := range signs {
		fmt.Fprintf(&b, ".%s{background:%s;color:%s}\n", each.class, colour(each.ground), colour(each.letters))
	}
	for _, share := range slices.Sorted(maps.Keys(p.shares)) {
		fmt.Fprintf(&b, ".w%d{width:%d.%d%%}\n", share, share/10, share%10)
	}
	for _, least := range slices.Sorted(maps.Keys(p.least)) {
		fmt.Fprintf(&b, "@media screen{.m%d{min-width:%dem}}\n", least, least)
	}
	for i, wide := range p.fits {
		fmt.Fprintf(&b, "@media print{.fit%d>svg:first-child{width:%.3fmm}}\n", i+1, wide)
	}
	fmt.Fprintf(&b, "@media print{main,nav{--foot:%dmm}}\n", p.foot)
	fmt.Fprintf(&b, footInMargin, p.foot+lowest, quoted(d.Foot), p.foot+lowest)
	return b.String()
}

// footInMargin puts the foot into the margin of each printed page. Chromium needs that: it
// sets what is fixed to the foot of a page as though all pages stood or all lay. Other
// browsers know less of margins, and get the fixed foot: the condition, that two things are
// known which have nothing to do with it, holds for Chromium alone, and from the version
// on (131) that writes into margins.
const footInMargin = `@supports selector(::details-content) and (-webkit-app-region:none){
@page{margin-bottom:%dmm;@bottom-left{content:%s;width:88%%;text-align:left;font:2.9mm/4mm sans-serif;vertical-align:top;padding-top:3mm}@bottom-right{line-height:4mm;padding-top:3mm}}
@page broad{margin-bottom:%dmm}
@media print{footer{display:none}nav,main{padding-bottom:0}}
}
`

// lowest is what is left free below the foot, which no printer reaches, in mm.
const lowest = 4

// quoted is a text as a string of a style sheet, with a number for each sign that may mean
// anything to CSS, HTML or XML.
func quoted(content string) string {
	var b strings.Builder
	for _, r := range text.Clean(content) {
		if r < utf8.RuneSelf && !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != ' ' {
			fmt.Fprintf(&b, `\%x `, r)
			continue
		}
		b.WriteRune(r)
	}
	return `"` + b.String() + `"`
}

// signs are the colours of the signal words as ANSI Z535.1 pairs them.
var signs = []struct {
	class           string
	ground, letters draw.Ink
}{
	{"danger", draw.Red, draw.White},
	{"warning", draw.Orange, draw.Black},
	{"caution", draw.Yellow, draw.Black},
	{"notice", draw.Blue, draw.White},
}

func colour(i draw.Ink) string {
	red, green, blue := i.RGB()
	return fmt.Sprintf("#%02x%02x%02x", red, green, blue)
}

// The foot's letters, the least width that it has on A4 or Letter, the height of one of its
// lines and what lies above the first, in mm.
const (
	footSize = 2.9
	footWide = 165
	footLine = 4
	footGap  = 5
)

// footHeight is the room that the foot needs on each printed page, in mm, with the gap
// above it.
func footHeight(foot string) int {
	lines := math.Ceil(letter.Width(letter.Regular, text.Clean(foot), footSize) / footWide)
	return footLine*int(max(lines, 1)) + footGap
}
