package handlers

import (
	"bytes"
	"net/http"
	"strconv"

	"strokeledger/analysis/accountfile"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/db"
)

// atOnce is how many rounds of an export or import are in memory at once.
const atOnce = 100

// eachRound goes through all rounds of the signed-in player, the earliest first.
func (s *server) eachRound(r *http.Request, take func(db.Round) error) error {
	who := me(r).ID
	ids, err := s.store.RoundIDs(r.Context(), who)
	if err != nil {
		return err
	}
	for from := 0; from < len(ids); from += atOnce {
		some, err := s.store.Rounds(r.Context(), who, who, db.Chosen{IDs: ids[from:min(from+atOnce, len(ids))]})
		if err != nil {
			return err
		}
		for i := len(some) - 1; i >= 0; i-- {
			if err := take(some[i]); err != nil {
				return err
			}
		}
	}
	return nil
}

// sendFile sends a complete file. The file is made before it is sent, so that a
// failure is answered with a page.
func sendFile(w http.ResponseWriter, kind, name string, file *bytes.Buffer) error {
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Content-Disposition", `attachment; filename="`+name+`"`)
	w.Header().Set("Content-Length", strconv.Itoa(file.Len()))
	_, err := file.WriteTo(w)
	return err
}

// export sends all rounds as a shots file.
func (s *server) export(w http.ResponseWriter, r *http.Request) error {
	var file bytes.Buffer
	out := shotsfile.NewWriter(&file)
	err := s.eachRound(r, func(kept db.Round) error { return out.Write(kept.Played()) })
	if err != nil {
		return err
	}
	if err := out.Flush(); err != nil {
		return err
	}
	return sendFile(w, "text/csv; charset=utf-8", "shots.csv", &file)
}

// exportEverything sends everything in the account as one file.
func (s *server) exportEverything(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	var file bytes.Buffer
	out := accountfile.NewWriter(&file, accountfile.Settings{Name: p.Name, Far: p.FarUnit, Green: p.GreenUnit, Target: p.Target, BoundaryYd: p.BoundaryYd, Clubs: p.Clubs, Zone: p.Zone})
	err := s.eachRound(r, func(kept db.Round) error {
		out.Write(fileOf(kept))
		return nil
	})
	if err != nil {
		return err
	}
	written, err := s.written(r)
	if err != nil {
		return err
	}
	if err := out.Close(written); err != nil {
		return err
	}
	return sendFile(w, "application/json; charset=utf-8", "strokeledger.json", &file)
}

func fileOf(kept db.Round) accountfile.Round {
	f := accountfile.Round{Name: kept.Name, Day: golf.DateOf(kept.PlayedOn), Course: kept.Course, Tee: kept.Tee, Target: kept.Target,
		BoundaryYd: kept.BoundaryYd, Par18: kept.Par18, Conditions: kept.Conditions, EnteredBy: kept.EnteredBy, CardOut: kept.CardOut, CardIn: kept.CardIn, FirstHole: kept.FirstHole}
	for _, h := range kept.Holes {
		f.Holes = append(f.Holes, accountfile.Hole{Hole: h.Hole, Length: h.Length, Index: h.Index, Line: h.Line, Far: h.Units.Far, Green: h.Units.Green})
	}
	return f
}

func keptOf(f accountfile.Round) db.Round {
	kept := db.Round{Name: f.Name, PlayedOn: f.Day.Time(), Course: f.Course, Tee: f.Tee, Target: f.Target, BoundaryYd: f.BoundaryYd, Par18: f.Par18,
		Conditions: f.Conditions, EnteredBy: f.EnteredBy, CardOut: f.CardOut, CardIn: f.CardIn, FirstHole: f.FirstHole}
	for _, h := range f.Holes {
		kept.Holes = append(kept.Holes, db.Hole{Hole: h.Hole, Length: h.Length, Index: h.Index, Line: h.Line, Units: db.Units{Far: h.Far, Green: h.Green}})
	}
	return kept
}
