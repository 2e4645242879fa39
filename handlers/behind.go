package handlers

import (
	"encoding/csv"
	"net/http"
	"strconv"

	"github.com/a-h/templ"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/figures"
	"strokeledger/web/months"
)

// monthsCSV sends the table of a comparison as a file.
func (s *server) monthsCSV(w http.ResponseWriter, r *http.Request) error {
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	at, _, problems := readComparison(r, whose)
	if len(problems) > 0 {
		return golf.ErrNotFound
	}
	q, err := s.compared(r, player, at)
	if err != nil {
		return err
	}
	if err := s.looked(r, whose, db.LookMonthsFile, 0); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/csv; charset=utf-8")
	w.Header().Set("Content-Disposition", `attachment; filename="months.csv"`)
	out := csv.NewWriter(w)
	if err := out.WriteAll(months.MonthsTable(q)); err != nil {
		return err
	}
	return out.Error()
}

// behind lists the shots or holes that a figure is made of.
func (s *server) behind(w http.ResponseWriter, r *http.Request) error {
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	at, _, problems := readComparison(r, whose)
	if len(problems) > 0 {
		return golf.ErrNotFound
	}
	q, err := s.compared(r, player, at)
	if err != nil {
		return err
	}
	page, err := behindPage(r, q, golf.Yards.Of(player.BoundaryYd))
	if err != nil {
		return err
	}
	if err := s.looked(r, whose, db.LookBehind, 0); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, page)
}

// behindPage is the page of the figure that the address names.
func behindPage(r *http.Request, q figures.ComparisonInput, boundary golf.Distance) (templ.Component, error) {
	if length := r.FormValue("putts"); length != "" {
		return behindPutts(r, q, length)
	}
	in, err := strconv.Atoi(r.FormValue("in"))
	if err != nil || in < 1 || in > len(q.Sheet.Columns) {
		return nil, golf.ErrNotFound
	}
	column, measure := &q.Sheet.Columns[in-1], r.FormValue("measure")
	if row, ok := compare.RowAt(boundary, r.FormValue("row")); ok {
		return months.NewBehindRow(shell(r), q, in-1, row).View(), nil
	}
	if measure == months.ShortPutts {
		return months.NewBehindMeasure(shell(r), q, in-1, measure, column.ShortPutts()).View(), nil
	}
	k := compare.MeasureAt(measure)
	if k < 0 {
		return nil, golf.ErrNotFound
	}
	return months.NewBehindMeasure(shell(r), q, in-1, measure, column.HolesOf(compare.Measures[k], boundary)).View(), nil
}

// behindPutts lists the putts of a length of the putting curve.
func behindPutts(r *http.Request, q figures.ComparisonInput, length string) (templ.Component, error) {
	for _, h := range compare.PuttingCurve(q.Sheet.Columns) {
		if h.String() == length {
			return months.NewBehindPutts(shell(r), q, h).View(), nil
		}
	}
	return nil, golf.ErrNotFound
}
