// Package pdf writes a paper as PDF: flowing pages of black on white, with vector
// drawings at their true size, embedded letters and the enclosures as attachments. What
// stands where is worked out first, without any PDF (see arrange); the writing adds
// nothing to it. The same paper gives the same bytes.
package pdf

import (
	"bytes"
	"fmt"
	"io"
	"time"

	"lowvent.example/cmd/lowvent/internal/paper"
)

// Write writes the document on sheets of a size. It needs a document that passes its own
// Check, a day of making written YYYY-MM-DD, and a foot that leaves room for the rest.
func Write(w io.Writer, d *paper.Document, size Sheet) error {
	if err := d.Check(); err != nil {
		return fmt.Errorf("this paper can't be printed: %w", err)
	}
	made, err := time.Parse(time.DateOnly, d.Made)
	if err != nil {
		return fmt.Errorf("this paper can't be printed: the day of its making is %q, and must be a date YYYY-MM-DD", d.Made)
	}
	pages, err := arrange(d, size)
	if err != nil {
		return err
	}
	var body bytes.Buffer
	if err := put(&body, d, made, pages); err != nil {
		return fmt.Errorf("the PDF can't be written: %w", err)
	}
	whole, err := finish(body.Bytes(), d, pages)
	if err != nil {
		return fmt.Errorf("the PDF can't be written: %w", err)
	}
	_, err = w.Write(whole)
	return err
}
