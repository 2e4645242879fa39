package handlers

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net/http"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
)

// beside sets a player beside golfers of the same score.
func (s *server) beside(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	player, err := s.summed(r.Context(), me(r).ID, about.player)
	if err != nil {
		return err
	}
	in := coach.BesideInput{Whose: about.pages, Name: about.player.Name, Target: about.player.Target, Units: unitsOf(me(r))}
	if in.Beside, err = s.engine.Beside(player); err != nil {
		return err
	}
	if in.Peers, err = s.peersOf(r, about, in.Beside); err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookBeside, 0); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, coach.NewBesidePage(s.shellOf(r, about), in).View())
}

// summed is a player with what the latest rounds come to that asker may see.
func (s *server) summed(ctx context.Context, asker golf.PlayerID, p db.Player) (analysis.Player, error) {
	rows, err := s.store.SummariesOf(ctx, asker, p.ID, analysis.RosterRounds)
	if err != nil {
		return analysis.Player{}, err
	}
	rounds, err := s.upToDate(ctx, asker, db.Pupil{ID: p.ID, Target: p.Target, BoundaryYd: p.BoundaryYd}, rows)
	return analysis.Player{Target: p.Target, Rounds: rounds}, err
}

// peersOf reads what other players of about the same score lose; none without rounds
// enough to know it.
func (s *server) peersOf(r *http.Request, about subject, b analysis.Beside) (analysis.Peers, error) {
	if b.Thin.Any() {
		return analysis.Peers{}, nil
	}
	from, below := analysis.PeersAt(b.Level)
	kept, err := s.store.Peers(r.Context(), me(r).ID, about.player.ID, analysis.EngineVersion(), from, below)
	if err != nil {
		return analysis.Peers{}, err
	}
	all := make([]analysis.Peer, len(kept))
	for i, k := range kept {
		if all[i], err = analysis.DecodePeer(k.Level, k.Beyond); err != nil {
			return analysis.Peers{}, err
		}
	}
	return analysis.PeersOf(b.Level, all), nil
}

// peersEvery is how often what players are set beside is worked out: so seldom that
// nobody sees a round of another by what it changes as it is entered.
const peersEvery = 24 * time.Hour

// PeersDaily works out now, and then once a day until the context ends, what the rounds
// of every player with rounds enough come to, for others to be set beside.
func PeersDaily(ctx context.Context, store *db.Store, log *slog.Logger) {
	s := newServer(store, Options{Log: log})
	for {
		if err := s.keepPeers(ctx); err != nil && ctx.Err() == nil {
			log.Error("players could not be set beside each other", "error", err.Error())
		}
		select {
		case <-ctx.Done():
			return
		case <-time.After(peersEvery):
		}
	}
}

// keepPeers works it out for all of them. One that fails keeps what it had and
// does not stand in the way of the others.
func (s *server) keepPeers(ctx context.Context) error {
	players, err := s.store.Sizeable(ctx, analysis.PeerRounds)
	if err != nil {
		return err
	}
	kept, faults := []golf.PlayerID{}, []error(nil)
	for _, p := range players {
		holds, err := s.keepPeer(ctx, p)
		if err != nil {
			faults = append(faults, fmt.Errorf("player %d: %w", p.ID, err))
		}
		if holds || err != nil {
			kept = append(kept, p.ID)
		}
	}
	return errors.Join(append(faults, s.store.KeepPeers(ctx, kept))...)
}

// keepPeer works it out for one, and reports whether there are rounds enough whose
// strokes are known.
func (s *server) keepPeer(ctx context.Context, p db.Player) (bool, error) {
	player, err := s.summed(ctx, p.ID, p)
	if err != nil {
		return false, err
	}
	peer, ok, err := s.engine.Peer(player)
	if err != nil || !ok {
		return false, err
	}
	return true, s.store.SavePeer(ctx, p.ID, analysis.EngineVersion(), db.Peer{Level: peer.Level, Beyond: peer.Encode()})
}
