package unit

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"
)

// spaces draws the space between two parts, with at least so many.
func spaces(least int) *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		var b strings.Builder
		for range rapid.IntRange(least, least+1).Draw(t, "spaces") {
			b.WriteRune(rapid.SampledFrom([]rune{' ', ' ', '\u00a0', '\u2009', '\u202f'}).Draw(t, "space"))
		}
		return b.String()
	})
}

// numbers draws an unsigned number of the grammar.
func numbers() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.StringMatching(`[0-9]{1,3}(\.[0-9]{1,3})?`),
		rapid.StringMatching(`[0-9]{1,12}(\.[0-9]{1,12})?`),
		rapid.StringMatching(`\.[0-9]{1,12}`),
		rapid.StringMatching(`[0-9]{1,4}/[1-9][0-9]{0,3}`),
		rapid.Custom(func(t *rapid.T) string {
			under := rapid.IntRange(1, 9999).Draw(t, "under")
			over := rapid.IntRange(0, under-1).Draw(t, "over")
			return fmt.Sprintf("%d%s%d/%d", rapid.IntRange(0, 9999).Draw(t, "whole"), spaces(1).Draw(t, "space"), over, under)
		}),
	)
}

// words draws a spelling of one of the units.
func words(units []spelling) *rapid.Generator[string] {
	var all []string
	for _, s := range units {
		all = append(append(all, s.name), s.also...)
	}
	return rapid.SampledFrom(all)
}

// signs draws a sign or none.
func signs() *rapid.Generator[string] {
	return rapid.SampledFrom([]string{"", "", "", "+", "-", "−"})
}

// amounts draws a signed number with a unit, or a compound.
func amounts(info *kindInfo, units []spelling) *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		sign, sp := signs().Draw(t, "sign"), spaces(0).Draw(t, "space")
		if info.pair.big != "" && rapid.IntRange(0, 3).Draw(t, "compound") == 0 {
			big := rapid.StringMatching(`[0-9]{1,12}`).Draw(t, "big")
			small := rapid.OneOf(rapid.StringMatching(`[0-9](\.[0-9]{1,3})?`), numbers()).Draw(t, "small")
			return sign + big + sp + info.pair.big + spaces(1).Draw(t, "gap") + small + sp + info.pair.small
		}
		return sign + numbers().Draw(t, "number") + sp + words(units).Draw(t, "unit")
	})
}

// plainTexts draws a text with one amount and no tolerance.
func plainTexts(k Kind) *rapid.Generator[string] {
	return amounts(k.info(), k.info().units)
}

// formed draws any text of the kind's form. Its value may be out of range.
func formed(k Kind) *rapid.Generator[string] {
	info := k.info()
	return rapid.Custom(func(t *rapid.T) string {
		units := info.units
		if info.alike {
			at := rapid.IntRange(0, len(units)-1).Draw(t, "one unit")
			units = units[at : at+1]
		}
		text := spaces(0).Draw(t, "before") + amounts(info, units).Draw(t, "value")
		switch rapid.IntRange(0, 2).Draw(t, "join") {
		case 1:
			slack := units
			if info.slack != nil {
				slack = info.slack
			}
			sp := spaces(0).Draw(t, "about the sign")
			text += sp + rapid.SampledFrom([]string{"±", "+/-", "+-"}).Draw(t, "plus-minus") + sp + numbers().Draw(t, "tolerance") + sp
			if info.relative && rapid.Bool().Draw(t, "share") {
				text += "%"
			} else {
				text += words(slack).Draw(t, "its unit")
			}
		case 2:
			text += spaces(1).Draw(t, "before to") + "to" + spaces(1).Draw(t, "after to") + amounts(info, units).Draw(t, "end")
		}
		return text + spaces(0).Draw(t, "after")
	})
}

// damaged draws a text of the form with some characters changed.
func damaged(k Kind) *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		text := []rune(formed(k).Draw(t, "text"))
		for range rapid.IntRange(1, 3).Draw(t, "edits") {
			at := rapid.IntRange(0, len(text)).Draw(t, "at")
			put := rapid.SampledFrom([]rune("0123456789..//  +-−±%,eEtoimnfgkKCFdWhabsr²³°()\"'\u00a0\n")).Draw(t, "put")
			switch rapid.IntRange(0, 2).Draw(t, "edit") {
			case 0:
				text = append(text[:at:at], append([]rune{put}, text[at:]...)...)
			case 1:
				text = append(text[:at:at], text[min(at+1, len(text)):]...)
			default:
				text = append(text[:at:at], append([]rune{put}, text[min(at+1, len(text)):]...)...)
			}
		}
		return string(text)
	})
}
