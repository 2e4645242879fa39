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

// ofComparison works out the comparison that an address describes, and whose it is. A choice that is
// not allowed is not found, since only links lead to these pages.
func (s *server) ofComparison(r *http.Request) (q figures.ComparisonInput, about subject, err error) {
	if about, err = s.subject(r); err != nil {
		return q, about, err
	}
	at, _, refused := readComparison(r, about.pages)
	if !refused.Sound() {
		return q, about, golf.ErrNotFound
	}
	q, err = s.compared(r, about.player, at)
	return q, about, err
}

// monthsCSV sends the table of a comparison as a CSV file.
func (s *server) monthsCSV(w http.ResponseWriter, r *http.Request) error {
	q, about, err := s.ofComparison(r)
	if err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookMonthsFile, 0); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/csv; charset=utf-8")
	w.Header().Set("Content-Disposition", `attachment; filename="months.csv"`)
	return csv.NewWriter(w).WriteAll(months.MonthsTable(q))
}

// behind lists the shots or holes behind a figure.
func (s *server) behind(w http.ResponseWriter, r *http.Request) error {
	q, about, err := s.ofComparison(r)
	if err != nil {
		return err
	}
	column, _ := strconv.Atoi(r.FormValue("in")) // 0, which is no column, if it is not a number
	b, err := q.Behind(analysis.Figure{Column: column, Row: r.FormValue("row"), Measure: r.FormValue("measure"), Putts: r.FormValue("putts")})
	if err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookBehind, 0); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, months.NewBehindPage(s.shellOf(r, about), q, b).View())
}
