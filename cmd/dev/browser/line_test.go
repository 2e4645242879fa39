package browser

import (
	"net"
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"sync/atomic"
	"time"
)

// Line is a connection to the app that can be slow, or go.
type Line struct {
	URL string

	delay  atomic.Int64
	late   atomic.Int64
	gone   atomic.Bool
	server *httptest.Server
}

// NewLine lays a line to the app at an address. The caller closes it.
func NewLine(to string) (*Line, error) {
	target, err := url.Parse(to)
	if err != nil {
		return nil, err
	}
	l := &Line{}
	proxy := &httputil.ReverseProxy{Rewrite: func(r *httputil.ProxyRequest) {
		r.SetURL(target)
		r.Out.Host = r.In.Host
	}}
	proxy.ModifyResponse = func(*http.Response) error {
		time.Sleep(time.Duration(l.late.Load()))
		return nil
	}
	l.server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		time.Sleep(time.Duration(l.delay.Load()))
		if l.gone.Load() {
			if conn, _, err := http.NewResponseController(w).Hijack(); err == nil {
				hangUp(conn)
			}
			return
		}
		proxy.ServeHTTP(w, r)
	}))
	l.URL = l.server.URL
	return l, nil
}

func hangUp(conn net.Conn) {
	if tcp, ok := conn.(*net.TCPConn); ok {
		tcp.SetLinger(0) // a reset, as when the network goes
	}
	conn.Close()
}

// Delay makes every request wait.
func (l *Line) Delay(d time.Duration) { l.delay.Store(int64(d)) }

// Late makes every answer late; what was asked has arrived by then.
func (l *Line) Late(d time.Duration) { l.late.Store(int64(d)) }

// Gone takes the connection away, or gives it back.
func (l *Line) Gone(yes bool) { l.gone.Store(yes) }

// Close ends the line.
func (l *Line) Close() { l.server.Close() }
