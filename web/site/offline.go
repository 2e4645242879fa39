package site

import (
	"strokeledger/web/layout"
)

// OfflinePage is what a phone shows when there is no connection and it has not
// kept the page that was asked for. Its script lists the rounds the phone has.
type OfflinePage struct{ layout.Page }

// NewOfflinePage makes the page, which is the same for everyone.
func NewOfflinePage() OfflinePage {
	return OfflinePage{layout.Page{Title: "No connection", Script: "offline.js"}}
}
