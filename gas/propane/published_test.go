package propane

import (
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
	"lowvent.example/gas/solve/physicstest"
)

// A published value is never edited: every file of testdata/published but the
// two that tell about it stands in the manifest with its hash, and nothing in
// the manifest is missing.
func TestPublishedFilesAreUntouched(t *testing.T) {
	folder := physicstest.PublishedFolder(t)
	want := map[string]string{}
	for _, row := range physicstest.Table(t, "MANIFEST.csv") {
		if row["what"] == "" {
			t.Errorf("%s: the manifest does not say what it is", row["file"])
		}
		want[row["file"]] = row["sha256"]
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]string{}
	for _, entry := range entries {
		if name := entry.Name(); name != "MANIFEST.csv" && name != "README.md" {
			content, err := os.ReadFile(filepath.Join(folder, name))
			if err != nil {
				t.Fatal(err)
			}
			sum := sha256.Sum256(content)
			got[name] = hex.EncodeToString(sum[:])
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("the manifest (-) and the files (+) differ; a published value is never edited, a new file gets a row:\n%s", diff)
	}
}

// Each published row says where it comes from.
func TestPublishedRowsHaveTheirSource(t *testing.T) {
	for _, file := range physicstest.Table(t, "MANIFEST.csv") {
		for i, row := range physicstest.Table(t, file["file"]) {
			source := row["source"] + row["document"]
			if source == "" || row["provenance"] == "" {
				t.Errorf("%s row %d has no source or no provenance: %v", file["file"], i+2, row)
			}
			if row["provenance"] == "read" && row["address"] == "" {
				t.Errorf("%s row %d was read and has no address", file["file"], i+2)
			}
		}
	}
}
