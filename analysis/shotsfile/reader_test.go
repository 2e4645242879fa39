package shotsfile

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
)

// readAll reads a whole file.
func readAll(text string, limits Limits) ([]golf.Round, *Reader, error) {
	r := NewReader(strings.NewReader(text), limits)
	var all []golf.Round
	for round, err := range r.Rounds() {
		if err != nil {
			return all, r, err
		}
		all = append(all, round)
	}
	return all, r, nil
}

const head = "round,date,course,hole,par,shot,lie,distance,unit,penalty,short_sided,green_to_work_with,picked_up,score_only,miss\n"

func TestFaults(t *testing.T) {
	for _, c := range []struct {
		name, rows string
		want       []string
	}{
		{"no rows", "", []string{"line 1: no rounds, allowed: a row a stroke after the header"}},
		{"no round", ",2026-05-02,,1,3,1,tee,150,,,,,,,\n",
			[]string{`line 2, column round: no round, allowed: any text`}},
		{"bad date", "r,2026-02-30,,1,3,1,tee,150,,,,,,,\n",
			[]string{`line 2, column date: not a day, read "2026-02-30", allowed: YYYY-MM-DD`}},
		{"bad hole", "r,2026-05-02,,19,3,1,tee,150,,,,,,,\n",
			[]string{`line 2, column hole: out of range, read "19", allowed: 1 to 18`}},
		{"hole and date of nothing", "r,,,0,3,0,tee,150,,,,,,,\n", []string{
			`line 2, column date: not a day, allowed: YYYY-MM-DD`,
			`line 2, column hole: out of range, read "0", allowed: 1 to 18`,
			`line 2, column shot: out of range, read "0", allowed: 1, 2, 3 and so on, without a gap`}},
		{"bad par", "r,2026-05-02,,1,7,1,tee,150,,,,,,,\n",
			[]string{`line 2, column par: out of range, read "7", allowed: 3 to 6`}},
		{"words for numbers", "r,2026-05-02,,one,par,1,tee,150,,,,,,,\n", []string{
			`line 2, column hole: not a whole number, read "one", allowed: 1 to 18`,
			`line 2, column par: not a whole number, read "par", allowed: 3 to 6`}},
		{"gap", "r,2026-05-02,,1,3,1,tee,150,,,,,,,\nr,2026-05-02,,1,3,3,green,9,,,,,,,\nr,2026-05-02,,1,3,4,green,1,,,,,,,\n",
			[]string{`line 3, column shot: out of order, read "3", allowed: 2 here`}},
		{"unknown lie", "r,2026-05-02,,1,3,1,fringe,150,,,,,,,\n",
			[]string{`line 2, column lie: unknown lie, read "fringe", allowed: tee, fairway, rough, bunker, recovery, green`}},
		{"not from the tee", "r,2026-05-02,,1,3,1,rough,150,,,,,,,\n",
			[]string{`line 2, column lie: a hole starts on the tee, read "rough", allowed: tee`}},
		{"nan", "r,2026-05-02,,1,3,1,tee,nan,,,,,,,\n",
			[]string{`line 2, column distance: not a plain number, read "nan", allowed: a number over 0, at most 700 yd, on the green at most 300 ft`}},
		{"far", "r,2026-05-02,,1,3,1,tee,701,,,,,,,\nr,2026-05-02,,1,3,2,green,301,,,,,,,\n", []string{
			`line 2, column distance: out of range, read "701", allowed: over 0, at most 700 yd`,
			`line 3, column distance: out of range, read "301", allowed: over 0, at most 300 ft on the green`}},
		{"no distance", "r,2026-05-02,,1,3,1,tee,0,,,,,,,\n",
			[]string{`line 2, column distance: out of range, read "0", allowed: over 0, at most 700 yd`}},
		{"unit", "r,2026-05-02,,1,3,1,tee,150,km,,,,,,\n",
			[]string{`line 2, column unit: unknown unit, read "km", allowed: yd, m, ft`}},
		{"penalty", "r,2026-05-02,,1,3,1,tee,150,,10,,,,,\n",
			[]string{`line 2, column penalty: out of range, read "10", allowed: 0 to 9`}},
		{"short-sided afar", "r,2026-05-02,,1,4,1,tee,350,,,,,,,\nr,2026-05-02,,1,4,2,rough,31,,,yes,,,,\n",
			[]string{`line 3, column short_sided: too far from the hole, read "yes", allowed: off the green and 30 yd or nearer only`}},
		{"short-sided on the green", "r,2026-05-02,,1,3,1,tee,150,,,,,,,\nr,2026-05-02,,1,3,2,green,9,,,yes,,,,\n",
			[]string{`line 3, column short_sided: the ball is on the green, read "yes", allowed: off the green and 30 yd or nearer only`}},
		{"short-sided, neither", "r,2026-05-02,,1,3,1,tee,20,,,maybe,,,,\n",
			[]string{`line 2, column short_sided: neither yes nor no, read "maybe", allowed: yes, no`}},
		{"more green than distance", "r,2026-05-02,,1,3,1,tee,20,,,,20,,,\n",
			[]string{`line 2, column green_to_work_with: out of range, read "20", allowed: 0 or more and less than the distance`}},
		{"picked up too early", "r,2026-05-02,,1,3,1,tee,150,,,,,yes,,\nr,2026-05-02,,1,3,2,green,9,,,,,,,\n",
			[]string{`line 2, column picked_up: not the last row of the hole, read "yes", allowed: yes on the last row of a hole only`}},
		{"score with strokes", "r,2026-05-02,,1,3,1,tee,150,,,,,,5,\nr,2026-05-02,,1,3,2,green,9,,,,,,,\n",
			[]string{`line 2, column score_only: the hole has other shots, read "2", allowed: one row for the whole hole`}},
		{"score of none", "r,2026-05-02,,1,3,1,tee,150,,,,,,0,\n",
			[]string{`line 2, column score_only: out of range, read "0", allowed: strokes of the hole, 1 to 99`}},
		{"score later", "r,2026-05-02,,1,3,1,tee,150,,,,,,,\nr,2026-05-02,,1,3,2,green,9,,,,,,4,\n",
			[]string{`line 3, column score_only: not the first row of the hole, read "4", allowed: the only row of a hole`}},
		{"miss", "r,2026-05-02,,1,3,1,tee,150,,,,,,,wide\n",
			[]string{`line 2, column miss: unknown miss, read "wide", allowed: left, right, short, long, or two of them joined with a hyphen`}},
		{"hole again", "r,2026-05-02,,1,3,1,tee,150,,,,,,,\nr,2026-05-02,,2,3,1,tee,150,,,,,,,\nr,2026-05-02,,1,3,1,tee,150,,,,,,,\n",
			[]string{`line 4, column hole: hole comes again, read "1", allowed: the rows of a hole together`}},
		{"round again", "r,2026-05-02,,1,3,1,tee,150,,,,,,,\ns,2026-05-02,,1,3,1,tee,150,,,,,,,\nr,2026-05-02,,2,3,1,tee,150,,,,,,,\n",
			[]string{`line 4, column round: round comes again, read "r", allowed: the rows of a round together`}},
		{"changes", "r,2026-05-02,Fen,1,3,1,tee,150,,,,,,,\nr,2026-05-03,Moor,1,4,2,green,9,,,,,,,\n", []string{
			`line 3, column date: changes inside a round, read "2026-05-03", allowed: the same in every row of a round, here "2026-05-02"`,
			`line 3, column course: changes inside a round, read "Moor", allowed: the same in every row of a round, here "Fen"`,
			`line 3, column par: changes inside a hole, read "4", allowed: the same in every row of a hole, here 3`}},
		{"cells", "r,2026-05-02,,1,3,1,tee\n",
			[]string{`line 2: wrong number of cells, read "7", allowed: 15, as in the header`}},
		{"quotes", "r,2026-05-02,\"a\"b,1,3,1,tee,150,,,,,,,\n",
			[]string{"line 2: quotes do not match, allowed: a cell with quotes is quoted whole, and its quotes are doubled"}},
		{"not UTF-8", "r,2026-05-02,\xff,1,3,1,tee,150,,,,,,,\n",
			[]string{`line 2, column course: not UTF-8, read "?", allowed: text in UTF-8`}},
		{"control character", "r,2026-05-02,a\x00b,1,3,1,tee,150,,,,,,,\n",
			[]string{"line 2, column course: control character, read \"a\\x00b\", allowed: text in one line"}},
		{"long text", "r,2026-05-02," + strings.Repeat("x", 1001) + ",1,3,1,tee,150,,,,,,,\n",
			[]string{`line 2, column course: text is too long, read "` + strings.Repeat("x", 60) + `...", allowed: at most 1000 bytes`}},
		{"physical lines", "\n\"r\",2026-05-02,\"a\nb\",1,3,1,tee,150,,,,,,,\n\nr,2026-05-02,,1,3,2,nowhere,9,,,,,,,\n",
			[]string{`line 3, column course: control character, read "a\nb", allowed: text in one line`,
				`line 6, column lie: unknown lie, read "nowhere", allowed: tee, fairway, rough, bunker, recovery, green`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			rounds, _, err := readAll(head+c.rows, Limits{})
			var faults *Faults
			if !errors.As(err, &faults) {
				t.Fatalf("read without a fault: %v", err)
			}
			if len(rounds) > 0 && faults.List[0].Line <= 3 {
				t.Errorf("%d rounds were yielded", len(rounds))
			}
			if diff := cmp.Diff(c.want, strings.Split(faults.Error(), "\n")); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestHeaderFaults(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "line 1: the file is empty, allowed: a header row and a row a stroke"},
		{"missing", "round,date,hole,par,shot,distance\n", "line 1, column lie: column is missing, allowed: columns round, date, hole, par, shot, lie, distance"},
		{"twice", "round,date,hole,par,shot,lie,distance,LIE\n", `line 1, column lie: column comes again, read "LIE", allowed: each column once`},
	} {
		if _, _, err := readAll(c.text, Limits{}); err == nil || err.Error() != c.want {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func TestFaultsBeyondAHundredAreCounted(t *testing.T) {
	_, _, err := readAll(head+strings.Repeat("r,2026-05-02,,1,3,1,moon,150,,,,,,,\n", 150), Limits{})
	var faults *Faults
	if !errors.As(err, &faults) || len(faults.List) != MaxFaults || faults.More == 0 {
		t.Fatalf("%v", err)
	}
	if !strings.HasSuffix(err.Error(), fmt.Sprintf("and %d more", faults.More)) {
		t.Error("the rest is not told")
	}
}

// Forms of the same file that the contract allows.
func TestSameFileInOtherForms(t *testing.T) {
	plain := "round,date,hole,par,shot,lie,distance,penalty\nr,2026-05-02,1,4,1,tee,350.5,1\nr,2026-05-02,1,4,2,tee,350.5,0\nr,2026-05-02,1,4,3,green,12.5,\n"
	want, _, err := readAll(plain, Limits{})
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"byte-order mark":        "\ufeff" + plain,
		"CRLF":                   strings.ReplaceAll(plain, "\n", "\r\n"),
		"semicolons":             strings.NewReplacer(",", ";", ".5", ",5").Replace(plain),
		"semicolons with points": strings.ReplaceAll(plain, ",", ";"),
		"letter case":            strings.NewReplacer("round", "ROUND", "lie", "Lie", "tee", "TEE", "green", "Green").Replace(plain),
		"spaces":                 strings.ReplaceAll(plain, ",", " , "),
		"order of columns":       "distance,lie,shot,par,hole,date,round,penalty\n350.5,tee,1,4,1,2026-05-02,r,1\n350.5,tee,2,4,1,2026-05-02,r,0\n12.5,green,3,4,1,2026-05-02,r,\n",
		"no last line end":       strings.TrimSuffix(plain, "\n"),
	} {
		got, _, err := readAll(text, Limits{})
		if err != nil {
			t.Errorf("%s: %v", name, err)
		} else if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func TestUnknownColumnsAreToldOnce(t *testing.T) {
	rounds, r, err := readAll("round,date,hole,par,shot,lie,distance,wind,wind,\nr,2026-05-02,1,3,1,tee,150,left,right,\n", Limits{})
	if err != nil || len(rounds) != 1 {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]string{"wind"}, r.Unknown()); diff != "" {
		t.Error(diff)
	}
}

func TestUnits(t *testing.T) {
	rounds, _, err := readAll(head+"r,2026-05-02,,1,3,1,tee,150,m,,,,,,\nr,2026-05-02,,1,3,2,green,9,,,,,,,\nr,2026-05-02,,1,3,3,green,2,m,,,,,,\n", Limits{})
	if err != nil {
		t.Fatal(err)
	}
	shots := rounds[0].Holes[0].Shots
	for i, want := range []golf.Distance{150 * golf.Metre, 9 * golf.Foot, 2 * golf.Metre} {
		if shots[i].Distance != want {
			t.Errorf("shot %d: %.3f yd", i+1, shots[i].Distance.Yards())
		}
	}
}

func TestLimits(t *testing.T) {
	text := head + "r,2026-05-02,,1,3,1,tee,150,,,,,,,\nr,2026-05-02,,2,3,1,tee,150,,,,,,,\n"
	if _, _, err := readAll(text, Limits{Bytes: int64(len(text)), Rows: 2}); err != nil {
		t.Errorf("at the limit: %v", err)
	}
	for _, c := range []struct {
		limits Limits
		want   string
	}{
		{Limits{Rows: 1}, "the file has more than 1 rows, the most that is allowed"},
		{Limits{Bytes: int64(len(text)) - 1}, fmt.Sprintf("the file has more than %d bytes, the most that is allowed", len(text)-1)},
	} {
		var limit *LimitError
		if _, _, err := readAll(text, c.limits); !errors.As(err, &limit) || err.Error() != c.want {
			t.Errorf("%+v: %v", c.limits, err)
		}
	}
}

func TestCardOfEightyFour(t *testing.T) {
	data, err := os.ReadFile("../../testdata/shots/card84.csv")
	if err != nil {
		t.Fatal(err)
	}
	rounds, _, err := readAll(string(data), Limits{})
	if err != nil || len(rounds) != 1 {
		t.Fatalf("%d rounds, %v", len(rounds), err)
	}
	strokes := 0
	for _, h := range rounds[0].Holes {
		strokes += h.Strokes()
	}
	if len(rounds[0].Holes) != 18 || strokes != 84 || rounds[0].Par() != 72 {
		t.Errorf("%d holes in %d, par %d", len(rounds[0].Holes), strokes, rounds[0].Par())
	}
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, errors.New("the disk is gone") }

func TestFailureUnderneath(t *testing.T) {
	for _, err := range NewReader(failing{}, Limits{}).Rounds() {
		if err == nil || err.Error() != "the disk is gone" {
			t.Errorf("%v", err)
		}
	}
}

func TestCallerMayStop(t *testing.T) {
	text := head
	for i := range 5 {
		text += fmt.Sprintf("r%d,2026-05-02,,1,3,1,tee,150,,,,,,,\n", i)
	}
	n := 0
	for range NewReader(strings.NewReader(text), Limits{}).Rounds() {
		if n++; n == 2 {
			break
		}
	}
	if n != 2 {
		t.Errorf("%d rounds", n)
	}
}
