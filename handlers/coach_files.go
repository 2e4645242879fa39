package handlers

import (
	"encoding/csv"
	"net/http"

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

func sendTable(w http.ResponseWriter, name string, table [][]string) error {
	w.Header().Set("Content-Type", "text/csv; charset=utf-8")
	w.Header().Set("Content-Disposition", `attachment; filename="`+name+`"`)
	return csv.NewWriter(w).WriteAll(table)
}
