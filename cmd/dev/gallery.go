package main

import (
	"flag"
	"fmt"
	"html/template"
	"net"
	"net/http"

	"strokeledger/static"
	"strokeledger/web/sample"
)

// serveGallery shows every page in every state from made-up values, without a
// database.
func serveGallery(args []string) error {
	flags := flag.NewFlagSet("gallery", flag.ContinueOnError)
	listen := flags.String("listen", "127.0.0.1:8178", "address and port")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return errUsage
	}
	listener, err := net.Listen("tcp", *listen)
	if err != nil {
		return err
	}
	fmt.Printf("The gallery is at http://%s\n", listener.Addr())
	return http.Serve(listener, gallery(sample.Pages()))
}

// gallery answers with the list of pages, with each of them, and with the files
// they need. What their links lead to is not there.
func gallery(pages []sample.Page) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", func(w http.ResponseWriter, r *http.Request) {
		galleryIndex.Execute(w, galleryList{static.URL("app.css"), pages})
	})
	for _, p := range pages {
		mux.HandleFunc("GET /"+p.At(), func(w http.ResponseWriter, r *http.Request) {
			p.View.Render(r.Context(), w)
		})
	}
	mux.HandleFunc("GET "+static.Prefix+"{file}", func(w http.ResponseWriter, r *http.Request) {
		data, ok := static.File(r.PathValue("file"))
		if !ok {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Content-Type", static.ContentType(r.PathValue("file")))
		w.Write(data)
	})
	return mux
}

type galleryList struct {
	Sheet string // address of the styles
	Pages []sample.Page
}

var galleryIndex = template.Must(template.New("index").Parse(`<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Gallery</title><link rel="stylesheet" href="{{.Sheet}}"></head>
<body><main id="main"><h1>Every page in every state</h1>
<ul>
{{range .Pages}}<li><a href="/{{.At}}">{{.Subject}}: {{.Name}}, {{.State}}</a></li>
{{end}}</ul></main></body>
</html>
`))
