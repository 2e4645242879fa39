// Package static holds the files that a browser fetches as they are. Their
// addresses carry a hash of their content, so that they may be kept for ever;
// the service worker alone has a fixed address, since its address is what it
// watches over.
package static

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"
	"sync"
)

//go:embed *.css *.js *.svg *.png fonts/*.woff2 fonts/*-licence.txt
var files embed.FS

// Prefix is where the files are served.
const Prefix = "/static/"

// worker is the file of the service worker, which is served by Worker alone.
const worker = "worker.js"

// fonts is the folder of the typefaces and their licences.
const fonts = "fonts"

// stylesheet is the name of the one sheet that pages link to. It is no file: it
// is the files of sheets, joined.
const stylesheet = "app.css"

// sheets are the files of styles in the order in which they are joined. Of two
// rules that say the same as strongly, the later one holds: what is for every
// page comes first, then the subjects, then paper.
var sheets = []string{
	"fonts.css", "base.css", "page.css", "tables.css", "forms.css", "figures.css", "marks.css",
	"voucher.css", "statement.css", "card.css", "fold.css", "doubles.css", "months.css", "spans.css", "roster.css", "group.css", "pupil.css", "lessons.css", "practice.css", "runout.css", "startline.css", "carry.css", "paper.css",
	"site.css", "help.css", "rounds.css", "courses.css", "play.css",
	"entry.css", "strip.css", "shots.css", "pad.css",
	"print.css",
}

func joinedSheets() []byte {
	var all []byte
	for _, name := range sheets {
		all = append(all, read(name)...)
	}
	return all
}

// typeface finds the address of a font in a sheet, by its name in the folder of fonts.
var typeface = regexp.MustCompile(`url\("([a-z0-9-]+\.woff2)"\)`)

// joined is the one sheet, in which fonts have the addresses that their content makes.
func (c catalogue) joined() []byte {
	return typeface.ReplaceAllFunc(joinedSheets(), func(found []byte) []byte {
		url, ok := c.urls[string(typeface.FindSubmatch(found)[1])]
		if !ok {
			panic("static: a sheet names a font that is not there: " + string(found))
		}
		return fmt.Appendf(nil, "url(%q)", url)
	})
}

type catalogue struct {
	urls  map[string]string // by name
	files map[string][]byte // by the last part of the address
}

// imported finds the modules that a script imports, by their names in this folder.
var imported = regexp.MustCompile(`from "\./([a-z]+\.js)"`)

var load = sync.OnceValue(func() catalogue {
	c := catalogue{map[string]string{}, map[string][]byte{}}
	for _, e := range append(folder("."), folder(fonts)...) {
		if !e.IsDir() && path.Ext(e.Name()) != ".css" {
			c.add(e.Name())
		}
	}
	c.keep(stylesheet, c.joined())
	return c
})

func folder(name string) []fs.DirEntry {
	entries, err := files.ReadDir(name)
	if err != nil {
		panic("static: " + err.Error())
	}
	return entries
}

// read returns a file by its name; the names of fonts do not say their folder.
func read(name string) []byte {
	at := name
	if ext := path.Ext(name); ext == ".woff2" || ext == ".txt" {
		at = path.Join(fonts, name)
	}
	data, err := files.ReadFile(at)
	if err != nil {
		panic("static: " + err.Error())
	}
	return data
}

// add puts a file into the catalogue after the modules that it imports, whose
// addresses it then names.
func (c catalogue) add(name string) string {
	if url, ok := c.urls[name]; ok {
		return url
	}
	data := read(name)
	if path.Ext(name) == ".js" {
		c.urls[name] = "" // a module that imports itself by way of others would never end
		data = imported.ReplaceAllFunc(data, func(found []byte) []byte {
			url := c.add(string(imported.FindSubmatch(found)[1]))
			if url == "" {
				panic("static: modules import each other in a circle: " + name)
			}
			return fmt.Appendf(nil, "from %q", url)
		})
	}
	return c.keep(name, data)
}

// keep gives a file the address that its content makes.
func (c catalogue) keep(name string, data []byte) string {
	sum := sha256.Sum256(data)
	stem, ext, _ := strings.Cut(name, ".")
	hashed := stem + "." + hex.EncodeToString(sum[:6]) + "." + ext
	c.urls[name], c.files[hashed] = Prefix+hashed, data
	return c.urls[name]
}

// URL returns the address of a file by its name; it panics on a name that does
// not exist, which a test of every page would show.
func URL(name string) string {
	url, ok := load().urls[name]
	if !ok || name == worker {
		panic("static: no file " + name)
	}
	return url
}

// File returns the file of an address after Prefix.
func File(hashed string) ([]byte, bool) {
	data, ok := load().files[hashed]
	return data, ok
}

// Worker returns the service worker.
func Worker() []byte { return read(worker) }

// ContentType returns the type of a file by the end of its name.
func ContentType(name string) string {
	switch path.Ext(name) {
	case ".css":
		return "text/css; charset=utf-8"
	case ".js":
		return "text/javascript; charset=utf-8"
	case ".svg":
		return "image/svg+xml"
	case ".woff2":
		return "font/woff2"
	case ".txt":
		return "text/plain; charset=utf-8"
	default:
		return "image/png"
	}
}
