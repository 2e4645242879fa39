package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// removalSpan is how long something removed can be brought back.
const removalSpan = "30 days"

// back holds for rows that were removed and can be brought back.
const back = `removed_at > now() - interval '` + removalSpan + `'`

// Removal identifies something that was removed.
type Removal struct {
	Kind     string // RemovedRound and so on
	PlayerID golf.PlayerID
	ID       int64
}

// The kinds of things that can be removed and brought back.
const (
	RemovedRound      = "round"
	RemovedNote       = "note"
	RemovedKept       = "kept"
	RemovedReply      = "reply"
	RemovedAssignment = "assignment"
	RemovedResult     = "result"
	RemovedCourse     = "course"
	RemovedSession    = "session"
	RemovedPlan       = "plan"
	RemovedTrial      = "trial"
	RemovedRange      = "range"
	RemovedLesson     = "lesson"
	RemovedWalked     = "walked"
	RemovedPhrase     = "phrase"
	RemovedAdvice     = "advice"
)

// Removed is something that asker may bring back.
type Removed struct {
	Removal
	Player    string        // the name of the player it is about
	RoundID   *golf.RoundID // the round that a note or reply is on; nil for a lesson
	NoteID    int64         // of a note or a reply, otherwise 0
	Day       time.Time     // the day it is about
	Text      string        // the name of the course, the words, or what to practise
	RemovedAt time.Time
}

// Removed lists what asker can bring back, the latest removal first.
func (s *Store) Removed(ctx context.Context, asker golf.PlayerID) ([]Removed, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Removed], `
		with gone as (
			select 'round' as kind, player_id, id, id as round_id, 0::bigint as note_id, played_on as day, course as text, removed_at
			from rounds where player_id = @asker and `+back+`
			union all
			select 'note', player_id, id, round_id, id, day, body, removed_at
			from notes where author_id = @asker and `+back+` and (private or `+accessFrom("@asker", "notes.player_id")+` is not null) and `+ofARound("notes.player_id")+`
			union all
			select 'kept', player_id, id, null, id, day, body, removed_at
			from kept_notes where player_id = @asker and `+back+`
			union all
			select 'reply', notes.player_id, r.id, notes.round_id, notes.id, notes.day, r.body, r.removed_at
			from note_replies r join notes on notes.player_id = r.player_id and notes.id = r.note_id
			where r.author_id = @asker and r.`+back+` and notes.removed_at is null and `+accessFrom("@asker", "r.player_id")+` is not null and `+ofARound("notes.player_id")+`
			union all
			select 'assignment', player_id, id, null, 0, due_on, what, removed_at
			from assignments where @asker in (author_id, player_id) and `+back+` and `+accessFrom("@asker", "assignments.player_id")+` is not null
				and not exists (select 1 from practice_plans p where p.player_id = assignments.player_id and p.id = assignments.plan_id and p.removed_at = assignments.removed_at)
			union all
			select 'result', r.player_id, r.id, null, 0, r.day, t.what || ': ' || r.result, r.removed_at
			from assignment_results r join assignments t on t.player_id = r.player_id and t.id = r.assignment_id
			where r.player_id = @asker and r.`+back+` and t.removed_at is null
			union all
			select 'trial', player_id, id, null, 0, day, club || ', ' || carry || ' and ' || total || ' ' || unit, removed_at
			from runout_trials where player_id = @asker and `+back+`
			union all
			select 'session', player_id, id, null, 0, day, name, removed_at
			from drill_sessions where player_id = @asker and `+back+`
			union all
			select 'range', player_id, id, null, 0, day, club, removed_at
			from range_sessions where player_id = @asker and `+back+`
			union all
			select 'lesson', player_id, id, null, 0, day, aim, removed_at
			from lessons where @asker in (coach_id, player_id) and `+back+` and day >= `+accessFrom("@asker", "lessons.player_id")+`
			union all
			select 'walked', player_id, id, null, 0, played_on, course, removed_at
			from walked_rounds where removed_by = @asker and @asker in (coach_id, player_id) and `+back+` and played_on >= `+accessFrom("@asker", "walked_rounds.player_id")+`
			union all
			select 'phrase', player_id, id, null, 0, removed_at::date, body, removed_at
			from phrases where player_id = @asker and `+back+`
			union all
			select 'advice', a.player_id, a.id, null, 0, a.written_at::date, concat_ws(', ', 'hole ' || a.hole, c.name, nullif(c.tee, '')), a.removed_at
			from hole_advice a join courses c on c.id = a.course_id
			where a.coach_id = @asker and a.`+back+` and c.removed_at is null and `+accessFrom("@asker", "a.player_id")+` is not null and not exists (
				select 1 from hole_advice o where o.player_id = a.player_id and o.course_id = a.course_id and o.hole = a.hole and o.coach_id = a.coach_id and o.removed_at is null)
			union all
			select 'plan', player_id, id, null, 0, day, rounds || ' rounds', removed_at
			from practice_plans where player_id = @asker and `+back+`
			union all
			select 'course', @asker, c.id, null, 0, c.removed_at::date, concat_ws(', ', c.name, nullif(c.tee, '')), c.removed_at
			from courses c where c.`+back+` and `+mayRemove+`
		)
		select g.kind, g.player_id, g.id, p.name as player, g.round_id, g.note_id, g.day, g.text, g.removed_at
		from gone g join players p on p.id = g.player_id
		order by g.removed_at desc, g.kind, g.id`, pgx.StrictNamedArgs{"asker": asker})
}

