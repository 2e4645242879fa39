package paths

import (
	"net/url"
	"strconv"

	"strokeledger/analysis/golf"
)

// Players is where the pages of a named player begin.
const Players = "/players"

// MyMonths leads to the months of the person signed in.
const MyMonths = "/months"

// Coaching is where a player gives coaches access and a coach finds pupils. The
// others are where its forms are sent and its links lead.
const (
	Coaching     = "/coaching"
	CoachInvite  = "/coaching/invite"
	CoachRevoke  = "/coaching/revoke"
	CoachAccept  = "/coaching/accept"
	CoachConfirm = "/coaching/confirm"
	CoachEnd     = "/coaching/end"
	CoachLooks   = "/coaching/looks"
	CoachKept    = "/coaching/kept"
	Squad        = "/coaching/squad"
	SquadCSV     = "/coaching/squad.csv"
	RosterCSV    = "/coaching/roster.csv"
	CoachGroups  = "/coaching/groups"
	CoachDay     = "/coaching/day"
	CoachResume  = "/coaching/resume"

	Phrases       = "/coaching/phrases"
	CoachCode     = "/coaching/code"
	CoachAsk      = "/coaching/ask"
	CoachAnswer   = "/coaching/answer"
	CoachWithdraw = "/coaching/withdraw"
)

// Notices is the list of what an account was told, NoticesFeed the same as a feed for
// somebody with its secret, and DigestProof and DigestEnd where the mail about it begins
// and ends.
const (
	Notices     = "/notices"
	NoticesFeed = "/notices/feed"
	DigestProof = "/notices/mail/confirm"
	DigestEnd   = "/notices/mail/end"
)

// DigestProofOf is where a reader of the player's address starts that mail.
func DigestProofOf(player golf.PlayerID, token string) string {
	return DigestProof + "?player=" + number(int64(player)) + "&token=" + url.QueryEscape(token)
}

// DigestEndOf is where a player who has the token of the mail about notices ends it.
func DigestEndOf(player golf.PlayerID, token string) string {
	return DigestEnd + "?player=" + number(int64(player)) + "&token=" + url.QueryEscape(token)
}

// NoticesFeedOf is the address of a player's feed.
func NoticesFeedOf(player golf.PlayerID, token string) string {
	return NoticesFeed + "?player=" + number(int64(player)) + "&token=" + url.QueryEscape(token)
}

// Looks is the list of pages that coaches opened; its pages count from 1.
func Looks(page int) string {
	if page < 2 {
		return CoachLooks
	}
	return CoachLooks + "?page=" + strconv.Itoa(page)
}

// Roster is how a coach's list of pupils is sorted and narrowed.
type Roster struct {
	Sort string // by what; empty for what needs a look
	Show string // which; empty for all
	Name string // part of the names; empty for any

	Group string // of the coach's own; empty for all
}

// Address is the list of that choice.
func (r Roster) Address() string {
	q := url.Values{}
	for k, v := range map[string]string{"sort": r.Sort, "show": r.Show, "name": r.Name, "group": r.Group} {
		if v != "" {
			q.Set(k, v)
		}
	}
	if len(q) == 0 {
		return Coaching
	}
	return Coaching + "?" + q.Encode()
}

// Of is the same choice of another group.
func (r Roster) Of(group string) Roster {
	r.Group = group
	return r
}

// By is the same choice sorted by something else.
func (r Roster) By(sort string) Roster {
	r.Sort = sort
	return r
}

// CoachLink is the link by which an account asks to be a player's coach.
func CoachLink(player golf.PlayerID, token string) string {
	return CoachAccept + "?player=" + number(int64(player)) + "&token=" + url.QueryEscape(token)
}

// Marks is where a player marks a day on which something changed.
const Marks = "/marks"

// RemoveMark removes a mark.
func RemoveMark(id int64) string { return Marks + "/" + number(id) + "/remove" }

// Whose is the player whose pages are shown, and whether the reader is that
// player.
type Whose struct {
	Player golf.PlayerID // whose pages are shown
	Own    bool          // the reader is that player
}

// at is a page of the player.
func (w Whose) at(page string) string { return Players + "/" + number(int64(w.Player)) + page }

// Overview is what a coach needs to know of the player before a lesson.
func (w Whose) Overview() string { return w.at("") }

// Beside is a player beside golfers of the same score.
func (w Whose) Beside() string { return w.at("/beside") }

// Groups is where a coach sorts the player into groups.
func (w Whose) Groups() string { return w.at("/groups") }

// Archive is where a coach puts the player away, or brings the player back.
func (w Whose) Archive() string { return w.at("/archive") }

// Round is the statement of one of the player's rounds.
func (w Whose) Round(id golf.RoundID) string {
	if w.Own {
		return Round(id)
	}
	return w.at(Round(id))
}

// Rounds lists the player's rounds.
func (w Whose) Rounds() string {
	if w.Own {
		return Rounds
	}
	return w.at(Rounds)
}

