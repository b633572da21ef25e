package tight

import (
	"bytes"
	"compress/gzip"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"testing"
)

func unpacked(t *testing.T, z []byte) []byte {
	t.Helper()
	r, err := gzip.NewReader(bytes.NewReader(z))
	if err != nil {
		t.Fatal(err)
	}
	out, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func best(t *testing.T, data []byte) int {
	t.Helper()
	var small bytes.Buffer
	z, err := gzip.NewWriterLevel(&small, gzip.BestCompression)
	if err != nil {
		t.Fatal(err)
	}
	if _, err = z.Write(data); err != nil {
		t.Fatal(err)
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return small.Len()
}

// TestUnpacks: whatever is packed comes back from the library's reader, which checks sum
// and length as well; the same bytes pack alike.
func TestUnpacks(t *testing.T) {
	seed := rand.New(rand.NewPCG(1, 2))
	all := map[string][]byte{"nothing": nil, "a byte": {7}, "two": {1, 2}, "zeros": make([]byte, 200_000), "one run": bytes.Repeat([]byte("ab"), 70_000)}
	noise := make([]byte, 3*stretch+17)
	for i := range noise {
		noise[i] = byte(seed.Uint32())
	}
	all["noise"] = noise
	for n := range 40 {
		v := make([]byte, seed.IntN(90_000))
		for i := range v {
			if back := seed.IntN(40_000) + 1; i > back+300 && seed.IntN(20) == 0 {
				copy(v[i:], v[i-back:i-back+min(seed.IntN(300), len(v)-i)])
			} else if v[i] == 0 {
				v[i] = byte(seed.IntN(1 + n*6))
			}
		}
		all[string(rune('A'+n))] = v
	}
	for name, v := range all {
		z := Gzip(v)
		if !bytes.Equal(unpacked(t, z), v) || !bytes.Equal(z, Gzip(v)) {
			t.Errorf("%s, %d bytes: other bytes come back", name, len(v))
		}
	}
}

// TestTighter: text packs smaller than with the library's best.
func TestTighter(t *testing.T) {
	var text []byte
	for _, name := range []string{"tight.go", "parse.go", "block.go", "huffman.go", "../main.go"} {
		v, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		text = append(text, v...)
	}
	if got, want := len(Gzip(text)), best(t, text); got >= want {
		t.Errorf("%d bytes, the library makes %d", got, want)
	}
}

// TestLengths: symbols used 1, 1, 2, 3, 5 times take 25 bits in the shortest code by hand, 4,
// 4, 3, 2, 1 bits each, and 26 where none may have more than 3. Used as often as Fibonacci's
// numbers 20 symbols want 19 bits, and held to 15 their code is full: the sum of 1 / 2^length
// is 1 (Kraft 1949).
func TestLengths(t *testing.T) {
	for most, want := range map[int]int{15: 25, 3: 26} {
		used, sum := []int{1, 1, 2, 3, 5}, 0
		for i, l := range lengths(used, most) {
			sum += used[i] * l
		}
		if sum != want {
			t.Errorf("at most %d: %d bits, want %d", most, sum, want)
		}
	}
	counts := []int{1, 1}
	for len(counts) < 20 {
		n := len(counts)
		counts = append(counts, counts[n-1]+counts[n-2])
	}
	sum := 0.0
	for _, l := range lengths(counts, 15) {
		if l < 1 || l > 15 {
			t.Errorf("a length of %d", l)
		}
		sum += math.Exp2(-float64(l))
	}
	if sum != 1 {
		t.Errorf("Kraft's sum is %g", sum)
	}
}
