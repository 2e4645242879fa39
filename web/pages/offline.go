package pages

import "strokeledger/web/layout"

// Offline is what a phone shows, from what it keeps, when there is no connection
// and the page that was asked for is not kept.
type Offline struct{ layout.Page }

// NewOffline makes the page; nothing on it is anybody's.
func NewOffline() Offline {
	return Offline{layout.Page{Title: "No connection", Script: "offline.js"}}
}
