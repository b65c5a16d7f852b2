package checktest

import "strings"

// part is one file of an archive.
type part struct{ name, text string }

// split takes a txtar archive apart: the words before the first file, and the
// files. A line "-- name --" begins a file. There is no text that is no archive.
func split(archive string) (words string, files []part) {
	text := &words
	for _, line := range strings.SplitAfter(archive, "\n") {
		if name, ok := marker(line); ok {
			files = append(files, part{name: name})
			text = &files[len(files)-1].text
			continue
		}
		*text += line
	}
	return words, files
}

// marker gives the name in a line that begins a file.
func marker(line string) (name string, ok bool) {
	line = strings.TrimRight(line, " \t\r\n")
	if !strings.HasPrefix(line, "-- ") || !strings.HasSuffix(line, " --") || len(line) < len("-- x --") {
		return "", false
	}
	name = strings.TrimSpace(line[len("-- ") : len(line)-len(" --")])
	return name, name != ""
}
