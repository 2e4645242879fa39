package handlers

import (
	"bytes"
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strconv"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/play"
)

// versionsMost is how many earlier drawings of a hole a page lists.
const versionsMost = 12

// drawn is a hole that is drawn, with its course.
type drawn struct {
	course db.Course
	hole   golf.CardHole
}

// ofDrawn reads the course and the hole named in the address.
func (s *server) ofDrawn(r *http.Request) (d drawn, err error) {
	if d.course, err = s.ofCourse(r); err != nil {
		return d, err
	}
	n, err := id(r, "hole")
	if err != nil {
		return d, err
	}
	d.hole, err = cardHole(d.course, int(n))
	return d, err
}

// cardHole is a hole of a course.
func cardHole(c db.Course, n int) (golf.CardHole, error) {
	at := slices.IndexFunc(c.Holes, func(h golf.CardHole) bool { return h.Number == n })
	if at < 0 {
		return golf.CardHole{}, golf.ErrNotFound
	}
	return c.Holes[at], nil
}

func courseName(c db.Course) string {
	if c.Tee == "" {
		return c.Name
	}
	return c.Name + ", " + c.Tee
}

// picture is where a hole is drawn, with the rows of the drawing that holds, or of an
// earlier one.
func (s *server) picture(w http.ResponseWriter, r *http.Request) error {
	d, err := s.ofDrawn(r)
	if err != nil {
		return err
	}
	shown := db.Picture{}
	if text := r.FormValue("version"); text != "" {
		n, _ := strconv.ParseInt(text, 10, 32) // what is no number is no version
		shown, err = s.store.PictureVersion(r.Context(), d.course.ID, d.hole.Number, int(n))
	} else {
		shown, err = s.holding(r, d)
	}
	if err != nil {
		return err
	}
	f := form.NewPictureForm(d.hole)
	if shown.Text != "" {
		rows, _ := play.RowsOf(shown.Text) // none where what is kept can no longer be used
		f.Rows = form.TextOf(rows)
	}
	return s.showPicture(w, r, response{http.StatusOK, shell(r)}, d, play.DrawInput{Form: f})
}

// holding is the picture that holds; the zero Picture where none does.
func (s *server) holding(r *http.Request, d drawn) (db.Picture, error) {
	all, err := s.store.PictureVersions(r.Context(), d.course.ID, d.hole.Number, 1)
	if err != nil || len(all) == 0 {
		return db.Picture{}, err
	}
	return all[0], nil
}

// showPicture shows the page of drawing a hole, with a form as it is kept or typed.
func (s *server) showPicture(w http.ResponseWriter, r *http.Request, a response, d drawn, in play.DrawInput) error {
	in.Course, in.Name, in.Hole, in.Unit = d.course.ID, courseName(d.course), d.hole, unitsOf(me(r)).Far
	for _, h := range d.course.Holes {
		in.Holes = append(in.Holes, h.Number)
	}
	all, err := s.store.PictureVersions(r.Context(), d.course.ID, d.hole.Number, versionsMost)
	if err != nil {
		return err
	}
	for _, v := range all {
		in.Versions = append(in.Versions, s.versionOf(r, v))
	}
	in.Whose = mine(r)
	return show(w, r, a.status, play.NewDrawPage(a.page, in).View())
}

// versionOf is a drawing as a page tells of it.
func (s *server) versionOf(r *http.Request, kept db.Picture) play.Version {
	v := play.Version{Number: kept.Version, Day: golf.DateOf(kept.DrawnAt.In(s.zoneOf(me(r)))), Empty: kept.Text == ""}
	if kept.DrawnBy != nil {
		v.By = *kept.DrawnBy
	}
	return v
}

// savePicture draws what was answered or typed, and saves it when that was asked for.
func (s *server) savePicture(w http.ResponseWriter, r *http.Request) error {
	d, err := s.ofDrawn(r)
	if err != nil {
		return err
	}
	f := form.ParsePicture(r.Form, d.hole, unitsOf(me(r)).Far)
	refused := response{http.StatusUnprocessableEntity, shell(r)}
	if !f.Sound() {
		return s.showPicture(w, r, refused, d, play.DrawInput{Form: f})
	}
	f = f.Done()
	drawing := play.ReadRows(d.hole, f.Rows.Text)
	switch {
	case !drawing.Sound():
		return s.showPicture(w, r, refused, d, play.DrawInput{Form: f, Judged: true})
	case f.Does != form.SavePicture:
		page := shell(r)
		page.Flash = "Drawn, and not saved yet."
		return s.showPicture(w, r, response{http.StatusOK, page}, d, play.DrawInput{Form: f})
	}
	return s.storePicture(w, r, d, f, drawing)
}

