package browser

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"testing"
	"time"
)

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
func (b *Browser) call(t testing.TB, session, method string, params, into any) {
	t.Helper()
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
		t.Fatalf("browser: %s: %v", method, err)
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
