package physicstest

import (
	"encoding/csv"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// Row is one row of a published table, by column name.
type Row map[string]string

// PublishedFolder returns the folder testdata/published of the module in which
// the test runs; the test fails if there is none.
func PublishedFolder(t testing.TB) string {
	t.Helper()
	folder, err := filepath.Abs(".")
	for err == nil {
		if _, missing := os.Stat(filepath.Join(folder, "go.mod")); missing == nil {
			return filepath.Join(folder, "testdata", "published")
		}
		if folder == filepath.Dir(folder) {
			err = fs.ErrNotExist
		}
		folder = filepath.Dir(folder)
	}
	t.Fatalf("no module above the test: %v", err)
	return ""
}

// Published returns the rows of a table in testdata/published as grounds for a
// test. The test fails if the table cannot be read, is empty, or has a row from
// memory: what nobody read is no ground.
func Published(t testing.TB, name string) []Row {
	t.Helper()
	rows := Table(t, name)
	for _, row := range rows {
		if row["provenance"] == "memory" {
			t.Fatalf("%s: a row from memory: %v", name, row)
		}
	}
	return rows
}

// Table returns the rows of a table in testdata/published, whatever their
// provenance. The test fails if it cannot be read or is empty.
func Table(t testing.TB, name string) []Row {
	t.Helper()
	file, err := os.Open(filepath.Join(PublishedFolder(t), name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err == nil && len(records) < 2 {
		err = errors.New("no rows")
	}
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	var rows []Row
	for _, record := range records[1:] {
		row := Row{}
		for i, column := range records[0] {
			row[column] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

// Number returns a column of the row as a number; the test fails if it is none.
func (r Row) Number(t testing.TB, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("column %s of %v: %v", column, r, err)
	}
	return v
}
