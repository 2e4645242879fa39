package static

import (
	"io/fs"
	"path"
	"strings"
	"testing"
)

// The program carries what browsers fetch, and neither the pictures of the
// README nor anything else of a folder.
func TestOnlyFilesOfPagesAreEmbedded(t *testing.T) {
	err := fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if d.IsDir() && name != "." && name != fonts || path.Ext(name) == ".webp" || path.Ext(name) == ".md" {
			t.Errorf("%s is embedded", name)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

// Every file has an address with a hash, at which it is found; the service
// worker has none, and the one sheet holds all styles.
func TestAddresses(t *testing.T) {
	for _, name := range []string{"app.css", "entry.js", "icon.svg", "icon-192.png", "book-400.woff2", "book-licence.txt"} {
		url := URL(name)
		data, ok := File(strings.TrimPrefix(url, Prefix))
		if !strings.HasPrefix(url, Prefix) || path.Base(url) == name || !ok || len(data) == 0 {
			t.Errorf("%s is at %s, found: %t", name, url, ok)
		}
	}
	if _, ok := File("app.css"); ok {
		t.Error("a file is found without its hash")
	}
	if len(Worker()) == 0 {
		t.Error("no service worker")
	}
	for name, want := range map[string]string{"a.css": "text/css; charset=utf-8", "a.js": "text/javascript; charset=utf-8", "a.svg": "image/svg+xml", "a.png": "image/png", "a.woff2": "font/woff2", "a.txt": "text/plain; charset=utf-8"} {
		if got := ContentType(name); got != want {
			t.Errorf("%s is %s", name, got)
		}
	}
}

// A name that does not exist is a fault of the program, and so is the address of
// the service worker.
func TestURLOfNoFile(t *testing.T) {
	for _, name := range []string{"nothing.css", worker} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s has an address", name)
				}
			}()
			URL(name)
		}()
	}
}
