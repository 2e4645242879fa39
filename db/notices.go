package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// NoticeKind is what somebody is told.
type NoticeKind string

// The kinds of notices.
const (
	NoticeQuestion NoticeKind = "question"
	NoticeAnswer   NoticeKind = "answer"
	NoticeNote     NoticeKind = "note"
	NoticeProposed NoticeKind = "proposed"
	NoticeAccepted NoticeKind = "accepted"
	NoticeDeclined NoticeKind = "declined"
	NoticePractice NoticeKind = "practice"
	NoticeRecorded NoticeKind = "recorded"
	NoticeLate     NoticeKind = "late"     // practice whose day has passed
	NoticeRemoved  NoticeKind = "removed"  // practice that a coach set
	NoticeAsked    NoticeKind = "asked"    // a coach accepted a link
	NoticeLinked   NoticeKind = "linked"   // a coach who has access accepted another
	NoticeArranged NoticeKind = "arranged" // a lesson
	NoticeMoved    NoticeKind = "moved"
	NoticeOff      NoticeKind = "off"
	NoticeWalked   NoticeKind = "walked" // a round that a coach entered
	NoticeWalkIn   NoticeKind = "walkin" // it was accepted
	NoticeWalkOut  NoticeKind = "walkout"
	NoticeRequest  NoticeKind = "request" // a pupil asked by a code
	NoticeTaken    NoticeKind = "taken"
	NoticeRefused  NoticeKind = "refused"
	NoticeApproved NoticeKind = "approved"
	NoticeDay      NoticeKind = "day" // another first day is shared
	NoticeEnded    NoticeKind = "ended"
	NoticeResumed  NoticeKind = "resumed"
	NoticeGone     NoticeKind = "gone" // the account was deleted

	NoticeHole         NoticeKind = "hole_advice" // a coach says something of a hole
	NoticeHoleTaken    NoticeKind = "hole_taken"
	NoticeHoleDeclined NoticeKind = "hole_declined"
	NoticeHoleRemoved  NoticeKind = "hole_removed" // what stood in the plan
)

// Notice is what somebody did that another is told.
type Notice struct {
	ID      int64
	Kind    NoticeKind
	ByName  string // who did it
	OfID    golf.PlayerID
	RoundID *golf.RoundID
	NoteID  *int64
	What    string // a practice, a target or a hole; may be empty
	ToldAt  time.Time

	PracticeID *int64     // of a practice that was recorded or is late
	OnDay      *time.Time // for which a late practice was set
	ReadAt     *time.Time

	CourseID *golf.CourseID // of a hole
	Hole     *int
}

// Tell tells somebody, in the name of who did it.
func (s *Store) Tell(ctx context.Context, by, to golf.PlayerID, n Notice) error {
	_, err := change(ctx, s.q, `
		insert into notices (player_id, kind, by_name, of_id, round_id, note_id, practice_id, what, course_id, hole)
		select @to, @kind, p.name, @of, @round, @note, @practice::bigint, @what, @course, @hole from players p where p.id = @by`,
		pgx.StrictNamedArgs{"to": to, "by": by, "kind": n.Kind, "of": n.OfID, "round": n.RoundID, "note": n.NoteID, "practice": n.PracticeID, "what": n.What, "course": n.CourseID, "hole": n.Hole})
	return err
}

const noticeColumns = `id, kind, by_name, of_id, round_id, note_id, practice_id, on_day, what, told_at, read_at, course_id, hole`

// noticesMost is how many notices are listed.
const noticesMost = 100

// Notices lists what an account was told, the latest first.
func (s *Store) Notices(ctx context.Context, who golf.PlayerID) ([]Notice, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Notice], `
		select `+noticeColumns+` from notices where player_id = @who order by told_at desc, id desc limit @most`,
		pgx.StrictNamedArgs{"who": who, "most": noticesMost})
}

// NoticesToRead lists the same, but unread ones before read ones where there are too
// many to list, so that each is listed once.
func (s *Store) NoticesToRead(ctx context.Context, who golf.PlayerID) ([]Notice, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Notice], `
		with listed as (
			select `+noticeColumns+` from notices where player_id = @who order by read_at is null desc, told_at desc, id desc limit @most
		)
		select `+noticeColumns+` from listed order by told_at desc, id desc`,
		pgx.StrictNamedArgs{"who": who, "most": noticesMost})
}

// NoticesRead records that an account has read some of its notices.
func (s *Store) NoticesRead(ctx context.Context, who golf.PlayerID, read []int64) error {
	_, err := change(ctx, s.q, `update notices set read_at = now() where player_id = @who and id = any(@read) and read_at is null`, pgx.StrictNamedArgs{"who": who, "read": read})
	return err
}

// TalkedTo are those who have written in the conversation of a note about a player.
func (s *Store) TalkedTo(ctx context.Context, who golf.PlayerID, note int64) ([]golf.PlayerID, error) {
	return many(ctx, s.q, pgx.RowTo[golf.PlayerID], `
		(select author_id from notes where player_id = @who and id = @note and not private and author_id is not null)
		union
		(select author_id from note_replies where player_id = @who and note_id = @note and removed_at is null and author_id is not null)`,
		pgx.StrictNamedArgs{"who": who, "note": note})
}
