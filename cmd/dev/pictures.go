package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"strokeledger/cmd/dev/browser"
)

// readmeFolder holds the pictures of the README. They are not embedded.
const readmeFolder = "static/readme"

// mostPicture is how many bytes a picture of the README may have.
const mostPicture = 60_000

// The README's pictures are this many pixels wide and high.
const (
	pictureWidth  = 900
	pictureHeight = 980
)

// readmePictures takes the two pictures of the README, of whoever is signed in.
func readmePictures(ctx context.Context, url, round string) error {
	if err := os.MkdirAll(readmeFolder, 0o755); err != nil {
		return err
	}
	for _, s := range []shot{{"statement", round}, {"months", "/months"}} {
		if err := chromedp.Do(ctx, browser.Screen(pictureWidth, pictureHeight, false), chromedp.Navigate(url+s.path)); err != nil {
			return err
		}
		picture, err := smallPicture(ctx)
		if err != nil {
			return fmt.Errorf("%s: %w", s.name, err)
		}
		if err := os.WriteFile(filepath.Join(readmeFolder, s.name+".webp"), picture, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// smallPicture is what the window shows, in the best quality that is small
// enough.
func smallPicture(ctx context.Context) ([]byte, error) {
	for quality := int64(90); quality >= 30; quality -= 10 {
		picture, err := chromedp.Run(ctx, chromedp.Action[[]byte](func(ctx context.Context, _ *chromedp.Target) ([]byte, error) {
			taken, err := chromedp.Call(ctx, page.CaptureScreenshot, page.CaptureScreenshotParams{Format: page.CaptureScreenshotFormatWebp, Quality: &quality})
			if err != nil {
				return nil, err
			}
			return taken.Data, nil
		}))
		if err != nil || len(picture) <= mostPicture {
			return picture, err
		}
	}
	return nil, fmt.Errorf("larger than %d bytes in any quality", mostPicture)
}
