package site

import (
	"strings"
	"time"

	"strokeledger/web/words"
)

// agents are words by which browsers are known in their User-Agent header. The
// first one found counts, since most browsers name others too.
var agents = []struct{ mark, name string }{
	{"Edg", "Edge"}, {"OPR/", "Opera"}, {"SamsungBrowser/", "Samsung Internet"}, {"FxiOS/", "Firefox"}, {"CriOS/", "Chrome"},
	{"Firefox/", "Firefox"}, {"HeadlessChrome/", "Chromium"}, {"Chromium/", "Chromium"}, {"Chrome/", "Chrome"}, {"Safari/", "Safari"},
}

// systems are words for what a browser runs on.
var systems = []struct{ mark, name string }{
	{"iPhone", "iPhone"}, {"iPad", "iPad"}, {"Android", "Android"}, {"CrOS", "Chromebook"}, {"Windows", "Windows"}, {"Macintosh", "Mac"}, {"Linux", "Linux"},
}

// DeviceName names the browser and system of a User-Agent header.
func DeviceName(agent string) string {
	find := func(all []struct{ mark, name string }) string {
		for _, x := range all {
			if strings.Contains(agent, x.mark) {
				return x.name
			}
		}
		return ""
	}
	browser, system := find(agents), find(systems)
	switch {
	case browser != "" && system != "":
		return browser + " on " + system
	case browser+system != "":
		return browser + system
	default:
		return "Another program"
	}
}

// DeviceSeen says when a device was last used, in the time zone of now: with the
// time for today and yesterday, then by the day.
func DeviceSeen(seen, now time.Time) string {
	seen = seen.In(now.Location())
	day := func(t time.Time) string { return t.Format(time.DateOnly) }
	switch {
	case day(seen) == day(now):
		return "today " + words.Clock(seen)
	case day(seen) == day(now.AddDate(0, 0, -1)):
		return "yesterday " + words.Clock(seen)
	case seen.Year() == now.Year():
		return seen.Format("2 Jan")
	default:
		return seen.Format("2 Jan 2006")
	}
}
