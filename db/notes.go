package db

import (
	"context"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// The kinds of notes.
const (
	KindNote     = "note"     // on a round, a hole or a shot
	KindQuestion = "question" // the same, of the pupil's
	KindLesson   = "lesson"   // on a day
)

// Note is what a coach or the player wrote, with the conversation under it.
type Note struct {
	PlayerID  golf.PlayerID // whose it is about
	ID        int64
	AuthorID  golf.PlayerID
	Author    string
	Kind      string
	Private   bool // its writer's alone
	Day       time.Time
	RoundID   *golf.RoundID
	Hole      *int
	Shot      *int
	Body      string
	WrittenAt time.Time
	EditedAt  *time.Time
	Unread    bool       // there is something that asker has not read
	ReadAt    *time.Time // when the player last read a coach's, or a coach the player's
	Answered  bool       // somebody but its writer replied
	Replies   []Reply    `db:"-"`
}

// Reply is an answer in the conversation under a note.
type Reply struct {
	NoteID    int64
	ID        int64
	AuthorID  golf.PlayerID
	Author    string
	Body      string
	WrittenAt time.Time
}

// ofARound holds for notes whose round is not removed.
const ofARound = `(notes.round_id is null or exists (select 1 from rounds r where r.player_id = notes.player_id and r.id = notes.round_id and r.removed_at is null))`

// visible holds for the notes of a player that asker may read.
const visible = `notes.player_id = @who and notes.removed_at is null and notes.day >= leave_from(@asker, @who) and (not notes.private or notes.author_id = @asker) and ` + ofARound

// unreadBy holds for notes with something that another wrote and a reader has
// not read.
func unreadBy(reader string) string {
	return strings.ReplaceAll(`(
		notes.author_id <> @reader and coalesce(notes.edited_at, notes.written_at) > coalesce((select read_at from note_reads d where d.player_id = notes.player_id and d.note_id = notes.id and d.reader_id = @reader), '-infinity')
		or exists (select 1 from note_replies r where r.player_id = notes.player_id and r.note_id = notes.id and r.author_id <> @reader and r.removed_at is null
			and r.written_at > coalesce((select read_at from note_reads d where d.player_id = notes.player_id and d.note_id = notes.id and d.reader_id = @reader), '-infinity')))`, "@reader", reader)
}

const noteColumns = `notes.player_id, notes.id, notes.author_id, a.name as author, notes.kind, notes.private, notes.day, notes.round_id, notes.hole, notes.shot, notes.body, notes.written_at, notes.edited_at,
	(select max(read_at) from note_reads d where d.player_id = notes.player_id and d.note_id = notes.id and d.reader_id <> notes.author_id
		and (notes.author_id = notes.player_id or d.reader_id = notes.player_id)) as read_at,
	exists (select 1 from note_replies r where r.player_id = notes.player_id and r.note_id = notes.id and r.author_id <> notes.author_id and r.removed_at is null) as answered`

// WriteNote keeps a note of the player's by who may see the round, or for a
// lesson the day, that it is about. Only a player asks questions, and only
// another has a private note.
func (s *Store) WriteNote(ctx context.Context, asker, who golf.PlayerID, n Note) (int64, error) {
	return one(ctx, s.q, pgx.RowTo[int64], `
		insert into notes (player_id, author_id, kind, private, day, round_id, hole, shot, body)
		select @who, @asker, @kind, @private, about.day, @round, @hole, @shot, @body
		from (
			select r.played_on as day from rounds r where r.player_id = @who and r.id = @round and r.removed_at is null
				and (@hole::integer is null or exists (select 1 from holes h where h.player_id = r.player_id and h.round_id = r.id and h.number = @hole))
				and (@shot::integer is null or exists (select 1 from shots s where s.player_id = r.player_id and s.round_id = r.id and s.hole = @hole and s.number = @shot))
			union all
			select @day::date where @round::bigint is null
		) about
		where about.day >= leave_from(@asker, @who)
		returning id`,
		pgx.StrictNamedArgs{"who": who, "asker": asker, "kind": n.Kind, "private": n.Private, "day": n.Day, "round": n.RoundID, "hole": n.Hole, "shot": n.Shot, "body": n.Body})
}

// own holds for the asker's own notes, which may be changed while asker sees
// the player's pages, and private ones ever after.
const own = `player_id = @who and id = @id and author_id = @asker and (private or leave_from(@asker, @who) is not null)`

// EditNote changes a note of the asker's own. One that was answered stays
// shared, though the answer is removed: it may be brought back.
func (s *Store) EditNote(ctx context.Context, asker, who golf.PlayerID, id int64, body string, private bool) error {
	return changeOne(ctx, s.q, `
		update notes set body = @body, edited_at = now(),
			private = @private and author_id <> player_id and not exists (select 1 from note_replies r where r.player_id = notes.player_id and r.note_id = notes.id)
		where `+own+` and removed_at is null and (@private or leave_from(@asker, @who) is not null)`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id, "body": body, "private": private})
}

