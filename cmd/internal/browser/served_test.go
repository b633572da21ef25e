package browser

import (
	"fmt"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"

	"ribwright/cmd/internal/job"
	"ribwright/cmd/internal/page"
)

// served is the page as the program serves it; it returns the address.
func served(t *testing.T) string {
	t.Helper()
	if chromium == nil {
		t.Skip("no Chromium to open the page in")
	}
	start, err := page.Begin("", nil)
	if err != nil {
		t.Fatal(err)
	}
	p, err := page.New(start, nil)
	if err != nil {
		t.Fatal(err)
	}
	s := httptest.NewServer(page.Handler(p, job.UsualDate()))
	t.Cleanup(s.Close)
	return s.URL + "/"
}

// carried is the one file with the engine inside, on the disk; it returns the address.
func carried(t *testing.T) string {
	t.Helper()
	if os.Getenv("RIBWRIGHT_LONG") == "" {
		t.Skip("builds the engine for browsers; set RIBWRIGHT_LONG=1")
	}
	if chromium == nil {
		t.Skip("no Chromium to open the page in")
	}
	dir, err := site()
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, "ribwright.html")
	about, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	if about.Size() > most {
		t.Errorf("the one file is %d bytes, %d at most", about.Size(), most)
	}
	return "file://" + file
}

// site makes the one file, once for all tests, in the folder of their files.
var site = sync.OnceValues(func() (string, error) {
	dir := filepath.Join(files, "site")
	said, err := exec.Command("go", "run", "ribwright/cmd/site", "--out", dir).CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("%w: %s", err, said)
	}
	return dir, nil
})

// most is how large the page with its engine may be, bytes.
const most = 8_000_000

// ways are the two ways to have the page.
var ways = map[string]func(*testing.T) string{"served": served, "from the disk": carried}

// bothWays runs a test on the page served and on the one file.
func bothWays(t *testing.T, try func(t *testing.T, home string)) {
	for name, way := range ways {
		t.Run(name, func(t *testing.T) { try(t, way(t)) })
	}
}
