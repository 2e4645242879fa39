package site

import (
	"strokeledger/web/layout"
)

// OfflinePage is what a phone shows, from what it keeps, when there is no connection
// and the page that was asked for is not kept.
type OfflinePage struct{ layout.Page }

// NewOfflinePage makes the page; nothing on it is anybody's.
func NewOfflinePage() OfflinePage {
	return OfflinePage{layout.Page{Title: "No connection", Script: "offline.js"}}
}
