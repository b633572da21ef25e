package json

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
)

// parsed writes a report, reads it back, and holds it to begin with its design.
func parsed(t testing.TB) func(report any, err error) map[string]any {
	return func(report any, err error) map[string]any {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := Encode(&b, report); err != nil {
			t.Fatal(err)
		}
		if !strings.HasPrefix(b.String(), "{\n \"design") {
			t.Errorf("the report begins %.40q", b.String())
		}
		var out map[string]any
		if err := json.Unmarshal(b.Bytes(), &out); err != nil {
			t.Fatal(err)
		}
		return out
	}
}

// TestKindsOfNumber checks how single numbers are written.
func TestKindsOfNumber(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, c := range []struct {
		v    any
		want string
	}{
		{fixed(1.00004), "1"}, {fixed(1.00006), "1.0001"}, {fixed(-0.00001), "0"}, {fixed(-1250.5), "-1250.5"}, {fixed(inf), "null"}, {fixed(nan), "null"},
		{factor(0.1234567894), "0.123456789"}, {factor(-1e-10), "0"}, {factor(-inf), "null"},
		{significant(1234.56789), "1234.568"}, {significant(0.00012345678), "0.000123"}, {significant(-1e-12), "0"}, {significant(-1e-7), "0"},
		{minute(1.1386e-06), "0.0000011386"}, {minute(nan), "null"}, {Object{{"a", 1234.56789}, {"b", Object{{"c", "<"}}}}, `{"a":1234.568,"b":{"c":"\u003c"}}`},
		{significant(0), "0"}, {significant(999.99999999), "1000"}, {significant(inf), "null"}, {significant(nan), "null"},
	} {
		if got, err := json.Marshal(c.v); err != nil || string(got) != c.want {
			t.Errorf("%T %v is written %s (%v), want %s", c.v, c.v, got, err, c.want)
		}
	}
}

// TestHeader: an edition stands beside the fingerprint and changes it; letters that
// mean something to a browser are written as they are.
func TestHeader(t *testing.T) {
	d := frametest.Shipped(t, "brook", nil).Design
	plain := parsed(t)(of(d))["design"].(map[string]any)
	if plain["title"] != "Brook" || plain["slug"] != "brook" || plain["edition"] != "" || len(plain["fingerprint"].(string)) != 8 {
		t.Fatalf("%v", plain)
	}
	d.Edition = "2 <b>"
	second, err := of(d)
	if err != nil {
		t.Fatal(err)
	}
	if got := parsed(t)(second, err)["design"].(map[string]any); got["edition"] != "2 <b>" || got["fingerprint"] == plain["fingerprint"] {
		t.Errorf("%v", got)
	}
	var b bytes.Buffer
	if err := Encode(&b, second); err != nil || !strings.Contains(b.String(), ` "edition": "2 <b>",`) {
		t.Errorf("%s, %v", b.String(), err)
	}
}
