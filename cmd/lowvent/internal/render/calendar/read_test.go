package calendar

import (
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"
)

// component is one BEGIN to END of a calendar, as a reader that knows nothing of the
// writer takes it (RFC 5545, 3.4 and 3.6).
type component struct {
	name       string
	properties []property
	inside     []*component
}

// property is one content line (RFC 5545, 3.1).
type property struct{ name, parameters, value string }

// values are the values of a property, each time that it comes.
func (c *component) values(name string) []string {
	var all []string
	for _, p := range c.properties {
		if p.name == name {
			all = append(all, p.value)
		}
	}
	return all
}

// text is a property that comes once, as people read it; "" where it does not.
func (c *component) text(name string) string {
	if all := c.values(name); len(all) == 1 {
		return unquoted(all[0])
	}
	return ""
}

// contentLine is a name, parameters and a value (RFC 5545, 3.1: contentline); of the
// parameters only plain ones, since no other is written.
var contentLine = regexp.MustCompile(`^([A-Z][A-Z0-9-]*)((?:;[A-Z-]+=[^;:,"]+)*):(.*)$`)

// unfolded parts a stream into its content lines and refuses what 3.1 does not allow: a
// line that does not end in CRLF, one of more than 75 octets, a control character. That
// no character is cut in two is more than the standard asks, and what readers need.
func unfolded(stream string) ([]string, error) {
	var all []string
	if !strings.HasSuffix(stream, "\r\n") {
		return nil, fmt.Errorf("the last line does not end in CRLF")
	}
	for n, line := range strings.Split(strings.TrimSuffix(stream, "\r\n"), "\r\n") {
		switch {
		case len(line) > 75:
			return nil, fmt.Errorf("line %d has %d octets", n, len(line))
		case !utf8.ValidString(line):
			return nil, fmt.Errorf("line %d parts a character: %q", n, line)
		case strings.ContainsFunc(line, func(r rune) bool { return r < ' ' && r != '\t' || r == 0x7f }):
			return nil, fmt.Errorf("line %d has a control character: %q", n, line)
		case strings.HasPrefix(line, " ") && n > 0:
			all[len(all)-1] += line[1:]
		default:
			all = append(all, line)
		}
	}
	return all, nil
}

// decoded reads a stream, which must be one whole calendar.
func decoded(stream string) (*component, error) {
	all, err := unfolded(stream)
	if err != nil {
		return nil, err
	}
	top := &component{}
	open := []*component{top}
	for _, line := range all {
		m := contentLine.FindStringSubmatch(line)
		last := open[len(open)-1]
		switch {
		case m == nil:
			return nil, fmt.Errorf("no content line: %q", line)
		case m[1] == "BEGIN":
			c := &component{name: m[3]}
			last.inside, open = append(last.inside, c), append(open, c)
		case m[1] == "END" && m[3] == last.name && len(open) > 1:
			open = open[:len(open)-1]
		case m[1] == "END":
			return nil, fmt.Errorf("%q ends what is not open", line)
		default:
			last.properties = append(last.properties, property{m[1], m[2], m[3]})
		}
	}
	if len(open) != 1 || len(top.inside) != 1 || len(top.properties) > 0 {
		return nil, fmt.Errorf("not one whole calendar: %d open, %d within", len(open)-1, len(top.inside))
	}
	return top.inside[0], nil
}

// unquoted takes the escapes out of a text (RFC 5545, 3.3.11). An escape that there is
// not, or a comma or semicolon without one, is shown by a mark that no test expects.
func unquoted(s string) string {
	var out strings.Builder
	for i := 0; i < len(s); i++ {
		switch {
		case s[i] == '\\' && i+1 < len(s) && strings.IndexByte(`\;,`, s[i+1]) >= 0:
			i++
			out.WriteByte(s[i])
		case s[i] == '\\' && i+1 < len(s) && (s[i+1] == 'n' || s[i+1] == 'N'):
			i++
			out.WriteByte('\n')
		case strings.IndexByte(`\;,`, s[i]) >= 0:
			out.WriteString("<bare " + s[i:i+1] + ">")
		default:
			out.WriteByte(s[i])
		}
	}
	return out.String()
}