// Note returns a note that asker may read.
func (s *Store) Note(ctx context.Context, asker, who golf.PlayerID, id int64) (Note, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Note], `
		select `+noteColumns+`, false as unread from notes join players a on a.id = notes.author_id where notes.id = @id and `+visible,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// ReplyTo answers under a note that asker may read and that is not private.
func (s *Store) ReplyTo(ctx context.Context, asker, who golf.PlayerID, note int64, body string) error {
	return changeOne(ctx, s.q, `
		insert into note_replies (player_id, note_id, author_id, body)
		select player_id, id, @asker, @body from notes where id = @note and not private and `+visible,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "note": note, "body": body})
}

// NotesOf chooses notes of a player: those of a round in the order of its holes,
// or the latest of all.
type NotesOf struct {
	Round golf.RoundID // 0 for any
	Most  int          // 0 for all
	Kept  bool         // only to be kept in a file: it counts as not read
}

// Notes lists what asker may read of a player's notes, and notes that asker has
// read it now; Unread is as it was before.
func (s *Store) Notes(ctx context.Context, asker, who golf.PlayerID, of NotesOf) ([]Note, error) {
	args := pgx.StrictNamedArgs{"asker": asker, "who": who, "round": of.Round, "most": limit(of.Most)}
	notes, err := many(ctx, s.q, pgx.RowToStructByName[Note], `
		select `+noteColumns+`, `+unreadBy("@asker")+` as unread
		from notes join players a on a.id = notes.author_id
		where `+visible+` and (@round = 0 or notes.round_id = @round)
		order by case when @round > 0 then coalesce(notes.hole, 0) end, case when @round > 0 then coalesce(notes.shot, 0) end,
			case when @round > 0 then notes.id end,
			greatest(notes.written_at, (select max(written_at) from note_replies r where r.player_id = notes.player_id and r.note_id = notes.id and r.removed_at is null)) desc
		limit @most`, args)
	if err != nil || len(notes) == 0 {
		return nil, err
	}
	ids, at := make([]int64, len(notes)), map[int64]*Note{}
	var unread []int64
	for i := range notes {
		ids[i], at[notes[i].ID] = notes[i].ID, &notes[i]
		if notes[i].Unread {
			unread = append(unread, notes[i].ID)
		}
	}
	replies, err := many(ctx, s.q, pgx.RowToStructByName[Reply], `
		select r.note_id, r.id, r.author_id, a.name as author, r.body, r.written_at
		from note_replies r join players a on a.id = r.author_id
		where r.player_id = @who and r.note_id = any(@ids) and r.removed_at is null and leave_from(@asker, @who) is not null order by r.id`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "ids": ids})
	if err != nil {
		return nil, err
	}
	for _, r := range replies {
		at[r.NoteID].Replies = append(at[r.NoteID].Replies, r)
	}
	if len(unread) == 0 || of.Kept {
		return notes, nil
	}
	_, err = change(ctx, s.q, `
		insert into note_reads (player_id, note_id, reader_id)
		select player_id, id, @asker from notes where id = any(@ids) and `+visible+`
		on conflict (player_id, note_id, reader_id) do update set read_at = now()`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "ids": unread})
	return notes, err
}

// UnreadNotes counts the player's own notes with something new from a coach.
func (s *Store) UnreadNotes(ctx context.Context, who golf.PlayerID) (int, error) {
	return one(ctx, s.q, pgx.RowTo[int], `select count(*) from notes where `+visible+` and `+unreadBy("@asker"),
		pgx.StrictNamedArgs{"asker": who, "who": who})
}

// PrivateNotes lists the private notes of a coach: all of them, or those on
// pupils whose leave has ended, which stay with the coach. Author is the pupil's
// name.
func (s *Store) PrivateNotes(ctx context.Context, coach golf.PlayerID, ended bool) ([]Note, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Note], `
		select `+strings.Replace(noteColumns, "a.name", "p.name", 1)+`, false as unread
		from notes join players p on p.id = notes.player_id
		where notes.author_id = @coach and notes.private and notes.removed_at is null and not (@ended and coalesce(notes.day >= leave_from(@coach, notes.player_id), false))
		order by lower(p.name), notes.day desc, notes.id desc`, pgx.StrictNamedArgs{"coach": coach, "ended": ended})
}
