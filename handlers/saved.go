package handlers

import (
	"net/http"
	"net/url"
	"strings"
)

// The parameters of an address that say what was just done. They hold only the name
// of a text, never the text itself.
const (
	savedParam   = "saved"
	removedParam = "removed"
)

// savedRound names the text for a round whose last hole was saved.
const savedRound = "round"

// savedTexts are the messages that the next page can show, by name.
var savedTexts = map[string]string{
	"settings":        "Your settings are saved.",
	"password":        "Your password is changed. Other devices are signed out, and an address of a feed no longer works.",
	"device":          "That device is signed out.",
	"account":         "Your account is deleted, with everything in it.",
	"welcome":         "Your target and units are saved. You can change them on the account page, under your name.",
	"details":         "The date, course and target are saved.",
	"card":            "The card and conditions are saved.",
	"back":            "Restored.",
	"note":            "The note is changed.",
	"written":         "The note is saved.",
	"asked":           "Your coach can see your question.",
	"answered":        "The reply is saved.",
	"shots":           "Clubs and notes are saved.",
	"mark":            "The day is marked.",
	"unmarked":        "The mark is removed.",
	"links":           "Unused links no longer work.",
	"coach":           "You have accepted. You get access once your pupil approves you.",
	"linked":          "You have accepted. You have access already, and an earlier first day applies at once.",
	"requested":       "Your request is sent. The coach gets access by accepting it.",
	"withdrawn":       "Your request is withdrawn.",
	"taken":           "You have accepted. You can see the pupil’s pages now.",
	"turneddown":      "You have declined, and the pupil is told.",
	"code":            "You have a new code. An older one no longer works.",
	"codeoff":         "Your code is turned off. It no longer works.",
	"approved":        "Your coach now has access.",
	"ended":           "Access has ended. For a day you can take that back, below.",
	"resumed":         "Access is restored.",
	"day":             "The day is changed, and applies at once.",
	"imported":        "The rounds are imported.",
	"reset":           "The new password is set. Sign in with it.",
	"all":             "The settings, courses and rounds in the file are imported.",
	"devices":         "All other devices are signed out.",
	"practice":        "The practice is set.",
	"result":          "The result is recorded.",
	"session":         "The session is saved.",
	"plan":            "The plan is yours now, and its drills are added to your practice.",
	"done":            "The practice is marked as done.",
	"undone":          "The practice is marked as not done.",
	"arranged":        "The lesson is arranged. It is among the notices of both of you.",
	"moved":           "The change is saved. It is among the notices of both of you.",
	"walked":          "The lines are saved. Nobody else sees them yet.",
	"sent":            "The round is sent, and the pupil is told.",
	"walkin":          "The round is yours now, and counts.",
	"course":          "The course is saved.",
	"merged":          "The two courses are merged.",
	"used":            "The selected rounds now use this card.",
	"proposed":        "The target is proposed. Your pupil accepts or declines it.",
	"accepted":        "The target is yours now. Rounds keep the one they were played for.",
	"declined":        "The proposed target is declined.",
	"advised":         "Saved. Your pupil sees it here and on the plan of the round.",
	"advice_taken":    "It stands in your plan now, and on the card to carry.",
	"advice_declined": "Declined. Your plan stands without it.",
	"link":            "The link is revoked. It no longer works.",
	"steward":         "That account is now a steward.",
	"left":            "You are no longer a steward.",
	"invitation":      "The invitation is revoked. Its link no longer works.",
	"kept":            "Your access to the pupil has ended. What you wrote is kept here as a private note of yours; the pupil cannot read it.",
	"groups":          "The groups are saved.",
	"archived":        "The pupil is archived. Choose archived on the roster to see them.",
	"unarchived":      "The pupil is on the roster again.",
	savedRound:        "The last hole is saved.",
	"replaced":        "The rounds are imported. The rounds they replaced are listed here and can be restored for 30 days.",
	"trials":          "The trials are in the book.",
	"picture":         "The drawing is saved.",
	"picture_back":    "The earlier drawing is back in use.",
	"undrawn":         "The drawing is removed. You can restore it from the earlier drawings.",
	"bag":             "The bag is saved.",
	"range":           "The balls are saved.",
	"digest":          "Your choice of mail is saved.",
	"digest-asked":    "A letter with a link was sent to your address. Mail starts when you confirm there.",
	"digest-later":    "Your choice is saved. The mail server did not take the letter with the link yet; it is tried again.",
	"feed-off":        "The feed is off. Its address no longer works.",
	"phrase":          "The phrase is kept.",
}

// savedText is the message that the address of a request names; it is empty if there
// is none.
func savedText(r *http.Request) string {
	if r.Method != http.MethodGet {
		return ""
	}
	return savedTexts[r.URL.Query().Get(savedParam)]
}

// saying adds the name of a message to an address.
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

// saved redirects to a page that says what was saved.
func saved(w http.ResponseWriter, r *http.Request, at, what string) error {
	return redirect(w, r, saying(at, savedParam, what))
}
