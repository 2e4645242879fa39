package handlers

import (
	"net/http"
	"net/url"
	"regexp"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// returnName is the cookie that remembers which page a visitor asked for before
// signing in, such as a link that a pupil sent to a coach.
const (
	returnName = "ledger-return"
	returnAge  = 15 * 60 // s
	returnMost = 1500    // bytes
)

// rememberAddress remembers a page of this site until the visitor has signed in.
func (s *server) rememberAddress(w http.ResponseWriter, at string) {
	if ownPage(at) {
		http.SetCookie(w, s.cookie(returnName, url.QueryEscape(at), returnAge))
	}
}

// remembered returns the page that a visitor asked for before signing in, empty for
// none, and forgets it.
func (s *server) remembered(w http.ResponseWriter, r *http.Request) string {
	c, err := r.Cookie(s.named(returnName))
	if err != nil {
		return ""
	}
	http.SetCookie(w, s.cookie(returnName, "", -1))
	at, err := url.QueryUnescape(c.Value)
	if err != nil || !ownPage(at) {
		return ""
	}
	return at
}

// ownPage reports whether an address is a path of this site that no browser
// would take for an address of another site.
func ownPage(at string) bool {
	u, err := url.Parse(at)
	if err != nil || u.Scheme != "" || u.Host != "" || u.User != nil || u.Opaque != "" || u.Fragment != "" {
		return false
	}
	visible := func(c rune) bool { return c > ' ' && c <= '~' && c != '\\' }
	return len(at) <= returnMost && strings.HasPrefix(at, "/") && !strings.HasPrefix(at, "//") &&
		!strings.ContainsFunc(at, func(c rune) bool { return !visible(c) })
}

// mustBeSignedIn redirects visitors to the front page and remembers the page they
// asked for or sent a form from, so that signing in leads there. A line they sent is put
// back in the field of its hole. A script gets 401 and keeps what it sent.
func (s *server) mustBeSignedIn(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if _, ok := playerOf(r); ok {
			next.ServeHTTP(w, r)
			return
		}
		if wantsJSON(r) {
			s.answerError(w, r, errSignedOut)
			return
		}
		to := paths.Front
		if at := typedAt(r); at != "" {
			s.rememberAddress(w, at)
			to = paths.SignInAgain
		} else if at := formAt(r); at != "" {
			s.rememberAddress(w, at)
			to = paths.FormAgain
		} else if r.Method == http.MethodGet {
			s.rememberAddress(w, r.URL.RequestURI())
		}
		http.Redirect(w, r, to, http.StatusSeeOther)
	})
}

// formAt is the page from which a form was sent; empty for a request that sends none. The
// browser keeps what was written there.
func formAt(r *http.Request) string {
	u, err := url.Parse(r.Referer())
	if err != nil || r.Method != http.MethodPost || u.Host != r.Host || u.Path == paths.Front || r.URL.Path == paths.SignOut {
		return ""
	}
	q := u.Query()
	q.Del(savedParam) // nothing was saved or removed this time
	q.Del(removedParam)
	return (&url.URL{Path: u.Path, RawQuery: q.Encode()}).String()
}

var holeAddress = regexp.MustCompile(`^(/rounds/[0-9]{1,18}|/players/[0-9]{1,18}/walked/[0-9]{1,18})/holes/[0-9]{1,2}$`)

var drillAddress = regexp.MustCompile(`^/players/([0-9]{1,18})/drills/([a-z0-9-]{1,40})$`)

// drillTypedAt is the address of a drill's page with the session from a form in its
// fields; empty for any other form.
func drillTypedAt(r *http.Request) string {
	found := drillAddress.FindStringSubmatch(r.URL.Path)
	if r.Method != http.MethodPost || found == nil || r.PostFormValue("entered") == "" {
		return ""
	}
	typed := url.Values{}
	for name, values := range r.PostForm {
		if name != "press" && values[0] != "" {
			typed[name] = values[:1]
		}
	}
	player, _ := strconv.ParseInt(found[1], 10, 64) // digits alone, few enough, by the pattern
	return paths.Whose{Player: golf.PlayerID(player)}.DrillTyped(found[2], typed)
}

// typedAt is the address of a hole's page with the line from a form in its field, or
// of a drill's with its session; empty for any other form.
func typedAt(r *http.Request) string {
	if at := drillTypedAt(r); at != "" {
		return at
	}
	line := r.PostFormValue("line")
	if r.Method != http.MethodPost || !holeAddress.MatchString(r.URL.Path) || line == "" || len(line) > form.LongestLine {
		return ""
	}
	return paths.Typed(r.URL.Path, line)
}
