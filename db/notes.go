package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// The kinds of notes.
const (
	KindNote     = "note"     // on a round, a hole or a shot
	KindQuestion = "question" // the same, asked by the pupil
	KindLesson   = "lesson"   // on a day
)

// Note is what a coach or the player wrote, with the conversation under it.
type Note struct {
	PlayerID  golf.PlayerID // the player it is about
	ID        int64
	AuthorID  golf.PlayerID // 0 when that account is gone
	Author    string
	Kind      string
	Private   bool // only its author can read it
	Day       time.Time
	RoundID   *golf.RoundID
	Hole      *int
	Shot      *int
	Body      string
	WrittenAt time.Time
	EditedAt  *time.Time
	Unread    bool       // something in it is new to asker
	ReadAt    *time.Time // when the player last read a coach's note, or a coach the player's
	Answered  bool       // somebody other than its author replied
	Replies   []Reply    `db:"-"`
}

// Reply is an answer in the conversation under a note.
type Reply struct {
	NoteID    int64
	ID        int64
	AuthorID  golf.PlayerID // 0 when that account is gone
	Author    string
	Body      string
	WrittenAt time.Time
}

// The functions below return SQL about a row of notes. Their player is SQL for the
// player of that row: @who where a statement is about one player, so that a server
// that shards by player knows the shard of every sub-select, or a column where a
// statement is about several.

// ofARound holds for notes whose round is not removed, and for those on a day.
func ofARound(player string) string {
	return `(notes.round_id is null or exists (select 1 from rounds r
		where r.player_id = notes.player_id and r.player_id = ` + player + ` and r.id = notes.round_id and r.removed_at is null))`
}

// readAt is when a reader last read the note, long ago for never.
func readAt(player, reader string) string {
	return `coalesce((select d.read_at from note_reads d
		where d.player_id = notes.player_id and d.player_id = ` + player + ` and d.note_id = notes.id and d.reader_id = ` + reader + `), '-infinity')`
}

// unreadBy holds for notes with something that somebody else wrote and a reader
// has not read.
func unreadBy(player, reader string) string {
	return `(notes.author_id is distinct from ` + reader + ` and coalesce(notes.edited_at, notes.written_at) > ` + readAt(player, reader) + `
		or exists (select 1 from note_replies r
			where r.player_id = notes.player_id and r.player_id = ` + player + ` and r.note_id = notes.id and r.author_id is distinct from ` + reader + ` and r.removed_at is null
			and r.written_at > ` + readAt(player, reader) + `))`
}

// visible holds for the notes of a player that asker may read.
var visible = `notes.player_id = @who and notes.removed_at is null and notes.day >= ` + accessFrom("@asker", "@who") + `
	and (not notes.private or notes.author_id = @asker) and ` + ofARound("@who")

// own holds for the asker's own notes: shared ones while asker has access to the
// player, private ones for good.
var own = `player_id = @who and id = @id and author_id = @asker and (private or ` + accessFrom("@asker", "@who") + ` is not null)`

// noteText are the columns of a note that its author wrote.
const noteText = `notes.player_id, notes.id, coalesce(notes.author_id, 0) as author_id, notes.kind, notes.private, notes.day, notes.round_id, notes.hole, notes.shot, notes.body, notes.written_at, notes.edited_at`

// authorOf is the name of who wrote a row, also after that account has gone.
func authorOf(row string) string {
	return `coalesce((select a.name from players a where a.id = ` + row + `.author_id), ` + row + `.author_name)`
}

// noteColumns are the columns of a note of a player, but for Unread.
var noteColumns = noteText + `, ` + authorOf("notes") + ` as author,
	(select max(d.read_at) from note_reads d
		where d.player_id = notes.player_id and d.player_id = @who and d.note_id = notes.id and d.reader_id is distinct from notes.author_id
		and (notes.author_id = notes.player_id or d.reader_id = notes.player_id)) as read_at,
	exists (select 1 from note_replies r
		where r.player_id = notes.player_id and r.player_id = @who and r.note_id = notes.id and r.author_id is distinct from notes.author_id and r.removed_at is null) as answered`

