// Package browser drives a real browser in tests, to see what a reader of our pages sees.
// It speaks the DevTools protocol over two pipes, so no port is opened and no script has
// to stand in the page that is looked at. Nothing of the program imports it.
package browser

import (
	"io"
	"os"
	"os/exec"
	"sync"
	"testing"
	"time"
)

// patience is how long one answer may take before the browser is given up: a test must
// end, and nothing is judged by how long it took.
const patience = 2 * time.Minute

// Browser is a running browser that has no network.
type Browser struct {
	to      io.Writer
	mutex   sync.Mutex
	next    int
	answers map[int]chan message
	pages   map[string]*Page // by session
}

// Start starts the browser that the variable CHROMIUM names, or else chromium, with an
// empty profile. It ends with the test; starting it takes longer than anything that it does,
// so tests that need it share one.
func Start(t testing.TB) *Browser {
	t.Helper()
	name := os.Getenv("CHROMIUM")
	if name == "" {
		name = "chromium"
	}
	commands, to := pipe(t)
	from, answers := pipe(t)
	c := exec.Command(name, append(switches, "--user-data-dir="+t.TempDir())...)
	c.ExtraFiles = []*os.File{commands, answers} // the protocol's numbers 3 and 4
	if err := c.Start(); err != nil {
		t.Fatalf("a browser is needed for this test: install chromium, or name one in CHROMIUM: %v", err)
	}
	commands.Close()
	answers.Close()
	b := &Browser{to: to, answers: map[int]chan message{}, pages: map[string]*Page{}}
	go b.listen(from)
	t.Cleanup(func() { b.stop(c) })
	return b
}

// switches keep the browser to itself: it finds no host by any name, and asks for nothing
// on its own account.
var switches = []string{
	"--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
	"--disable-component-update", "--disable-sync", "--disable-extensions", "--disable-dev-shm-usage", "--hide-scrollbars",
	"--host-resolver-rules=MAP * ~NOTFOUND", "--remote-debugging-pipe", "about:blank",
}

func pipe(t testing.TB) (read, write *os.File) {
	t.Helper()
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { read.Close(); write.Close() }) // closing twice does no harm
	return read, write
}

// stop asks the browser to end, so that it lets go of its profile, and waits for it.
func (b *Browser) stop(c *exec.Cmd) {
	b.send(message{Method: "Browser.close"})
	timer := time.AfterFunc(patience, func() { c.Process.Kill() })
	defer timer.Stop()
	c.Wait()
}
