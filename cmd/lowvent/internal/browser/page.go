package browser

import (
	"encoding/json"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// Page is a page that is open in the browser.
type Page struct {
	t        testing.TB
	b        *Browser
	session  string
	loaded   chan struct{}
	requests []string // guarded by the browser's mutex, as is what follows
	messages []string
}

// params are the parameters of a command.
type params = map[string]any

// Open writes a page into a file of its own and opens that, on a screen so many CSS pixels
// wide. It comes back when the page is loaded.
func (b *Browser) Open(t testing.TB, page []byte, width int) *Page {
	t.Helper()
	path := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(path, page, 0o600); err != nil {
		t.Fatal(err)
	}
	p := b.tab(t)
	for _, each := range []string{"Page", "Network", "Log", "Runtime"} {
		p.call(each+".enable", nil, nil)
	}
	p.Resize(width)
	p.call("Page.navigate", params{"url": (&url.URL{Scheme: "file", Path: path}).String()}, nil)
	select {
	case <-p.loaded:
	case <-time.After(patience):
		t.Fatal("browser: the page does not load")
	}
	return p
}

// tab opens an empty tab.
func (b *Browser) tab(t testing.TB) *Page {
	t.Helper()
	var target struct{ TargetID string }
	b.call(t, "", "Target.createTarget", params{"url": "about:blank"}, &target)
	var session struct{ SessionID string }
	b.call(t, "", "Target.attachToTarget", params{"targetId": target.TargetID, "flatten": true}, &session)
	p := &Page{t: t, b: b, session: session.SessionID, loaded: make(chan struct{}, 8)}
	b.mutex.Lock()
	defer b.mutex.Unlock()
	b.pages[p.session] = p
	return p
}

func (p *Page) call(method string, params, into any) {
	p.t.Helper()
	p.b.call(p.t, p.session, method, params, into)
}

// event notes what the browser tells of the page.
func (p *Page) event(method string, raw json.RawMessage) {
	switch method {
	case "Page.loadEventFired":
		select {
		case p.loaded <- struct{}{}:
		default:
		}
	case "Network.requestWillBeSent":
		var e struct{ Request struct{ URL string } }
		if json.Unmarshal(raw, &e) == nil {
			p.requests = append(p.requests, e.Request.URL)
		}
	case "Log.entryAdded", "Runtime.consoleAPICalled", "Runtime.exceptionThrown":
		p.messages = append(p.messages, method+" "+string(raw))
	}
}

// Requests is every address that the page asked for, its own first.
func (p *Page) Requests() []string {
	p.b.mutex.Lock()
	defer p.b.mutex.Unlock()
	return append([]string(nil), p.requests...)
}

// Messages is all that the browser had to complain of, and all that was logged.
func (p *Page) Messages() []string {
	p.t.Helper()
	p.Eval("0", new(int)) // what the page said before this answer has come in
	p.b.mutex.Lock()
	defer p.b.mutex.Unlock()
	return append([]string(nil), p.messages...)
}

// Eval decodes the value of a JavaScript expression. It is the browser that evaluates it,
// so a page that allows no script is measured as well.
func (p *Page) Eval(expression string, into any) {
	p.t.Helper()
	var answer struct {
		Result           struct{ Value json.RawMessage }
		ExceptionDetails json.RawMessage
	}
	p.call("Runtime.evaluate", params{"expression": expression, "returnByValue": true}, &answer)
	if answer.ExceptionDetails != nil {
		p.t.Fatalf("browser: %s: %s", expression, answer.ExceptionDetails)
	}
	if err := json.Unmarshal(answer.Result.Value, into); err != nil {
		p.t.Fatalf("browser: %s: %v", expression, err)
	}
}

// Resize makes the screen so many CSS pixels wide.
func (p *Page) Resize(width int) {
	p.t.Helper()
	p.call("Emulation.setDeviceMetricsOverride", params{"width": width, "height": 900, "deviceScaleFactor": 1, "mobile": false}, nil)
}

// Wide lists what sticks out to the right of the screen and can't be scrolled to within a
// frame of its own, each as its tag with its class; nothing when the page fits.
func (p *Page) Wide() []string {
	p.t.Helper()
	var out []string
	p.Eval(strings.TrimSpace(wide), &out)
	return out
}

const wide = `
(() => {
	const edge = document.documentElement.clientWidth + 0.5, out = [];
	const scrolls = e => e && (getComputedStyle(e).overflowX != "visible" && e.getBoundingClientRect().right <= edge || scrolls(e.parentElement));
	if (document.documentElement.scrollWidth > edge) out.push("the page: " + document.documentElement.scrollWidth);
	for (const e of document.body.querySelectorAll("*"))
		if (e.getBoundingClientRect().right > edge && !scrolls(e.parentElement))
			out.push(e.tagName + "." + (e.getAttribute("class") || "") + ": " + (e.textContent || "").slice(0, 40));
	return out;
})()`
