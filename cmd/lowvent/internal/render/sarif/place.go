package sarif

import (
	"net/url"
	"path"
	"path/filepath"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
)

// baseID is the name of the folder to which relative addresses refer. Its own address is
// left out: the results are then the same on every machine, and give no path away.
const baseID = "WORKINGDIR"

// address is the address of a file: a relative one where its name is relative.
func address(file string) artifactLocation {
	slashed := filepath.ToSlash(file)
	if filepath.IsAbs(file) || path.IsAbs(slashed) {
		return artifactLocation{URI: (&url.URL{Scheme: "file", Path: "/" + strings.TrimLeft(slashed, "/")}).String()}
	}
	return artifactLocation{URI: (&url.URL{Path: path.Clean(slashed)}).String(), BaseID: baseID}
}

// artifact is the address of a file with its index in the list of artifacts.
func (b *builder) artifact(file string) artifactLocation {
	i, listed := b.file[file]
	if !listed {
		return address(file)
	}
	if file == saying.StandardInput {
		return artifactLocation{Index: &i}
	}
	a := address(file)
	a.Index = &i
	return a
}

// location is a place with what is to be said of it.
func (b *builder) location(p report.Place, about string) location {
	l := location{Physical: physicalLocation{Artifact: b.artifact(p.File)}}
	if p.Line > 0 {
		l.Physical.Region = &region{p.Line, p.Column, p.EndLine, p.EndColumn}
	}
	if p.Pointer != "" {
		l.Logical = []logicalLocation{{p.Pointer}}
	}
	if about != "" {
		l.Message = new(say(about))
	}
	return l
}

// related gathers places, each once, as 3.27.22 wants it.
type related struct {
	seen map[relatedPlace]bool
	list []location
}

type relatedPlace struct {
	place report.Place
	about string
}

func (r *related) add(b *builder, p report.Place, about string) {
	l := b.location(p, about)
	key := relatedPlace{place: p}
	if l.Message != nil {
		key.about = l.Message.Text
	}
	if r.seen[key] {
		return
	}
	if r.seen == nil {
		r.seen = map[relatedPlace]bool{}
	}
	r.seen[key] = true
	r.list = append(r.list, l)
}
