package design

import (
	"reflect"
	"regexp"
	"strings"
	"testing"
)

func fingerprint(t *testing.T, d *Design) string {
	t.Helper()
	s, err := d.Fingerprint()
	if err != nil {
		t.Fatal(err)
	}
	if !regexp.MustCompile(`^[0-9a-f]{8}$`).MatchString(s) {
		t.Errorf("fingerprint %q, want eight small letters and digits", s)
	}
	return s
}

// TestFingerprintSame reads one design from files that differ in no value.
func TestFingerprintSame(t *testing.T) {
	brook := text(t, "brook")
	want := fingerprint(t, mustDecode(t, brook))
	keel := "[keel]\nspecies = \"western redcedar\"\nwidth = \"40 mm\"\ndepth = \"12 mm\"\n"
	for _, c := range []struct{ name, file string }{
		{"again", brook},
		{"other comments", "# mine\n" + strings.ReplaceAll(brook, "#", "# note:")},
		{"tables in another order", swap(t, brook, keel, "") + "\n" + keel},
		{"keys in another order", swap(t, brook, "width = \"40 mm\"\ndepth = \"12 mm\"", "depth = \"12 mm\"\nwidth = \"40 mm\"")},
		{"another unit", swap(t, brook, `"3500 mm"`, `"3.5 m"`)},
		{"a default written out", swap(t, brook, "[ribs]\n", "[ribs]\ntrim = \"12 mm\"\n")},
		{"an after half written out", swap(t, brook, "[hull]\n", "[hull]\nrocker_stern = \"25 mm\"\n")},
		{"an empty list", swap(t, brook, "[gunwale]\n", "[gunwale]\nscarfs = []\n")},
		{"as encoded", encode(t, mustDecode(t, brook))},
	} {
		if got := fingerprint(t, mustDecode(t, c.file)); got != want {
			t.Errorf("%s: %s, want %s", c.name, got, want)
		}
	}
}

// TestFingerprintDiffers changes every value of a design, one at a time.
func TestFingerprintDiffers(t *testing.T) {
	all := text(t, "river") + "\n[outfit.sail]\n[outfit.pair]\npurpose = \"open\"\n[outfit.row]\n"
	seen := map[string]string{fingerprint(t, mustDecode(t, all)): "nothing"}
	for n := 0; ; n++ {
		d, left := mustDecode(t, all), n
		what := changeNth(reflect.ValueOf(d).Elem(), "design", &left)
		if what == "" {
			// 47 values in single tables, 7 of a stern, 2 in each of 2 spreaders,
			// 5 in each of 3 sections, 7 in each of 3 thwarts, 11 in each of 2 seats, 2 scarfs, 4 shares.
			if n < 100 {
				t.Fatalf("only %d values were changed", n)
			}
			return
		}
		print := fingerprint(t, d)
		if other := seen[print]; other != "" {
			t.Errorf("%s changed gives the fingerprint of %s changed", what, other)
		}
		seen[print] = what
	}
}

// changeNth changes the n-th value inside v and returns its name, "" when
// there are not so many.
func changeNth(v reflect.Value, name string, n *int) string {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return ""
		}
		return changeNth(v.Elem(), name, n)
	case reflect.Struct:
		for i := range v.NumField() {
			if what := changeNth(v.Field(i), name+"."+v.Type().Field(i).Name, n); what != "" {
				return what
			}
		}
		return ""
	case reflect.Slice:
		for i := range v.Len() {
			if what := changeNth(v.Index(i), name+"[]", n); what != "" {
				return what
			}
		}
		return ""
	}
	if *n--; *n >= 0 {
		return ""
	}
	switch v.Kind() {
	case reflect.String:
		v.SetString(v.String() + "x")
	case reflect.Bool:
		v.SetBool(!v.Bool())
	case reflect.Int:
		v.SetInt((v.Int() + 1) % 2)
	case reflect.Float64:
		v.SetFloat(v.Float() + 1e-9)
	}
	return name
}

