// Package letter has the letters that papers and drawings are set in, and how wide
// they come out: what is measured here is what the PDF embeds.
package letter

import (
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Face is one of the cuts of the letters.
type Face int

// The cuts.
const (
	Regular Face = iota
	Bold
)

// Family is the family's name, for a style sheet and for the PDF.
const Family = "Go"

// Bytes is the TrueType file of a cut. It must not be changed.
func Bytes(f Face) []byte {
	if f == Bold {
		return gobold.TTF
	}
	return goregular.TTF
}

// has tells whether the letters have a sign for a character.
func has(f Face, r rune) bool {
	c := cutOf(f)
	c.mutex.Lock()
	defer c.mutex.Unlock()
	i, err := c.font.GlyphIndex(&c.buffer, r)
	return err == nil && i != 0
}

// Width is how wide a text comes out when the letters' body is so high; both in the same
// unit. Control characters and what the letters lack count as the sign for a missing one.
func Width(f Face, text string, size float64) float64 {
	c := cutOf(f)
	c.mutex.Lock()
	defer c.mutex.Unlock()
	total := fixed.Int26_6(0)
	for _, r := range text {
		total += c.advance(r)
	}
	return float64(total) / float64(c.em) * size
}

// cut is a parsed cut with the widths that were asked for so far.
type cut struct {
	mutex    sync.Mutex
	font     *sfnt.Font
	buffer   sfnt.Buffer
	em       fixed.Int26_6
	advances map[rune]fixed.Int26_6
}

func (c *cut) advance(r rune) fixed.Int26_6 {
	if known, is := c.advances[r]; is {
		return known
	}
	i, err := c.font.GlyphIndex(&c.buffer, r)
	if err != nil {
		i = 0
	}
	wide, err := c.font.GlyphAdvance(&c.buffer, i, c.em, font.HintingNone)
	if err != nil {
		panic(err) // every glyph of the built-in letters has a width
	}
	c.advances[r] = wide
	return wide
}

var cuts = [...]func() *cut{
	Regular: sync.OnceValue(func() *cut { return parse(Regular) }),
	Bold:    sync.OnceValue(func() *cut { return parse(Bold) }),
}

func cutOf(f Face) *cut { return cuts[f]() }

func parse(f Face) *cut {
	parsed, err := sfnt.Parse(Bytes(f))
	if err != nil {
		panic(err) // the letters are part of the program
	}
	return &cut{font: parsed, em: fixed.Int26_6(parsed.UnitsPerEm()) << 6, advances: map[rune]fixed.Int26_6{}}
}
