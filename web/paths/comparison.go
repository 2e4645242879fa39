package paths

import (
	"net/url"
	"strconv"

	"strokeledger/analysis/golf"
)

// Comparison says which of a player’s rounds to compare, as an address holds it.
type Comparison struct {
	Whose
	golf.Comparison
}

// Months is the page of the comparison.
func (c Comparison) Months() string { return c.at("/months") + c.query(nil) }

// MonthsCSV is its table as a file.
func (c Comparison) MonthsCSV() string { return c.at("/months.csv") + c.query(nil) }

// BehindRow lists the shots behind a row of one of the spans, counted from 1.
func (c Comparison) BehindRow(span int, row string) string {
	return c.at("/months/behind") + c.query(url.Values{"in": {strconv.Itoa(span)}, "row": {row}})
}

// BehindMeasure lists the holes behind a measure of one of the spans.
func (c Comparison) BehindMeasure(span int, measure string) string {
	return c.at("/months/behind") + c.query(url.Values{"in": {strconv.Itoa(span)}, "measure": {measure}})
}

// BehindPutts lists the putts of a length in all the spans.
func (c Comparison) BehindPutts(length string) string {
	return c.at("/months/behind") + c.query(url.Values{"putts": {length}})
}

// With returns the comparison of other spans.
func (c Comparison) With(spans ...golf.Span) Comparison {
	c.Spans = spans
	return c
}

func (c Comparison) query(more url.Values) string {
	q := url.Values{}
	for k, v := range more {
		q[k] = v
	}
	for _, span := range c.Spans {
		q.Add("span", span.String())
	}
	if !c.Versus.IsTarget() {
		q.Set("versus", c.Versus.String())
	}
	if c.Course != "" {
		q.Set("course", c.Course)
	}
	for _, id := range c.Without {
		q.Add("without", number(int64(id)))
	}
	if len(q) == 0 {
		return ""
	}
	return "?" + q.Encode()
}
