package coach

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/web/paths"
)

func TestDigest(t *testing.T) {
	at := time.Date(2026, 6, 5, 18, 30, 0, 0, time.UTC)
	own := paths.Whose{Player: 1, Own: true}
	in := DigestInput{Name: "Robin", Site: "https://golf.example.org", Daily: true, Stop: "https://golf.example.org/stop", Notices: []Notice{
		{Kind: "note", By: "Ines", Whose: own, Round: 9, Note: 4, At: at},
		{Kind: "practice", By: "Ines", Whose: own, What: "Start line", At: at.Add(-time.Hour)},
	}}
	want := Digest{Subject: "Strokeledger: two new notices", Text: `Robin,

You have two new notices:

Ines has written a note.
5 Jun 2026, 18:30 UTC
https://golf.example.org/rounds/9#note-4

Ines has set “Start line” to practise.
5 Jun 2026, 17:30 UTC
https://golf.example.org/players/1/lessons#practice

All notices: https://golf.example.org/notices

You get this at most once a day, because you chose it on your account page.
To stop these e-mails: https://golf.example.org/stop
`}
	if diff := cmp.Diff(want, NewDigest(in)); diff != "" {
		t.Error(diff)
	}
	in.Daily, in.Notices = false, in.Notices[:1]
	if d := NewDigest(in); d.Subject != "Strokeledger: one new notice" {
		t.Error(d.Subject)
	}
}
