package handlers

import (
	"net/http"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// now is the moment by the program's clock. Days and times that people read, and
// the day that a form begins with, come from here and from nowhere else.
func (s *server) now() time.Time {
	if s.options.Clock == nil {
		return time.Now()
	}
	return s.options.Clock()
}

// zoneOf is the time zone of a player: the chosen one, or that of the clock.
func (s *server) zoneOf(p db.Player) *time.Location {
	if zone, err := golf.ParseZone(p.Zone); err == nil {
		return zone
	}
	return s.now().Location()
}

// todayOf is the day that it is where a player is.
func (s *server) todayOf(p db.Player) golf.Date { return golf.DateOf(s.now().In(s.zoneOf(p))) }

// today is the day that it is where the signed-in player is.
func (s *server) today(r *http.Request) golf.Date { return s.todayOf(me(r)) }

// here is a moment where the signed-in player is, zero for never.
func (s *server) here(r *http.Request, t time.Time) time.Time {
	if t.IsZero() {
		return t
	}
	return t.In(s.zoneOf(me(r)))
}

// hereIf is here of a moment that may be missing.
func (s *server) hereIf(r *http.Request, t *time.Time) *time.Time {
	if t == nil {
		return nil
	}
	at := s.here(r, *t)
	return &at
}
