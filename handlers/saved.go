package handlers

import (
	"net/http"
	"net/url"
	"strings"
)

// The parameters of an address that tell what was just done. Text is never
// taken from an address: it names one of ours.
const (
	savedParam   = "saved"
	removedParam = "removed"
)

// savedRound is the code of a round whose last hole was saved.
const savedRound = "round"

// savedTexts say on the next page what was saved.
var savedTexts = map[string]string{
	"settings":   "The settings are saved.",
	"password":   "The password is changed. Other devices are signed out.",
	"device":     "That device is signed out.",
	"account":    "The account is deleted, with everything that was yours.",
	"welcome":    "Your target and units are set. The page under your name changes them.",
	"details":    "Day, course and target are saved.",
	"card":       "The card and the day are saved.",
	"back":       "It is back.",
	"note":       "The note is changed.",
	"written":    "The note is saved.",
	"asked":      "Your coach can see your question.",
	"answered":   "The reply is saved.",
	"shots":      "What you said of the shots is saved.",
	"mark":       "The day is marked.",
	"unmarked":   "The mark is removed.",
	"links":      "Unused links no longer work.",
	"coach":      "You have accepted. You get access once your pupil approves you.",
	"approved":   "Your coach now has access.",
	"ended":      "Access has ended.",
	"imported":   "The rounds are imported.",
	"reset":      "The new password is set. Sign in with it.",
	"all":        "The account of the file is taken in: settings, courses and rounds.",
	"devices":    "All other devices are signed out.",
	"practice":   "The practice is set.",
	"result":     "The result is recorded.",
	"done":       "The practice is done.",
	"undone":     "The practice is not done after all.",
	"course":     "The course is saved.",
	"merged":     "The two courses are one now.",
	"used":       "The chosen rounds have this card now.",
	"proposed":   "The target is proposed. Your pupil accepts or declines it.",
	"accepted":   "The target is yours now. Rounds keep the one they were played for.",
	"declined":   "The proposed target is declined.",
	"link":       "The link is taken back. It works no more.",
	"steward":    "That account is a steward now.",
	"left":       "You are a steward no more.",
	"invitation": "The invitation is taken back. Its link works no more.",
	savedRound:   "The last hole is saved.",
	"replaced":   "The rounds are imported. What they replaced is listed here, and can be brought back for 30 days.",
}

// savedText is what the address says was saved, empty for nothing.
func savedText(r *http.Request) string {
	if r.Method != http.MethodGet {
		return ""
	}
	return savedTexts[r.URL.Query().Get(savedParam)]
}

// saying adds to an address what was just done, for the page to say.
func saying(at, param, value string) string {
	at, place, placed := strings.Cut(at, "#")
	join := "?"
	if strings.Contains(at, "?") {
		join = "&"
	}
	at += join + url.Values{param: {value}}.Encode()
	if placed {
		at += "#" + place
	}
	return at
}

// saved sends the browser on, to a page that says what was saved.
func saved(w http.ResponseWriter, r *http.Request, at, what string) error {
	return then(w, r, saying(at, savedParam, what))
}
