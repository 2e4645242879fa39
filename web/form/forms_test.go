package form

import (
	"net/url"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
)

// typedForm is a form with fields, as pages and handlers use it.
type typedForm interface{ Sound() bool }

// formCase is a form that was sent, and what is wrong with it by field.
type formCase struct {
	typed map[string]string
	wrong map[string]string
}

// with is what was typed with some fields typed otherwise.
func with(typed map[string]string, others ...string) map[string]string {
	all := map[string]string{}
	for name, text := range typed {
		all[name] = text
	}
	for i := 0; i < len(others); i += 2 {
		all[others[i]] = others[i+1]
	}
	return all
}

func checkForms(t *testing.T, parse func(url.Values) typedForm, cases []formCase) {
	t.Helper()
	for _, c := range cases {
		v := url.Values{}
		for name, text := range c.typed {
			v.Set(name, text)
		}
		f := parse(v)
		if diff := cmp.Diff(c.wrong, problemsOf(f)); diff != "" {
			t.Errorf("%v: %s", c.typed, diff)
		}
		if f.Sound() != (c.wrong == nil) {
			t.Errorf("%v: sound %t", c.typed, f.Sound())
		}
	}
}

// problemsOf finds what is wrong with the fields of a form, by the path to them.
func problemsOf(f any) map[string]string {
	var found map[string]string
	eachField(reflect.ValueOf(f), "", func(path string, field reflect.Value) {
		if problem := field.FieldByName("Problem").String(); problem != "" {
			if found == nil {
				found = map[string]string{}
			}
			found[path] = problem
		}
	})
	return found
}

// eachField visits the fields of a form that are a Field, in structs and slices
// of structs as well.
func eachField(v reflect.Value, path string, visit func(path string, field reflect.Value)) {
	switch v.Kind() {
	case reflect.Struct:
		if strings.HasPrefix(v.Type().Name(), "Field[") {
			visit(path, v)
			return
		}
		for i := range v.NumField() {
			eachField(v.Field(i), strings.TrimPrefix(path+"."+v.Type().Field(i).Name, "."), visit)
		}
	case reflect.Slice:
		for i := range v.Len() {
			eachField(v.Index(i), path, visit)
		}
	}
}

// A form is not sound as soon as anything is wrong with any of its fields.
func TestEveryFieldCounts(t *testing.T) {
	for _, f := range []typedForm{&Settings{}, &FirstSettings{}, &Join{}, &Note{}, &Assignment{}, &Result{}, &Mark{}, &RoundStart{},
		&ShotDetails{Shots: make([]ShotDetail, 1)}, &RoundDetails{Holes: make([]HoleCard, 1)}, &RoundCard{}, &HoleCard{}, &CourseForm{}} {
		if !f.Sound() {
			t.Errorf("%T: an empty one is not sound", f)
		}
		eachField(reflect.ValueOf(f).Elem(), "", func(path string, field reflect.Value) {
			field.FieldByName("Problem").SetString("wrong")
			if f.Sound() {
				t.Errorf("%T is sound though %s is wrong", f, path)
			}
			field.FieldByName("Problem").SetString("")
		})
	}
}

const (
	targetAllowed = "Allowed: 68 to 110."
	dayAllowed    = `Not a day "x"; allowed: YYYY-MM-DD.`
	long          = "a text that is too long for any field of a form, and goes on and on until nobody can bear to read any more of it"
)

