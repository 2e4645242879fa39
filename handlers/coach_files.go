package handlers

import (
	"bytes"
	"encoding/csv"
	"net/http"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
)

// rosterFile sends a coach's pupils as a CSV file.
func (s *server) rosterFile(w http.ResponseWriter, r *http.Request) error {
	q, err := s.roster(r)
	if err != nil {
		return err
	}
	return sendTable(w, "roster.csv", coach.RosterTable(q))
}

// squadFile sends pupils side by side as a CSV file, all of them when nobody is chosen;
// days that cannot be used are answered by the page that says so.
func (s *server) squadFile(w http.ResponseWriter, r *http.Request) error {
	q := s.readSquad(r)
	q.All = q.All || !r.URL.Query().Has("pupil") && r.FormValue("group") == ""
	q, err := s.compareSquad(r, q)
	if err != nil {
		return err
	}
	if !q.Days.Sound() {
		return show(w, r, statusOf(q.Days), coach.NewSquadPage(shell(r), q).View())
	}
	return sendTable(w, "group-lesson.csv", coach.SquadTable(q))
}

// reportFile sends the rounds of a span of a player's, one by one, as a CSV file.
func (s *server) reportFile(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	span, _, err := readReport(r)
	if err != nil {
		return golf.ErrNotFound
	}
	history, err := s.store.History(r.Context(), me(r).ID, about.player.ID)
	if err != nil {
		return err
	}
	rounds, err := s.engine.SpanRounds(analysis.ReportInput{History: history, Span: span, Target: about.player.Target, Boundary: golf.Yards.Of(about.player.BoundaryYd)})
	if err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookReport, 0); err != nil {
		return err
	}
	return sendTable(w, "rounds.csv", coach.SpanTable(rounds))
}

// sendTable sends a table as a CSV file.
func sendTable(w http.ResponseWriter, name string, table [][]string) error {
	var file bytes.Buffer
	if err := csv.NewWriter(&file).WriteAll(table); err != nil {
		return err
	}
	return sendFile(w, "text/csv; charset=utf-8", name, &file)
}
