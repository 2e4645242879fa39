package handlers

import (
	"net/http"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/play"
)

// chance is how likely a player's target is on a course.
func (s *server) chance(w http.ResponseWriter, r *http.Request) error {
	p, err := s.playing(r)
	if err != nil {
		return err
	}
	in := play.ChanceInput{Whose: p.about.pages, Player: p.about.player.Name, Course: p.course.ID, Name: courseName(p.course), Card: p.course.Holes,
		Target: p.about.player.Target, Planned: r.URL.Query().Get("aims") == "plan", Two: [2]string{r.URL.Query().Get("one"), r.URL.Query().Get("two")}}
	pictures := map[int]analysis.Picture{}
	for _, h := range p.course.Holes {
		if picture, drawn := play.PictureOf(h, p.files[h.Number]); drawn {
			pictures[h.Number] = picture
		}
	}
	in.Drawn = len(pictures)
	if len(p.course.Holes) > 0 {
		ask := analysis.ChanceInput{History: p.history, Target: p.about.player.Target, Par18: parOf(p.course.Holes), Card: p.course.Holes, Pictures: pictures, Together: play.Together(in.Two), Planned: in.Planned, Seed: chanceSeed}
		worked, err := workOut(r.Context(), s.worked, p.chanceKey(in), func() (found play.ChanceInput, err error) {
			found.Chance, err = s.engine.Chance(ask)
			return found, err
		})
		if err != nil {
			return err
		}
		in.Chance = worked.Chance
	}
	if err := s.recordLook(r, p.about, db.LookPlay, 0); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, play.NewChancePage(s.shellOf(r, p.about), in).View())
}

// chanceSeed makes the same answer of the same rounds.
const chanceSeed = 18

// chanceKey identifies the rounds, the course and the changes that a chance stands on.
func (p playing) chanceKey(in play.ChanceInput) [32]byte {
	var rounds strings.Builder
	for _, h := range p.history {
		rounds.Write(roundKey(h))
	}
	return keyOf("chance", rounds.String(), p.about.player.Target, p.course.Holes, p.files, in.Planned, play.Together(in.Two))
}

// roundKey identifies a round as it is stored now.
func roundKey(h golf.Played) []byte {
	key := keyOf("round", h)
	return key[:]
}
