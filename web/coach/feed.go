package coach

import (
	"bytes"
	"crypto/sha1"
	"encoding/xml"
	"fmt"
	"time"

	"strokeledger/web/paths"
)

// FeedInput is what a feed is made of.
type FeedInput struct {
	Site    string    // the address that its links begin with
	Name    [16]byte  // a UUID of this feed, of which its identifiers are made
	Made    time.Time // when the feed was turned on
	Notices []Notice  // the latest first
}

// NewFeed writes notices as an Atom feed. It says what the list of notices says and no
// more. It does not name its own address, which holds a secret.
// Source: RFC 4287, The Atom Syndication Format.
func NewFeed(in FeedInput) ([]byte, error) {
	f := feed{Title: "Strokeledger notices", ID: in.urn("feed"), Updated: stamp(in.Made), Author: feedAuthor{"Strokeledger"}, Link: feedLink{"alternate", "text/html", in.Site + paths.Notices}}
	latest := in.Made
	for _, n := range in.Notices {
		if n.At.After(latest) {
			latest, f.Updated = n.At, stamp(n.At)
		}
		row := n.row()
		f.Entries = append(f.Entries, feedEntry{Title: row.By + " " + row.Text, ID: in.urn(fmt.Sprintf("notice %d", n.ID)), Updated: stamp(n.At), Author: feedAuthor{row.By},
			Link: feedLink{"alternate", "text/html", in.Site + row.At}})
	}
	var b bytes.Buffer
	b.WriteString(xml.Header)
	err := xml.NewEncoder(&b).Encode(f)
	return b.Bytes(), err
}

// The elements of a feed, in the order in which they are written.
type feed struct {
	XMLName xml.Name    `xml:"http://www.w3.org/2005/Atom feed"`
	ID      string      `xml:"id"`
	Title   string      `xml:"title"`
	Updated string      `xml:"updated"`
	Author  feedAuthor  `xml:"author"`
	Link    feedLink    `xml:"link"`
	Entries []feedEntry `xml:"entry"`
}

type feedEntry struct {
	ID      string     `xml:"id"`
	Title   string     `xml:"title"`
	Updated string     `xml:"updated"`
	Author  feedAuthor `xml:"author"`
	Link    feedLink   `xml:"link"`
}

type feedAuthor struct {
	Name string `xml:"name"`
}

type feedLink struct {
	Rel  string `xml:"rel,attr"`
	Type string `xml:"type,attr"`
	At   string `xml:"href,attr"`
}

// stamp writes a moment as RFC 3339 does, which RFC 4287 asks for.
func stamp(t time.Time) string { return t.Format(time.RFC3339) }

// urn is an identifier that stays the same wherever the site moves: a UUID of version 5,
// made of the feed's and a name. Source: RFC 9562, section 5.5.
func (in FeedInput) urn(name string) string {
	sum := sha1.Sum(append(in.Name[:], name...))
	sum[6] = sum[6]&0x0f | 0x50
	sum[8] = sum[8]&0x3f | 0x80
	return fmt.Sprintf("urn:uuid:%x-%x-%x-%x-%x", sum[0:4], sum[4:6], sum[6:8], sum[8:10], sum[10:16])
}
