package static

import (
	"bytes"
	"io/fs"
	"strings"
	"testing"
)

// Every page waits for typefaces, often on a phone on a course.
func TestTypefacesAreSmall(t *testing.T) {
	const most = 70_000 // bytes, of all files together
	names, err := fs.Glob(files, fonts+"/*.woff2")
	if err != nil {
		t.Fatal(err)
	}
	if len(names) != 8 {
		t.Errorf("%d files of two typefaces in two weights and two sets of letters", len(names))
	}
	size := 0
	for _, name := range names {
		data, err := files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.HasPrefix(data, []byte("wOF2")) {
			t.Errorf("%s is no packed font", name)
		}
		size += len(data)
	}
	if size > most {
		t.Errorf("the typefaces are %d bytes, more than %d", size, most)
	}
	t.Logf("%d bytes", size)
}

// A font is fetched from the address that its content makes, so that it can be
// kept for ever; each has its place in the sheet, and its licence beside it.
func TestTheSheetNamesEveryTypefaceByItsAddress(t *testing.T) {
	sheet, ok := File(strings.TrimPrefix(URL(stylesheet), Prefix))
	if !ok {
		t.Fatal("the sheet has an address and is not there")
	}
	if typeface.Match(sheet) {
		t.Errorf("%s has no hash", typeface.Find(sheet))
	}
	for _, e := range folder(fonts) {
		if url := URL(e.Name()); strings.HasSuffix(url, ".woff2") != bytes.Contains(sheet, []byte(`url("`+url+`")`)) {
			t.Errorf("%s and the sheet do not agree", url)
		}
	}
	for _, name := range []string{"book", "column"} {
		licence, ok := File(strings.TrimPrefix(URL(name+"-licence.txt"), Prefix))
		if !ok || !bytes.Contains(licence, []byte("SIL OPEN FONT LICENSE Version 1.1")) {
			t.Errorf("no licence of %s", name)
		}
	}
}

func TestAFontThatIsNotThere(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a sheet may name a font that is not there")
		}
	}()
	catalogue{}.joined()
}
