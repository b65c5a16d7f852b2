package calcsheet

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/report"
)

// The elements and attributes that a page is made of: none of them runs anything, leads
// anywhere or asks for anything.
var (
	elements = strings.Fields("html head meta title style body header main footer section div p h1 h2 h3 dl dt dd ul li b strong span code " +
		"table caption thead tbody tr th td details summary figure figcaption svg desc text path")
	attributes = strings.Fields("lang charset http-equiv content name class scope data-label id role aria-labelledby viewBox space x y d width height fill stroke stroke-width stroke-dasharray stroke-linejoin font-size font-weight text-anchor textLength lengthAdjust")
)

func pageFor(t interface{ Fatal(...any) }, run *report.Run) string {
	var out bytes.Buffer
	if err := HTML(&out, run); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// wordsOf reads a page as XML and gives its text, its table heads without a scope
// counted, and all else held against what a page may be made of.
func wordsOf(t interface{ Fatalf(string, ...any) }, page string) string {
	var words strings.Builder
	inStyle := false
	for d := xml.NewDecoder(strings.NewReader(page)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return words.String()
		}
		if err != nil {
			t.Fatalf("not well formed: %v\n%s", err, page)
		}
		switch token := token.(type) {
		case xml.StartElement:
			inStyle = token.Name.Local == "style"
			names := []string{}
			for _, each := range token.Attr {
				names = append(names, each.Name.Local)
				if !slices.Contains(attributes, each.Name.Local) {
					t.Fatalf("attribute %s of %s", each.Name.Local, token.Name.Local)
				}
			}
			if !slices.Contains(elements, token.Name.Local) || token.Name.Local == "th" && !slices.Contains(names, "scope") {
				t.Fatalf("element %s %v", token.Name.Local, names)
			}
		case xml.EndElement:
			inStyle = false
		case xml.CharData:
			if inStyle {
				if s := string(token); strings.Contains(s, "url(") || strings.Contains(s, "@import") || strings.Contains(s, "Zgotmpl") {
					t.Fatalf("a style that asks for something: %s", s)
				}
				continue
			}
			words.Write(token)
		case xml.Comment, xml.ProcInst:
			t.Fatalf("%v", token)
		}
	}
}

func together(s string) string { return strings.Join(strings.Fields(s), " ") }

// TestHTMLHoldsAnyText: whatever the texts, the page is well formed, is made of what it
// may be made of, and shows them as they are.
func TestHTMLHoldsAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run := sample(hostile(t))
		words := together(wordsOf(t, pageFor(t, run)))
		f := &run.Files[0]
		p := &f.Findings[0].Parts[0]
		for _, each := range []string{f.Title, f.File, f.Findings[0].Label, p.About, p.Text, p.Working[1].Formula, p.Source.Note, p.Missing[0].Measure, f.Figures[0].Title, f.Figures[0].Note} {
			var lines []string // an end of a line in a text is a space on the page
			for _, line := range strings.FieldsFunc(each, func(r rune) bool { return r == '\n' || r == '\r' }) {
				lines = append(lines, clean(line))
			}
			if want := together(strings.Join(lines, " ")); !strings.Contains(words, strings.ReplaceAll(want, "\x00", "\ufffd")) {
				t.Fatalf("%q is not shown in\n%s", want, words)
			}
		}
	})
}

func TestHTMLBeginsAndEndsAsEveryReport(t *testing.T) {
	page := pageFor(t, sample(plainly()))
	words := together(wordsOf(t, page))
	if !strings.HasPrefix(words, "Calculation sheet: locker.low-vent "+strings.Join(report.Cautions(), " ")) || !strings.HasSuffix(words, report.KeepOff) {
		t.Errorf("%s", words)
	}
	for _, want := range []string{`<html lang="en">`, `default-src 'none'`, `@bottom-left { content: "` + report.KeepOff + `"`, `content: "Calculation sheet: locker.low-vent"`,
		`SHA-256 of the file: 0123456789ab"`, "counter(page)"} {
		if !strings.Contains(page, want) {
			t.Errorf("%s is missing", want)
		}
	}
}

// TestContrast: every colour of letters and of the course is told from white by 4.5 to 1
// at least, as WCAG 2.2 (success criterion 1.4.3) asks of small text; the formula is that
// of its "relative luminance". From memory.
func TestContrast(t *testing.T) {
	style, err := templates.ReadFile("page.css")
	if err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile(`[ {]color: #([0-9a-f]{3});`).FindAllSubmatch(style, -1)
	for _, each := range found {
		luminance := 0.0
		for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
			n, err := strconv.ParseUint(string(each[1][i]), 16, 8)
			if err != nil {
				t.Fatal(err)
			}
			c := float64(n*17) / 255
			if c <= 0.04045 {
				luminance += weight * c / 12.92
			} else {
				luminance += weight * math.Pow((c+0.055)/1.055, 2.4)
			}
		}
		if ratio := 1.05 / (luminance + 0.05); ratio < 4.5 {
			t.Errorf("#%s has a contrast of %.1f", each[1], ratio)
		}
	}
	if len(found) < 3 || bytes.Count(style, []byte("color:")) != len(found) || bytes.Count(style, []byte("background")) != 1 {
		t.Errorf("%d colours of letters were read of %d, and there may be one background", len(found), bytes.Count(style, []byte("color:")))
	}
}
