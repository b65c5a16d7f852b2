package browser

import (
	"bytes"
	"encoding/xml"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// Paper is a size of paper, in mm.
type Paper struct {
	Name       string
	Wide, High float64
}

// The papers that our pages must come out on.
var (
	A4     = Paper{"A4", 210, 297}
	Letter = Paper{"Letter", 215.9, 279.4}
)

const inch = 25.4

// Print prints the page as its own style sheet says, and gives the PDF.
func (p *Page) Print(on Paper) []byte {
	p.t.Helper()
	var answer struct{ Data []byte }
	p.call("Page.printToPDF", params{"paperWidth": on.Wide / inch, "paperHeight": on.High / inch, "printBackground": false, "preferCSSPageSize": false,
		"marginTop": 0.4, "marginBottom": 0.4, "marginLeft": 0.4, "marginRight": 0.4}, &answer)
	return answer.Data
}

// Screenshot is a picture of the whole page as PNG.
func (p *Page) Screenshot() []byte {
	p.t.Helper()
	var answer struct{ Data []byte }
	p.call("Page.captureScreenshot", params{"format": "png", "captureBeyondViewport": true}, &answer)
	return answer.Data
}

// Texts is the text of each page of a PDF, with its lines joined by spaces.
func Texts(t testing.TB, pdf []byte) []string {
	t.Helper()
	var all []string
	for page := range strings.SplitSeq(Poppler(t, "pdftotext", pdf, "-"), "\f") {
		all = append(all, strings.Join(strings.Fields(page), " "))
	}
	return all[:len(all)-1] // each page ends with the sign
}

// Word is a word on a printed page, in mm from its top left corner.
type Word struct {
	Text                     string
	Left, Top, Right, Bottom float64
}

// Words is every word of each page of a PDF, with its place.
func Words(t testing.TB, pdf []byte) [][]Word {
	t.Helper()
	var doc struct {
		Pages []struct {
			Words []struct {
				Left   float64 `xml:"xMin,attr"`
				Top    float64 `xml:"yMin,attr"`
				Right  float64 `xml:"xMax,attr"`
				Bottom float64 `xml:"yMax,attr"`
				Text   string  `xml:",chardata"`
			} `xml:"word"`
		} `xml:"body>doc>page"`
	}
	if err := xml.Unmarshal([]byte(Poppler(t, "pdftotext", pdf, "-bbox", "-")), &doc); err != nil {
		t.Fatal(err)
	}
	const mm = inch / 72
	pages := make([][]Word, len(doc.Pages))
	for i, page := range doc.Pages {
		for _, w := range page.Words {
			pages[i] = append(pages[i], Word{w.Text, w.Left * mm, w.Top * mm, w.Right * mm, w.Bottom * mm})
		}
	}
	return pages
}

// Poppler runs one of poppler's tools on a PDF. The arguments follow the PDF's name.
func Poppler(t testing.TB, tool string, pdf []byte, after ...string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "print.pdf")
	if err := os.WriteFile(path, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	var complaint bytes.Buffer
	c := exec.Command(tool, append([]string{path}, after...)...)
	c.Stderr = &complaint
	out, err := c.Output()
	if err != nil {
		t.Fatalf("%s: %v: %s (poppler-utils must be installed)", tool, err, complaint.String())
	}
	return string(out)
}
