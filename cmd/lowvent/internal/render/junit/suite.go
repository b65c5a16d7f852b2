package junit

import "encoding/xml"

// The elements, as far as a report needs them. What XML 1.0 can't hold becomes U+FFFD as
// it is written.

type suites struct {
	XMLName  xml.Name `xml:"testsuites"`
	Name     string   `xml:"name,attr"`
	Tests    int      `xml:"tests,attr"`
	Failures int      `xml:"failures,attr"`
	Errors   int      `xml:"errors,attr"`
	Suites   []suite  `xml:"testsuite"`
}

type suite struct {
	Name       string     `xml:"name,attr"`
	Tests      int        `xml:"tests,attr"`
	Failures   int        `xml:"failures,attr"`
	Errors     int        `xml:"errors,attr"`
	Skipped    int        `xml:"skipped,attr"`
	Properties []property `xml:"properties>property"`
	Cases      []testcase `xml:"testcase"`
	Out        string     `xml:"system-out"`
}

type property struct {
	Name  string `xml:"name,attr"`
	Value string `xml:"value,attr"`
}

type testcase struct {
	Class   string   `xml:"classname,attr"`
	Name    string   `xml:"name,attr"`
	Skipped *outcome `xml:"skipped"`
	Error   *outcome `xml:"error"`
	Failure *outcome `xml:"failure"`
	Out     string   `xml:"system-out,omitempty"`
}

type outcome struct {
	Type    string `xml:"type,attr,omitempty"`
	Message string `xml:"message,attr"`
	Body    string `xml:",chardata"`
}

// add adds a case and counts it.
func (s *suite) add(c testcase) {
	s.Tests++
	switch {
	case c.Error != nil:
		s.Errors++
	case c.Failure != nil:
		s.Failures++
	case c.Skipped != nil:
		s.Skipped++
	}
	s.Cases = append(s.Cases, c)
}