func TestSlug(t *testing.T) {
	for _, c := range []struct{ name, title, want string }{
		{"plain", "Brook", "brook"},
		{"two words", "  Long  River ", "long-river"},
		{"marks", `& < > " ' * ? | :`, "boat"},
		{"marks between", "Salt & <Pepper>", "salt-pepper"},
		{"em dash", "North—South", "north-south"},
		{"emoji", "🛶 Otter 🛶", "otter"},
		{"emoji alone", "🛶", "boat-5ac59b"},
		{"accents", "Ölwë", "ölwë"},
		{"accents of their own", "O\u0308lwe", "o\u0308lwe"},
		{"Cyrillic", "Чайка № 2", "чайка-2"},
		{"Greek", "Ο Γλάρος", "ο-γλάρος"},
		{"Chinese", "小舟", "小舟"},
		{"Hindi, with marks", "नाव", "नाव"},
		{"300 letters of three bytes", strings.Repeat("舟", 300), strings.Repeat("舟", 40)},
		{"capital that lengthens", "İx", "ix"},
		{"digits", "No. 12", "no-12"},
		{"300 letters", strings.Repeat("a", 300), strings.Repeat("a", 40)},
		{"300 syllables", strings.Repeat("ab ", 100), strings.Repeat("ab-", 13) + "a"},
		{"cut at a hyphen", strings.Repeat("a", 39) + " b", strings.Repeat("a", 39)},
		{"up and away", "../../etc/passwd", "etc-passwd"},
		{"backslashes", `..\..\boot.ini`, "boot-ini"},
		{"drive", `C:\boats`, "c-boats"},
		{"dots", "...", "boat"},
		{"one dot", ".", "boat"},
		{"hidden", ".profile", "profile"},
		{"like a flag", "--out", "out"},
		{"device", "CON", "boat-con"},
		{"numbered device", "Lpt1", "boat-lpt1"},
		{"first device", "com0", "boat-com0"},
		{"last device", "COM9", "boat-com9"},
		{"device with an ending", "nul.txt", "nul-txt"},
		{"nearly a device", "com10", "com10"},
		{"control characters", "a\x00b\nc\x1b", "a-b-c"},
		{"not UTF-8", "a\xffb", "a-b"},
		{"empty", "", "boat"},
	} {
		d := Design{Title: c.title}
		got := d.Slug()
		if got != c.want {
			t.Errorf("%s: Slug of %q = %q, want %q", c.name, c.title, got, c.want)
		}
		if !regexp.MustCompile(`^[\pL\pM\p{Nd}]+(-[\pL\pM\p{Nd}]+)*$`).MatchString(got) || len(got) > 165 {
			t.Errorf("%s: %q is not safe as a file name everywhere", c.name, got)
		}
	}
}

// A file's name has 255 bytes on common file systems (POSIX leaves NAME_MAX to them; ext4,
// APFS and NTFS: 255), and "-sail-patterns-tabloid-part.pdf" is the longest that follows.
func TestStem(t *testing.T) {
	for _, c := range []struct{ edition, want string }{
		{"", "heron"},
		{"1", "heron"},
		{"2", "heron-edition-2"},
		{"Spring 2027, 2", "heron-edition-spring-2027-2"},
		{"../up", "heron-edition-up"},
		{"第二版", "heron-edition-第二版"},
	} {
		if got := (&Design{Title: "Heron", Edition: c.edition}).Stem(); got != c.want {
			t.Errorf("edition %q: %q, want %q", c.edition, got, c.want)
		}
	}
	names := map[string]string{}
	for _, edition := range []string{"!", "?", strings.Repeat("a", 48), strings.Repeat("a", 49), strings.Repeat("a", 50), strings.Repeat("舟", 26)} {
		d := Design{Title: strings.Repeat("𝒜", 60), Edition: edition}
		name := d.Stem() + "-sail-patterns-tabloid-part.pdf"
		if len(name) > 255 || names[name] != "" {
			t.Errorf("edition %q: %q has %d bytes, or is %q too", edition, name, len(name), names[name])
		}
		names[name] = edition
	}
}
