package handlers

import (
	"fmt"
	"net/http"
	"strings"
	"testing"
)

// accountFile is a file with nothing but settings and one part.
func accountFile(part string) string {
	return `{"version":1,"settings":{"name":"R","far_unit":"yd","green_unit":"ft","target":79,"boundary_yd":50,"clubs":""},"rounds":[],` + part + `}`
}

// What an account file holds besides rounds is refused whole where one figure of it
// cannot be, or comes twice where it may come once; nothing of it is kept.
func TestHostilePartsOfAnAccountFile(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	const (
		plan  = `"practice_plans":[{"day":"2026-05-02","first_day":"2026-04-01","last_day":"2026-05-02","rounds":12,"target":79,"minutes":180,"engine":"x","figures":{"version":1,"level":%s,"items":[]}}]`
		drawn = `"drawn_courses":[{"course":"Fen","tee":"","holes":[{"number":1,"par":4,"length_in":14400,"stroke_index":1}],"drawings":[{"hole":%s,"drawn":"2026-05-02T10:00:00Z","picture":{"version":1,"par":4,"length":%s}}]}]`
		ball  = `"run_out":[{"day":"%s","club":"pw","lie":"rough","green":"fast","carry":%s,"total":21.5,"unit":"paces"}]`
		balls = `"range_sessions":[{"club":"d","day":"2026-05-02","balls":[%s]}]`
		club  = `{"club":"d","length_yd":%s,"shape_yd":0}`
	)
	for _, part := range []string{
		fmt.Sprintf(plan, "1e308"), fmt.Sprintf(plan, "NaN"), fmt.Sprintf(plan, `"84"`), fmt.Sprintf(plan, strings.Repeat("[", 40)),
		fmt.Sprintf(drawn, "1", "1e308"), fmt.Sprintf(drawn, "1", "-5"), fmt.Sprintf(drawn, "1", "Infinity"), fmt.Sprintf(drawn, "2", "400"), fmt.Sprintf(drawn, "1.5", "400"), fmt.Sprintf(drawn, "1", `400,"length":400`),
		strings.Replace(fmt.Sprintf(drawn, "1", "400"), "14400", "0", 1), strings.Replace(fmt.Sprintf(drawn, "1", "400"), "14400", "-1", 1), strings.Replace(fmt.Sprintf(drawn, "1", "400"), `"length_in":14400,`, "", 1), strings.Replace(fmt.Sprintf(drawn, "1", "400"), "14400", "0.001", 1),
		fmt.Sprintf(ball, "2026-05-02", "1e308"), fmt.Sprintf(ball, "2026-05-02", "-1"), fmt.Sprintf(ball, "2026-05-02", "NaN"), fmt.Sprintf(ball, "2026-02-30", "12"), fmt.Sprintf(ball, "10000-01-01", "12"),
		fmt.Sprintf(balls, `"1e308 0"`), fmt.Sprintf(balls, `"NaN NaN"`), fmt.Sprintf(balls, `"=1+1"`),
		`"bag":[` + fmt.Sprintf(club, "1e308") + `]`, `"bag":[` + fmt.Sprintf(club, "200") + "," + fmt.Sprintf(club, "210") + `]`,
	} {
		a := v.upload(accountFile(part))
		if a.status != http.StatusUnprocessableEntity {
			t.Errorf("%s: %d", part, a.status)
		}
		if confirmed := v.post("/import/confirm", "settings", "yes"); confirmed.status != http.StatusNotFound {
			t.Errorf("%s: confirmed with %d", part, confirmed.status)
		}
	}
}
