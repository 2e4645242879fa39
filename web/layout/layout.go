// Package layout is the shell around every page: its head, its navigation and
// its foot. It knows no page.
package layout

// Page is what every page shares.
type Page struct {
	Title  string // in the browser's tab
	Player string // name of who is signed in; empty for nobody
	Here   string // address of the navigation's entry that this page belongs to
	Flash  string // what just happened, in a sentence
	Undo   *Undo  // the way back from what was just removed; nil for nothing
	Foot   string // what the numbers of this page mean; empty for none
	Kind   string // class of the body: entry while a hole is entered
	Script string // name of the page's script; empty for none
}

// Undo is what was just removed, with the way back.
type Undo struct {
	Text string // what it was
	What string // names it in the form
}
