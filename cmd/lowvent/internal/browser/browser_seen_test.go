//go:build seen

package browser

import (
	"math"
	"strings"
	"testing"
)

// TestSeen: what these pages do wrong, ours must not; here it is shown that it would be
// noticed.
func TestSeen(t *testing.T) {
	b := Start(t)
	for name, test := range map[string]func(*testing.T, *Browser){"wide": wideIsSeen, "asks": requestsAreSeen, "print": printIsSeen, "spans": spansAreMeasured} {
		t.Run(name, func(t *testing.T) { test(t, b) })
	}
}

func wideIsSeen(t *testing.T, b *Browser) {
	p := b.Open(t, []byte(`<!DOCTYPE html><body style="margin:0"><p class="long" style="width:900px">x</p>
		<div style="overflow-x:auto"><table style="width:2000px"><tr><td>scrolls on its own</td></tr></table></div>`), 400)
	if out := strings.Join(p.Wide(), "\n"); !strings.Contains(out, "P.long: x") || !strings.Contains(out, "the page: 900") || strings.Contains(out, "scrolls") {
		t.Errorf("at 400 px: %s", out)
	}
	p.Resize(1200)
	if out := p.Wide(); len(out) > 0 {
		t.Errorf("at 1200 px: %v", out)
	}
}

func requestsAreSeen(t *testing.T, b *Browser) {
	p := b.Open(t, []byte(`<!DOCTYPE html><meta http-equiv="Content-Security-Policy" content="script-src 'none'">
		<img src="http://elsewhere.invalid/picture.png"><script>nothing()</script>`), 400)
	if all := strings.Join(p.Requests(), "\n"); !strings.HasPrefix(all, "file:///") || !strings.Contains(all, "elsewhere.invalid") {
		t.Errorf("requests: %s", all)
	}
	if all := strings.Join(p.Messages(), "\n"); !strings.Contains(all, "Content Security Policy") || !strings.Contains(all, "ERR_NAME_NOT_RESOLVED") {
		t.Errorf("messages: %s", all)
	}
	clean := b.Open(t, []byte(`<!DOCTYPE html><title>t</title><p>x</p>`), 400)
	if len(clean.Requests()) != 1 || len(clean.Messages()) != 0 {
		t.Errorf("a clean page: %v %v", clean.Requests(), clean.Messages())
	}
}

func printIsSeen(t *testing.T, b *Browser) {
	p := b.Open(t, []byte(`<!DOCTYPE html><style>@page{margin:20mm} body,p{margin:0} .next{break-before:page;padding-left:100mm}</style><p>one
		word</p><p class="next">two</p>`), 400)
	for _, on := range []Paper{A4, Letter} {
		pdf := p.Print(on)
		if texts := Texts(t, pdf); len(texts) != 2 || texts[0] != "one word" || texts[1] != "two" {
			t.Errorf("%s: %q", on.Name, texts)
		}
		words := Words(t, pdf)
		if one, two := words[0][0], words[1][0]; one.Text != "one" || math.Abs(one.Left-20) > 0.2 || math.Abs(two.Left-120) > 0.2 {
			t.Errorf("%s: %v", on.Name, words)
		}
	}
}

func spansAreMeasured(t *testing.T, b *Browser) {
	p := b.Open(t, []byte(`<!DOCTYPE html><svg viewBox="0 0 100 50" width="100mm" style="max-width:100px" data-scale="40"><title>Plan</title>
		<g transform="scale(2)"><line class="span" stroke="none" x1="1" y1="2" x2="16" y2="22" data-metres="1.25" data-text="1.25 m" data-check="c" data-subject="/s"/></g></svg>`), 400)
	all := p.Spans()
	if len(all) != 1 {
		t.Fatalf("%v", all)
	}
	if s := all[0]; s.Drawing != "Plan" || s.Text != "1.25 m" || s.Check != "c" || s.Subject != "/s" || s.Scale != 40 || math.Abs(s.Measured-1.25) > 1e-6 || s.Metres != 1.25 {
		t.Errorf("%+v", s)
	}
}