func TestSettings(t *testing.T) {
	right := map[string]string{"name": " Anna ", "target": "79,5", "boundary": "50", "far": "yd", "green": "m", "clubs": " d  3w 7i ", "zone": " Europe/London ", "minutes": "240"}
	name, clubsAllowed := "Allowed: 1 to 80 characters, each of which can be seen.", "Allowed: at most 200 characters, each of which can be seen, without a slash."
	checkForms(t, func(v url.Values) typedForm { return ParseSettings(v) }, []formCase{
		{right, nil},
		{with(right, "clubs", ""), nil},
		{with(right, "name", " "), map[string]string{"Name": name}},
		{with(right, "name", "a\u200bb"), map[string]string{"Name": name}},
		{with(right, "name", long), map[string]string{"Name": name}},
		{with(right, "target", "67.9"), map[string]string{"Target": targetAllowed}},
		{with(right, "target", "NaN"), map[string]string{"Target": targetAllowed}},
		{with(right, "target", "0x50"), map[string]string{"Target": targetAllowed}},
		{with(right, "target", "110.1"), map[string]string{"Target": targetAllowed}},
		{with(right, "boundary", "101"), map[string]string{"Boundary": "Allowed: 30 to 100."}},
		{with(right, "far", "ft"), map[string]string{"Far": "Choose yards or metres."}},
		{with(right, "green", "yd"), map[string]string{"Green": "Choose feet or metres."}},
		{with(right, "clubs", "3w/5w"), map[string]string{"Clubs": clubsAllowed}},
		{with(right, "zone", ""), nil},
		{with(right, "minutes", ""), nil},
		{with(right, "minutes", "55"), map[string]string{"Minutes": "Allowed: 60 to 600, in steps of 5."}},
		{with(right, "minutes", "181"), map[string]string{"Minutes": "Allowed: 60 to 600, in steps of 5."}},
		{with(right, "zone", "Europe/Atlantis"), map[string]string{"Zone": "Not a time zone that is known here. Allowed: a name such as Europe/London or America/New_York."}},
		{with(right, "clubs", long+long), map[string]string{"Clubs": clubsAllowed}},
		{nil, map[string]string{"Name": name, "Target": targetAllowed, "Boundary": "Allowed: 30 to 100.", "Far": "Choose yards or metres.", "Green": "Choose feet or metres."}},
	})
	v := url.Values{}
	for field, text := range right {
		v.Set(field, text)
	}
	want := Settings{TextOf("Anna"), Number{Text: "79,5", Value: 79.5}, NumberOf(50), ChoiceOf(golf.Yards), ChoiceOf(golf.Metres), TextOf("d 3w 7i"), TextOf("Europe/London"), WholeOf(240)}
	if diff := cmp.Diff(want, ParseSettings(v)); diff != "" {
		t.Error(diff)
	}
}

func TestFirstSettings(t *testing.T) {
	right := map[string]string{"target": "79", "far": "m", "green": "ft"}
	checkForms(t, func(v url.Values) typedForm { return ParseFirstSettings(v) }, []formCase{
		{right, nil},
		{with(right, "target", "no"), map[string]string{"Target": targetAllowed}},
		{nil, map[string]string{"Target": targetAllowed, "Far": "Choose yards or metres.", "Green": "Choose feet or metres."}},
	})
}

func TestJoin(t *testing.T) {
	right := map[string]string{"name": "Anna", "email": " anna@example.org ", "token": "t"}
	address := "Not an address. Allowed: one as in name@example.org."
	checkForms(t, func(v url.Values) typedForm { return ParseJoin(v) }, []formCase{
		{right, nil},
		{with(right, "email", "Anna <anna@example.org>"), map[string]string{"Email": address}},
		{with(right, "email", strings.Repeat("a", 200)+"@example.org"), map[string]string{"Email": address}},
		{nil, map[string]string{"Name": "Allowed: 1 to 80 characters, each of which can be seen.", "Email": address}},
	})
	if j := (Join{TokenWrong: "x"}); j.Sound() {
		t.Error("a form with a wrong token is sound")
	}
}

func TestSharedFrom(t *testing.T) {
	for text, want := range map[string]Day{"": {}, "  ": {}, "2026-05-02": DayOf(golf.Date{Year: 2026, Month: 5, Day: 2}),
		"2 May": {Text: "2 May", Problem: `Not a day "2 May"; allowed: YYYY-MM-DD, or leave it empty to share everything.`}} {
		if diff := cmp.Diff(want, ParseSharedFrom(text)); diff != "" {
			t.Errorf("%q: %s", text, diff)
		}
	}
}

