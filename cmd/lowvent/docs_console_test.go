package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"lowvent.example/schema/source"
)

// walkDoc is the document whose blocks another program runs: the one that it
// tells how to make.
const walkDoc = "docs/add-a-check.md"

// TestDocsConsole runs every console block and every excerpt of the documents,
// and holds that the program prints what they show.
func TestDocsConsole(t *testing.T) {
	for _, name := range documents(t) {
		if name != walkDoc {
			t.Run(name, func(t *testing.T) {
				c := console{t: t, doc: name, program: "lowvent", folders: map[string]string{}}
				fresh(t, name, c.document(readDoc(t, name)))
			})
		}
	}
}

// console runs the blocks of one document. A block runs at the top of the module,
// or with dir=NAME in a folder of its own, which all blocks of that name share. It
// fails unless the commands end with the status of the option exit, 0 by default.
type console struct {
	t       *testing.T
	doc     string
	program string
	folders map[string]string // where the blocks of each name are now
}

// document gives the text of a document as it should be.
func (c *console) document(text string) string {
	text = c.excerpts(text)
	document := lines(text)
	blocks := fencesOf(c.t, c.doc, document)
	var bodies [][]string
	for i := range blocks {
		body := blocks[i].body
		switch blocks[i].language {
		case "console":
			body = c.block(&blocks[i])
		case "json":
			c.write(&blocks[i])
		}
		bodies = append(bodies, body)
	}
	return strings.Join(replaced(document, blocks, bodies), "\n") + "\n"
}

// block runs the commands of a block, lines that begin with "$ ", and gives the
// block as it should be.
func (c *console) block(f *fence) []string {
	c.t.Helper()
	if len(f.body) == 0 || !strings.HasPrefix(f.body[0], "$ ") {
		c.t.Fatalf("%s: a console block begins with a command after \"$ \"", f.at(c.doc))
	}
	var out []string
	for i := 0; i < len(f.body); {
		end := i + 1
		for end < len(f.body) && !strings.HasPrefix(f.body[end], "$ ") {
			end++
		}
		printed, status := c.command(f, strings.Fields(f.body[i])[1:])
		if want := f.options["exit"]; strconv.Itoa(status) != want && (want != "" || status != 0) {
			c.t.Errorf("%s: %s ends with status %d, the block says exit=%s:\n%s", f.at(c.doc), f.body[i], status, want, printed)
		}
		shown, err := refreshed(f.body[i+1:end], lines(printed))
		if err != nil {
			c.t.Errorf("%s: %s: %v", f.at(c.doc), f.body[i], err)
		}
		out, i = append(append(out, f.body[i]), shown...), end
	}
	return out
}

// command runs one command and gives what it prints and its exit status.
func (c *console) command(f *fence, words []string) (string, int) {
	c.t.Helper()
	if len(words) > 3 && strings.Join(words[:3], " ") == "go run ./cmd/lowvent" {
		words = append([]string{"lowvent"}, words[3:]...)
	}
	folder := c.folder(f)
	switch {
	case len(words) > 1 && words[0] == "lowvent":
		return c.lowvent(folder, words[1:])
	case len(words) == 2 && words[0] == "mkdir" && f.options["dir"] != "":
		if err := os.Mkdir(filepath.Join(folder, words[1]), 0o777); err != nil {
			c.t.Fatal(err)
		}
	case len(words) == 2 && words[0] == "cd" && f.options["dir"] != "":
		c.folders[f.options["dir"]] = filepath.Join(folder, words[1])
	default:
		c.t.Fatalf("%s: can't run %q; a block may use lowvent, and mkdir and cd where it has dir=NAME", f.at(c.doc), words)
	}
	return "", 0
}

func (c *console) lowvent(folder string, args []string) (string, int) {
	c.t.Helper()
	cmd := exec.Command(c.program, args...)
	cmd.Dir, cmd.Env = folder, append(os.Environ(), "CLICOLOR_FORCE=")
	out, err := cmd.CombinedOutput()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		c.t.Fatal(err)
	}
	return string(out), cmd.ProcessState.ExitCode()
}

// folder is where a block is.
func (c *console) folder(f *fence) string {
	name := f.options["dir"]
	if name == "" {
		return moduleTop(c.t)
	}
	if c.folders[name] == "" {
		c.folders[name] = c.t.TempDir()
	}
	return c.folders[name]
}

// write writes a json block into the file file=NAME, or puts the members that it shows
// into the object at in=POINTER of the file edit=NAME, as a reader with an editor would.
func (c *console) write(f *fence) {
	c.t.Helper()
	if name := f.options["file"]; name != "" {
		if err := os.WriteFile(filepath.Join(c.folder(f), name), []byte(strings.Join(f.body, "\n")+"\n"), 0o666); err != nil {
			c.t.Fatal(err)
		}
		return
	}
	name := f.options["edit"]
	if name == "" || f.options["dir"] == "" {
		return
	}
	path := filepath.Join(c.folder(f), name)
	data, err := os.ReadFile(path)
	if err != nil {
		c.t.Fatal(err)
	}
	shown, fault := source.Parse(source.NewFile(f.at(c.doc), []byte("{"+strings.Join(f.body, "\n")+"}")), source.DefaultLimits())
	if fault != nil {
		c.t.Fatal(fault)
	}
	var edits []source.Edit
	for _, member := range shown.Children {
		edits = append(edits, source.Edit{Pointer: source.Join(f.options["in"], member.Key), Value: member.Raw()})
	}
	file, err := source.Apply(source.NewFile(name, data), nil, edits)
	if err != nil {
		c.t.Fatalf("%s: %v", f.at(c.doc), err)
	}
	if err := os.WriteFile(path, file.Data, 0o666); err != nil {
		c.t.Fatal(err)
	}
}

// excerpt is a part of a document that shows the first lines of what a command
// prints.
var excerpt = regexp.MustCompile(`(?s)(<!-- excerpt: ([^|>]*) \| first ([0-9]+) lines -->\n).*?(<!-- end of excerpt -->)`)

func (c *console) excerpts(text string) string {
	if strings.Count(text, "<!-- excerpt") != len(excerpt.FindAllString(text, -1)) {
		c.t.Fatalf("%s: an excerpt is not written as <!-- excerpt: COMMAND | first N lines -->, with <!-- end of excerpt --> after it", c.doc)
	}
	return excerpt.ReplaceAllStringFunc(text, func(found string) string {
		part := excerpt.FindStringSubmatch(found)
		printed, status := c.command(&fence{}, strings.Fields(part[2]))
		n, err := strconv.Atoi(part[3])
		if err != nil || status > statusFindings || n == 0 || n > len(lines(printed)) {
			c.t.Fatalf("%s: the first %s lines of %s: status %d, %d lines are printed", c.doc, part[3], part[2], status, len(lines(printed)))
		}
		return fmt.Sprintf("%s\n```text\n%s\n```\n\n%s", part[1], strings.Join(lines(printed)[:n], "\n"), part[4])
	})
}
