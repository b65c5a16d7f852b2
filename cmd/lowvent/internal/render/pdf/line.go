package pdf

import (
	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/letter"
)

// style is how a text is set.
type style struct {
	face letter.Face
	size float64 // the body's height, in mm
	lead float64 // the height of a line, in mm
}

const point = 25.4 / 72 // mm

func styleOf(face letter.Face, points, lead float64) style {
	return style{face, points * point, points * point * lead}
}

var (
	titleStyle   = styleOf(letter.Bold, 20, 1.2)
	subjectStyle = styleOf(letter.Regular, 12, 1.3)
	partStyle    = styleOf(letter.Bold, 17, 1.2)
	sectionStyle = styleOf(letter.Bold, 13, 1.25)
	headingStyle = styleOf(letter.Bold, 10.5, 1.3)
	bodyStyle    = styleOf(letter.Regular, 9.5, 1.35)
	strongStyle  = styleOf(letter.Bold, 9.5, 1.35)
	tableStyle   = styleOf(letter.Regular, 9, 1.28)
	smallStyle   = styleOf(letter.Regular, 8, 1.26)
	captionStyle = styleOf(letter.Bold, 9, 1.3)
	footStyle    = styleOf(letter.Regular, 8, 1.25)
)

func (s style) bold() style { return style{letter.Bold, s.size, s.lead} }

// How far letters go above and below their line, as shares of the body (see draw.Text).
const above, below = 0.80, 0.21

// base is how far below a line's top its letters stand.
func (s style) base() float64 { return (s.lead-(above+below)*s.size)/2 + above*s.size }

// words is a line of text as a piece, its line's top being at y.
func (s style) words(of int, text string, x, y float64) piece {
	return piece{of: of, mark: &draw.Text{At: draw.Point{X: x, Y: y + s.base()}, Size: s.size, Bold: s.face == letter.Bold, Content: text}}
}

// ending is words that end at x.
func (s style) ending(of int, text string, x, y float64) piece {
	return s.words(of, text, x-letter.Width(s.face, text, s.size), y)
}

// inset is the room between a signal word and the edge of its box, in mm; behind the box
// there is as much again.
const inset = 1.1

// signalWidth is how wide a signal word with its box comes out, without the room behind.
func (s style) signalWidth(word string) float64 {
	return letter.Width(letter.Bold, letter.Printable(word), s.size) + 2*inset
}

// signal is a signal word in its box, in so much room at most, and how wide it is.
func (s style) signal(of int, word string, room float64) ([]piece, float64) {
	wide := s.signalWidth(word)
	b := s.bold()
	if wide > room { // smaller letters rather than half a word
		b.size *= (room - inset) / (wide - inset)
		wide = room
	}
	word = letter.Printable(word)
	x := (wide - letter.Width(letter.Bold, word, b.size)) / 2
	ground, ink := inks(word)
	text := b.words(of, word, x, 0)
	text.mark.(*draw.Text).Ink = ink
	width := 0.0
	if ground == draw.White {
		width = line
	}
	box := draw.Rectangle{Left: 0, Top: 0.04 * s.lead, Right: wide, Bottom: 0.96 * s.lead}
	return []piece{rectangle(box, ground, width), text}, wide
}

// inks are the ground and the letters of a signal word (ANSI Z535.1). The word stands
// there in any case, so that nothing hangs on them.
func inks(word string) (ground, letters draw.Ink) {
	switch word {
	case "DANGER":
		return draw.Red, draw.White
	case "WARNING":
		return draw.Orange, draw.Black
	case "CAUTION":
		return draw.Yellow, draw.Black
	case "NOTICE":
		return draw.Blue, draw.White
	}
	return draw.White, draw.Black
}
