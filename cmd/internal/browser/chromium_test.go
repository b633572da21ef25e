// Package browser tries the page as a person would, in Chromium: every path is walked
// with the program as the server and with the one file opened from the disk. It is all
// tests, so the program needs no browser library.
package browser

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// long is the longest wait for one thing to happen: a browser's engine makes a whole set
// of patterns in half a minute, and a machine may be busy elsewhere.
const long = 4 * time.Minute

// chromium is the browser that all tests share; each has its own profile in it. files is
// a folder that is gone after the tests.
var (
	chromium context.Context
	files    string
)

func TestMain(m *testing.M) { os.Exit(run(m)) }

func run(m *testing.M) int {
	place := find()
	if place == "" {
		return m.Run() // every test says why it is left out
	}
	dir, err := os.MkdirTemp("", "ribwright-browser")
	if err != nil {
		fmt.Println(err)
		return 1
	}
	defer os.RemoveAll(dir)
	files = dir
	// Nobody but this machine is to be found, so that what a page asks of others fails.
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(place), chromedp.NoSandbox,
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"), chromedp.WSURLReadTimeout(long))
	alone, end := chromedp.NewExecAllocator(context.Background(), options...)
	defer end()
	all, close := chromedp.NewContext(alone)
	defer close()
	if err := chromedp.Do(all); err != nil {
		fmt.Println(place, "does not start:", err)
		return 1
	}
	chromium = all
	return m.Run()
}

// find returns where Chromium is; "" where there is none.
func find() string {
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "chrome"} {
		if place, err := exec.LookPath(name); err == nil {
			return place
		}
	}
	return ""
}
