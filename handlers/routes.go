package handlers

import (
	"net/http"
	"time"

	"github.com/go-chi/chi/v5"
	"github.com/go-chi/chi/v5/middleware"
	"github.com/go-chi/httprate"
	"github.com/klauspost/compress/gzhttp"

	"strokeledger/static"
	"strokeledger/web/paths"
)

// How often a client may try a password, an account or a link for a coach, all
// together.
const (
	triesMost = 20
	triesSpan = time.Minute
)

func (s *server) routes() http.Handler {
	r := chi.NewRouter()
	r.Use(s.clientAddress(), s.identify, s.logged, s.recovered, s.timed, s.headers, s.atItsAddress, bounded, middleware.GetHead, http.NewCrossOriginProtection().Handler, compressed, s.readable)
	r.NotFound(s.page(s.notFound))
	r.MethodNotAllowed(s.page(s.notAllowed))
	r.Get(paths.Healthy, s.page(s.healthy))
	r.Get(paths.Ready, s.page(s.ready))
	r.Get(static.Prefix+"{file}", s.page(s.file))
	r.Get(paths.Worker, s.page(s.worker))
	r.Get(paths.Manifest, s.page(s.manifest))
	r.Get(paths.Offline, s.page(s.offline))
	r.Group(s.feedPages)
	r.Group(s.anybodysPages)
	return r
}

// anybodysPages are the pages without a session, and then those that need one.
func (s *server) anybodysPages(r chi.Router) {
	r.Use(s.withPlayer)
	r.Get(paths.Front, s.page(s.front))
	r.Get(paths.Help, s.page(s.help))
	r.Get(paths.Guide("{guide}"), s.page(s.guide))
	r.Get(paths.Join, s.page(s.joinForm))
	r.Get(paths.Reset, s.page(s.resetForm))
	r.Group(func(r chi.Router) {
		r.Use(s.limited())
		r.Post(paths.SignIn, s.page(s.signIn))
		r.Post(paths.Join, s.page(s.join))
		r.Post(paths.Reset, s.page(s.reset))
	})
	r.Group(s.signedIn)
}

// signedIn are the pages of a player.
func (s *server) signedIn(r chi.Router) {
	r.Use(s.mustBeSignedIn)
	r.Group(s.accountPages)
	r.Group(s.stewardsPages)
	r.Group(s.coursePages)
	r.Group(s.roundPages)
	r.Group(s.coachingPages)
	r.Group(s.codePages)
	r.Route(paths.Players+"/{player}", s.playersPages)
}

// accountPages are the settings of an account, its files, and what was removed from
// it.
func (s *server) accountPages(r chi.Router) {
	r.Post(paths.SignOut, s.page(s.signOut))
	r.Get(paths.Welcome, s.page(s.welcome))
	r.Post(paths.Welcome, s.page(s.saveWelcome))
	r.Get(paths.Account, s.page(s.account))
	r.Post(paths.Account, s.page(s.saveSettings))
	r.Post(paths.Password, s.page(s.savePassword))
	r.Post(paths.Devices, s.page(s.endDevice))
	r.Post(paths.OtherDevices, s.page(s.endOtherDevices))
	r.Post(paths.Delete, s.page(s.deleteAccount))
	r.Post(paths.Feed, s.page(s.saveFeed))
	r.Post(paths.Digest, s.page(s.saveDigest))
	r.Get(paths.Export, s.page(s.export))
	r.Get(paths.Everything, s.page(s.exportEverything))
	r.Get(paths.Import, s.page(s.importForm))
	r.Post(paths.Import, s.page(s.importFile))
	r.Post(paths.ImportConfirm, s.page(s.importConfirm))
	r.Get(paths.Removed, s.page(s.removed))
	r.Post(paths.Removed, s.page(s.restoreRemoved))
}

