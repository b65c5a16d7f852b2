package annotate

import "strings"

// command is one workflow command as a runner reads it.
type command struct {
	name       string
	properties map[string]string
	data       string
}

// read reads a line as the public runner does (actions/runner, Runner.Common,
// ActionCommand, read): after leading space a line that begins with "::" and a known name
// is a command up to the next "::"; properties stand between commas, name=value; escapes
// are taken back, "%25" last. Failing that, "##[name …]" anywhere in a line is an old
// command.
func read(line string) (c command, old, is bool) {
	s, is := strings.CutPrefix(strings.TrimLeft(line, " \t\u00a0"), "::")
	info, data, closed := strings.Cut(s, "::")
	if !is || !closed {
		return command{}, strings.Contains(line, "##["), false
	}
	name, given, _ := strings.Cut(info, " ")
	c = command{name: name, properties: map[string]string{}, data: unescape(data, "%0D", "\r", "%0A", "\n", "%25", "%")}
	for _, pair := range strings.Split(strings.TrimSpace(given), ",") {
		if key, value, has := strings.Cut(pair, "="); has && value != "" {
			c.properties[key] = unescape(value, "%0D", "\r", "%0A", "\n", "%3A", ":", "%2C", ",", "%25", "%")
		}
	}
	return c, false, true
}

func unescape(s string, pairs ...string) string {
	for i := 0; i < len(pairs); i += 2 {
		s = strings.ReplaceAll(s, pairs[i], pairs[i+1])
	}
	return s
}
