//go:build seen

package pdf

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/letter"
)

// These tests look at the PDF with the tools of poppler-utils, which are not Go.

// printed is the sample as a file on each sheet.
func printed(t *testing.T, f func(t *testing.T, file string)) {
	for name, size := range map[string]Sheet{"a4": A4, "letter": Letter} {
		t.Run(name, func(t *testing.T) {
			file := filepath.Join(t.TempDir(), name+".pdf")
			if err := os.WriteFile(file, written(t, sample(), size), 0o666); err != nil {
				t.Fatal(err)
			}
			f(t, file)
		})
	}
}

// tool runs a program of poppler-utils; it must say nothing against the file.
func tool(t *testing.T, name string, args ...string) string {
	t.Helper()
	var out, complaints bytes.Buffer
	c := exec.Command(name, args...)
	c.Stdout, c.Stderr = &out, &complaints
	if err := c.Run(); err != nil || complaints.Len() > 0 {
		t.Fatalf("%s: %v: %s", name, err, complaints.String())
	}
	return out.String()
}

func TestSeenFontsAreEmbedded(t *testing.T) {
	printed(t, func(t *testing.T, file string) {
		rows := strings.Split(strings.TrimSpace(tool(t, "pdffonts", file)), "\n")[2:]
		for _, row := range rows {
			// The last columns are: embedded, subset, with a map to Unicode, object, generation.
			fields := strings.Fields(row)
			if n := len(fields); fields[n-5] != "yes" || fields[n-3] != "yes" {
				t.Errorf("a font that is not embedded, or can't be searched: %s", row)
			}
		}
		if len(rows) != 2 {
			t.Errorf("%d fonts, want the regular and the bold one", len(rows))
		}
	})
}

// TestSeenTextsInReadingOrder: every text of the paper is found in what pdftotext reads,
// one after the other.
func TestSeenTextsInReadingOrder(t *testing.T) {
	printed(t, func(t *testing.T, file string) {
		read := bare(tool(t, "pdftotext", "-raw", file, "-"))
		if foot := bare(sample().Foot); strings.Count(read, foot) != 6 {
			t.Errorf("the foot is read %d times on 6 pages", strings.Count(read, foot))
		}
		at := 0
		for i, text := range sample().Texts() {
			if i == ofFoot-1 {
				continue
			}
			text = bare(letter.Printable(text))
			next := strings.Index(read[at:], text)
			if next < 0 {
				t.Fatalf("%q is not read after %q", text, read[max(0, at-80):at])
			}
			at += next + len(text)
		}
	})
}

func bare(text string) string { return strings.Join(strings.Fields(text), "") }

func TestSeenEnclosuresComeBack(t *testing.T) {
	printed(t, func(t *testing.T, file string) {
		folder := t.TempDir()
		tool(t, "pdfdetach", "-saveall", "-o", folder, file)
		for _, e := range sample().Enclosed {
			data, err := os.ReadFile(filepath.Join(folder, e.Name))
			if err != nil || !bytes.Equal(data, e.Data) {
				t.Errorf("%s comes back as %q, %v", e.Name, data, err)
			}
		}
	})
}

// TestSeenOutline: pdftohtml tells the outline with the pages that it leads to.
func TestSeenOutline(t *testing.T) {
	printed(t, func(t *testing.T, file string) {
		told := tool(t, "pdftohtml", "-xml", "-i", "-stdout", file)
		for _, want := range []string{`<item page="1">For the fitter</item>`, `<item page="3">Test sheet</item>`, `<item page="6">For the owner</item>`} {
			if !strings.Contains(told, want) {
				t.Errorf("the outline lacks %s", want)
			}
		}
	})
}

// TestSeenPagesAreDrawn: every page can be drawn, and the drawings are not empty.
func TestSeenPagesAreDrawn(t *testing.T) {
	printed(t, func(t *testing.T, file string) {
		stem := filepath.Join(t.TempDir(), "page")
		tool(t, "pdftoppm", "-r", "40", "-gray", file, stem)
		pages, err := filepath.Glob(stem + "*")
		if err != nil || len(pages) != 6 {
			t.Fatalf("%d pages are drawn, %v", len(pages), err)
		}
		for _, name := range pages {
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			if dark := bytes.Count(data, []byte{0}); dark < 100 {
				t.Errorf("%s has %d black points", filepath.Base(name), dark)
			}
		}
	})
}
