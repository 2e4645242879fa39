package sample

import (
	"html"
	"regexp"
	"strings"
	"testing"
)

var (
	tag    = regexp.MustCompile(`<[^>]*>`)
	unseen = regexp.MustCompile(`(?s)<(script|style)[^>]*>.*?</(script|style)>`)
	spaces = regexp.MustCompile(`\s+`)
)

// texts are the texts of a page, one for each piece between tags, with what screen
// readers are told.
func texts(t *testing.T, p Page) []string {
	t.Helper()
	var b strings.Builder
	if err := p.View.Render(t.Context(), &b); err != nil {
		t.Fatal(err)
	}
	source := unseen.ReplaceAllString(b.String(), "\n")
	all := strings.Split(tag.ReplaceAllString(source, "\x00"), "\x00")
	for _, told := range regexp.MustCompile(`aria-label="([^"]*)"|placeholder="([^"]*)"|title="([^"]*)"`).FindAllStringSubmatch(source, -1) {
		all = append(all, told[1]+told[2]+told[3])
	}
	for i := range all {
		all[i] = strings.TrimSpace(spaces.ReplaceAllString(html.UnescapeString(all[i]), " "))
	}
	// A number in an element of its own stands beside the word after it.
	return append(all, spaces.ReplaceAllString(html.UnescapeString(tag.ReplaceAllString(source, " ")), " "))
}

// Numbers that nobody says so. An 8, an 11 and an 18 begin with a vowel, one is one of
// a thing, and nothing has no sign.
var misspoken = map[string]*regexp.Regexp{
	"a for an":             regexp.MustCompile(`\b[Aa] (?:8\d*|11|18)(?:[^\d,:/-]|$)`),
	"an for a":             regexp.MustCompile(`\b[Aa]n (?:[02-79]\d*|1|1[02-79]|1\d{2})(?:[^\d,]|$)`),
	"one of many":          regexp.MustCompile(`(?:^|[^\d.,+−-])1 (?:strokes|rounds|holes|shots|putts|doubles|pupils|days|notes|points|months|courses|times|letters|things|replies|questions|results|penalties|links|accounts|devices)\b`),
	"many of one":          regexp.MustCompile(`(?:^|[^\d.,])(?:[02-9]|\d*\.\d+|[1-9]\d+) (?:stroke|round|hole|shot|putt|pupil|day|note)(?:[.,;:]|$)`),
	"nothing with a sign":  regexp.MustCompile(`[+−]0(?:\.0+)?(?:[^\d.]|$)`),
	"a hyphen for a minus": regexp.MustCompile(`(?:^|[ (])-\d+(?:\.\d+)?(?:[ ),;]|$)`),
}

// No page in any state says a number as nobody would.
func TestNumbersAreSaidAsPeopleSayThem(t *testing.T) {
	for _, p := range Pages() {
		for _, text := range texts(t, p) {
			for what, wrong := range misspoken {
				if at := wrong.FindStringIndex(text); at != nil {
					t.Errorf("%s: %s in …%s…", p.At(), what, text[max(0, at[0]-40):min(len(text), at[1]+40)])
				}
			}
		}
	}
}

// What the rules take and refuse.
func TestTheRulesOfNumbers(t *testing.T) {
	for text, wrong := range map[string]string{
		"a 8": "a for an", "a 89 golfer": "a for an", "lost to a 11.": "a for an", "a 18 year old": "a for an", "an 79 golfer": "an for a", "an 180 yd": "an for a",
		"1 strokes over": "one of many", "only 1 rounds": "one of many", "2 round.": "many of one", "0.1 stroke": "many of one", "−0 strokes": "nothing with a sign", "+0.0": "nothing with a sign", "lost -0.4": "a hyphen for a minus",
		"an 89": "", "a 79": "", "an 11": "", "an 18": "", "a 180 yd shot": "", "0.1 strokes": "", "1 stroke": "", "21 rounds": "", "1.1 strokes": "", "−0.4": "", "+0.05": "", "2026-05-02": "", "line 1 of 27": "",
	} {
		got := ""
		for what, rule := range misspoken {
			if rule.MatchString(text) {
				got += what
			}
		}
		if got != wrong {
			t.Errorf("%q is %q, want %q", text, got, wrong)
		}
	}
}

// ofAPupil are the pages that a coach sees of a pupil.
var ofAPupil = regexp.MustCompile(`/(coach|coach-[a-z-]+)$|^coach/report/|^coach/lessons/(pupil|later-day|first-visit|refused-(lesson|practice|target))$|^practice/(plan/[a-z-]*coach[a-z-]*|drill/no-rounds)$`)

// toACoach are the sentences that speak to the coach, on pages of a pupil.
var toACoach = regexp.MustCompile(`Strokeledger, run by your club or yourself\. Your rounds stay on this machine\.|[Pp]rivate: only you can read it|Your first look\.|Since you last looked, on|You see what [\w ]+ played from|shared with you\.|the first day that you see|You proposed|^Note: you on`)

// A coach reads the pupil's name on every page of a pupil, and no word that takes the
// coach for the pupil.
func TestACoachIsNotTakenForThePupil(t *testing.T) {
	you := regexp.MustCompile(`(?i)\b(?:you|your|yours|yourself)\b`)
	pages := map[string]bool{}
	for _, p := range Pages() {
		if !ofAPupil.MatchString(p.At()) {
			continue
		}
		pages[p.Subject+"/"+p.Name] = true
		all := texts(t, p)
		for _, text := range all {
			rest := toACoach.ReplaceAllString(text, "")
			if at := you.FindStringIndex(rest); at != nil && text != "You" && len(text) < 2000 {
				t.Errorf("%s: %q", p.At(), text)
			}
		}
		if whole := all[len(all)-1]; strings.Count(whole, Player) < 2 { // once it is the reader's own name, in the navigation
			t.Errorf("%s does not name the pupil", p.At())
		}
	}
	if len(pages) < 7 {
		t.Errorf("only %v", pages)
	}
}
