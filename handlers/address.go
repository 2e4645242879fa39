package handlers

import (
	"fmt"
	"net/http"
	"net/url"
	"regexp"
	"strconv"
	"strings"

	"strokeledger/static"
	"strokeledger/web/paths"
)

// hostShape matches the host that a browser sends: letters, digits, hyphens and
// dots, or an IPv6 address in brackets.
var hostShape = regexp.MustCompile(`^([a-z0-9]([a-z0-9-]*[a-z0-9])?(\.[a-z0-9]([a-z0-9-]*[a-z0-9])?)*|\[[0-9a-f:.]+\])(:[0-9]{1,5})?$`)

// ParseAddress reads the address of a site, such as https://golf.example.org:
// nothing but scheme, host and port.
func ParseAddress(text string) (string, error) {
	u, err := url.Parse(text)
	if err != nil || u.Scheme != "https" && u.Scheme != "http" || !strings.EqualFold(text, u.Scheme+"://"+u.Host) || !hostShape.MatchString(strings.ToLower(u.Host)) {
		return "", fmt.Errorf("%q; allowed: a scheme, a host and perhaps a port, such as https://golf.example.org", text)
	}
	if port := u.Port(); port != "" {
		if n, err := strconv.Atoi(port); err != nil || n < 1 || n > 65535 {
			return "", fmt.Errorf("%q; allowed: a port from 1 to 65535", text)
		}
	}
	return u.Scheme + "://" + withoutUsualPort(u.Scheme, u.Host), nil
}

// withoutUsualPort writes a host as browsers do, without the standard port of the
// scheme.
func withoutUsualPort(scheme, host string) string {
	host = strings.ToLower(host)
	return strings.TrimSuffix(host, map[string]string{"https": ":443", "http": ":80"}[scheme])
}

// absolute is the full address of a path on this site.
func (s *server) absolute(r *http.Request, path string) string {
	switch {
	case s.options.Address != "":
		return s.options.Address + path
	case s.options.Secure:
		return "https://" + r.Host + path
	default:
		return "http://" + r.Host + path
	}
}

// atItsAddress refuses requests for any other host, if the address of this site is
// known: another site could make its own name lead here. Health checks work under
// any name, and so do the styles of the page that refuses.
func (s *server) atItsAddress(next http.Handler) http.Handler {
	scheme, own, named := strings.Cut(s.options.Address, "://")
	if !named {
		return next
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		at := r.URL.Path
		if withoutUsualPort(scheme, r.Host) == own || at == paths.Healthy || at == paths.Ready || strings.HasPrefix(at, static.Prefix) {
			next.ServeHTTP(w, r)
			return
		}
		s.answerError(w, r, &refusal{http.StatusMisdirectedRequest, "Not at this address", "This site is at " + s.options.Address + "."})
	})
}
