//go:build seen

package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/browser"
	"lowvent.example/cmd/lowvent/internal/handoff"
)

// pdfIsWhole: the letters travel with it, the layout comes out of it as it went in, and
// every page has the foot and its number.
func pdfIsWhole(t *testing.T, h *handedOver) {
	t.Helper()
	fonts := strings.Split(strings.TrimSpace(browser.Poppler(t, "pdffonts", h.pdf)), "\n")[2:]
	for _, row := range fonts {
		// The last columns are: embedded, subset, with a map to Unicode, object, generation.
		if f := strings.Fields(row); f[len(f)-5] != "yes" || f[len(f)-3] != "yes" {
			t.Errorf("a font that is not embedded, or can't be searched: %s", row)
		}
	}
	folder := t.TempDir()
	browser.Poppler(t, "pdfdetach", h.pdf, "-saveall", "-o", folder)
	if data, err := os.ReadFile(filepath.Join(folder, "layout.json")); err != nil || !bytes.Equal(data, h.data) {
		t.Errorf("the layout comes back as %d bytes of %d, %v", len(data), len(h.data), err)
	}
	pages := browser.Texts(t, h.pdf)
	for i, page := range pages {
		if number := fmt.Sprintf("page %d of %d", i+1, len(pages)); !strings.Contains(page, handoff.Foot) || !strings.HasSuffix(page, number) {
			t.Errorf("page %d lacks the foot, or ends with %q", i+1, page[max(0, len(page)-len(number)):])
		}
	}
	if most := len(h.report.Findings); len(fonts) != 2 || len(pages) < 20 || len(pages) > most {
		t.Errorf("%d fonts, %d pages for %d findings", len(fonts), len(pages), most)
	}
}

// sameAgain: the command gives the same bytes again, judging one check at a time.
func sameAgain(t *testing.T, h *handedOver, name string) {
	t.Helper()
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	if html, pdf := papers(t, name); !bytes.Equal(html, h.html) || !bytes.Equal(pdf, h.pdf) {
		t.Errorf("the papers differ: html %v, pdf %v", !bytes.Equal(html, h.html), !bytes.Equal(pdf, h.pdf))
	}
}
