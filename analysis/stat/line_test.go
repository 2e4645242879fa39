package stat

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
)

// NIST/SEMATECH Statistical Reference Datasets, linear regression, "Norris" (a
// calibration of ozone monitors) with its certified values. Data and values are
// from memory; that the data give the values to ten digits vouches for both.
func TestFitLine(t *testing.T) {
	file, err := os.Open("testdata/norris.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var x, y []float64
	for _, row := range rows[1:] {
		a, errA := strconv.ParseFloat(row[0], 64)
		b, errB := strconv.ParseFloat(row[1], 64)
		if errA != nil || errB != nil {
			t.Fatal(row)
		}
		y, x = append(y, a), append(x, b)
	}
	l := FitLine(x, y)
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"start", l.Start, -0.262323073774029},
		{"its error", l.StartError, 0.232818234301152},
		{"slope", l.Slope, 1.00211681802045},
		{"its error", l.SlopeError, 0.429796848199937e-03},
		{"residual spread", l.SD, 0.884796396144373},
		{"R squared", l.RSquared, 0.999993745883712},
	} {
		near(t, c.what, c.got, c.want, 1e-10)
	}
	if l.DF != 34 {
		t.Errorf("%d degrees of freedom", l.DF)
	}
}
