package handlers

import (
	"encoding/csv"
	"net/http"
	"strconv"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/figures"
	"strokeledger/web/months"
)

// ofComparison works out the comparison of an address that leads to a part of
// it; what is not allowed there is no page.
func (s *server) ofComparison(r *http.Request) (q figures.ComparisonInput, err error) {
	about, err := s.subject(r)
	if err != nil {
		return q, err
	}
	at, _, problems := readComparison(r, about.pages)
	if len(problems) > 0 {
		return q, golf.ErrNotFound
	}
	return s.compared(r, about.player, at)
}

// monthsCSV sends the table of a comparison as a file.
func (s *server) monthsCSV(w http.ResponseWriter, r *http.Request) error {
	q, err := s.ofComparison(r)
	if err != nil {
		return err
	}
	if err := s.recordLook(r, q.At.Whose, db.LookMonthsFile, 0); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/csv; charset=utf-8")
	w.Header().Set("Content-Disposition", `attachment; filename="months.csv"`)
	return csv.NewWriter(w).WriteAll(months.MonthsTable(q))
}

// behind lists the shots or holes that a figure is made of.
func (s *server) behind(w http.ResponseWriter, r *http.Request) error {
	q, err := s.ofComparison(r)
	if err != nil {
		return err
	}
	column, _ := strconv.Atoi(r.FormValue("in")) // 0, of which there is nothing, when it is no number
	b, err := q.Behind(analysis.Figure{Column: column, Row: r.FormValue("row"), Measure: r.FormValue("measure"), Putts: r.FormValue("putts")})
	if err != nil {
		return err
	}
	if err := s.recordLook(r, q.At.Whose, db.LookBehind, 0); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, months.NewBehindPage(shell(r), q, b).View())
}
