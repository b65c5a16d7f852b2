package watch

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Folders lists, sorted, the folders in which a change can concern the files and folders
// of these names: the one that holds a file, since editors save by giving a new file the
// old name; the one that holds what a link leads to; a folder with all below it, but for
// hidden ones. What is not there yet is waited for in the nearest folder that is.
func Folders(names []string) []string {
	var all []string
	for _, name := range names {
		all = append(all, around(name)...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func around(name string) []string {
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		return below(name)
	}
	folders := []string{existing(filepath.Dir(name))}
	if real, err := filepath.EvalSymlinks(name); err == nil && filepath.Dir(real) != filepath.Dir(name) {
		folders = append(folders, filepath.Dir(real))
	}
	return folders
}

// below lists a folder and those in it. What can't be looked into is left out: whoever
// reads the folder tells of it.
func below(root string) []string {
	folders := []string{filepath.Clean(root)}
	_ = filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return fs.SkipDir
		case !entry.IsDir() || path == root:
			return nil
		case strings.HasPrefix(entry.Name(), "."):
			return fs.SkipDir
		}
		folders = append(folders, path)
		return nil
	})
	return folders
}

// existing is a folder, or the nearest above it that there is.
func existing(folder string) string {
	for {
		info, err := os.Stat(folder)
		if up := filepath.Dir(folder); (err != nil || !info.IsDir()) && up != folder {
			folder = up
			continue
		}
		return folder
	}
}
