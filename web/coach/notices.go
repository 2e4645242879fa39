package coach

import (
	"fmt"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// Notice is what somebody did that the reader is told.
type Notice struct {
	ID    int64  // of the reader's notices
	Kind  string // a key of noticeTexts, or one that depends on whose pages it is about
	By    string // who did it
	Whose paths.Whose
	Round golf.RoundID // 0 for none
	Note  int64        // 0 for none
	What  string       // a practice, a target, a day or a hole; may be empty
	At    time.Time
	New   bool // not read before

	Practice int64     // 0 for none
	Day      golf.Date // for which late practice was set; zero for none

	Course golf.CourseID // of a hole; 0 for none
	Hole   int
}

// NoticesPage lists what the reader was told.
type NoticesPage struct {
	layout.Page
	Lede string
	Rows []NoticeRow // the latest first
}

// NoticeRow is one notice.
type NoticeRow struct {
	When string
	By   string // who did it
	Text string // the rest of the sentence
	At   string // where it leads
	New  bool
}

// NewNoticesPage makes the page.
func NewNoticesPage(page layout.Page, all []Notice) NoticesPage {
	page.Title, page.Here = "Notices", paths.Notices
	page.Foot = "Notices are kept for half a year. They are read once this page has been opened."
	var rows []NoticeRow
	fresh := 0
	for _, n := range all {
		rows = append(rows, n.row())
		fresh += words.Tally(n.New)
	}
	page.Notices = max(page.Notices-fresh, 0)
	p := NoticesPage{Page: page, Rows: rows}
	switch {
	case len(all) == 0:
		p.Lede = "Nobody has told you anything yet. Questions, answers, practice, targets and access between you and a coach or pupil are listed here."
	case fresh == 0:
		p.Lede = "Nothing new."
	default:
		p.Lede = words.Capital(words.SpelledPlural(fresh, "new notice", "new notices")) + "."
	}
	if page.Notices > 0 {
		p.Lede += " There are more: open this page again to read them."
	}
	return p
}

// row words a notice and leads to what it is about.
func (n Notice) row() NoticeRow {
	r := NoticeRow{When: words.Moment(n.At), By: n.By, New: n.New, At: n.Whose.Lessons()}
	if n.Note != 0 {
		if n.Round != 0 {
			r.At = n.Whose.Round(n.Round)
		}
		r.At += "#" + notes.ID(n.Note)
	}
	switch n.Kind {
	case "question":
		r.Text = "asks about a round."
	case "answer":
		r.Text = "has replied."
	case "note":
		r.Text = "has written a note."
	case "proposed":
		r.Text, r.At = fmt.Sprintf("proposes a target of %s.", n.What), r.At+"#target-part"
	case "accepted":
		r.Text = "has taken the target that you proposed."
	case "declined":
		r.Text = "keeps the old target instead of the one that you proposed."
	case "practice":
		r.Text, r.At = fmt.Sprintf("has set “%s” to practise.", n.What), r.At+"#practice"
	case "recorded":
		r.Text, r.At = fmt.Sprintf("has recorded a practice: %s.", n.What), n.atPractice()
	case "late":
		r.Text, r.At = n.late(), n.atPractice()
	case "removed":
		r.Text, r.At = fmt.Sprintf("has removed the practice “%s”.", n.What), r.At+"#practice"
	case "walked":
		r.Text, r.At = fmt.Sprintf("has entered a round for you to accept: %s.", n.What), n.Whose.WalkedRounds()
	case "walkin":
		r.Text, r.At = fmt.Sprintf("has accepted the round that you entered: %s.", n.What), n.Whose.Rounds()
	case "walkout":
		r.Text, r.At = fmt.Sprintf("has declined the round that you entered: %s.", n.What), n.Whose.WalkedRounds()
	case "hole_advice", "hole_taken", "hole_declined", "hole_removed":
		n.hole(&r)
	case "arranged":
		r.Text, r.At = fmt.Sprintf("has arranged a lesson: %s.", n.What), n.Whose.NextLesson()
	case "moved":
		r.Text, r.At = fmt.Sprintf("has changed the lesson: %s.", n.What), n.Whose.NextLesson()
	case "off":
		r.Text, r.At = fmt.Sprintf("has cancelled the lesson: %s.", n.What), n.Whose.NextLesson()
	default:
		n.access(&r)
	}
	return r
}

// hole words a notice about a hole, and leads to its plan.
func (n Notice) hole(r *NoticeRow) {
	if r.At = n.Whose.Play(); n.Hole != 0 {
		r.At = n.Whose.HolePlan(n.Course, n.Hole, "") + "#advice"
	}
	switch n.Kind {
	case "hole_advice":
		r.Text = fmt.Sprintf("says something of %s.", n.What)
	case "hole_taken":
		r.Text = fmt.Sprintf("has taken what you proposed for %s.", n.What)
	case "hole_removed":
		r.Text = fmt.Sprintf("has removed the proposal for %s. Your plan stands without it.", n.What)
	default:
		r.Text = fmt.Sprintf("has declined what you proposed for %s.", n.What)
	}
}

// late says which day has passed; it stays true when the practice is done afterwards.
func (n Notice) late() string {
	if n.Whose.Own {
		return fmt.Sprintf("set “%s” to be done by %s. That day has passed.", n.What, words.ShortDay(n.Day))
	}
	return fmt.Sprintf("did not finish “%s” by %s.", n.What, words.ShortDay(n.Day))
}

// atPractice leads to the practice that a notice is about, or to all of it.
func (n Notice) atPractice() string {
	if n.Practice == 0 {
		return n.Whose.Lessons() + "#practice"
	}
	return n.Whose.Lessons() + "#" + practiceID(n.Practice)
}

// access words a notice about access. To the pupil it leads to where access is given,
// to a coach to the pupil's overview.
func (n Notice) access(r *NoticeRow) {
	r.At = paths.Coaching
	switch own := n.Whose.Own; {
	case n.Kind == "asked":
		r.Text = "has accepted your link, and waits for you to approve."
	case n.Kind == "linked" && n.What == "":
		r.Text = "has accepted your link, and now sees everything."
	case n.Kind == "linked":
		r.Text = fmt.Sprintf("has accepted your link, and now sees what was played from %s on.", n.What)
	case n.Kind == "request":
		r.Text, r.At = "asks you to coach them, with your code.", paths.Coaching+"#requests"
	case n.Kind == "taken":
		r.Text = "has accepted you as a pupil, and sees what you share."
	case n.Kind == "refused":
		r.Text = "has declined to coach you."
	case n.Kind == "approved":
		r.Text, r.At = "has approved you as a coach.", n.Whose.Overview()
	case n.Kind == "day" && n.What == "":
		r.Text, r.At = "now shares everything with you.", n.Whose.Overview()
	case n.Kind == "day":
		r.Text, r.At = fmt.Sprintf("now shares what was played from %s on.", n.What), n.Whose.Overview()
	case n.Kind == "ended" && own:
		r.Text = "has given up the access to your pages."
	case n.Kind == "ended":
		r.Text = "has ended your access."
	case n.Kind == "gone" && own:
		r.Text = "has deleted the account, and no longer sees your pages. What you shared stays with you."
	case n.Kind == "gone":
		r.Text, r.At = "has deleted the account. Any private notes of yours are kept.", paths.CoachKept
	case own:
		r.Text = "has the access to your pages again."
	default:
		r.Text, r.At = "lets you in again.", n.Whose.Overview()
	}
}