// coursePages are the courses.
func (s *server) coursePages(r chi.Router) {
	r.Get(paths.Courses, s.page(s.courses))
	r.Get(paths.NewCourse, s.page(s.newCourse))
	r.Post(paths.NewCourse, s.page(s.saveCourse))
	r.Get(paths.Courses+"/{course}", s.page(s.course))
	r.Post(paths.Courses+"/{course}", s.page(s.saveCourse))
	r.Post(paths.Courses+"/{course}/use-card", s.page(s.useCard))
	r.Post(paths.Courses+"/{course}/remove", s.page(s.removeCourse))
	r.Post(paths.Courses+"/{course}/merge", s.page(s.mergeCourse))
	r.Get(paths.Courses+"/{course}/pictures", s.page(s.pictures))
	r.Get(paths.Courses+"/{course}/holes/{hole}/picture", s.page(s.picture))
	r.Post(paths.Courses+"/{course}/holes/{hole}/picture", s.page(s.savePicture))
	r.Get(paths.Courses+"/{course}/holes/{hole}/picture.json", s.page(s.pictureFile))
	r.Post(paths.Courses+"/{course}/holes/{hole}/picture/file", s.page(s.fillPicture))
	r.Post(paths.Courses+"/{course}/holes/{hole}/picture/back", s.page(s.pictureBack))
}

// roundPages are the rounds of the signed-in player, and the days marked among them.
func (s *server) roundPages(r chi.Router) {
	r.Get(paths.Rounds, s.page(s.rounds))
	r.Get(paths.NewRound, s.page(s.newRound))
	r.Post(paths.NewRound, s.page(s.beginRound))
	r.Get(paths.Rounds+"/{round}", s.page(s.round))
	r.Get(paths.Rounds+"/{round}/card", s.page(s.roundCard))
	r.Post(paths.Rounds+"/{round}/remove", s.page(s.removeRound))
	r.Get(paths.Rounds+"/{year}/book", s.page(s.yearBook))
	r.Get(paths.Rounds+"/{round}/details", s.page(s.details))
	r.Post(paths.Rounds+"/{round}/details", s.page(s.saveDetails))
	r.Get(paths.Rounds+"/{round}/holes/{hole}", s.page(s.hole))
	r.Post(paths.Rounds+"/{round}/holes/{hole}", s.page(s.saveHole))
	r.Post(paths.Rounds+"/{round}/holes/{hole}/echo", s.page(s.echoHole))
	r.Get(paths.Rounds+"/{round}/holes/{hole}/shots", s.page(s.shots))
	r.Post(paths.Rounds+"/{round}/holes/{hole}/shots", s.page(s.saveShots))
	r.Post(paths.Rounds+"/{round}/conditions", s.page(s.saveConditions))
	r.Get(paths.MyMonths, s.page(s.myMonths))
	r.Post(paths.Marks, s.page(s.mark))
	r.Post(paths.Marks+"/{mark}/remove", s.page(s.removeMark))
}

// coachingPages are the pages of coaching that name no player.
func (s *server) coachingPages(r chi.Router) {
	r.Get(paths.Coaching, s.page(s.coaching))
	r.Group(func(r chi.Router) {
		r.Use(s.limited())
		r.Post(paths.CoachInvite, s.page(s.inviteCoach))
		r.Get(paths.CoachAccept, s.page(s.coachLink))
		r.Post(paths.CoachAccept, s.page(s.acceptCoaching))
	})
	r.Post(paths.CoachRevoke, s.page(s.revokeCoachLinks))
	r.Post(paths.CoachConfirm, s.page(s.confirmCoach))
	r.Post(paths.CoachEnd, s.page(s.endCoaching))
	r.Get(paths.Notices, s.page(s.notices))
	r.Get(paths.CoachLooks, s.page(s.looks))
	r.Get(paths.CoachKept, s.page(s.keptNotes))
	r.Post(paths.CoachKept, s.page(s.removeKeptNote))
	r.Get(paths.Squad, s.page(s.squad))
	r.Get(paths.SquadSheet, s.page(s.squadSheet))
	r.Get(paths.SquadCSV, s.page(s.squadFile))
	r.Get(paths.RosterCSV, s.page(s.rosterFile))
	r.Post(paths.CoachGroups, s.page(s.renameGroup))
	r.Post(paths.CoachDay, s.page(s.shareFrom))
	r.Post(paths.CoachResume, s.page(s.resumeCoaching))
}

