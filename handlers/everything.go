package handlers

import (
	"cmp"
	"encoding/json"
	"fmt"
	"net/http"
	"slices"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/pages"
	"strokeledger/web/paths"
)

// everything is an account as one file: its settings and all its rounds, so
// that the same account comes back from it on another server.
type everything struct {
	Version  int          `json:"version"`
	Settings settingsFile `json:"settings"`
	Rounds   []roundFile  `json:"rounds"`
	writtenFile
}

const everythingVersion = 1

type settingsFile struct {
	Name       string  `json:"name"`
	Far        string  `json:"far_unit"`
	Green      string  `json:"green_unit"`
	Target     float64 `json:"target"`
	BoundaryYd float64 `json:"boundary_yd"`
	Clubs      string  `json:"clubs"`
}

type roundFile struct {
	Name       string     `json:"name"`
	Day        string     `json:"day"`
	Course     string     `json:"course"`
	Tee        string     `json:"tee"`
	Target     float64    `json:"target"`
	BoundaryYd float64    `json:"boundary_yd"`
	Par18      int        `json:"par18"`
	Note       string     `json:"note"`
	CardOut    int        `json:"card_out"`
	CardIn     int        `json:"card_in"`
	FirstHole  int        `json:"first_hole,omitempty"`
	Holes      []holeFile `json:"holes"`
}

type holeFile struct {
	Number    int        `json:"number"`
	Par       int        `json:"par"`
	LengthIn  float64    `json:"length_in"`
	Index     int        `json:"stroke_index"`
	Line      string     `json:"line"`
	Far       string     `json:"far_unit,omitempty"` // units of the line, those of the settings where it says none
	Green     string     `json:"green_unit,omitempty"`
	PickedUp  bool       `json:"picked_up"`
	ScoreOnly int        `json:"score_only"`
	Shots     []shotFile `json:"shots"`
}

type shotFile struct {
	Lie        string   `json:"lie"`
	DistanceIn float64  `json:"distance_in"`
	Unit       string   `json:"unit,omitempty"`
	About      bool     `json:"about,omitempty"`
	Penalty    int      `json:"penalty,omitempty"`
	ShortSided bool     `json:"short_sided,omitempty"`
	GreenIn    *float64 `json:"green_in,omitempty"`
	Club       string   `json:"club,omitempty"`
	Miss       string   `json:"miss,omitempty"`
	Word       string   `json:"word,omitempty"`
}

// exportEverything sends the account as one file.
func (s *server) exportEverything(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	all, err := s.store.Rounds(r.Context(), p.ID, p.ID, db.Chosen{})
	if err != nil {
		return err
	}
	out := everything{Version: everythingVersion, Settings: settingsFile{p.Name, p.FarUnit, p.GreenUnit, p.Target, p.BoundaryYd, p.Clubs}}
	for i := len(all) - 1; i >= 0; i-- {
		out.Rounds = append(out.Rounds, fileOf(all[i]))
	}
	if out.writtenFile, err = s.written(r); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.Header().Set("Content-Disposition", `attachment; filename="strokeledger.json"`)
	return json.NewEncoder(w).Encode(out)
}

func fileOf(kept db.Round) roundFile {
	f := roundFile{Name: kept.Name, Day: golf.DateOf(kept.PlayedOn).String(), Course: kept.Course, Tee: kept.Tee, Target: kept.Target,
		BoundaryYd: kept.BoundaryYd, Par18: kept.Par18, Note: kept.Note, CardOut: kept.CardOut, CardIn: kept.CardIn, FirstHole: kept.FirstHole}
	for _, h := range kept.Holes {
		hole := holeFile{Number: h.Number, Par: h.Par, LengthIn: float64(h.Length), Index: h.Index, Line: h.Line, PickedUp: h.PickedUp, ScoreOnly: h.ScoreOnly}
		if h.Line != "" {
			hole.Far, hole.Green = h.Units.Far.String(), h.Units.Green.String()
		}
		for _, shot := range h.Shots {
			sf := shotFile{shot.Lie.String(), float64(shot.Distance), shot.Unit.String(), shot.About, shot.Penalty, shot.ShortSided, nil, shot.Club, shot.Miss.String(), shot.Word}
			if shot.GreenKnown {
				green := float64(shot.GreenToWork)
				sf.GreenIn = &green
			}
			hole.Shots = append(hole.Shots, sf)
		}
		f.Holes = append(f.Holes, hole)
	}
	return f
}

// importEverything takes in such a file: settings are the account's again, and
// a round of a name that is there already takes its place.
func (s *server) importEverything(w http.ResponseWriter, r *http.Request, data []byte) error {
	var in everything
	err := json.Unmarshal(data, &in)
	if err == nil && in.Version != everythingVersion {
		err = fmt.Errorf("version %d; allowed: %d", in.Version, everythingVersion)
	}
	var rounds []db.Round
	for _, f := range in.Rounds {
		if err != nil {
			break
		}
		var round db.Round
		if round, err = f.round(in.Settings); err != nil {
			err = fmt.Errorf("round %q: %w", f.Name, err)
		}
		rounds = append(rounds, round)
	}
	if err == nil {
		err = in.Settings.check()
	}
	if err != nil {
		return show(w, r, http.StatusUnprocessableEntity, pages.NewImport(shell(r), "The file of an account cannot be taken in: "+err.Error(), nil).View())
	}
	c := in.Settings
	err = s.store.Tx(r.Context(), func(tx *db.Store) error {
		if err := tx.SaveSettings(r.Context(), me(r).ID, db.Settings{Name: c.Name, FarUnit: c.Far, GreenUnit: c.Green, Target: c.Target, BoundaryYd: c.BoundaryYd, Clubs: c.Clubs}); err != nil {
			return err
		}
		return tx.Import(r.Context(), me(r).ID, rounds, true)
	})
	if err != nil {
		return err
	}
	return then(w, r, paths.Rounds)
}

