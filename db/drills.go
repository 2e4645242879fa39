package db

import (
	"context"
	"errors"
	"slices"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// DrillSession is what came of a drill on a day.
type DrillSession struct {
	ID        int64
	EnteredAs string // made by the page on which it was entered; no two of a player's are alike
	Drill     string // key of the drill
	Name      string // what the drill was called
	Day       time.Time
	Feet      float64 // 0 for a drill whose distance is not the player's choice
	Tries     string  // in order, a letter each; empty where only counts were written down
	Counted   []int   // by station
	Tried     []int   // the same, all tries
	Minutes   int     // 0 when not written down
	Note      string
	Fresh     bool `db:"-"` // SaveDrillSession stored it, and not an earlier request
}

// same reports whether two sessions say the same, whatever their numbers.
func (d DrillSession) same(other DrillSession) bool {
	return d.Drill == other.Drill && d.Day.Equal(other.Day) && d.Feet == other.Feet && d.Tries == other.Tries && d.Minutes == other.Minutes && d.Note == other.Note &&
		slices.Equal(d.Counted, other.Counted) && slices.Equal(d.Tried, other.Tried)
}

const sessionColumns = `id, entered_as, drill, name, day, feet, tries, counted, tried, minutes, note`

func (d DrillSession) args(who golf.PlayerID) pgx.StrictNamedArgs {
	return pgx.StrictNamedArgs{"who": who, "entered": d.EnteredAs, "drill": d.Drill, "name": d.Name, "day": d.Day, "feet": d.Feet, "tries": d.Tries,
		"counted": whole(d.Counted), "tried": whole(d.Tried), "minutes": d.Minutes, "note": d.Note}
}

// whole is a list that is never nil, which the database would take for unknown.
func whole(list []int) []int { return append([]int{}, list...) }

// SaveDrillSession stores a session of the player's and returns it as it is kept.
// The same session sent twice is stored once. One that was entered by the same page
// and says something else is golf.ErrConflict, with the session that is kept.
func (s *Store) SaveDrillSession(ctx context.Context, who golf.PlayerID, d DrillSession) (DrillSession, error) {
	kept, err := one(ctx, s.q, pgx.RowToStructByName[DrillSession], `
		insert into drill_sessions (player_id, entered_as, drill, name, day, feet, tries, counted, tried, minutes, note)
		values (@who, @entered, @drill, @name, @day, @feet, @tries, @counted, @tried, @minutes, @note)
		on conflict (player_id, entered_as) do nothing returning `+sessionColumns, d.args(who))
	if kept.Fresh = err == nil; !errors.Is(err, golf.ErrNotFound) {
		return kept, err
	}
	kept, err = one(ctx, s.q, pgx.RowToStructByName[DrillSession], `
		select `+sessionColumns+` from drill_sessions where player_id = @who and entered_as = @entered`,
		pgx.StrictNamedArgs{"who": who, "entered": d.EnteredAs})
	if err == nil && !kept.same(d) {
		err = golf.ErrConflict
	}
	return kept, err
}

// ReplaceDrillSession stores a session of the player's in the place of the one that
// the same page entered before; it comes back if it was removed.
func (s *Store) ReplaceDrillSession(ctx context.Context, who golf.PlayerID, d DrillSession) (DrillSession, error) {
	return one(ctx, s.q, pgx.RowToStructByName[DrillSession], `
		update drill_sessions set drill = @drill, name = @name, day = @day, feet = @feet, tries = @tries, counted = @counted, tried = @tried,
			minutes = @minutes, note = @note, removed_at = null
		where player_id = @who and entered_as = @entered returning `+sessionColumns, d.args(who))
}

// DrillSessions lists the player's sessions of a drill that asker may see, of every
// drill when drill is empty: the earliest first.
func (s *Store) DrillSessions(ctx context.Context, asker, who golf.PlayerID, drill string) ([]DrillSession, error) {
	return many(ctx, s.q, pgx.RowToStructByName[DrillSession], `
		select `+sessionColumns+` from drill_sessions
		where player_id = @who and removed_at is null and (@drill = '' or drill = @drill) and day >= `+accessFrom("@asker", "@who")+`
		order by day, recorded_at, id`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "drill": drill})
}

// DrillSession returns a session of the player's that asker may see.
func (s *Store) DrillSession(ctx context.Context, asker, who golf.PlayerID, id int64) (DrillSession, error) {
	return one(ctx, s.q, pgx.RowToStructByName[DrillSession], `
		select `+sessionColumns+` from drill_sessions
		where player_id = @who and id = @id and removed_at is null and day >= `+accessFrom("@asker", "@who"),
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// RemoveDrillSession removes a session of the player's.
func (s *Store) RemoveDrillSession(ctx context.Context, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update drill_sessions set removed_at = now() where player_id = @who and id = @id and removed_at is null`,
		pgx.StrictNamedArgs{"who": who, "id": id})
}

// RestoreDrillSession brings it back.
func (s *Store) RestoreDrillSession(ctx context.Context, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update drill_sessions set removed_at = null where player_id = @who and id = @id and `+back,
		pgx.StrictNamedArgs{"who": who, "id": id})
}

// ChangeDrillSession stores what a session of the player's says after it was changed.
func (s *Store) ChangeDrillSession(ctx context.Context, who golf.PlayerID, d DrillSession) error {
	return changeOne(ctx, s.q, `
		update drill_sessions set day = @day, feet = @feet, tries = @tries, counted = @counted, tried = @tried, minutes = @minutes, note = @note
		where player_id = @who and id = @id and removed_at is null`,
		pgx.StrictNamedArgs{"who": who, "id": d.ID, "day": d.Day, "feet": d.Feet, "tries": d.Tries, "counted": whole(d.Counted), "tried": whole(d.Tried), "minutes": d.Minutes, "note": d.Note})
}
