// Package sample holds every page in every state that a reader can meet, made of
// invented values. The gallery of cmd/dev shows them without a database, and a
// test looks at the HTML of each: names of controls, links, ids, and that no
// template is left out. A new page or state gets its value here, in the file of
// its subject.
package sample

import (
	"slices"

	"github.com/a-h/templ"

	"strokeledger/web/layout"
)

// Page is one page in one state.
type Page struct {
	// Subject is the package of web that the page belongs to: entry, statement,
	// months, coach or site.
	Subject string
	// Name is the page's, in the words of its file: front, hole, roster. It and
	// State are small letters and hyphens, since they are its address.
	Name string
	// State is what sets it apart from the other pages of the name: full,
	// empty, refused.
	State string
	// View is the whole page, with its shell.
	View templ.Component
}

// At is the address of the page in the gallery, without a slash before it. No
// two pages have the same.
func (p Page) At() string { return p.Subject + "/" + p.Name + "/" + p.State }

// Pages lists every page, subject by subject.
func Pages() []Page {
	return slices.Concat(entryPages(), statementPages(), monthsPages(), practicePages(), runOutPages(), startLinePages(), playPages(), coachPages(), barPages(), walkedPages(), sitePages(), accountPages(), stewardPages(), removedPages(), problemPages())
}

// Player is the person whose pages these are.
const Player = "Robin Calder"

// signedIn is what every page of the player's shares; here is the entry of the
// navigation that it belongs to.
func signedIn(here string) layout.Page {
	return layout.Page{Player: Player, ID: 1, Here: here}
}

// teaches is what every page of a coach's shares.
func teaches(here string) layout.Page {
	page := signedIn(here)
	page.Teaches = true
	return page
}
