package coach

import (
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/form"
)

func inLines(table [][]string) string {
	var lines []string
	for _, row := range table {
		lines = append(lines, strings.Join(row, "|"))
	}
	return strings.Join(lines, "\n")
}

// The files have the figures of the pages, unrounded, and no formula of a pupil's.
func TestFilesOfACoach(t *testing.T) {
	may2 := golf.Date{Year: 2026, Month: 5, Day: 2}
	p := RosterPupil{Name: "=1+1", Target: 79.5, Since: may2, Groups: []string{"Tuesday", "Youth"}, DueWhat: "Start line", Due: may2,
		RosterRow: analysis.RosterRow{Last: may2, Score: 88, Holes: 18, Form: compare.Form{Rounds: 10}}}
	p.Form.Lost[0], p.Form.Lost[golf.Approach] = 6.25, 2.5
	want := `pupil|target|shared_from|groups|archived|last_round|last_holes|last_strokes|form_rounds|lost_all|lost_tee|lost_approach|lost_short_game|lost_putting|practice_due|practice
'=1+1|79.5|2026-05-02|Tuesday, Youth|false|2026-05-02|18|88|10|6.25|0|2.5|0|0|2026-05-02|Start line
Ann|84|||true||||0|||||||`
	if got := inLines(RosterTable(RosterInput{Pupils: []RosterPupil{p, {Name: "Ann", Target: 84, Archived: true}}})); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	rows := make([]analysis.SquadRow, 2)
	rows[1] = analysis.SquadRow{First: may2, Lost: compare.PartsLost{Rounds: 9}}
	for c := range rows[1].Lost.Cells {
		rows[1].Lost.Cells[c].Mean = float64(c) + .125
	}
	putting := &rows[1].Lost.Cells[golf.Putting]
	putting.N, putting.Interval = 9, stat.Interval{Low: -1.5, High: 3}
	in := SquadInput{Days: form.Days{}, Members: []SquadMember{{Name: "Bo"}, {Name: "Ann", Target: 84}}, Squad: analysis.Squad{Rows: rows}}
	want = `pupil|target|rounds|from|part|lost_per_18|low_95|high_95
Ann|84|9|2026-05-02|all|0.125||
Ann|84|9|2026-05-02|tee|1.125||
Ann|84|9|2026-05-02|approach|2.125||
Ann|84|9|2026-05-02|short game|3.125||
Ann|84|9|2026-05-02|putting|4.125|-1.5|3`
	if got := inLines(SquadTable(in)); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// No cell is run by a spreadsheet, whatever separates its cells. Source: OWASP, CSV
// Injection: = + - @, and the wide forms of them.
func TestNoCellIsAFormula(t *testing.T) {
	for text, want := range map[string]string{
		"=1+1": "'=1+1", "+1": "'+1", "-1": "'-1", "@SUM(1)": "'@SUM(1)", "＝1+1": "'＝1+1", "|calc": "'|calc", "\t=1+1": "'=1+1", "\r=1+1": "'=1+1", " =1+1": "'=1+1",
		"putts;=1+1": "putts;'=1+1", "putts; \"=1+1": "putts; \"'=1+1", "Robin": "Robin", "9-hole": "9-hole", "": "",
	} {
		if got := plainCell(text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}
