// Package static holds the files that a browser fetches as they are. Their
// addresses carry a hash of their content, so that they may be kept for ever.
package static

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"strings"
	"sync"
)

//go:embed *.css *.js
var files embed.FS

// Prefix is where the files are served.
const Prefix = "/static/"

type catalogue struct {
	urls  map[string]string // by name
	files map[string][]byte // by the last part of the address
}

var load = sync.OnceValue(func() catalogue {
	c := catalogue{map[string]string{}, map[string][]byte{}}
	entries, err := files.ReadDir(".")
	if err != nil {
		panic("static: " + err.Error())
	}
	for _, e := range entries {
		data, err := files.ReadFile(e.Name())
		if err != nil {
			panic("static: " + err.Error())
		}
		sum := sha256.Sum256(data)
		stem, ext, _ := strings.Cut(e.Name(), ".")
		hashed := stem + "." + hex.EncodeToString(sum[:6]) + "." + ext
		c.urls[e.Name()], c.files[hashed] = Prefix+hashed, data
	}
	return c
})

// URL returns the address of a file by its name; it panics on a name that does
// not exist, which a test of every page would show.
func URL(name string) string {
	url, ok := load().urls[name]
	if !ok {
		panic("static: no file " + name)
	}
	return url
}

// File returns the file of an address after Prefix.
func File(hashed string) ([]byte, bool) {
	data, ok := load().files[hashed]
	return data, ok
}
