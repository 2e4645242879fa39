package site

import "strokeledger/web/layout"

// DigestEndPage is where a link in mail about notices leads: it asks whether to end the
// mail, and says when that is done.
type DigestEndPage struct {
	layout.Page
	At string // where the answer is sent; empty when it is done
}

// NewDigestEndPage makes the page.
func NewDigestEndPage(page layout.Page, at string) DigestEndPage {
	page.Title = "Mail about notices"
	return DigestEndPage{Page: page, At: at}
}
