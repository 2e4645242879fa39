package handlers

import (
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// readComparison reads from the address what to compare. changed means that it
// came from a form and has a plainer address; refused says what is not allowed.
func readComparison(r *http.Request, pages paths.Whose) (at paths.Comparison, changed bool, refused form.Comparing) {
	q := r.URL.Query()
	at.Whose, at.Course = pages, q.Get("course")
	at.Versus, changed = readVersus(q, &refused)
	at.Without = readWithout(q["without"])
	at.Spans = readSpans(slices.Concat(q["span"], pairs(q["from"], q["to"])), &refused)
	for _, p := range at.Check() {
		switch p.Field {
		case golf.FieldSpans:
			refused.Spans = fmt.Sprintf("%s spans were chosen; allowed: %s.", p.Read, p.Allowed)
			at.Spans = nil
		case golf.FieldWithout:
			refused.Spans = fmt.Sprintf("More than %d rounds are left out. Choose fewer.", golf.MaxWithout)
			at.Without = at.Without[:golf.MaxWithout]
		}
	}
	return at, changed || len(q["from"]) > 0, refused
}

// readWithout reads which rounds to leave out, and ignores what is not a number.
// It reads one more than is allowed, so that too many can be refused, and no
// further.
func readWithout(texts []string) []golf.RoundID {
	var c golf.Comparison
	for _, text := range texts {
		if n, err := strconv.ParseInt(text, 10, 64); err == nil && len(c.Without) <= golf.MaxWithout {
			c.LeaveOut(golf.RoundID(n))
		}
	}
	return c.Without
}

func readSpans(texts []string, refused *form.Comparing) []golf.Span {
	var spans []golf.Span
	for _, text := range texts {
		span, err := golf.ParseSpan(text)
		if err != nil {
			refused.Spans = words.Capital(err.Error()) + "."
			continue
		}
		spans = append(spans, span)
	}
	return spans
}

// pairs writes the days of a form as spans, and skips rows left empty.
func pairs(from, to []string) []string {
	var spans []string
	for i := range min(len(from), len(to)) {
		if from[i] != "" || to[i] != "" {
			spans = append(spans, from[i]+".."+to[i])
		}
	}
	return spans
}

// readVersus reads which golfer to compare with. changed means that a form chose
// it, in two fields or with a word that an address leaves out.
func readVersus(q url.Values, refused *form.Comparing) (v golf.Versus, changed bool) {
	text := q.Get("versus")
	if text == "" {
		return v, false
	}
	changed = text == "level" || text == "target"
	if text == "level" {
		text = q.Get("level")
	}
	v, err := golf.ParseVersus(strings.Replace(strings.TrimSpace(text), ",", ".", 1))
	if err != nil {
		refused.Level = "Allowed: " + form.TargetRange() + "."
	}
	return v, changed
}
