package main

import (
	"io"
	"net/http"
	"net/http/httptest"
	"regexp"
	"testing"

	"strokeledger/web/sample"
)

// The list leads to every page, and every page has its styles.
func TestGallery(t *testing.T) {
	site := httptest.NewServer(gallery(sample.Pages()))
	defer site.Close()
	index := fetched(t, site.URL+"/")
	links := regexp.MustCompile(`<a href="(/[^"]*)"`).FindAllStringSubmatch(index, -1)
	if len(links) != len(sample.Pages()) {
		t.Fatalf("%d links to %d pages", len(links), len(sample.Pages()))
	}
	sheet := regexp.MustCompile(`<link rel="stylesheet" href="([^"]*)"`)
	for _, link := range links {
		styles := sheet.FindStringSubmatch(fetched(t, site.URL+link[1]))
		if styles == nil || len(fetched(t, site.URL+styles[1])) == 0 {
			t.Errorf("%s has no styles", link[1])
		}
	}
	if got, err := http.Get(site.URL + "/rounds"); err != nil || got.StatusCode != http.StatusNotFound {
		t.Errorf("a page that is not there: %v", err)
	}
}

func fetched(t *testing.T, url string) string {
	t.Helper()
	got, err := http.Get(url)
	if err != nil {
		t.Fatal(err)
	}
	defer got.Body.Close()
	body, err := io.ReadAll(got.Body)
	if err != nil || got.StatusCode != http.StatusOK {
		t.Fatalf("%s: %d, %v", url, got.StatusCode, err)
	}
	return string(body)
}
