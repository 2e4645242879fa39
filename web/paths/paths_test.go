package paths

import (
	"net/url"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
)

// address is an address that was made, and what it must be.
type address struct{ got, want string }

func check(t *testing.T, all []address) {
	t.Helper()
	for _, a := range all {
		if a.got != a.want {
			t.Errorf("%q, want %q", a.got, a.want)
		}
		if _, err := url.Parse(a.got); err != nil {
			t.Error(err)
		}
	}
}

func TestAddressesOfARound(t *testing.T) {
	check(t, []address{
		{Round(12), "/rounds/12"},
		{Details(12), "/rounds/12/details"},
		{Conditions(12), "/rounds/12/conditions"},
		{RemoveRound(12), "/rounds/12/remove"},
		{Hole(12, 7), "/rounds/12/holes/7"},
		{HolesOf(12).Echo(7), "/rounds/12/holes/7/echo"}, {HolesOf(12).Round(), "/rounds/12"}, {Whose{Player: 7}.HolesOfWalked(3).At(5), "/players/7/walked/3/holes/5"}, {Whose{Player: 7}.HolesOfWalked(3).Round(), "/players/7/walked/3"},
		{Shots(12, 7), "/rounds/12/holes/7/shots"},
		{Shot(7, 3), "#h7-3"},
	})
}

// A line that was typed comes back as it was, whatever its letters mean in an
// address.
func TestTypedLineSurvives(t *testing.T) {
	for _, line := range []string{"d 150f 20g 3g h", "x+2", "5&6=#?", "½ “öä”", ""} {
		at, err := url.Parse(Typed(Hole(12, 7), line))
		if err != nil {
			t.Fatal(err)
		}
		if got := at.Query().Get("line"); got != line || at.Path != Hole(12, 7) || at.Fragment != "" {
			t.Errorf("%q comes back as %q at %s", line, got, at)
		}
	}
}

func TestAddressesOfACourse(t *testing.T) {
	check(t, []address{
		{Course(4), "/courses/4"},
		{OtherTees(4), "/courses/new?from=4"},
		{RoundOn(4), "/rounds/new?course=4"},
		{UseCard(4), "/courses/4/use-card"},
		{MergeCourse(4), "/courses/4/merge"},
		{RemoveCourse(4), "/courses/4/remove"},
	})
}

func TestAddressesOfAccounts(t *testing.T) {
	check(t, []address{
		{Guide("practice"), "/help/practice"},
		{ResetOf(5), "/accounts/5/reset"},
		{EndResetOf(5), "/accounts/5/reset/remove"},
		{StewardOf(5), "/accounts/5/steward"},
		{ResetLink(5, "abc"), "/reset?player=5&token=abc"},
		{Invited("abc"), "/join?token=abc"},
		{CoachLink(5, "a+b"), "/coaching/accept?player=5&token=a%2Bb"},
		{RemoveMark(6), "/marks/6/remove"},
	})
}

// The first page of a list has no number in its address.
func TestPagesOfLooks(t *testing.T) {
	check(t, []address{{Looks(0), "/coaching/looks"}, {Looks(1), "/coaching/looks"}, {Looks(2), "/coaching/looks?page=2"}})
}

func TestRosterKeepsItsChoice(t *testing.T) {
	check(t, []address{
		{Roster{}.Address(), "/coaching"},
		{Roster{Name: "O’Neil & son"}.Address(), "/coaching?name=O%E2%80%99Neil+%26+son"},
		{Roster{Sort: "name", Show: "late"}.Address(), "/coaching?show=late&sort=name"},
		{Roster{Sort: "name", Show: "late"}.By("target").Address(), "/coaching?show=late&sort=target"},
		{Roster{Show: "late"}.By("").Address(), "/coaching?show=late"},
	})
}

