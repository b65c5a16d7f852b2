package text

import "github.com/fatih/color"

// Style is what a piece of text is, for a page that is painted. Colour says
// nothing that the words do not say.
type Style int

// The styles.
const (
	Plain   Style = iota
	Strong        // what the eye should find first
	Danger        // the signal word DANGER
	Warning       // the signal word WARNING
	Caution       // the signal word CAUTION
	Notice        // the signal word NOTICE
	Mark          // carets under a line of a file
)

// Paint puts a style on a text.
type Paint func(Style, string) string

func plain(_ Style, text string) string { return text }

// Colours paints with the sixteen colours that every terminal has, so that the
// reader's own theme decides on the contrast.
func Colours() Paint {
	inks := map[Style]*color.Color{
		Strong:  color.New(color.Bold),
		Danger:  color.New(color.FgRed, color.Bold),
		Warning: color.New(color.FgMagenta, color.Bold),
		Caution: color.New(color.FgYellow, color.Bold),
		Notice:  color.New(color.FgCyan, color.Bold),
		Mark:    color.New(color.FgRed),
	}
	for _, ink := range inks {
		ink.EnableColor()
	}
	return func(style Style, text string) string {
		if ink := inks[style]; ink != nil {
			return ink.Sprint(text)
		}
		return text
	}
}
