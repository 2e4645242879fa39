package handlers

import (
	"errors"
	"maps"
	"mime"
	"net/http"
	"net/url"
	"strings"
	"unicode/utf8"

	"strokeledger/web/paths"
)

// readable reads the form of a POST once, and refuses one that cannot be read as a
// whole: if only half were understood, an empty field would overwrite a full one.
// The values of a POST come from its body alone, since addresses end up in logs. An
// uploaded file is read where it is imported.
func (s *server) readable(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if err := read(r); err != nil {
			s.answerError(w, r, err)
			return
		}
		next.ServeHTTP(w, r)
	})
}

// largestQuery is how many bytes an address may have after its question mark:
// a page repeats much of it in each of its links.
const largestQuery = 8 << 10

var (
	errLongAddress = &refusal{http.StatusRequestURITooLong, "Too long an address", "The address of this page is longer than it can be. Choose less, and try again."}

	errAddress = &refusal{http.StatusBadRequest, "Not understood", "The address of this page has something in it that cannot be read."}
	errForm    = &refusal{http.StatusBadRequest, "Not understood", "What was sent cannot be read. Nothing was changed; go back and try again."}
)

func read(r *http.Request) error {
	if len(r.URL.RawQuery) > largestQuery {
		return errLongAddress
	}
	query, err := url.ParseQuery(r.URL.RawQuery)
	if err != nil || !legible(r.URL.Path) || !allLegible(query) {
		return errAddress
	}
	kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	switch {
	case r.Method != http.MethodPost, r.URL.Path == paths.Import && kind == "multipart/form-data":
		return nil
	case kind != "application/x-www-form-urlencoded" && r.ContentLength != 0, err != nil && kind != "":
		return errForm
	}
	var tooLarge *http.MaxBytesError
	if err := r.ParseForm(); errors.As(err, &tooLarge) {
		return err
	} else if err != nil || !allLegible(r.PostForm) {
		return errForm
	}
	r.Form = maps.Clone(r.PostForm)
	return nil
}

// legible reports whether the database can store a text.
func legible(text string) bool { return utf8.ValidString(text) && !strings.Contains(text, "\x00") }

func allLegible(values url.Values) bool {
	for name, all := range values {
		if !legible(name) {
			return false
		}
		for _, text := range all {
			if !legible(text) {
				return false
			}
		}
	}
	return true
}
