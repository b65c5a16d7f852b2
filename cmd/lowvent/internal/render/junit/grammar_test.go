package junit

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// element is what an element of the form may hold. The table is that of junit-10.xsd of
// the xunit plugin (jenkinsci/xunit-plugin, src/main/resources/org/jenkinsci/plugins/
// xunit/types/model/xsd/junit-10.xsd, read), as far as reports use it: the attributes
// that it requires, those that it allows, the children, and whether text may stand there.
type element struct {
	required, allowed, children []string
	text                        bool
}

var grammar = map[string]element{
	"testsuites": {nil, []string{"name", "time", "tests", "failures", "errors"}, []string{"testsuite"}, false},
	"testsuite": {[]string{"name", "tests", "failures", "errors"}, []string{"group", "time", "skipped", "timestamp", "hostname", "id", "package", "file", "log", "url"},
		[]string{"testsuite", "properties", "testcase", "system-out", "system-err"}, false},
	"properties": {nil, nil, []string{"property"}, false},
	"property":   {[]string{"name", "value"}, nil, nil, false},
	"testcase":   {[]string{"name"}, []string{"time", "classname", "group"}, []string{"skipped", "error", "failure", "system-out", "system-err"}, false},
	"failure":    {nil, []string{"type", "message"}, nil, true},
	"error":      {nil, []string{"type", "message"}, nil, true},
	"skipped":    {nil, []string{"type", "message"}, nil, true},
	"system-out": {nil, nil, nil, true},
	"system-err": {nil, nil, nil, true},
}

// read reads a document by the grammar and gives its suites, the counts compared with
// what is there.
func read(data string) (*suites, error) {
	if err := conforms(data); err != nil {
		return nil, err
	}
	var root suites
	if err := xml.Unmarshal([]byte(data), &root); err != nil {
		return nil, err
	}
	var tests, failures, faults int
	for _, s := range root.Suites {
		counted := suite{}
		for _, c := range s.Cases {
			counted.add(c)
		}
		if counted.Tests != s.Tests || counted.Failures != s.Failures || counted.Errors != s.Errors || counted.Skipped != s.Skipped {
			return nil, fmt.Errorf("suite %q counts %d, %d, %d, %d and has %d, %d, %d, %d", s.Name, s.Tests, s.Failures, s.Errors, s.Skipped, counted.Tests, counted.Failures, counted.Errors, counted.Skipped)
		}
		tests, failures, faults = tests+s.Tests, failures+s.Failures, faults+s.Errors
	}
	if tests != root.Tests || failures != root.Failures || faults != root.Errors {
		return nil, fmt.Errorf("the whole counts %d, %d, %d and has %d, %d, %d", root.Tests, root.Failures, root.Errors, tests, failures, faults)
	}
	return &root, nil
}

func conforms(data string) error {
	dec := xml.NewDecoder(strings.NewReader(data))
	dec.Strict = true
	open := []string{""}
	for {
		token, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		above := open[len(open)-1]
		switch token := token.(type) {
		case xml.StartElement:
			if err := allowed(above, token); err != nil {
				return err
			}
			open = append(open, token.Name.Local)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if strings.TrimSpace(string(token)) != "" && !grammar[above].text {
				return fmt.Errorf("text %q stands in <%s>", token, above)
			}
		}
	}
}

func allowed(above string, e xml.StartElement) error {
	name := e.Name.Local
	rule, known := grammar[name]
	switch {
	case !known:
		return fmt.Errorf("there is no element <%s>", name)
	case above == "" && name != "testsuites":
		return fmt.Errorf("<%s> is the whole document", name)
	case above != "" && !slices.Contains(grammar[above].children, name):
		return fmt.Errorf("<%s> stands in <%s>", name, above)
	}
	left := slices.Clone(rule.required)
	for _, a := range e.Attr {
		left = slices.DeleteFunc(left, func(s string) bool { return s == a.Name.Local })
		if !slices.Contains(rule.required, a.Name.Local) && !slices.Contains(rule.allowed, a.Name.Local) {
			return fmt.Errorf("<%s> has %s", name, a.Name.Local)
		}
		if _, err := strconv.Atoi(a.Value); err != nil && slices.Contains([]string{"tests", "failures", "errors", "skipped"}, a.Name.Local) {
			return fmt.Errorf("<%s>: %s=%q is no number", name, a.Name.Local, a.Value)
		}
	}
	if len(left) > 0 {
		return fmt.Errorf("<%s> lacks %s", name, strings.Join(left, ", "))
	}
	return nil
}

// TestTheGrammarRefuses shows that the grammar is no formality.
func TestTheGrammarRefuses(t *testing.T) {
	whole := `<testsuites tests="1" failures="1" errors="0"><testsuite name="x" tests="1" failures="1" errors="0"><testcase name="a"><failure type="DANGER">b</failure></testcase></testsuite></testsuites>`
	if _, err := read(whole); err != nil {
		t.Fatal(err)
	}
	for _, slip := range [][2]string{{`errors="0"><testcase`, `><testcase`}, {`<failure type`, `<failure word`}, {`<testcase name="a">`, `<testcase name="a">b`},
		{`<testcase name="a">`, `<testcase>`}, {`failures="1" errors="0"><testcase`, `failures="0" errors="0"><testcase`}, {`tests="1" failures="1" errors="0"><testsuite`, `tests="2" failures="1" errors="0"><testsuite`},
		{"failure", "failing"}, {"testsuites", "testsuite"}, {"b</failure>", "\x01</failure>"}, {`tests="1"`, `tests="one"`}, {"</testcase>", ""}} {
		if _, err := read(strings.ReplaceAll(whole, slip[0], slip[1])); err == nil {
			t.Errorf("%q for %q was accepted", slip[1], slip[0])
		}
	}
}
