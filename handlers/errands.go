package handlers

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// errandsEvery is how often a process looks for errands.
const errandsEvery = 5 * time.Minute

// Errands are what a site does without being asked by a request. Any number of
// processes may run them: each errand is done once.
type Errands struct{ s *server }

// NewErrands returns the errands of a site.
func NewErrands(store *db.Store, options Options) *Errands {
	if options.Log == nil {
		options.Log = slog.New(slog.DiscardHandler)
	}
	return &Errands{&server{store: store, options: options}}
}

// Run does the errands now and every few minutes until the context ends. One that
// fails is tried again the next time.
func (e *Errands) Run(ctx context.Context) {
	for {
		e.once(ctx)
		select {
		case <-ctx.Done():
			return
		case <-time.After(errandsEvery):
		}
	}
}

// once does every errand there is.
func (e *Errands) once(ctx context.Context) {
	for _, errand := range []struct {
		name string
		do   func(context.Context) error
	}{{"late practice", e.tellOfLatePractice}, {"mail", e.sendDigests}} {
		if err := errand.do(ctx); err != nil && ctx.Err() == nil {
			e.s.options.Log.ErrorContext(ctx, "an errand failed", "errand", errand.name, "error", err)
		}
	}
}

// tellOfLatePractice tells player and coach of practice whose day has passed where the
// player is.
func (e *Errands) tellOfLatePractice(ctx context.Context) error {
	latest := golf.DateOf(e.s.now().In(firstToday))
	all, err := e.s.store.LatePractice(ctx, latest)
	if err != nil {
		return err
	}
	var faults []error
	for _, l := range all {
		passed := midnightAfter(golf.DateOf(l.DueOn), e.s.zoneOf(db.Player{Zone: l.Zone}))
		if passed.After(e.s.now()) {
			continue
		}
		if _, err := e.s.store.TellLate(ctx, l, passed); err != nil {
			faults = append(faults, fmt.Errorf("practice %d of player %d: %w", l.ID, l.PlayerID, err))
		}
	}
	return errors.Join(faults...)
}

// firstToday is where a day begins first: the zone farthest ahead of UTC that the tz
// database has.
var firstToday = time.FixedZone("", 14*60*60)

// midnightAfter is the moment at which a day has passed in a time zone.
func midnightAfter(d golf.Date, zone *time.Location) time.Time {
	return time.Date(d.Year, d.Month, d.Day+1, 0, 0, 0, 0, zone)
}
