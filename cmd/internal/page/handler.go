package page

import (
	"io"
	"net"
	"net/http"
	"time"

	"ribwright/cmd/internal/answer"
	"ribwright/cmd/internal/job"
)

// slowest is the longest that a question may take: a book with a close nest on a slow
// machine takes a few seconds.
const slowest = 2 * time.Minute

// Handler hands the page out and answers its questions, to browsers on this machine
// alone: a request by another name for it, or from another site's page, is refused. It
// reads and writes no file, and keeps nothing between two requests. made is the date
// that stands in files.
func Handler(p Page, made time.Time) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.Write(p.HTML)
	})
	mux.HandleFunc("POST /ask", func(w http.ResponseWriter, r *http.Request) {
		if r.Header.Get("Content-Type") != "application/json" {
			http.Error(w, "a question is application/json", http.StatusUnsupportedMediaType)
			return
		}
		message, err := io.ReadAll(http.MaxBytesReader(w, r.Body, answer.Largest))
		if err != nil {
			http.Error(w, "the question is too large, or broke off", http.StatusRequestEntityTooLarge)
			return
		}
		w.Header().Set("Content-Type", "application/json")
		w.Write(answer.To(message, job.World{Made: made}))
	})
	return http.TimeoutHandler(guarded(http.NewCrossOriginProtection().Handler(mux), p.Policy), slowest, "that took too long")
}

// guarded refuses other names for this machine, and tells browsers what the page may do.
// A site can make its own name lead here; only the name gives it away.
func guarded(h http.Handler, policy string) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !loopback(r.Host) {
			http.Error(w, "this page is for this machine alone; open it by the address that was printed", http.StatusForbidden)
			return
		}
		for name, value := range map[string]string{"Content-Security-Policy": policy, "X-Content-Type-Options": "nosniff",
			"Referrer-Policy": "no-referrer", "Cache-Control": "no-store", "Cross-Origin-Resource-Policy": "same-origin"} {
			w.Header().Set(name, value)
		}
		h.ServeHTTP(w, r)
	})
}

// loopback tells whether a host, with or without a port, is this machine by its own name.
func loopback(host string) bool {
	name, _, err := net.SplitHostPort(host)
	if err != nil {
		name = host
	}
	return name == "localhost" || name == "127.0.0.1" || name == "::1" || name == "[::1]"
}
