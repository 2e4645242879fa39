package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Player is an account as its owner set it up.
type Player struct {
	ID           golf.PlayerID
	Email        string
	Name         string
	PasswordHash string
	Steward      bool
	FarUnit      string  // as Units has it
	GreenUnit    string  // as Units has it
	Target       float64 // the score of 18 holes to reach
	BoundaryYd   float64 // where the short game ends
	Clubs        string  // the clubs carried, separated by spaces
	Zone         string  // name of the time zone whose days are the player's; empty for the server's
	Minutes      int     // of practice a week
	Greeted      bool    // has answered the questions of the first visit
	Teaches      bool    // has pupils
	Notices      int     `db:"-"` // not read yet; filled in by SignedIn alone
}

// Units are the units in which the player writes and reads distances.
func (p Player) Units() Units {
	far, errFar := golf.ParseUnit(p.FarUnit)
	green, errGreen := golf.ParseUnit(p.GreenUnit)
	if errFar != nil || errGreen != nil { // no player is kept with such units
		return Units{golf.Yards, golf.Feet}
	}
	return Units{far, green}
}

const playerColumns = `id, email, name, password_hash, steward, far_unit, green_unit, target, boundary_yd, clubs, zone, practice_minutes as minutes, greeted_at is not null as greeted, teaches`

// NewPlayer creates an account with the default settings. It returns ErrTaken when
// the address has an account.
func (s *Store) NewPlayer(ctx context.Context, email, name, passwordHash string) (Player, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Player], `
		insert into players (email, name, password_hash)
		values (@email, @name, @hash)
		returning `+playerColumns,
		pgx.StrictNamedArgs{"email": email, "name": name, "hash": passwordHash})
}

// FirstPlayer creates the first account of an empty server, its steward. It returns
// ErrTaken when there is an account already. A lock decides between two that try
// at once.
func (s *Store) FirstPlayer(ctx context.Context, email, name, passwordHash string) (Player, error) {
	var p Player
	err := s.Tx(ctx, func(tx *Store) error {
		if _, err := tx.q.Exec(ctx, `lock table players in exclusive mode`); err != nil {
			return translate(err)
		}
		any, err := tx.AnyPlayer(ctx)
		if err != nil {
			return err
		}
		if any {
			return ErrTaken
		}
		if p, err = tx.NewPlayer(ctx, email, name, passwordHash); err != nil {
			return err
		}
		p.Steward = true
		return changeOne(ctx, tx.q, `update players set steward = true where id = @id`, pgx.StrictNamedArgs{"id": p.ID})
	})
	return p, err
}

// AnyPlayer reports whether the server has an account.
func (s *Store) AnyPlayer(ctx context.Context) (bool, error) {
	return one(ctx, s.q, pgx.RowTo[bool], `select exists (select 1 from players)`, pgx.StrictNamedArgs{})
}

// PlayerByEmail returns the account of an address; upper and lower case are the
// same.
func (s *Store) PlayerByEmail(ctx context.Context, email string) (Player, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Player],
		`select `+playerColumns+` from players where lower(email) = lower(@email)`, pgx.StrictNamedArgs{"email": email})
}

// Settings are what players can change in their own account.
type Settings struct {
	Name       string
	Units      Units
	Target     float64
	BoundaryYd float64
	Clubs      string
	Zone       string // name of a time zone; empty for the server's
	Minutes    int    // of practice a week; 0 to leave them as they are
}

// SaveSettings changes the player's own settings. Rounds keep the target and
// boundary they were played for.
func (s *Store) SaveSettings(ctx context.Context, who golf.PlayerID, to Settings) error {
	far, green := to.Units.columns()
	return changeOne(ctx, s.q, `
		update players
		set name = @name, far_unit = @far, green_unit = @green, target = @target, boundary_yd = @boundary, clubs = @clubs, zone = @zone,
			practice_minutes = coalesce(nullif(@minutes, 0), practice_minutes), greeted_at = now()
		where id = @who`,
		pgx.StrictNamedArgs{"who": who, "name": to.Name, "far": far, "green": green, "target": to.Target, "boundary": to.BoundaryYd, "clubs": to.Clubs, "zone": to.Zone, "minutes": to.Minutes})
}

// Greet stores what a player answered on the first visit, and that the questions
// need not be asked again.
func (s *Store) Greet(ctx context.Context, who golf.PlayerID, target float64, units Units, zone string) error {
	far, green := units.columns()
	return changeOne(ctx, s.q, `
		update players set target = @target, far_unit = @far, green_unit = @green, zone = @zone, greeted_at = now() where id = @who`,
		pgx.StrictNamedArgs{"who": who, "target": target, "far": far, "green": green, "zone": zone})
}

// SavePassword changes the player's password, ends every session, pending reset and
// feed, and forgets every device.
func (s *Store) SavePassword(ctx context.Context, who golf.PlayerID, passwordHash string) error {
	batch, of := &pgx.Batch{}, pgx.StrictNamedArgs{"who": who}
	batch.Queue(`delete from sessions where player_id = @who`, of)
	batch.Queue(`delete from resets where player_id = @who`, of)
	batch.Queue(`delete from devices where player_id = @who`, of)
	batch.Queue(`delete from feeds where player_id = @who`, of)
	batch.Queue(`update players set password_hash = @hash where id = @who`, pgx.StrictNamedArgs{"who": who, "hash": passwordHash})
	return changeAll(ctx, s.q, batch)
}

// RenewHash replaces the hash of a password by another of the same password,
// unless the password was changed in the meantime.
func (s *Store) RenewHash(ctx context.Context, who golf.PlayerID, old, renewed string) error {
	_, err := change(ctx, s.q, `update players set password_hash = @renewed where id = @who and password_hash = @old`,
		pgx.StrictNamedArgs{"who": who, "old": old, "renewed": renewed})
	return err
}

// DeletePlayer deletes an account with everything it owns, and tells its coaches and
// pupils. Courses it added stay, without an owner, and so does what leavesWritten keeps.
// It returns ErrLastSteward when the others would be left without a steward.
func (s *Store) DeletePlayer(ctx context.Context, who golf.PlayerID) error {
	return s.Tx(ctx, func(tx *Store) error {
		if err := tx.keepASteward(ctx, who); err != nil {
			return err
		}
		if err := tx.leavesCoaches(ctx, who); err != nil {
			return err
		}
		if err := tx.leavesWritten(ctx, who); err != nil {
			return err
		}
		if err := tx.tellsOfGoing(ctx, who); err != nil {
			return err
		}
		return changeOne(ctx, tx.q, `delete from players where id = @who`, pgx.StrictNamedArgs{"who": who})
	})
}
