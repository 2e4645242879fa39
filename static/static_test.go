package static

import (
	"bytes"
	"io/fs"
	"slices"
	"strings"
	"testing"
)

func TestEveryFileOfStylesIsJoinedOnce(t *testing.T) {
	names, err := fs.Glob(files, "*.css")
	if err != nil {
		t.Fatal(err)
	}
	listed := slices.Sorted(slices.Values(sheets))
	if !slices.Equal(names, listed) {
		t.Errorf("the folder has %v, the list %v", names, listed)
	}
	joined := joinedSheets()
	at := 0
	for _, name := range sheets {
		data, err := files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		place := bytes.Index(joined[at:], data)
		if place != 0 {
			t.Fatalf("%s does not follow the file before it", name)
		}
		at += len(data)
	}
	if at != len(joined) {
		t.Errorf("%d bytes are of no file", len(joined)-at)
	}
}

func TestOnlyTheJoinedSheetHasAnAddress(t *testing.T) {
	for name := range load().urls {
		if strings.HasSuffix(name, ".css") && name != stylesheet {
			t.Errorf("%s is served alone", name)
		}
	}
}
