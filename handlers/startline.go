package handlers

import (
	"net/http"

	"strokeledger/analysis"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/practice"
)

// startLine shows how straight a player starts putts: from the sessions of the drill,
// or from putts that are asked about and not stored.
func (s *server) startLine(w http.ResponseWriter, r *http.Request) error {
	about, in, err := s.planInput(r)
	if err != nil {
		return err
	}
	kept, err := s.store.DrillSessions(r.Context(), me(r).ID, about.player.ID, "start-line")
	if err != nil {
		return err
	}
	asked := form.ParsePutts(r.URL.Query(), practice.LeastPuttFeet, practice.MostPuttFeet)
	line, err := s.engine.StartLine(analysis.StartLineInput{PlanInput: in, Sessions: sessionsOf(kept), Today: s.todayOf(about.player), Tries: practice.TriesOf(asked)})
	if err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookStartLine, 0); err != nil {
		return err
	}
	return show(w, r, statusOf(asked), practice.NewStartLinePage(s.shellOf(r, about), practice.StartLineInput{Whose: about.pages, Name: about.player.Name, Asked: asked, StartLine: line}).View())
}
