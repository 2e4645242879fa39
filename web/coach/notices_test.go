package coach

import (
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// A notice says who did what, and leads to the very place.
func TestNotices(t *testing.T) {
	own, pupil := paths.Whose{Player: 1, Own: true}, paths.Whose{Player: 7}
	for _, c := range []struct {
		in       Notice
		text, at string
	}{
		{Notice{Kind: "question", Whose: pupil, Round: 9, Note: 4}, "asks about a round.", "/players/7/rounds/9#note-4"},
		{Notice{Kind: "answer", Whose: own, Note: 4}, "has replied.", "/players/1/lessons#note-4"},
		{Notice{Kind: "note", Whose: own, Round: 9, Note: 4}, "has written a note.", "/rounds/9#note-4"},
		{Notice{Kind: "proposed", Whose: own, What: "82"}, "proposes a target of 82.", "/players/1/lessons#target-part"},
		{Notice{Kind: "accepted", Whose: pupil}, "has taken the target that you proposed.", "/players/7/lessons"},
		{Notice{Kind: "hole_advice", Whose: own, What: "hole 6, Harrow Fen", Course: 3, Hole: 6}, "says something of hole 6, Harrow Fen.", "/players/1/play/3/holes/6#advice"},
		{Notice{Kind: "hole_taken", Whose: pupil, What: "hole 6, Harrow Fen", Course: 3, Hole: 6}, "has taken what you proposed for hole 6, Harrow Fen.", "/players/7/play/3/holes/6#advice"},
		{Notice{Kind: "hole_removed", Whose: own, What: "hole 6, Harrow Fen"}, "has removed the proposal for hole 6, Harrow Fen. Your plan stands without it.", own.Play()},
		{Notice{Kind: "hole_declined", Whose: pupil, What: "hole 6, Harrow Fen"}, "has declined what you proposed for hole 6, Harrow Fen.", "/players/7/play"},
		{Notice{Kind: "declined", Whose: pupil}, "keeps the old target instead of the one that you proposed.", "/players/7/lessons"},
		{Notice{Kind: "practice", Whose: own, What: "Putts"}, "has set “Putts” to practise.", "/players/1/lessons#practice"},
		{Notice{Kind: "recorded", Whose: pupil, What: "7 of 10"}, "has recorded a practice: 7 of 10.", "/players/7/lessons#practice"},
		{Notice{Kind: "recorded", Whose: pupil, What: "7 of 10", Practice: 3}, "has recorded a practice: 7 of 10.", "/players/7/lessons#practice-3"},
		{Notice{Kind: "late", Whose: own, What: "Putts", Practice: 3, Day: golf.Date{Year: 2026, Month: 6, Day: 5}}, "set “Putts” to be done by 5 Jun 2026. That day has passed.", "/players/1/lessons#practice-3"},
		{Notice{Kind: "late", Whose: pupil, What: "Putts", Practice: 3, Day: golf.Date{Year: 2026, Month: 6, Day: 5}}, "did not finish “Putts” by 5 Jun 2026.", "/players/7/lessons#practice-3"},
		{Notice{Kind: "arranged", Whose: own, What: "Tuesday 8 September 2026"}, "has arranged a lesson: Tuesday 8 September 2026.", "/players/1/lessons#next-lesson"},
		{Notice{Kind: "moved", Whose: pupil, What: "Tuesday 8 September 2026"}, "has changed the lesson: Tuesday 8 September 2026.", "/players/7/lessons#next-lesson"},
		{Notice{Kind: "off", Whose: pupil, What: "Tuesday 8 September 2026"}, "has cancelled the lesson: Tuesday 8 September 2026.", "/players/7/lessons#next-lesson"},
		{Notice{Kind: "request", Whose: pupil}, "asks you to coach them, with your code.", "/coaching#requests"},
		{Notice{Kind: "taken", Whose: own}, "has accepted you as a pupil, and sees what you share.", "/coaching"},
		{Notice{Kind: "refused", Whose: own}, "has declined to coach you.", "/coaching"},
		{Notice{Kind: "walked", Whose: own, What: "2 May 2026, Harrow Fen"}, "has entered a round for you to accept: 2 May 2026, Harrow Fen.", "/players/1/walked"},
		{Notice{Kind: "walkin", Whose: pupil, What: "2 May 2026, Harrow Fen"}, "has accepted the round that you entered: 2 May 2026, Harrow Fen.", "/players/7/rounds"},
		{Notice{Kind: "walkout", Whose: pupil, What: "2 May 2026, Harrow Fen"}, "has declined the round that you entered: 2 May 2026, Harrow Fen.", "/players/7/walked"},
		{Notice{Kind: "removed", Whose: pupil, What: "Putts"}, "has removed the practice “Putts”.", "/players/7/lessons#practice"},
		{Notice{Kind: "asked", Whose: own}, "has accepted your link, and waits for you to approve.", "/coaching"},
		{Notice{Kind: "linked", Whose: own}, "has accepted your link, and now sees everything.", "/coaching"},
		{Notice{Kind: "linked", Whose: own, What: "1 May 2026"}, "has accepted your link, and now sees what was played from 1 May 2026 on.", "/coaching"},
		{Notice{Kind: "approved", Whose: pupil}, "has approved you as a coach.", "/players/7"},
		{Notice{Kind: "day", Whose: pupil, What: "2 May 2026"}, "now shares what was played from 2 May 2026 on.", "/players/7"},
		{Notice{Kind: "day", Whose: pupil}, "now shares everything with you.", "/players/7"},
		{Notice{Kind: "ended", Whose: own}, "has given up the access to your pages.", "/coaching"},
		{Notice{Kind: "ended", Whose: pupil}, "has ended your access.", "/coaching"},
		{Notice{Kind: "gone", Whose: own}, "has deleted the account, and no longer sees your pages. What you shared stays with you.", "/coaching"},
		{Notice{Kind: "gone", Whose: pupil}, "has deleted the account. Any private notes of yours are kept.", "/coaching/kept"},
		{Notice{Kind: "resumed", Whose: own}, "has the access to your pages again.", "/coaching"},
		{Notice{Kind: "resumed", Whose: pupil}, "lets you in again.", "/players/7"},
	} {
		if r := NewNoticesPage(layout.Page{}, []Notice{c.in}).Rows[0]; r.Text != c.text || r.At != c.at {
			t.Errorf("%s: %q at %s", c.in.Kind, r.Text, r.At)
		}
	}
	for want, in := range map[string][]Notice{"Nothing new.": {{Kind: "note"}}, "One new notice.": {{Kind: "note", New: true}, {Kind: "note"}}, "Two new notices.": {{New: true}, {New: true}}} {
		if p := NewNoticesPage(layout.Page{}, in); p.Lede != want {
			t.Errorf("%q, want %q", p.Lede, want)
		}
	}
	for there, want := range map[int]string{1: "One new notice.", 3: "One new notice. There are more: open this page again to read them."} {
		if p := NewNoticesPage(layout.Page{Notices: there}, []Notice{{New: true}, {}}); p.Lede != want || p.Notices != there-1 {
			t.Errorf("%d of %d are left: %q", p.Notices, there, p.Lede)
		}
	}
}
