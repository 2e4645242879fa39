package handlers

import (
	"net/http"
	"strings"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/play"
)

// chanceWait is how long a request waits for a chance that is being worked out.
const chanceWait = 3 * time.Second

// chance is how likely a player's target is on a course. Working it out takes several
// seconds, and goes on when this request ends; the page asks again until it is done.
func (s *server) chance(w http.ResponseWriter, r *http.Request) error {
	p, err := s.playing(r)
	if err != nil {
		return err
	}
	in, pictures := p.chanceInput(r)
	if in.Taken, err = s.takenAims(r, p); err != nil {
		return err
	}
	done := true
	if len(p.course.Holes) > 0 {
		ask := analysis.ChanceInput{History: p.history, Target: in.Target, Par18: parOf(p.course.Holes), Card: p.course.Holes, Pictures: pictures, Clubs: p.clubs, Together: play.Together(in.Two), As: play.AskedLevel(in.As, in.Target), Planned: in.Planned, Taken: in.Taken, Rounds: s.options.ChanceRounds, Seed: chanceSeed}
		in.Chance, done, err = workOn(r.Context(), s.worked, p.chanceKey(in), chanceWait, func() (analysis.Chance, error) { return s.engine.Chance(ask) })
		if err != nil {
			return err
		}
	}
	if err := s.recordLook(r, p.about, db.LookPlay, 0); err != nil {
		return err
	}
	if in.Working = !done; in.Working {
		w.Header().Set("Refresh", "2")
	}
	return show(w, r, statusOf(in.As), play.NewChancePage(s.shellOf(r, p.about), in).View())
}

// chanceInput is what the page of a chance is made of, apart from the chance.
func (p playing) chanceInput(r *http.Request) (play.ChanceInput, map[int]analysis.Picture) {
	query := r.URL.Query()
	in := play.ChanceInput{Whose: p.about.pages, Player: p.about.player.Name, Course: p.course.ID, Name: courseName(p.course), Card: p.course.Holes,
		Target: p.about.player.Target, Planned: query.Get("aims") == "plan", Two: [2]string{query.Get("one"), query.Get("two")}}
	if as := query.Get("as"); as != "" {
		in.As = form.ParseTarget(as)
	}
	pictures := map[int]analysis.Picture{}
	for _, h := range p.course.Holes {
		if picture, drawn := play.PictureOf(h, p.files[h.Number]); drawn {
			pictures[h.Number] = picture
		}
	}
	in.Drawn, in.Clubs = len(pictures), p.clubs
	return in, pictures
}

// chanceSeed makes the same answer of the same rounds.
const chanceSeed = 18

// chanceKey identifies the rounds, the course and the changes that a chance stands on.
func (p playing) chanceKey(in play.ChanceInput) [32]byte {
	var rounds strings.Builder
	for _, h := range p.history {
		rounds.Write(roundKey(h))
	}
	return keyOf("chance", rounds.String(), p.about.player.Target, p.course.Holes, p.files, p.clubs, in.Planned, in.Taken, play.Together(in.Two), play.AskedLevel(in.As, in.Target))
}

// roundKey identifies a round as it is stored now.
func roundKey(h golf.Played) []byte {
	key := keyOf("round", h)
	return key[:]
}
