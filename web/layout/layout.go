// Package layout is the shell around every page: its head, its navigation and
// its foot. It knows no page.
package layout

import (
	"strconv"

	"strokeledger/analysis/golf"
	"strokeledger/static"
	"strokeledger/web/paths"
)

// Page is what every page shares.
type Page struct {
	Title     string        // in the browser's tab
	Player    string        // name of the person signed in; empty for nobody
	ID        golf.PlayerID // of that person, under which the browser keeps what waits to be sent
	Teaches   bool          // has pupils
	Notices   int           // not read yet
	Here      string        // address of the navigation's entry that this page belongs to
	Since     golf.Date     // first day of the player's that the reader, a coach, sees; zero for everything
	Pupil     *PupilBar     // whose page a coach looks at; nil for other pages
	Flash     string        // what just happened, in a sentence
	Undo      *Undo         // the way back from what was just removed; nil for nothing
	Explained string        // id of the part of the help that explains the page; empty for all of it
	Foot      string        // what the numbers of this page mean; empty for none
	BodyClass string        // class of the body: entry-page while a hole is entered
	Script    string        // name of the page's script; empty for none
}

// player is the number of the person signed in, empty for nobody.
func (p Page) player() string {
	if p.ID == 0 {
		return ""
	}
	return strconv.FormatInt(int64(p.ID), 10)
}

// helpAt leads to what explains the page.
func (p Page) helpAt() string {
	if p.Explained == "" {
		return paths.Help
	}
	return paths.Help + "#" + p.Explained
}

// Modules are the modules that the page's script imports, to be fetched with it.
func (p Page) Modules() []string {
	switch p.Script {
	case "entry.js":
		return []string{"keys.js", "waiting.js"}
	case "drill.js":
		return []string{"waiting.js"}
	default:
		return nil
	}
}

// EntryFiles are the addresses of the files that the page of a hole, the card to
// carry, and the page shown without a connection cannot do without.
func EntryFiles() []string {
	var all []string
	for _, name := range []string{"app.css", "entry.js", "keys.js", "drill.js", "waiting.js", "offline.js", "carry.js", "book-400.woff2", "book-700.woff2", "column-400.woff2", "column-700.woff2"} {
		all = append(all, static.URL(name))
	}
	return all
}

// Fonts are the two typefaces that a reader sees first, to be fetched with the
// sheet instead of after it.
func (p Page) Fonts() []string {
	if p.BodyClass == "entry-page" {
		return []string{"book-700.woff2", "column-400.woff2"}
	}
	return []string{"book-400.woff2", "book-700.woff2"}
}

// Undo is what was just removed, with the way back.
type Undo struct {
	Text string // what it was
	What string // names it in the form
}