// A player reads the own rounds at short addresses; a coach reads them under the
// pupil's number.
func TestWhosePages(t *testing.T) {
	own, pupil := Whose{Player: 7, Own: true}, Whose{Player: 7}
	check(t, []address{
		{own.Round(12), "/rounds/12"},
		{pupil.Round(12), "/players/7/rounds/12"},
		{own.Rounds(), "/rounds"},
		{pupil.Rounds(), "/players/7/rounds"},
		{pupil.Overview(), "/players/7"}, {pupil.Groups(), "/players/7/groups"}, {pupil.Archive(), "/players/7/archive"}, {SquadOf(""), "/coaching/squad"}, {SquadChosen(url.Values{"from": {"2026-05-02"}, "pupil": {"3", "4"}, "removed": {"x"}}).File(), "/coaching/squad.csv?from=2026-05-02&pupil=3&pupil=4"}, {SquadChosen(nil).Page(), "/coaching/squad"},
		{SquadChosen(url.Values{"group": {"Youth"}}).Of([]golf.PlayerID{3, 9}).About("putting 3-6").Sheet(), "/coaching/squad/sheet?pupil=3&pupil=9&row=putting+3-6"},
		{SquadChosen(url.Values{"pupil": {"3"}, "row": {"putting"}}).Everybody().File(), "/coaching/squad.csv?who=all"}, {SquadChosen(url.Values{"who": {"all"}}).In("Youth").Page(), "/coaching/squad?group=Youth"}, {SquadOf("Tuesday six"), "/coaching/squad?group=Tuesday+six"},
		{own.Write(12, 7, 3), "/rounds/12?on=7.3#write-7"},
		{pupil.Written(12, 7, 0), "/players/7/rounds/12?on=7"},
	})
	// What both may do has one address.
	for _, whose := range []Whose{own, pupil} {
		check(t, []address{
			{whose.Notes(), "/players/7/notes"},
			{whose.Planned(3, 12), "/players/7/play/3/rounds/12"},
			{whose.HoleAdvice(3, 12), "/players/7/play/3/holes/12/advice"}, {whose.AnswerAdvice(3, 12), "/players/7/play/3/holes/12/advice/answer"},
			{whose.Note(3), "/players/7/notes/3"},
			{whose.RemoveNote(3), "/players/7/notes/3/remove"},
			{whose.Reply(3), "/players/7/notes/3/replies"},
			{whose.RemoveReply(3, 9), "/players/7/notes/3/replies/9/remove"},
			{whose.Assignments(), "/players/7/assignments"},
			{whose.Results(2), "/players/7/assignments/2/results"},
			{whose.RemoveResult(2, 8), "/players/7/assignments/2/results/8/remove"},
			{whose.TickOff(2), "/players/7/assignments/2/done"},
			{whose.RemoveAssignment(2), "/players/7/assignments/2/remove"},
			{whose.Target(), "/players/7/target"},
			{whose.AnswerTarget(), "/players/7/target/answer"},
			{whose.Report(), "/players/7/report"},
			{whose.ReportOf(golf.Month(2026, 5)), "/players/7/report?span=2026-05"},
			{whose.Lessons(), "/players/7/lessons"}, {whose.WalkedRounds(), "/players/7/walked"}, {whose.Walked(3), "/players/7/walked/3"}, {whose.AnswerWalked(3), "/players/7/walked/3/answer"}, {whose.RemoveWalked(3), "/players/7/walked/3/remove"},
			{whose.NextLesson(), "/players/7/lessons#next-lesson"}, {whose.Arranged(3), "/players/7/lessons/3"},
			{whose.CancelLesson(3), "/players/7/lessons/3/remove"}, {whose.LessonFile(3), "/players/7/lessons/3/lesson.ics"},
			{whose.Handicap(), "/players/7/handicap"},
		})
	}
}

func TestAddressesOfAComparison(t *testing.T) {
	plain := Comparison{Whose: Whose{Player: 7}}
	chosen := plain.With(golf.Month(2026, 5), golf.Month(2026, 6))
	chosen.Course, chosen.Without, chosen.Versus = "Harrow Fen & Links", []golf.RoundID{3, 4}, golf.VersusTour
	const choice = "course=Harrow+Fen+%26+Links&span=2026-05&span=2026-06&versus=tour&without=3&without=4"
	check(t, []address{
		{plain.Months(), "/players/7/months"},
		{plain.MonthsCSV(), "/players/7/months.csv"},
		{plain.BehindPutts("2-3"), "/players/7/months/behind?putts=2-3"},
		{plain.BehindRow(1, "approach"), "/players/7/months/behind?in=1&row=approach"},
		{plain.BehindMeasure(2, "doubles"), "/players/7/months/behind?in=2&measure=doubles"},
		{chosen.Months(), "/players/7/months?" + choice},
		{chosen.MonthsCSV(), "/players/7/months.csv?" + choice},
	})
	if got := chosen.BehindRow(2, "approach"); !strings.Contains(got, "span=2026-05&span=2026-06") || !strings.Contains(got, "in=2") {
		t.Errorf("%s loses the choice", got)
	}
	if len(plain.Spans) != 0 {
		t.Error("the comparison of other spans changes the one it comes from")
	}
}

// No two pages have one address, and none ends with a slash but the front page.
func TestFixedAddressesDiffer(t *testing.T) {
	seen := map[string]bool{}
	for _, at := range []string{
		Front, SignIn, SignOut, SignInAgain, Join, Rounds, NewRound, Courses, NewCourse, Accounts, EndInvite, LeaveOffice, Reset,
		Account, Password, Devices, OtherDevices, Delete, Invite, Removed, Welcome, Export, Everything, Import, ImportConfirm,
		Healthy, Ready, Help, Offline, Worker, Manifest, MyMonths, Marks, Players,
		Coaching, CoachInvite, CoachRevoke, CoachAccept, CoachConfirm, CoachEnd, CoachLooks, CoachKept, Squad, SquadSheet, SquadCSV, RosterCSV,
	} {
		if seen[at] || !strings.HasPrefix(at, "/") || at != Front && strings.HasSuffix(at, "/") {
			t.Errorf("%q is taken or no address", at)
		}
		seen[at] = true
	}
}
