package sample

import (
	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// besidePages are a player beside golfers of the same score: with others enough, with
// too few, and with too few rounds.
func besidePages() []Page {
	pupils, own := teaches(paths.Coaching), signedIn(ownPages.Plan())
	pupils.Pupil = pupilBar()
	few := besideInput(ownPages, 3, 0)
	return []Page{
		{"coach", "beside", "pupil", coach.NewBesidePage(pupils, besideInput(pupilsPages, 12, 7)).View()},
		{"coach", "beside", "own", coach.NewBesidePage(own, besideInput(ownPages, 12, 5)).View()},
		{"coach", "beside", "alone", coach.NewBesidePage(own, besideInput(ownPages, 12, 4)).View()},
		{"coach", "beside", "too-few", coach.NewBesidePage(own, few).View()},
	}
}

// besideInput sets the latest rounds of the years beside so many others.
func besideInput(whose paths.Whose, rounds, others int) coach.BesideInput {
	engine, player := analysis.NewEngine(), analysis.Player{Target: 79}
	played := playedYears()
	for i := range rounds {
		r := played[len(played)-1-i]
		summary, err := engine.Summary(r, 79, golf.StandardBoundary)
		if err != nil {
			panic("sample: " + err.Error())
		}
		player.Rounds = append(player.Rounds, analysis.Summarized{ID: r.ID, Day: r.Round.Date, Summary: summary})
	}
	in := coach.BesideInput{Whose: whose, Name: Player, Target: 79, Units: form.StandardUnits}
	var err error
	if in.Beside, err = engine.Beside(player); err != nil {
		panic("sample: " + err.Error())
	}
	peer, _, err := engine.Peer(player)
	if err != nil {
		panic("sample: " + err.Error())
	}
	peer.Level = in.Beside.Level
	var all []analysis.Peer
	for range others {
		all = append(all, peer)
	}
	for i := range peer.Beyond {
		peer.Beyond[i] *= .4
	}
	in.Peers = analysis.PeersOf(in.Beside.Level, all)
	return in
}
