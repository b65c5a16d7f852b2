//go:build seen

package main

import (
	"fmt"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/browser"
	"lowvent.example/cmd/lowvent/internal/starter"
	"lowvent.example/schema/report"
)

// TestSeenSheets looks at calculation sheets and worksheets as their readers do: on a desk,
// on a telephone, and on both papers.
func TestSeenSheets(t *testing.T) {
	b := browser.Start(t)
	pages := map[string][]string{
		"course of a cylinder":   {"explain", "regulator.cold-course", faultyDemo, "--format", "html"},
		"low vent":               {"explain", "locker.low-vent", faultyDemo, "--format", "html"},
		"distances":              {"explain", "ignition.near-gas", faultyDemo, "--format", "html"},
		"what sedge leaves open": {"worksheet", "testdata/layouts/sedge.json", "--on", "2026-11-25", "--out", "-"},
		"what a van leaves open": {"worksheet", "internal/starter/van.json", "--on", "2026-11-25", "--out", "-"},
		"connected load":         {"explain", "dwelling.connected-load", "testdata/layouts/sedge.json", "--format", "html"},
	}
	for _, scene := range starter.Scenes() {
		pages["worksheet "+scene] = []string{"worksheet", "--scene", scene, "--out", "-"}
	}
	for name, args := range pages {
		t.Run(name, func(t *testing.T) {
			out := run(nil, args...)
			if out.status > statusFindings || len(out.stdout) < 5000 {
				t.Fatalf("status %d, %d bytes: %s", out.status, len(out.stdout), out.stderr)
			}
			p := b.Open(t, []byte(out.stdout), 1200)
			onScreens(t, p, 1200, 400, 320)
			for _, on := range []browser.Paper{browser.A4, browser.Letter} {
				sheetPrinted(t, p, on)
			}
		})
	}
}

const faultyDemo = "../../testdata/layouts/sorrel-faulty.json"

// sheetPrinted: on paper nothing runs over the edge, and each page says to keep the gas
// off.
func sheetPrinted(t *testing.T, p *browser.Page, on browser.Paper) {
	t.Helper()
	const edge = 6 // mm: what printers reach
	pdf := p.Print(on)
	keep(t, strings.ReplaceAll(t.Name(), "/", "-")+"-"+on.Name+".pdf", pdf)
	for i, words := range browser.Words(t, pdf) {
		for _, w := range words {
			if w.Left < edge || w.Right > on.Wide-edge || w.Top < edge || w.Bottom > on.High-edge {
				t.Errorf("%s, page %d: %+v lies beyond the edge", on.Name, i+1, w)
			}
		}
	}
	for i, words := range browser.Words(t, pdf) {
		overprinted(t, fmt.Sprintf("%s, page %d", on.Name, i+1), words)
	}
	for i, text := range browser.Texts(t, pdf) {
		if !strings.Contains(packed(text), packed(report.KeepOff)) {
			t.Errorf("%s, page %d lacks %q: %.200q", on.Name, i+1, report.KeepOff, text)
		}
	}
}

// overprinted: no word is set over another, as the last lines of a page would be by its foot.
func overprinted(t *testing.T, page string, words []browser.Word) {
	t.Helper()
	const touch = 0.4 // mm: what the boxes of letters have above and below them
	for i, one := range words {
		for _, other := range words[:i] {
			if min(one.Right, other.Right)-max(one.Left, other.Left) > touch && min(one.Bottom, other.Bottom)-max(one.Top, other.Top) > touch {
				t.Errorf("%s: %+v is set over %+v", page, one, other)
				return
			}
		}
	}
}
