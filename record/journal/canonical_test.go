package journal

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"
)

// RFC 8785, section 3.2.2 (input) and 3.2.3 (output after sorting).
func TestCanonicalSampleOfTheStandard(t *testing.T) {
	in := `{
  "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
  "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
  "literals": [null, true, false]
}`
	want := `{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`
	got, err := Canonical([]byte(in))
	if err != nil || string(got) != want {
		t.Errorf("Canonical = %s, %v\nRFC 8785 section 3.2.3 has %s", got, err, want)
	}
}

// RFC 8785, section 3.2.3: the sorting of property names.
func TestCanonicalSortsByUTF16(t *testing.T) {
	in := `{"\u20ac":"Euro Sign","\r":"Carriage Return","\ufb33":"Hebrew Letter Dalet With Dagesh","1":"One",` +
		`"\ud83d\ude00":"Emoji: Grinning Face","\u0080":"Control","\u00f6":"Latin Small Letter O With Diaeresis"}`
	got, err := Canonical([]byte(in))
	if err != nil {
		t.Fatal(err)
	}
	order := []string{"Carriage Return", "One", "Control", "Latin Small Letter O With Diaeresis", "Euro Sign", "Emoji: Grinning Face", "Hebrew Letter Dalet With Dagesh"}
	at := -1
	for _, value := range order {
		next := strings.Index(string(got), value)
		if next <= at {
			t.Fatalf("%q stands out of order in %s", value, got)
		}
		at = next
	}
}

// RFC 8785, appendix B: bit patterns of doubles and how they are written.
func TestCanonicalNumbersOfTheStandard(t *testing.T) {
	for bits, want := range map[uint64]string{
		0x0000000000000000: "0",
		0x8000000000000000: "0",
		0x0000000000000001: "5e-324",
		0x8000000000000001: "-5e-324",
		0x7fefffffffffffff: "1.7976931348623157e+308",
		0xffefffffffffffff: "-1.7976931348623157e+308",
		0x4340000000000000: "9007199254740992",
		0xc340000000000000: "-9007199254740992",
		0x4430000000000000: "295147905179352830000",
		0x44b52d02c7e14af5: "9.999999999999997e+22",
		0x44b52d02c7e14af6: "1e+23",
		0x44b52d02c7e14af7: "1.0000000000000001e+23",
		0x444b1ae4d6e2ef4e: "999999999999999700000",
		0x444b1ae4d6e2ef4f: "999999999999999900000",
		0x444b1ae4d6e2ef50: "1e+21",
		0x3eb0c6f7a0b5ed8c: "9.999999999999997e-7",
		0x3eb0c6f7a0b5ed8d: "0.000001",
		0x41b3de4355555553: "333333333.3333332",
		0x41b3de4355555554: "333333333.33333325",
		0x41b3de4355555555: "333333333.3333333",
		0x41b3de4355555556: "333333333.3333334",
		0x41b3de4355555557: "333333333.33333343",
		0xbecbf647612f3696: "-0.0000033333333333333333",
		0x43143ff3c1cb0959: "1424953923781206.2",
	} {
		if got := string(appendNumber(nil, math.Float64frombits(bits))); got != want {
			t.Errorf("%016x is written %s, RFC 8785 appendix B has %s", bits, got, want)
		}
	}
}

// What RFC 8259 or RFC 7493 does not allow.
func TestCanonicalRefuses(t *testing.T) {
	for _, in := range []string{
		``, ` `, `{`, `[1,]`, `{"a":1,}`, `{"a" 1}`, `{a:1}`, `01`, `+1`, `.5`, `1.`, `1e`, `NaN`, `-`, `tru`, `"a`, `"a\`, `"\x"`,
		`"\u12"`, `"\ud800"`, `"\ud800\u0041"`, `"\udc00"`, "\"\x01\"", "\"\xff\"", `{"a":1,"a":2}`, `{"a":1,"\u0061":2}`,
		`1e400`, `1 2`, `[1]]`, strings.Repeat("[", 5000),
	} {
		if out, err := Canonical([]byte(in)); err == nil {
			t.Errorf("Canonical(%.40q) = %s, it should refuse", in, out)
		}
	}
}

func FuzzCanonical(f *testing.F) {
	for _, seed := range []string{`{"b":[1,2.50,1e30],"a":"é\n"}`, `"😀"`, `[]`, `{"a":{"a":{}}}`, `-0.0`, `"\u00e9"`} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		once, err := Canonical(text)
		if err != nil {
			return
		}
		twice, err := Canonical(once)
		if err != nil || string(once) != string(twice) {
			t.Fatalf("%q became %q and then %q, %v", text, once, twice, err)
		}
		var a, b any
		if json.Unmarshal(text, &a) != nil || json.Unmarshal(once, &b) != nil {
			t.Fatalf("another reader cannot read %q or %q", text, once)
		}
		if !reflect.DeepEqual(a, b) {
			t.Fatalf("%q and %q differ in meaning", text, once)
		}
	})
}
