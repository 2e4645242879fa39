package coach

import (
	"encoding/xml"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"strokeledger/web/paths"
)

const atom = "http://www.w3.org/2005/Atom"

// element is any element of a feed.
type element struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Text     string     `xml:",chardata"`
	Children []element  `xml:",any"`
}

func (e element) all(name string) (found []element) {
	for _, c := range e.Children {
		if c.XMLName == (xml.Name{Space: atom, Local: name}) {
			found = append(found, c)
		}
	}
	return found
}

func (e element) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

var uuidURN = regexp.MustCompile(`^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$`)

// checkAtom checks what RFC 4287 asks of a feed (section 4.1.1) and of an entry without
// content (4.1.2): exactly one id, title and updated, an author with a name, and in such
// an entry a link rel="alternate"; ids are absolute IRIs and no two are alike (4.2.6);
// dates are as RFC 3339 writes them, with T and an offset (3.3); no two entries have the
// same id and date.
func checkAtom(t *testing.T, body []byte) element {
	t.Helper()
	var f element
	if err := xml.Unmarshal(body, &f); err != nil {
		t.Fatalf("not XML: %v\n%s", err, body)
	}
	if f.XMLName != (xml.Name{Space: atom, Local: "feed"}) {
		t.Fatalf("the root is %v", f.XMLName)
	}
	var ids []string
	for i, e := range append([]element{f}, f.all("entry")...) {
		for _, name := range []string{"id", "title", "updated"} {
			if n := len(e.all(name)); n != 1 {
				t.Fatalf("element %d has %d %s", i, n, name)
			}
		}
		id := e.all("id")[0].Text
		if slices.Contains(ids, id) || !uuidURN.MatchString(id) {
			t.Errorf("id %q", id)
		}
		ids = append(ids, id)
		if _, err := time.Parse(time.RFC3339, e.all("updated")[0].Text); err != nil {
			t.Error(err)
		}
		if a := e.all("author"); len(a) != 1 || len(a[0].all("name")) != 1 || strings.TrimSpace(a[0].all("name")[0].Text) == "" {
			t.Errorf("element %d has the author %v", i, a)
		}
		l := e.all("link")
		if len(l) != 1 || l[0].attr("rel") != "alternate" {
			t.Fatalf("element %d has the links %v", i, l)
		}
		if at, err := url.Parse(l[0].attr("href")); err != nil || !at.IsAbs() || at.Scheme != "https" {
			t.Errorf("element %d leads to %q", i, l[0].attr("href"))
		}
	}
	return f
}

// A feed has what the standard asks for, says what the list says, and nothing breaks out
// of it. Its identifiers stay when the address of the site changes.
func TestFeed(t *testing.T) {
	at := time.Date(2026, 6, 6, 0, 0, 0, 0, time.FixedZone("", 12*60*60))
	own := paths.Whose{Player: 1, Own: true}
	in := FeedInput{Site: "https://golf.example.org", Name: [16]byte{1, 2, 3}, Made: at.AddDate(0, 0, -9), Notices: []Notice{
		{ID: 8, Kind: "note", By: "Ines <b>&\x02 Vale", Whose: own, Round: 9, Note: 4, At: at, New: true},
		{ID: 7, Kind: "practice", By: "Ines", Whose: own, What: `"]]></title><x>`, At: at.AddDate(0, 0, -1)},
	}}
	body, err := NewFeed(in)
	if err != nil {
		t.Fatal(err)
	}
	f := checkAtom(t, body)
	entries := f.all("entry")
	if len(entries) != 2 || len(f.Children) != 7 || f.all("updated")[0].Text != "2026-06-06T00:00:00+12:00" {
		t.Fatalf("%s", body)
	}
	if got := entries[0].all("title")[0].Text; got != "Ines <b>&\uFFFD Vale has written a note." {
		t.Errorf("%q", got)
	}
	if got := entries[0].all("link")[0].attr("href"); got != "https://golf.example.org/rounds/9#note-4" {
		t.Errorf("%q", got)
	}
	if got := entries[1].all("title")[0].Text; got != `Ines has set “"]]></title><x>” to practise.` {
		t.Errorf("%q", got)
	}
	in.Site = "https://elsewhere.example"
	moved, err := NewFeed(in)
	if err != nil {
		t.Fatal(err)
	}
	for i, e := range checkAtom(t, moved).all("entry") {
		if e.all("id")[0].Text != entries[i].all("id")[0].Text {
			t.Error("another address makes another identifier")
		}
	}
	in.Notices = nil
	none, err := NewFeed(in)
	if err != nil {
		t.Fatal(err)
	}
	if f := checkAtom(t, none); f.all("updated")[0].Text != "2026-05-28T00:00:00+12:00" || len(f.all("entry")) != 0 {
		t.Errorf("%s", none)
	}
}

// Identifiers are UUIDs of version 5. Source: the documentation of Python's module uuid,
// uuid5(NAMESPACE_DNS, "python.org").
func TestIdentifiersAreUUIDs(t *testing.T) {
	dns := [16]byte{0x6b, 0xa7, 0xb8, 0x10, 0x9d, 0xad, 0x11, 0xd1, 0x80, 0xb4, 0x00, 0xc0, 0x4f, 0xd4, 0x30, 0xc8}
	if got := (FeedInput{Name: dns}).urn("python.org"); got != "urn:uuid:886313e1-3b8a-5372-9b90-0c9aee199e5d" {
		t.Error(got)
	}
}