// Note returns a note that asker may read. Unread is not filled in.
func (s *Store) Note(ctx context.Context, asker, who golf.PlayerID, id int64) (Note, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Note], `
		select `+noteColumns+`, false as unread from notes where notes.id = @id and `+visible,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// NotesOf chooses notes of a player: those on a round in the order of its holes,
// or all of them with the latest first.
type NotesOf struct {
	Round golf.RoundID // 0 for any
	Most  int          // 0 for all
}

// Notes lists the notes of a player that asker may read, with their replies.
func (s *Store) Notes(ctx context.Context, asker, who golf.PlayerID, of NotesOf) ([]Note, error) {
	notes, err := many(ctx, s.q, pgx.RowToStructByName[Note], `
		select `+noteColumns+`, `+unreadBy("@who", "@asker")+` as unread
		from notes
		where `+visible+` and (@round::bigint = 0 or notes.round_id = @round)
		order by case when @round::bigint > 0 then coalesce(notes.hole, 0) end, case when @round::bigint > 0 then coalesce(notes.shot, 0) end,
			case when @round::bigint > 0 then notes.written_at end,
			greatest(notes.written_at, (select max(r.written_at) from note_replies r
				where r.player_id = notes.player_id and r.player_id = @who and r.note_id = notes.id and r.removed_at is null)) desc, notes.id
		limit @most`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "round": of.Round, "most": limit(of.Most)})
	if err != nil || len(notes) == 0 {
		return nil, err
	}
	return notes, s.fillReplies(ctx, asker, who, notes)
}

// fillReplies reads the conversations under notes of a player.
func (s *Store) fillReplies(ctx context.Context, asker, who golf.PlayerID, notes []Note) error {
	ids, at := make([]int64, len(notes)), map[int64]*Note{}
	for i := range notes {
		ids[i], at[notes[i].ID] = notes[i].ID, &notes[i]
	}
	replies, err := many(ctx, s.q, pgx.RowToStructByName[Reply], `
		select r.note_id, r.id, coalesce(r.author_id, 0) as author_id, `+authorOf("r")+` as author, r.body, r.written_at
		from note_replies r
		where r.player_id = @who and r.note_id = any(@ids) and r.removed_at is null and `+accessFrom("@asker", "@who")+` is not null
		order by r.written_at, r.id`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "ids": ids})
	for _, r := range replies {
		at[r.NoteID].Replies = append(at[r.NoteID].Replies, r)
	}
	return err
}

// UnreadNotes counts the notes about the player in which something is new to the
// player.
func (s *Store) UnreadNotes(ctx context.Context, who golf.PlayerID) (int, error) {
	return one(ctx, s.q, pgx.RowTo[int], `select count(*) from notes where `+visible+` and `+unreadBy("@who", "@asker"),
		pgx.StrictNamedArgs{"asker": who, "who": who})
}

// PrivateNotes lists the private notes of a coach: all of them, or only those on
// former pupils, which the coach keeps. PlayerID is the coach for notes on pupils
// whose accounts have gone; they come last. Author is the name of the pupil. Nobody
// else can read or answer a private note, so that ReadAt, Answered and Unread are
// not filled in.
func (s *Store) PrivateNotes(ctx context.Context, coach golf.PlayerID, ended bool) ([]Note, error) {
	notes, err := many(ctx, s.q, pgx.RowToStructByName[Note], `
		select `+noteText+`, p.name as author, null::timestamptz as read_at, false as answered, false as unread
		from notes join players p on p.id = notes.player_id
		where notes.author_id = @coach and notes.private and notes.removed_at is null
			and not (@ended and coalesce(notes.day >= `+accessFrom("@coach", "notes.player_id")+`, false))
		order by lower(p.name), notes.day desc, notes.written_at desc, notes.id`, pgx.StrictNamedArgs{"coach": coach, "ended": ended})
	if err != nil {
		return nil, err
	}
	kept, err := s.keptNotes(ctx, coach)
	return append(notes, kept...), err
}