func TestNotes(t *testing.T) {
	body, spot := "Allowed: 1 to 4000 characters.", "Choose what the note is about."
	right := map[string]string{"body": "- hold\r\n- look", "on": "7.3", "private": "on"}
	checkForms(t, func(v url.Values) typedForm { return ParseRoundNote(v) }, []formCase{
		{right, nil},
		{with(right, "on", ""), nil},
		{with(right, "on", "18"), nil},
		{with(right, "on", "19"), map[string]string{"Spot": spot}},
		{with(right, "on", "7."), map[string]string{"Spot": spot}},
		{with(right, "on", "7.100"), map[string]string{"Spot": spot}},
		{with(right, "body", " \n"), map[string]string{"Body": body}},
		{with(right, "body", "a\x07"), map[string]string{"Body": body}},
		{with(right, "body", strings.Repeat("a", 4001), "on", "x"), map[string]string{"Body": body, "Spot": spot}},
	})
	checkForms(t, func(v url.Values) typedForm { return ParseLesson(v, golf.Date{Year: 2026, Month: 5, Day: 2}) }, []formCase{
		{map[string]string{"body": "a", "day": "2026-05-02"}, nil},
		{map[string]string{"body": "a", "day": "2026-05-03"}, map[string]string{"Day": "This day is still to come."}},
		{map[string]string{"body": "a", "day": "2999-05-02"}, map[string]string{"Day": "This day is still to come."}},
		{map[string]string{"body": "a", "day": "x"}, map[string]string{"Day": dayAllowed}},
		{map[string]string{"body": "", "day": "x"}, map[string]string{"Day": dayAllowed, "Body": body}},
	})
	n := ParseRoundNote(url.Values{"body": {right["body"]}, "on": {"7.3"}, "private": {"on"}})
	if n.Body.Text != right["body"] || n.Body.Value != "- hold\n- look" || n.Spot.Value != (Spot{7, 3}) || !n.Private {
		t.Errorf("%+v", n)
	}
}

func TestPractice(t *testing.T) {
	line := "Allowed: up to 200 characters, in one line."
	right := map[string]string{"what": "putts", "amount": "40", "pass_mark": "32 of 40", "due": "2026-05-02"}
	checkForms(t, func(v url.Values) typedForm { return ParseAssignment(v, golf.Date{Year: 2026, Month: 5, Day: 2}) }, []formCase{
		{right, nil},
		{with(right, "amount", "", "pass_mark", ""), nil},
		{with(right, "what", " "), map[string]string{"What": "Say what to practise."}},
		{with(right, "what", long+long), map[string]string{"What": line}},
		{with(right, "due", "x"), map[string]string{"Due": dayAllowed}},
		{with(right, "due", "2026-05-01"), map[string]string{"Due": "This day has passed."}},
		{with(right, "what", "", "drill", "lag"), nil},
		{with(right, "set_up", "two tees", "tries", "20", "mark", "14"), nil},
		{with(right, "tries", "20", "mark", "21"), map[string]string{"Mark": "More than there are tries."}},
		{with(right, "tries", "0", "set_up", long+long), map[string]string{"Tries": "Allowed: 1 to 200.", "SetUp": line}},
		{with(right, "what", "", "amount", "a\nb", "pass_mark", long+long, "due", "x"),
			map[string]string{"What": "Say what to practise.", "Amount": line, "PassMark": line, "Due": dayAllowed}},
	})
	result := "Give the result, in up to 200 characters."
	checkForms(t, func(v url.Values) typedForm { return ParseResult(v) }, []formCase{
		{map[string]string{"day": "2026-05-02", "result": "33 of 40", "passed": "on"}, nil},
		{map[string]string{"day": "2026-05-02", "result": ""}, map[string]string{"Result": result}},
		{map[string]string{"day": "x", "result": long + long}, map[string]string{"Day": dayAllowed, "Result": result}},
	})
	mark := "Needed: what happened, in at most 80 characters."
	checkForms(t, func(v url.Values) typedForm { return ParseMark(v) }, []formCase{
		{map[string]string{"day": "2026-05-02", "what": "new putter"}, nil},
		{map[string]string{"day": "2026-05-02", "what": long}, map[string]string{"What": mark}},
		{map[string]string{"day": "x", "what": ""}, map[string]string{"Day": dayAllowed, "What": mark}},
	})
}

// Every zone that is suggested can be chosen.
func TestZones(t *testing.T) {
	all := Zones()
	for _, name := range all {
		if f := ParseZone(name); !f.Sound() || f.Value != name {
			t.Errorf("%q: %+v", name, f)
		}
	}
	if len(all) < 400 {
		t.Errorf("%d zones", len(all))
	}
}
