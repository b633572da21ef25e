package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/exec"
	"os/signal"
	"runtime"
	"slices"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"ribwright/cmd/internal/page"
	"ribwright/cmd/ribwright/keep"
	"ribwright/geometry/design"
)

// opening is the verb that shows the page; it answers many requests instead of one.
func opening() verb {
	v := verb{name: "open", line: "the page in your browser: a boat to your measure, live, and its paper",
		takes: "[DESIGN.toml|" + strings.Join(design.ShippedNames(), "|") + "]", most: 1, example: "lake"}
	v.run = v.open
	return v
}

// open serves the page on this machine alone until it is interrupted.
func (v verb) open(args []string, c console) error {
	f := pflag.NewFlagSet(v.name, pflag.ContinueOnError)
	f.SortFlags = false
	port := f.Int("port", 0, "`number` of the port on this machine; any free one when left out")
	alone := f.Bool("no-browser", false, "print the address and open no browser")
	names, err := v.parse(f, args, c.out)
	if err != nil {
		return err
	}
	if *port < 0 || *port > 65535 {
		return usageError{fmt.Errorf("open: --port: %d is out of range; accepted: 0 to 65535", *port)}
	}
	handler, err := firstPage(names)
	if err != nil {
		return err
	}
	stop, end := signal.NotifyContext(context.Background(), os.Interrupt)
	defer end()
	l, err := net.Listen("tcp", fmt.Sprintf("127.0.0.1:%d", *port))
	if err != nil {
		return fmt.Errorf("open: port %d cannot be used: %w; leave --port out for a free one", *port, keep.Cause(err))
	}
	at := fmt.Sprintf("http://%s/", l.Addr())
	if _, err := fmt.Fprintf(c.out, "%s\n  open until you press Ctrl-C; only this machine can see it\n", at); err != nil {
		return errors.Join(err, l.Close())
	}
	if !*alone {
		showIn(at)
	}
	return serve(stop, l, handler)
}

// firstPage puts the page together that shows a design.
func firstPage(names []string) (http.Handler, error) {
	name, text := "", []byte(nil)
	if len(names) > 0 {
		name = names[0]
	}
	if name != "" && !slices.Contains(design.ShippedNames(), name) {
		var err error
		if text, err = keep.ReadFile(name); err != nil {
			return nil, fmt.Errorf("open: cannot read the design file %q: %w; give a file, or one of %s", name, err, strings.Join(design.ShippedNames(), ", "))
		}
	}
	start, err := page.Begin(name, text)
	if err != nil {
		return nil, err
	}
	p, err := page.New(start, nil)
	if err != nil {
		return nil, err
	}
	made, err := dateOfFiles(os.Getenv("SOURCE_DATE_EPOCH"))
	return page.Handler(p, made), err
}

// serve answers until it is told to stop, and lets what is under way come to its end.
func serve(stop context.Context, l net.Listener, h http.Handler) error {
	s := &http.Server{Handler: h, ReadHeaderTimeout: 10 * time.Second, ReadTimeout: time.Minute, IdleTimeout: 2 * time.Minute, MaxHeaderBytes: 1 << 16}
	gone := make(chan error, 1)
	go func() {
		<-stop.Done()
		last, end := context.WithTimeout(context.Background(), 3*time.Second)
		defer end()
		gone <- s.Shutdown(last)
	}()
	if err := s.Serve(l); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	if err := <-gone; err != nil && !errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	return nil
}

// showIn opens an address in the browser. Where that fails the address stands printed.
func showIn(at string) {
	c := exec.Command("xdg-open", at)
	switch runtime.GOOS {
	case "darwin":
		c = exec.Command("open", at)
	case "windows":
		c = exec.Command("rundll32", "url.dll,FileProtocolHandler", at)
	}
	if c.Start() == nil {
		go c.Wait() // leave no dead child behind
	}
}
