package analysis

import (
	"encoding/json"
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/analysis/stat"
)

// KeptPlan is a plan as it was made, whatever the engine says of those rounds now.
type KeptPlan struct {
	Level float64 // of the game it stands on
	Items []KeptItem
}

// KeptItem is a candidate as it was when the plan was made.
type KeptItem struct {
	Kind     practice.Kind
	Part     golf.Category // of a part of the game
	Band     account.Band  // the dearest of the part
	WinBack  float64       // strokes for 18 holes
	Interval stat.Interval // of what is lost there, 95 %
	Sure     practice.Certainty
	Drill    practice.Drill // without its stations where it is no longer there
	Mark     practice.Mark
	Today    float64
	Minutes  int
	Again    int
}

// EngineVersion names what a plan's figures were worked out with.
func EngineVersion() string { return compare.EngineVersion() }

// planFile is a kept plan as it is written.
type planFile struct {
	Version int        `json:"version"`
	Level   float64    `json:"level"`
	Items   []itemFile `json:"items"`
}

type itemFile struct {
	Kind     int      `json:"kind"`
	Part     string   `json:"part"`
	Band     bandFile `json:"band"`
	WinBack  float64  `json:"win_back"`
	Low      float64  `json:"low"`
	High     float64  `json:"high"`
	Sure     int      `json:"sure"`
	Drill    string   `json:"drill"`
	Name     string   `json:"drill_name"`
	Tries    int      `json:"tries"`
	Pass     int      `json:"pass"`
	Sessions int      `json:"sessions"`
	Target   float64  `json:"chance_target"`
	Today    float64  `json:"chance_today"`
	Level    float64  `json:"level"`
	Minutes  int      `json:"minutes"`
	Again    int      `json:"measure_again_after_rounds"`
}

type bandFile struct {
	Par  int     `json:"par"`
	Lie  string  `json:"lie"`
	Low  float64 `json:"low_in"`
	High float64 `json:"high_in"`
}

// planFileVersion is the version of the file.
const planFileVersion = 1

// Kept writes the figures of a plan, to be read by ReadKept.
func (p Plan) Kept() ([]byte, error) {
	f := planFile{Version: planFileVersion, Level: p.Game.Level}
	for _, c := range p.Candidates {
		i := itemFile{Kind: int(c.Kind), WinBack: c.WinBack, Low: c.Interval.Low, High: c.Interval.High, Sure: int(c.Sure), Drill: c.Drill.Key, Name: c.Drill.Name,
			Tries: c.Mark.Tries, Pass: c.Mark.Pass, Sessions: c.Mark.Sessions, Target: c.Mark.Target, Today: c.Mark.Today, Level: c.Today, Minutes: c.Minutes, Again: c.Again}
		if c.Kind == practice.OfPart {
			i.Part, i.Band = c.Part.String(), bandFile{Par: c.Band.Par, Low: float64(c.Band.Low), High: float64(c.Band.High)}
			if c.Band.Lie != 0 {
				i.Band.Lie = c.Band.Lie.String()
			}
		}
		f.Items = append(f.Items, i)
	}
	return json.Marshal(f)
}

// CleanKept is the figures of a plan from a file, as they are kept: without what is not
// known, and only where ReadKept reads them.
func CleanKept(data []byte) ([]byte, error) {
	if _, err := ReadKept(data); err != nil {
		return nil, err
	}
	f, err := readPlanFile(data)
	if err != nil {
		return nil, err
	}
	if err := f.check(); err != nil {
		return nil, err
	}
	for i := range f.Items {
		f.Items[i].Drill, f.Items[i].Name = golf.Cleaned(f.Items[i].Drill, golf.MaxPractice), golf.Cleaned(f.Items[i].Name, golf.MaxPractice)
		if f.Items[i].Part != "" {
			if _, known := categoryOf(f.Items[i].Part); !known {
				return nil, fmt.Errorf("a plan that was kept names a part of the game that is none")
			}
		}
	}
	return json.Marshal(f)
}