// storePicture keeps a drawing, or shows it again when the day has had enough of them.
func (s *server) storePicture(w http.ResponseWriter, r *http.Request, d drawn, f form.PictureForm, drawing play.Drawing) error {
	err := s.keepPicture(r, d, drawing.File())
	if said := noMorePictures(err); said != "" {
		f.Rows.Problem = said
		return s.showPicture(w, r, response{http.StatusUnprocessableEntity, shell(r)}, d, play.DrawInput{Form: f})
	}
	if err != nil {
		return err
	}
	return saved(w, r, paths.Picture(d.course.ID, d.hole.Number), "picture")
}

// noMorePictures says why a player may not save another drawing, empty for any other error.
func noMorePictures(err error) string {
	switch {
	case errors.Is(err, db.ErrPicturesOfADay):
		return fmt.Sprintf("You have saved %d drawings today, the most allowed in a day. Save this one tomorrow.", db.PicturesOfADay)
	case errors.Is(err, db.ErrPictureBytes):
		return fmt.Sprintf("Your drawings come to %d MiB, the most that are kept.", db.PictureBytes>>20)
	}
	return ""
}

func (s *server) keepPicture(r *http.Request, d drawn, file string) error {
	_, err := s.store.SavePicture(r.Context(), me(r).ID, d.course.ID, d.hole.Number, file)
	return err
}

// pictureFile sends the picture of a hole as a file.
func (s *server) pictureFile(w http.ResponseWriter, r *http.Request) error {
	d, err := s.ofDrawn(r)
	if err != nil {
		return err
	}
	kept, err := s.holding(r, d)
	if err == nil && kept.Text == "" {
		err = golf.ErrNotFound
	}
	if err != nil {
		return err
	}
	return sendFile(w, "application/json", fmt.Sprintf("hole-%d.json", d.hole.Number), bytes.NewBufferString(kept.Text+"\n"))
}

// fillPicture fills the rows from a file that was pasted, or says what is wrong with
// it.
func (s *server) fillPicture(w http.ResponseWriter, r *http.Request) error {
	d, err := s.ofDrawn(r)
	if err != nil {
		return err
	}
	f := form.NewPictureForm(d.hole)
	a, file := response{http.StatusOK, shell(r)}, r.FormValue("picture")
	rows, faults := play.RowsOf(file)
	if len(faults) > 0 {
		a.status = http.StatusUnprocessableEntity
		return s.showPicture(w, r, a, d, play.DrawInput{Form: f, File: file, FileSaid: faults})
	}
	f.Rows, a.page.Flash = form.TextOf(rows), "The rows are filled from the file. Look at them, then save the drawing."
	return s.showPicture(w, r, a, d, play.DrawInput{Form: f, Judged: true})
}

// pictureBack lets an earlier drawing hold again, or takes the drawing away.
func (s *server) pictureBack(w http.ResponseWriter, r *http.Request) error {
	d, err := s.ofDrawn(r)
	if err != nil {
		return err
	}
	n, err := strconv.ParseInt(r.FormValue("version"), 10, 32)
	if err != nil {
		return errUnreadable
	}
	earlier, what := db.Picture{}, "undrawn"
	if n > 0 {
		what = "picture_back"
		if earlier, err = s.store.PictureVersion(r.Context(), d.course.ID, d.hole.Number, int(n)); err != nil {
			return err
		}
	}
	err = s.keepPicture(r, d, earlier.Text)
	if said := noMorePictures(err); said != "" {
		return &refusal{http.StatusTooManyRequests, "Limit reached", said}
	}
	if err != nil {
		return err
	}
	return saved(w, r, paths.Picture(d.course.ID, d.hole.Number), what)
}

// pictures lists the holes of a course with what is drawn of them.
func (s *server) pictures(w http.ResponseWriter, r *http.Request) error {
	c, err := s.ofCourse(r)
	if err != nil {
		return err
	}
	in := play.PicturesInput{Whose: mine(r), Course: c.ID, Name: courseName(c)}
	files, err := s.pictureFiles(r, c.ID)
	if err != nil {
		return err
	}
	for _, h := range c.Holes {
		in.Holes = append(in.Holes, play.PicturedHole{Hole: h, File: files[h.Number]})
	}
	return show(w, r, http.StatusOK, play.NewPicturesPage(shell(r), in).View())
}

// pictureFiles are the pictures that hold for a course, by hole.
func (s *server) pictureFiles(r *http.Request, id golf.CourseID) (map[int]string, error) {
	all, err := s.store.Pictures(r.Context(), id)
	files := map[int]string{}
	for _, p := range all {
		files[p.Hole] = p.Text
	}
	return files, err
}
