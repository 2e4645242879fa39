package handlers

import (
	"net/http"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/paths"
)

// subject is the player whom a page is about: the signed-in player, or one whom
// the signed-in player coaches.
type subject struct {
	player db.Player
	pages  paths.Whose // addresses of the player's pages
	since  golf.Date   // the first day that the signed-in player sees; zero for everything
}

// subject is the player named in the address, if the signed-in player may see
// that player's pages; otherwise the page is not found. No other code decides
// this, and every read asks the database again.
func (s *server) subject(r *http.Request) (subject, error) {
	n, err := id(r, "player")
	if err != nil {
		return subject{}, err
	}
	p, err := s.store.Seen(r.Context(), me(r).ID, golf.PlayerID(n))
	about := subject{player: p.Player, pages: paths.Whose{Player: p.ID, Own: p.ID == me(r).ID}}
	if p.SharedFrom != nil {
		about.since = golf.DateOf(*p.SharedFrom)
	}
	return about, err
}

// ownSubject does the same, and refuses everybody but the player.
func (s *server) ownSubject(r *http.Request) (subject, error) {
	about, err := s.subject(r)
	if err == nil && !about.pages.Own {
		err = golf.ErrNotFound
	}
	return about, err
}

// recordLook records for the pupil what a coach opens. It is called once the page
// is found, since a refused page shows nothing, and before it is shown, so that
// no look goes unrecorded.
func (s *server) recordLook(r *http.Request, about subject, kind db.LookKind, round golf.RoundID) error {
	if about.pages.Own {
		return nil
	}
	return s.store.RecordLook(r.Context(), me(r).ID, about.player.ID, db.Opened{Kind: kind, Round: round, Day: s.todayOf(about.player), At: s.now()})
}

// pupils are the signed-in player's pupils, each of whom can read that the coach opened
// a page about all of them.
func (s *server) pupils(r *http.Request, kind db.LookKind) ([]db.Pupil, error) {
	today := s.today(r)
	pupils, err := s.store.Roster(r.Context(), me(r).ID, golf.Month(today.Year, today.Month).From)
	if err != nil || len(pupils) == 0 {
		return nil, err
	}
	return pupils, s.recordRosterLook(r, pupils, kind)
}

// recordRosterLook records for each pupil that the coach opened a page about all of
// them.
func (s *server) recordRosterLook(r *http.Request, pupils []db.Pupil, kind db.LookKind) error {
	days := map[golf.Date][]golf.PlayerID{} // it is not the same day everywhere
	for _, p := range pupils {
		day := s.todayOf(db.Player{Zone: p.Zone})
		days[day] = append(days[day], p.ID)
	}
	return s.store.RecordRosterLook(r.Context(), me(r).ID, kind, days, s.now())
}

// myself is the signed-in player as the subject of a page.
func myself(r *http.Request) subject { return subject{player: me(r), pages: mine(r)} }

// mine are the pages of the signed-in player.
func mine(r *http.Request) paths.Whose { return paths.Whose{Player: me(r).ID, Own: true} }

// coached reports whether anybody but the player reads what is written: the
// reader is a coach, or the player has one.
func (s *server) coached(r *http.Request, pages paths.Whose) (bool, error) {
	if !pages.Own {
		return true, nil
	}
	coaches, err := s.store.Coaches(r.Context(), pages.Player)
	return slices.ContainsFunc(coaches, func(c db.Coach) bool { return c.Confirmed }), err
}
