package form

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
)

func TestPastedCards(t *testing.T) {
	row := func(par, length, index string) CardRow { return CardRow{par, length, index} }
	for _, c := range []struct {
		name, text string
		unit       golf.Unit
		want       []CardRow
		problems   []string
	}{
		{"spaces", "4 392 5\n3 158\n", golf.Yards, []CardRow{row("4", "392", "5"), row("3", "158", "")}, nil},
		{"decimal comma", "4 347,5 7", golf.Metres, []CardRow{row("4", "347,5", "7")}, nil},
		{"decimal comma without an index", "4 347,5", golf.Metres, []CardRow{row("4", "347,5", "")}, nil},
		{"tabs and a decimal comma", "4\t347,5\t7", golf.Metres, []CardRow{row("4", "347,5", "7")}, nil},
		{"semicolons and a decimal comma", "4;347,5;7", golf.Metres, []CardRow{row("4", "347,5", "7")}, nil},
		{"only commas", "4,392,5\n3,158,12", golf.Yards, []CardRow{row("4", "392", "5"), row("3", "158", "12")}, nil},
		{"commas and spaces", "4, 392, 5\n3, 158,5, 7", golf.Yards, []CardRow{row("4", "392", "5"), row("3", "158,5", "7")}, nil},
		{"a comma after the par", "4,392 5", golf.Yards, []CardRow{row("4", "392", "5")}, nil},
		{"a point", "4,347.5,7", golf.Metres, []CardRow{row("4", "347.5", "7")}, nil},
		{"own unit", "4 346m 5\n3 140 m 7\n5 480 metres", golf.Metres, []CardRow{row("4", "346", "5"), row("3", "140", "7"), row("5", "480", "")}, nil},
		{"the other unit", "4 346m 5\n3 158 yds 7", golf.Yards, []CardRow{row("4", "346 m", "5"), row("3", "158", "7")}, nil},
		{"hole numbers", "1 4 392 5\n2 3 158 7\n", golf.Yards, []CardRow{row("4", "392", "5"), row("3", "158", "7")}, nil},
		{"hole numbers without an index", "1. 4 392\n2. 3 158\n", golf.Yards, []CardRow{row("4", "392", ""), row("3", "158", "")}, nil},
		{"one hole with its number", "3 4 392", golf.Yards, []CardRow{{}, {}, row("4", "392", "")}, nil},
		{"pars that rise are no hole numbers", "3 158 7\n4 392 5\n5 498 1", golf.Yards, []CardRow{row("3", "158", "7"), row("4", "392", "5"), row("5", "498", "1")}, nil},
		{"a heading", "Par Length SI\n\n4 392 5", golf.Yards, []CardRow{row("4", "392", "5")}, nil},
		{"a fourth number", "4 392 5 9\n3 158 7", golf.Yards, []CardRow{row("4", "392", "5"), row("3", "158", "7")}, []string{"Line 1: “9” is too much after the stroke index."}},
		{"every problem", "4\n\n4 392 5 9", golf.Yards, []CardRow{row("4", "", ""), row("4", "392", "5")},
			[]string{"Line 1: no length. A line is a par, a length and perhaps a stroke index, as in 4 392 5.", "Line 3: “9” is too much after the stroke index."}},
		{"nothing", "Par\n", golf.Yards, nil, []string{"There is no line with a number."}},
		{"too many", strings.Repeat("4 392\n", 19), golf.Yards, slices.Repeat([]CardRow{row("4", "392", "")}, 18), []string{"Line 19: more than 18 holes."}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := PasteCard(c.text, c.unit)
			want := Card{Holes: len(c.want)}
			copy(want.Rows[:], c.want)
			if diff := cmp.Diff(want, p.Card); diff != "" {
				t.Error(diff)
			}
			if diff := cmp.Diff(c.problems, p.Problems); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A numbered back nine fills the rows of its numbers, and one bad line does not
// turn the numbers into pars.
func TestAPastedBackNine(t *testing.T) {
	p := PasteCard("10 4 392 5\n11 x 158 7\n12 5 500 1\n13 4 380 3\n14 4 370 9\n", golf.Yards)
	if p.Card.Holes != 14 || !p.Card.Rows[8].Empty() || p.Card.Rows[9].Length != "392" || p.Card.Rows[10].Par != "x" || len(p.Problems) != 0 {
		t.Errorf("%+v", p)
	}
}

func nine() Card {
	c := Card{Holes: 9}
	copy(c.Rows[:], []CardRow{{"4", "384", "3"}, {"3", "158", "9"}, {"5", "498", "1"}, {"4", "410", "2"}, {"4", "345", "8"}, {"3", "182", "7"}, {"4", "371", "5"}, {"5", "520", "4"}, {"4", "402", "6"}})
	return c
}

func TestCardsAreChecked(t *testing.T) {
	for _, c := range []struct {
		name    string
		change  func(*Card)
		refused []string // fields
		asked   []string // answers
	}{
		{"a good card", func(*Card) {}, nil, nil},
		{"no index", func(c *Card) { c.Rows[0].Index = "" }, nil, nil},
		{"a decimal comma and a unit", func(c *Card) { c.Rows[0].Length = "351,5 m" }, nil, nil},
		{"par", func(c *Card) { c.Rows[0].Par = "7" }, []string{"par-1"}, nil},
		{"no par", func(c *Card) { c.Rows[0].Par = "" }, []string{"par-1"}, nil},
		{"no length", func(c *Card) { c.Rows[1].Length = "" }, []string{"length-2"}, nil},
		{"a length of no number", func(c *Card) { c.Rows[1].Length = "1e2" }, []string{"length-2"}, nil},
		{"too long", func(c *Card) { c.Rows[1].Length = "701" }, []string{"length-2"}, nil},
		{"index out of range", func(c *Card) { c.Rows[1].Index = "19" }, []string{"index-2"}, nil},
		{"an index twice", func(c *Card) { c.Rows[4].Index = "1" }, []string{"index-5"}, nil},
		{"every problem at once", func(c *Card) { c.Rows[0], c.Rows[8] = CardRow{"9", "x", "0"}, CardRow{"4", "402", "1"} },
			[]string{"par-1", "length-1", "index-1", "index-9"}, nil},
		{"a par 5 of 12 yd", func(c *Card) { c.Rows[2].Length = "12" }, nil, []string{"length-3:5:12"}},
		{"a par 3 too long", func(c *Card) { c.Rows[1].Length = "301" }, nil, []string{"length-2:3:301"}},
		{"a par 3 just not", func(c *Card) { c.Rows[1].Length = "300" }, nil, nil},
		{"par 4s", func(c *Card) { c.Rows[0].Length, c.Rows[3].Length = "199", "521" }, nil, []string{"length-1:4:199", "length-4:4:521"}},
		{"a par 5 too long", func(c *Card) { c.Rows[2].Length = "681" }, nil, []string{"length-3:5:681"}},
		{"8 holes", func(c *Card) { c.Holes, c.Rows[8] = 8, CardRow{} }, nil, []string{"holes:8"}},
		{"9 of 18", func(c *Card) { c.Holes = 18 }, nil, []string{"missing:10,11,12,13,14,15,16,17,18/18"}},
		{"more than chosen", func(c *Card) { c.Rows[9] = CardRow{"4", "400", ""} }, []string{"holes"}, nil},
		{"no number of holes", func(c *Card) { c.Holes = 0 }, []string{"holes"}, nil},
		{"nothing", func(c *Card) { *c = Card{Holes: 18} }, []string{"holes"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			card := nine()
			c.change(&card)
			var refused, asked []string
			holes, problems := card.Read(golf.Yards, KnownCard{})
			for _, p := range problems {
				if p.Answer == "" {
					refused = append(refused, p.Field)
				} else {
					asked = append(asked, p.Answer)
				}
				if !strings.HasSuffix(p.Text, ".") || strings.Contains(p.Text, "%!") {
					t.Errorf("%q", p.Text)
				}
			}
			if diff := cmp.Diff(c.refused, refused); diff != "" {
				t.Error(diff)
			}
			if diff := cmp.Diff(c.asked, asked); diff != "" {
				t.Error(diff)
			}
			if len(problems) == 0 && len(holes) != 9 {
				t.Errorf("%d holes", len(holes))
			}
		})
	}
}

// A saved card is not asked about again, and keeps lengths that were typed in
// another unit to the bit.
func TestASavedCardComesBack(t *testing.T) {
	saved := []golf.CardHole{{Number: 1, Par: 5, Length: 12 * golf.Yard}, {Number: 3, Par: 4, Length: golf.Metres.Of(347.5), Index: 7}}
	for _, unit := range []golf.Unit{golf.Yards, golf.Metres} {
		got, problems := WriteCard(4, saved, unit).Read(unit, KnownCard{Size: 4, Holes: saved})
		if len(problems) != 0 {
			t.Errorf("%+v", problems)
		}
		if diff := cmp.Diff(saved, got); diff != "" {
			t.Error(diff)
		}
	}
	fewer := WriteCard(4, saved[:1], golf.Yards)
	if _, problems := fewer.Read(golf.Yards, KnownCard{Size: 4, Holes: saved}); len(problems) != 1 || problems[0].Answer != "missing:2,3,4/4" {
		t.Errorf("a hole is taken off without a question: %+v", problems)
	}
}

func TestLengths(t *testing.T) {
	for _, c := range []struct {
		d    golf.Distance
		unit golf.Unit
		want string
	}{
		{golf.Metres.Of(347.5), golf.Metres, "347.5"}, {golf.Metres.Of(346), golf.Metres, "346"}, {golf.Metres.Of(346.25), golf.Metres, "346.25"},
		{412 * golf.Yard, golf.Metres, "376.7"}, {380 * golf.Yard, golf.Yards, "380"}, {golf.Metres.Of(346), golf.Yards, "378.4"},
	} {
		got := WriteLength(c.d, c.unit)
		if got != c.want {
			t.Errorf("%v: %s, want %s", c.d, got, c.want)
		}
	}
	for text, want := range map[string]golf.Distance{"346m": golf.Metres.Of(346), "346 yd": 346 * golf.Yard, "347,5": golf.Metres.Of(347.5), " 400 Yards ": 400 * golf.Yard, "0": 0, "": 0, "-4": 0, "1,2,3": 0, "9999": 0, "4 392": 0, "inf": 0} {
		if got, ok := ReadLength(text, golf.Metres); ok != (want > 0) || ok && got != want {
			t.Errorf("%q: %v %v", text, got, ok)
		}
	}
}

// The count takes holes that have a par and a length.
func TestACardIsCounted(t *testing.T) {
	c := nine()
	c.Rows[0].Par, c.Rows[1].Length, c.Rows[2].Index = "", "x", "99"
	c.Rows[9].Par = "4"
	holes, par, length := c.Tally(golf.Yards)
	if holes != 7 || par != 29 || length != 2728*golf.Yard || c.Blank() || !(Card{Holes: 9}).Blank() {
		t.Errorf("%d holes, par %d, %v yd", holes, par, length.Yards())
	}
}

func FuzzPasteCard(f *testing.F) {
	for _, seed := range []string{"4 347,5 7", "1,4,392,5\n2,3,158", "Hole\tPar\n10\t4\t346 m\t3", ",,;;\n#", "5,55,5 5,5"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, unit := range []golf.Unit{golf.Yards, golf.Metres} {
			p := PasteCard(text, unit)
			if p.Card.Holes < 0 || p.Card.Holes > MostHoles {
				t.Fatalf("%d holes", p.Card.Holes)
			}
			holes, problems := p.Card.Read(unit, KnownCard{})
			if len(problems) == 0 {
				again, problems := WriteCard(p.Card.Holes, holes, unit).Read(unit, KnownCard{Size: p.Card.Holes, Holes: holes})
				if diff := cmp.Diff(holes, again); diff != "" || len(problems) > 0 {
					t.Fatalf("%q is read another way the second time: %s %v", text, diff, problems)
				}
			}
		}
	})
}