// forGood holds for rows that were removed so long ago that they cannot be brought
// back; the daily sweep deletes them.
const forGood = `removed_at <= now() - interval '` + removalSpan + `'`

// RemoveRound removes a round of the player's own.
func (s *Store) RemoveRound(ctx context.Context, who golf.PlayerID, id golf.RoundID) error {
	return changeOne(ctx, s.q, `update rounds set removed_at = now() where player_id = @who and id = @id and removed_at is null`,
		pgx.StrictNamedArgs{"who": who, "id": id})
}

// RestoreRound brings it back.
func (s *Store) RestoreRound(ctx context.Context, who golf.PlayerID, id golf.RoundID) error {
	return changeOne(ctx, s.q, `update rounds set removed_at = null where player_id = @who and id = @id and `+back,
		pgx.StrictNamedArgs{"who": who, "id": id})
}

// RemoveNote removes a note of the asker's own, with its conversation.
func (s *Store) RemoveNote(ctx context.Context, asker, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update notes set removed_at = now() where removed_at is null and `+own,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// RestoreNote brings it back.
func (s *Store) RestoreNote(ctx context.Context, asker, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update notes set removed_at = null where `+back+` and `+own,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// ownReply holds for the asker's own replies, while asker has access.
var ownReply = `player_id = @who and id = @id and author_id = @asker and ` + accessFrom("@asker", "@who") + ` is not null`

// RemoveReply removes a reply of the asker's own.
func (s *Store) RemoveReply(ctx context.Context, asker, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update note_replies set removed_at = now() where removed_at is null and `+ownReply,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// RestoreReply brings it back.
func (s *Store) RestoreReply(ctx context.Context, asker, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update note_replies set removed_at = null where `+back+` and `+ownReply,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// givenOrOwn holds for assignments that asker gave or was given.
var givenOrOwn = `player_id = @who and id = @id and @asker in (author_id, player_id) and ` + accessFrom("@asker", "@who") + ` is not null`

// RemoveAssignment removes an assignment with its results; asker is its author or
// the player.
func (s *Store) RemoveAssignment(ctx context.Context, asker, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update assignments set removed_at = now() where removed_at is null and `+givenOrOwn,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// RestoreAssignment brings it back.
func (s *Store) RestoreAssignment(ctx context.Context, asker, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update assignments set removed_at = null where `+back+` and `+givenOrOwn,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// RemoveResult removes a recorded practice of the player's.
func (s *Store) RemoveResult(ctx context.Context, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update assignment_results set removed_at = now() where player_id = @who and id = @id and removed_at is null`,
		pgx.StrictNamedArgs{"who": who, "id": id})
}

// RestoreResult brings it back.
func (s *Store) RestoreResult(ctx context.Context, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update assignment_results set removed_at = null where player_id = @who and id = @id and `+back,
		pgx.StrictNamedArgs{"who": who, "id": id})
}
