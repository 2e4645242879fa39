package site

import (
	"testing"
	"time"
)

func TestDeviceName(t *testing.T) {
	for agent, want := range map[string]string{
		"Mozilla/5.0 (iPhone; CPU iPhone OS 18_1 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.1 Mobile/15E148 Safari/604.1":    "Safari on iPhone",
		"Mozilla/5.0 (iPhone; CPU iPhone OS 18_1 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) CriOS/130.0 Mobile/15E148 Safari/604.1":     "Chrome on iPhone",
		"Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) HeadlessChrome/140.0.0.0 Safari/537.36":                              "Chromium on Linux",
		"Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/130.0.0.0 Mobile Safari/537.36":                            "Chrome on Android",
		"Mozilla/5.0 (Linux; Android 14; SM-S911B) AppleWebKit/537.36 (KHTML, like Gecko) SamsungBrowser/26.0 Chrome/122.0.0.0 Mobile Safari/537.36": "Samsung Internet on Android",
		"Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/130.0.0.0 Safari/537.36 Edg/130.0.0.0":              "Edge on Windows",
		"Mozilla/5.0 (Macintosh; Intel Mac OS X 10.15; rv:132.0) Gecko/20100101 Firefox/132.0":                                                       "Firefox on Mac",
		"Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.1 Safari/605.1.15":                      "Safari on Mac",
		"Mozilla/5.0 (X11; CrOS x86_64 14541.0.0) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/130.0.0.0 Safari/537.36":                             "Chrome on Chromebook",
		"Mozilla/5.0 (Windows NT 10.0)": "Windows", "curl/8.5.0": "Another program", "": "Another program",
	} {
		if got := DeviceName(agent); got != want {
			t.Errorf("%s: %s, want %s", agent, got, want)
		}
	}
}

func TestDeviceSeen(t *testing.T) {
	now := time.Date(2026, 11, 4, 12, 0, 0, 0, time.UTC)
	for want, seen := range map[string]time.Time{
		"today 06:22 UTC": time.Date(2026, 11, 4, 6, 22, 0, 0, time.UTC), "yesterday 23:05 UTC": time.Date(2026, 11, 3, 23, 5, 0, 0, time.UTC),
		"2 Nov": time.Date(2026, 11, 2, 6, 0, 0, 0, time.UTC), "31 Dec 2025": time.Date(2025, 12, 31, 6, 0, 0, 0, time.UTC),
	} {
		if got := DeviceSeen(seen, now); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}