// The most that the figures of a plan from a file may come to. Nothing that a plan was
// made of comes near them; what is beyond was not made by a plan, and would be printed.
const (
	mostStrokes = 200   // for 18 holes, more or less
	mostLevel   = 200   // score of 18 holes
	mostTried   = 10000 // tries, sessions, rounds to play first
)

// check says which figure of a plan from a file is out of range.
func (f planFile) check() error {
	var err error
	within := func(what string, x, low, high float64) {
		if err == nil && !(x >= low && x <= high) {
			err = fmt.Errorf("%s of a plan that was kept: %g; allowed: %g to %g", what, x, low, high)
		}
	}
	within("level", f.Level, 0, mostLevel)
	for _, i := range f.Items {
		within("win_back", i.WinBack, -mostStrokes, mostStrokes)
		within("low", i.Low, -mostStrokes, mostStrokes)
		within("high", i.High, -mostStrokes, mostStrokes)
		within("chance_target", math.Round(i.Target*1e9)/1e9, 0, 1)
		within("chance_today", math.Round(i.Today*1e9)/1e9, 0, 1)
		within("level", i.Level, 0, mostLevel)
		within("tries", float64(i.Tries), 0, mostTried)
		within("pass", float64(i.Pass), 0, float64(i.Tries))
		within("sessions", float64(i.Sessions), 0, mostTried)
		within("minutes", float64(i.Minutes), 0, golf.MaxMinutes)
		within("measure_again_after_rounds", float64(i.Again), 0, mostTried)
		within("par", float64(i.Band.Par), 0, golf.MaxPar)
		within("low_in", i.Band.Low, 0, float64(golf.MaxDistance))
		within("high_in", i.Band.High, 0, float64(golf.MaxDistance))
	}
	return err
}

func readPlanFile(data []byte) (f planFile, err error) {
	if err := json.Unmarshal(data, &f); err != nil {
		return f, fmt.Errorf("a plan that was kept: %w", err)
	}
	if f.Version != planFileVersion {
		return f, fmt.Errorf("a plan that was kept has version %d; known: %d", f.Version, planFileVersion)
	}
	return f, nil
}

// categoryOf finds a part of the game by its name.
func categoryOf(name string) (golf.Category, bool) {
	for _, c := range golf.Categories {
		if c.String() == name {
			return c, true
		}
	}
	return 0, false
}

// ReadKept reads the figures of a plan as they were kept.
func ReadKept(data []byte) (KeptPlan, error) {
	f, err := readPlanFile(data)
	if err != nil {
		return KeptPlan{}, err
	}
	k := KeptPlan{Level: f.Level}
	for _, i := range f.Items {
		item := KeptItem{Kind: practice.Kind(i.Kind), WinBack: i.WinBack, Interval: stat.Interval{Low: i.Low, High: i.High}, Sure: practice.Certainty(i.Sure),
			Mark: practice.Mark{Tries: i.Tries, Pass: i.Pass, Sessions: i.Sessions, Target: i.Target, Today: i.Today}, Today: i.Level, Minutes: i.Minutes, Again: i.Again}
		if i.Kind < 0 || i.Kind > int(practice.ShortMisses) || i.Sure < 0 || i.Sure > int(practice.Clear) {
			return KeptPlan{}, fmt.Errorf("a plan that was kept has an item of kind %d, certainty %d", i.Kind, i.Sure)
		}
		var err error
		if item.Drill, err = practice.Find(i.Drill); err != nil {
			item.Drill = practice.Drill{Key: i.Drill, Name: i.Name}
		}
		item.band(i)
		k.Items = append(k.Items, item)
	}
	return k, nil
}

// band reads the part of the game and the band of an item.
func (k *KeptItem) band(i itemFile) {
	k.Part, _ = categoryOf(i.Part)
	k.Band = account.Band{Category: k.Part, Par: i.Band.Par, Low: golf.Distance(i.Band.Low), High: golf.Distance(i.Band.High)}
	for _, lie := range golf.Lies {
		if lie.String() == i.Band.Lie {
			k.Band.Lie = lie
		}
	}
}