// codePages are those of the codes by which pupils ask coaches, and of phrases.
func (s *server) codePages(r chi.Router) {
	r.Get(paths.Phrases, s.page(s.phrases))
	r.Post(paths.Phrases, s.page(s.keepPhrase))
	r.Post(paths.Phrases+"/{phrase}/remove", s.page(s.removePhrase))
	r.Post(paths.CoachCode, s.page(s.setCode))
	r.With(s.limited()).Post(paths.CoachAsk, s.page(s.askCoach))
	r.Post(paths.CoachAnswer, s.page(s.answerRequest))
	r.Post(paths.CoachWithdraw, s.page(s.withdrawRequest))
}

// stewardsPages are the pages of a steward.
func (s *server) stewardsPages(r chi.Router) {
	r.Post(paths.Invite, s.page(s.invite))
	r.Get(paths.Accounts, s.page(s.accounts))
	r.Post(paths.Accounts+"/{player}/reset", s.page(s.createReset))
	r.Post(paths.Accounts+"/{player}/reset/remove", s.page(s.endReset))
	r.Post(paths.Accounts+"/{player}/steward", s.page(s.makeSteward))
	r.Post(paths.EndInvite, s.page(s.endInvitation))
	r.Post(paths.LeaveOffice, s.page(s.leaveOffice))
}

// playersPages are the pages that name the player whom they are about.
func (s *server) playersPages(r chi.Router) {
	r.Get("/", s.page(s.overview))
	r.Post("/groups", s.page(s.setGroups))
	r.Post("/archive", s.page(s.archive))
	r.Get("/months", s.page(s.months))
	r.Get("/months.csv", s.page(s.monthsCSV))
	r.Get("/months/behind", s.page(s.behind))
	r.Get("/handicap", s.page(s.handicap))
	r.Get("/rounds", s.page(s.seenRounds))
	r.Get("/rounds/{round}", s.page(s.seenRound))
	r.Get("/rounds/{year}/book", s.page(s.seenYearBook))
	r.Get("/lessons", s.page(s.lessons))
	r.Get("/report", s.page(s.report))
	r.Get("/report.csv", s.page(s.reportFile))
	r.Get("/beside", s.page(s.beside))
	s.practicePages(r)
	s.playPages(r)
	s.lessonPages(r)
	s.walkedPages(r)
}

// walkedPages are the rounds that a coach enters for a player.
func (s *server) walkedPages(r chi.Router) {
	r.Get("/walked", s.page(s.walkedRounds))
	r.Post("/walked", s.page(s.beginWalked))
	r.Get("/walked/{walked}", s.page(s.walked))
	r.Post("/walked/{walked}", s.page(s.saveWalked))
	r.Post("/walked/{walked}/answer", s.page(s.answerWalked))
	r.Get("/walked/{walked}/holes/{hole}", s.page(s.hole))
	r.Post("/walked/{walked}/holes/{hole}", s.page(s.saveHole))
	r.Post("/walked/{walked}/holes/{hole}/echo", s.page(s.echoHole))
	r.Post("/walked/{walked}/remove", s.page(s.removeWalked))
}

