// Package browser drives a real browser in tests, to see what a reader of our pages sees.
// It speaks the DevTools protocol over two pipes, so no port is opened and no script has
// to stand in the page that is looked at. Nothing of the program imports it.
package browser

import (
	"bufio"
	"encoding/json"
	"fmt"
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
	t       testing.TB
	to      io.Writer
	mutex   sync.Mutex
	next    int
	answers map[int]chan message
	pages   map[string]*Page // by session
}

// message is a command, its answer or an event of the protocol.
type message struct {
	ID        int             `json:"id,omitempty"`
	SessionID string          `json:"sessionId,omitempty"`
	Method    string          `json:"method,omitempty"`
	Params    any             `json:"params,omitempty"`
	Result    json.RawMessage `json:"result,omitempty"`
	Error     *struct {
		Message string `json:"message"`
	} `json:"error,omitempty"`
}

// Start starts the browser that the variable CHROMIUM names, or else chromium, with an
// empty profile. It ends with the test.
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
	b := &Browser{t: t, to: to, answers: map[int]chan message{}, pages: map[string]*Page{}}
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

// listen takes what the browser says until it ends.
func (b *Browser) listen(from io.Reader) {
	for r := bufio.NewReader(from); ; {
		line, err := r.ReadBytes(0)
		if err != nil {
			return
		}
		var m struct {
			message
			Params json.RawMessage `json:"params"`
		}
		if json.Unmarshal(line[:len(line)-1], &m) == nil {
			b.take(m.message, m.Params)
		}
	}
}

// take gives an answer to whoever waits for it, and an event to the page that it is of.
func (b *Browser) take(m message, params json.RawMessage) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	if p := b.pages[m.SessionID]; m.ID == 0 && p != nil {
		p.event(m.Method, params)
	}
	if waits := b.answers[m.ID]; waits != nil {
		waits <- m
		delete(b.answers, m.ID)
	}
}

// send sends a command and gives the channel on which its answer will come.
func (b *Browser) send(m message) (<-chan message, error) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	b.next++
	m.ID = b.next
	answer := make(chan message, 1)
	b.answers[m.ID] = answer
	command, err := json.Marshal(m)
	if err != nil {
		return nil, err
	}
	_, err = b.to.Write(append(command, 0))
	return answer, err
}

// call sends a command, waits for its answer and decodes it. A refusal ends the test.
func (b *Browser) call(session, method string, params, into any) {
	b.t.Helper()
	answer, err := b.send(message{SessionID: session, Method: method, Params: params})
	if err == nil {
		select {
		case m := <-answer:
			err = decode(m, into)
		case <-time.After(patience):
			err = fmt.Errorf("no answer")
		}
	}
	if err != nil {
		b.t.Fatalf("browser: %s: %v", method, err)
	}
}

func decode(m message, into any) error {
	if m.Error != nil {
		return fmt.Errorf("refused: %s", m.Error.Message)
	}
	if into == nil {
		return nil
	}
	return json.Unmarshal(m.Result, into)
}