func (c settingsFile) check() error {
	problems := map[string]string{}
	checkName(c.Name, problems)
	between(number(c.Target), 68, 110, "target", problems)
	between(number(c.BoundaryYd), 30, 100, "boundary_yd", problems)
	if c.Far != "yd" && c.Far != "m" || c.Green != "ft" && c.Green != "m" || !sayable(c.Clubs, 200) {
		problems["units"] = "Allowed: yd or m, ft or m."
	}
	for field, problem := range problems {
		return fmt.Errorf("%s: %s", field, problem)
	}
	return nil
}

// round reads a round of the file and checks it by the rules of every round. Its
// lines are in the units of the settings where they say none.
func (f roundFile) round(settings settingsFile) (db.Round, error) {
	day, err := golf.ParseDate(f.Day)
	if err != nil {
		return db.Round{}, err
	}
	kept := db.Round{Name: f.Name, PlayedOn: day.Time(), Course: f.Course, Tee: f.Tee, Target: f.Target, BoundaryYd: f.BoundaryYd, Par18: f.Par18,
		Note: f.Note, CardOut: f.CardOut, CardIn: f.CardIn, FirstHole: f.FirstHole}
	if !(f.Target >= 68 && f.Target <= 110) || !(f.BoundaryYd >= 30 && f.BoundaryYd <= 100) || f.Par18 < par18Least || f.Par18 > par18Most || f.FirstHole < 0 || f.FirstHole > 18 || f.CardOut < 0 || f.CardOut > scoreMost || f.CardIn < 0 || f.CardIn > scoreMost {
		return kept, fmt.Errorf("target, boundary, par, a nine of the card or first hole is out of range")
	}
	for _, text := range []string{f.Name, f.Course, f.Tee, f.Note} {
		if !sayable(text, 1000) || strings.TrimSpace(text) != text {
			return kept, fmt.Errorf("a text is too long, not one line, or has a space at an end")
		}
	}
	if f.Name == "" {
		return kept, fmt.Errorf("it has no name")
	}
	for _, h := range f.Holes {
		hole := db.Hole{Hole: golf.Hole{Number: h.Number, Par: h.Par, PickedUp: h.PickedUp, ScoreOnly: h.ScoreOnly}, Length: golf.Distance(h.LengthIn), Index: h.Index, Line: h.Line}
		var found bool
		if hole.Units, found = lineUnits(cmp.Or(h.Far, settings.Far), cmp.Or(h.Green, settings.Green)); !found {
			return kept, fmt.Errorf("hole %d: units %q and %q; allowed: yd or m, ft or m", h.Number, h.Far, h.Green)
		}
		for _, sf := range h.Shots {
			shot, err := sf.shot()
			if err != nil {
				return kept, err
			}
			hole.Shots = append(hole.Shots, shot)
		}
		if hole.Line == "" && (len(h.Shots) > 0 || h.PickedUp || h.ScoreOnly != 0) {
			return kept, fmt.Errorf("hole %d: it was played and has no line", h.Number)
		}
		if problems := hole.Check(); hole.Line != "" && problems != nil {
			return kept, problems
		}
		if !sayable(hole.Line, 500) || !(h.LengthIn >= 0 && hole.Length <= golf.MaxDistance) || h.Index < 0 || h.Index > 18 || h.Par < 3 || h.Par > 6 || h.Number < 1 || h.Number > 18 {
			return kept, fmt.Errorf("hole %d: its card or line is not allowed", h.Number)
		}
		if slices.ContainsFunc(kept.Holes, func(k db.Hole) bool { return k.Number == hole.Number }) {
			return kept, fmt.Errorf("hole %d: it is there twice", h.Number)
		}
		kept.Holes = append(kept.Holes, hole)
	}
	return kept, nil
}

func (sf shotFile) shot() (golf.Shot, error) {
	lie, err := golf.ParseLie(sf.Lie)
	if err != nil {
		return golf.Shot{}, err
	}
	shot := golf.Shot{Lie: lie, Distance: golf.Distance(sf.DistanceIn), About: sf.About, Penalty: sf.Penalty, ShortSided: sf.ShortSided, Club: sf.Club, Word: sf.Word}
	if !sayable(sf.Club, 1000) || strings.TrimSpace(sf.Club) != sf.Club || !sayable(sf.Word, wordMost) {
		return shot, fmt.Errorf("a club or a word is too long, not one line, or has a space at an end")
	}
	if sf.Unit != "" {
		if shot.Unit, err = golf.ParseUnit(sf.Unit); err != nil {
			return shot, err
		}
	}
	if sf.GreenIn != nil {
		shot.GreenToWork, shot.GreenKnown = golf.Distance(*sf.GreenIn), true
	}
	shot.Miss, err = golf.ParseMiss(sf.Miss)
	return shot, err
}