// Book is how a list of rounds is narrowed, as its address holds it: months are
// written 2026-08, and what is empty is left out.
type Book struct{ Course, From, To, Before string }

// Book lists some of the player's rounds.
func (w Whose) Book(b Book) string {
	q := url.Values{}
	for name, value := range map[string]string{"course": b.Course, "since": b.From, "until": b.To, "before": b.Before} {
		if value != "" {
			q.Set(name, value)
		}
	}
	if len(q) == 0 {
		return w.Rounds()
	}
	return w.Rounds() + "?" + q.Encode()
}

// YearBook is the book of a year of the player's rounds, for paper.
func (w Whose) YearBook(year int) string { return w.Rounds() + "/" + strconv.Itoa(year) + "/book" }

// Notes is where a note is written.
func (w Whose) Notes() string { return w.at("/notes") }

// Note is where a note is edited.
func (w Whose) Note(id int64) string { return w.Notes() + "/" + number(id) }

// RemoveNote removes a note.
func (w Whose) RemoveNote(id int64) string { return w.Note(id) + "/remove" }

// Reply is where a note is replied to.
func (w Whose) Reply(note int64) string { return w.Note(note) + "/replies" }

// RemoveReply removes a reply.
func (w Whose) RemoveReply(note, reply int64) string {
	return w.Reply(note) + "/" + number(reply) + "/remove"
}

// Write is where a note about a shot is written, on the statement of its round.
func (w Whose) Write(id golf.RoundID, hole, shot int) string {
	return w.Written(id, hole, shot) + "#write-" + strconv.Itoa(hole)
}

// Written is the statement with the form for a note about a hole open, and its shot
// chosen; shot 0 is the hole as a whole.
func (w Whose) Written(id golf.RoundID, hole, shot int) string {
	on := strconv.Itoa(hole)
	if shot > 0 {
		on += "." + strconv.Itoa(shot)
	}
	return w.Round(id) + "?" + url.Values{"on": {on}}.Encode()
}

// Assignments is where a coach gives something to practise.
func (w Whose) Assignments() string { return w.at("/assignments") }

// Results is where a practice of an assignment is recorded.
func (w Whose) Results(assignment int64) string {
	return w.Assignments() + "/" + number(assignment) + "/results"
}

// RemoveResult removes a recorded practice.
func (w Whose) RemoveResult(assignment, result int64) string {
	return w.Results(assignment) + "/" + number(result) + "/remove"
}

// TickOff marks an assignment as done, or as not done after all.
func (w Whose) TickOff(assignment int64) string {
	return w.Assignments() + "/" + number(assignment) + "/done"
}

// RemoveAssignment removes an assignment.
func (w Whose) RemoveAssignment(assignment int64) string {
	return w.Assignments() + "/" + number(assignment) + "/remove"
}

// Target is where a coach proposes a target, and the player answers.
func (w Whose) Target() string { return w.at("/target") }

// AnswerTarget is where the player accepts or declines a proposed target.
func (w Whose) AnswerTarget() string { return w.Target() + "/answer" }

// Report is a page about the player’s last rounds, to be printed.
func (w Whose) Report() string { return w.at("/report") }

// ReportOf is that page about another span.
func (w Whose) ReportOf(span golf.Span) string {
	return w.Report() + "?" + url.Values{"span": {span.String()}}.Encode()
}

// ReportFile is the rounds of a span one by one, as a file.
func (w Whose) ReportFile(span golf.Span) string {
	return w.at("/report.csv") + "?" + url.Values{"span": {span.String()}}.Encode()
}

// Lessons is where coach and pupil write to each other, with the practice.
func (w Whose) Lessons() string { return w.at("/lessons") }

// Arranged is where a lesson to come is changed.
func (w Whose) Arranged(lesson int64) string { return w.Lessons() + "/" + number(lesson) }

// CancelLesson calls a lesson off.
func (w Whose) CancelLesson(lesson int64) string { return w.Arranged(lesson) + "/remove" }

// LessonFile is a lesson as a file for a calendar.
func (w Whose) LessonFile(lesson int64) string { return w.Arranged(lesson) + "/lesson.ics" }

// NextLesson is the place of the lessons to come.
func (w Whose) NextLesson() string { return w.Lessons() + "#next-lesson" }

// WalkedRounds lists the rounds that a coach entered and the player has not accepted.
func (w Whose) WalkedRounds() string { return w.at("/walked") }

// Walked is one of them.
func (w Whose) Walked(id int64) string { return w.WalkedRounds() + "/" + number(id) }

// AnswerWalked is where the player accepts one, or declines it.
func (w Whose) AnswerWalked(id int64) string { return w.Walked(id) + "/answer" }

// RemoveWalked is where the coach takes one back.
func (w Whose) RemoveWalked(id int64) string { return w.Walked(id) + "/remove" }

// Handicap is the estimate of the player's handicap.
func (w Whose) Handicap() string { return w.at("/handicap") }