// practicePages are the pages of a player's practice.
func (s *server) practicePages(r chi.Router) {
	r.Get("/plan", s.page(s.plan))
	r.Get("/log", s.page(s.logOfPractice))
	r.Post("/plans", s.page(s.takePlan))
	r.Get("/plans/{plan}", s.page(s.takenPlan))
	r.Post("/plans/{plan}/remove", s.page(s.removePlan))
	r.Get("/drills/{drill}", s.page(s.drill))
	r.Get("/start-line", s.page(s.startLine))
	r.Get("/run-out", s.page(s.runOut))
	r.Get("/run-out.csv", s.page(s.runOutCSV))
	r.Post("/run-out", s.page(s.addTrials))
	r.Post("/run-out/{trial}/remove", s.page(s.removeTrial))
	r.Post("/drills/{drill}", s.page(s.saveDrill))
	r.Get("/sessions/{session}", s.page(s.session))
	r.Post("/sessions/{session}", s.page(s.changeSession))
	r.Post("/sessions/{session}/remove", s.page(s.removeSession))
}

// playPages are the pages of what a player plans on the course.
func (s *server) playPages(r chi.Router) {
	r.Get("/play", s.page(s.playIndex))
	r.Get("/play/{course}", s.page(s.playRound))
	r.Get("/play/{course}/card", s.page(s.carryCard))
	r.Get("/play/{course}/holes/{hole}", s.page(s.playHole))
	r.Post("/play/{course}/holes/{hole}/advice", s.page(s.advise))
	r.Post("/play/{course}/holes/{hole}/advice/answer", s.page(s.answerAdvice))
	r.Get("/play/{course}/chance", s.page(s.chance))
	r.Get("/play/{course}/rounds/{round}", s.page(s.planned))
	r.Get("/bag", s.page(s.bag))
	r.Post("/bag", s.page(s.saveBag))
	r.Post("/bag/range", s.page(s.saveRange))
	r.Post("/bag/range/{session}/remove", s.page(s.removeRange))
}

// lessonPages take what coach and player write to each other.
func (s *server) lessonPages(r chi.Router) {
	r.Post("/notes", s.page(s.writeNote))
	r.Post("/notes/{note}", s.page(s.editNote))
	r.Post("/notes/{note}/remove", s.page(s.removeNote))
	r.Post("/notes/{note}/replies", s.page(s.reply))
	r.Post("/notes/{note}/replies/{reply}/remove", s.page(s.removeReply))
	r.Post("/assignments", s.page(s.assign))
	r.Post("/assignments/{assignment}/results", s.page(s.recordResult))
	r.Post("/assignments/{assignment}/results/{result}/remove", s.page(s.removeResult))
	r.Post("/assignments/{assignment}/done", s.page(s.tickOff))
	r.Post("/assignments/{assignment}/remove", s.page(s.removeAssignment))
	r.Post("/lessons", s.page(s.arrangeLesson))
	r.Post("/lessons/{lesson}", s.page(s.rearrangeLesson))
	r.Post("/lessons/{lesson}/remove", s.page(s.cancelLesson))
	r.Get("/lessons/{lesson}/lesson.ics", s.page(s.lessonFile))
	r.Post("/target", s.page(s.proposeTarget))
	r.Post("/target/answer", s.page(s.answerTarget))
}

// clientAddress finds the address of the client: that of the connection, or the one
// that a named proxy reports.
func (s *server) clientAddress() func(http.Handler) http.Handler {
	if len(s.options.Proxies) > 0 {
		return middleware.ClientIPFromXFF(s.options.Proxies...)
	}
	return middleware.ClientIPFromRemoteAddr
}

// limited limits how often a client may try.
func (s *server) limited() func(http.Handler) http.Handler {
	return httprate.LimitBy(triesMost, triesSpan, byClient, httprate.WithLimitHandler(s.page(s.tooOften)))
}

// byClient counts tries by client address; a whole /64 of IPv6 counts as one.
func byClient(r *http.Request) (string, error) {
	return httprate.CanonicalizeIP(middleware.GetClientIP(r.Context())), nil
}

func compressed(next http.Handler) http.Handler { return gzhttp.GzipHandler(next) }
