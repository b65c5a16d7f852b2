package layout

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// TestValuesArrive reads back, from a file that says everything, one value of
// each type of the contract.
func TestValuesArrive(t *testing.T) {
	l := good(t, pontoon)
	got := dump(l)
	want := map[string]string{
		"/format":                               "lowvent-layout/1 [stated ]",
		"/dwelling/sleeps":                      "3 [stated ]",
		"/dwelling/firstUsed":                   "2019-06 [stated ]",
		"/people/children":                      "true [stated ]",
		"/appliances/hob/use/breakfast/at":      "07:15 [stated ]",
		"/cylinders/A/damage":                   "[none] [stated ]",
		"/changeovers/over/connects":            "[cylinders/A cylinders/B] [stated ]",
		"/lockers/side/door/opensTo":            "open-air [stated ]",
		"/lockers/side/contents":                "present",
		"/spaces/float/openTo":                  "present",
		"/spaces/berth/openTo/saloon":           "present",
		"/lockers/side/sealedFrom/saloon/seal":  "gas-tight [proved tests/smoke]",
		"/lockers/side/liner/joints":            "welded [photographed ]",
		"ref lockers/side/vents/low":            "vent low fed by [], leads to []",
		"ref changeovers/over":                  "changeover over fed by [tail-A tail-B], leads to [inlet]",
		"ref junctions/tee":                     "junction tee fed by [trunk], leads to [to-hob to-old]",
		"ref openEnds/lamp":                     "open end lamp fed by [stub], leads to []",
		"ref lockers/side/sealedFrom/saloon":    "seal from saloon fed by [], leads to []",
		"ref lines/trunk/shutoffs/main":         "shut-off main fed by [], leads to []",
		"ref appliances/hob/use/breakfast":      "use breakfast fed by [], leads to []",
		"ref flues/water/joints/j":              "joint j fed by [], leads to []",
		"ref spaces/saloon/openTo/berth":        "way to berth fed by [], leads to []",
		"ref ignitionSources/battery":           "ignition source battery fed by [], leads to []",
		"ref lockers/side/penetrations/gas-out": "penetration gas-out fed by [], leads to []",
	}
	tare, _ := l.Cylinders.Get("A").Tare.Get()
	water, _ := l.Cylinders.Get("A").WaterCapacity.Get()
	want["/cylinders/A/tare"] = fmt.Sprintf("%v [stated ]", tare)
	want["/cylinders/A/waterCapacity"] = fmt.Sprintf("%v [plate ]", water)
	for key, value := range want {
		if got[key] != value {
			t.Errorf("%s is %q, want %q", key, got[key], value)
		}
	}
	// 16 lb 10 oz and 47.7 lb; the international pound is 0.45359237 kg
	// (NIST Special Publication 811, 2008, B.8).
	if tare.Nominal != unit.Mass(16.625*0.45359237) || water.Nominal != unit.WaterMass(47.7*0.45359237) {
		t.Errorf("tare %v, water capacity %v", tare.Nominal, water.Nominal)
	}
}

func TestBandsArrive(t *testing.T) {
	l := good(t, pontoon)
	share, _ := l.Gas.Propane.Get()
	if share.Low != 0.9 || share.Nominal != 0.95 || share.High != 1 {
		t.Errorf("95 %% ± 5 %% is %+v", share)
	}
	waterline, _ := l.Dwelling.Waterline.Get()
	if waterline.Low != -0.42 || waterline.High != -0.36 {
		t.Errorf("-0.42 m to -0.36 m is %+v", waterline)
	}
}

func TestAbsentIsNotNone(t *testing.T) {
	l := mustLoad(t, `{ "format": "lowvent-layout/1", "cylinders": { "A": { "upright": false, "damage": [] } }, "fans": {} }`)
	a := l.Cylinders.Get("A")
	if upright, known := a.Upright.Get(); upright || !known {
		t.Error("false was not read as a statement")
	}
	if relief, known := a.ReliefValve.Get(); relief || known || a.ReliefValve.Known() {
		t.Error("a key that was left out is known")
	}
	if !a.Condition.Known() || a.Condition.Has(DamageNone) {
		t.Error("an empty list is a statement, and holds no word")
	}
	if !l.Fans.Known() || len(l.Fans.All()) != 0 || l.Stoves.Known() || l.Stoves.All() != nil || l.Stoves.Get("x") != nil {
		t.Error("{} and a list that was left out are not told apart")
	}
	if a.Restraint.Present() || !a.Present() || l.Climate.Present() {
		t.Error("Present does not tell what was written")
	}
	if a.Position.Known() {
		t.Error("a cylinder without a place has one")
	}
	if _, _, ok := a.Corners(); ok {
		t.Error("a cylinder without a place has corners")
	}
}

func TestCorners(t *testing.T) {
	l := mustLoad(t, `{ "format": "lowvent-layout/1", "openings": {
		"point": { "at": ["1 m", "2 m", "3 m"] },
		"box": { "box": { "from": ["1 m", "2 m", "0 m"], "to": ["2 m", "2 m", "1 m"] } },
		"both": { "at": ["9 m", "9 m", "9 m"], "box": { "from": ["1 m", "2 m", "0 m"], "to": ["2 m", "2 m", "1 m"] } } } }`)
	for id, want := range map[string][2][3]unit.Length{
		"point": {{1, 2, 3}, {1, 2, 3}}, "box": {{1, 2, 0}, {2, 2, 1}}, "both": {{1, 2, 0}, {2, 2, 1}},
	} {
		from, to, ok := l.Openings.Get(id).Corners()
		for i := range 3 {
			if !ok || from[i].Nominal != want[0][i] || to[i].Nominal != want[1][i] {
				t.Errorf("%s: %v %v %v", id, from, to, ok)
			}
		}
	}
}

func TestSectionsAreSorted(t *testing.T) {
	l := mustLoad(t, `{ "format": "lowvent-layout/1", "stoves": { "b": {}, "a": {}, "B": {}, "a10": {}, "a2": {} } }`)
	var got []string
	for _, s := range l.Stoves.All() {
		got = append(got, s.ID())
	}
	if diff := cmp.Diff([]string{"B", "a", "a10", "a2", "b"}, got); diff != "" {
		t.Error(diff)
	}
}

func TestFind(t *testing.T) {
	l := good(t, pontoon)
	for _, thing := range []interface {
		Item
		Ref() Ref
	}{l.Lockers.Get("side"), l.Lockers.Get("side").Vents.Get("low"), l.Appliances.Get("hob").Burners.Get("left")} {
		if l.Find(thing.Ref()) != Item(thing) {
			t.Errorf("%s is not found under %s", thing.Label(), thing.Ref())
		}
		if thing.Spot().Pointer() != "/"+string(thing.Ref()) {
			t.Errorf("%s stands at %s", thing.Ref(), thing.Spot().Pointer())
		}
	}
	if l.Find("lockers/other") != nil || l.Find(OpenAir) != nil {
		t.Error("found what is not there")
	}
	if r := Ref("lockers/side/vents/low"); r.Section() != "lockers" || r.ID() != "side" || OpenAir.Section() != "open-air" || OpenAir.ID() != "" {
		t.Error("a reference is not taken apart")
	}
}

// shuffled writes the same value with its members in another order.
func shuffled(n *source.Node, r *rand.Rand) string {
	parts := make([]string, len(n.Children))
	for i, child := range n.Children {
		parts[i] = shuffled(child, r)
		if n.Kind == source.Object {
			key, _ := json.Marshal(child.Key)
			parts[i] = string(key) + ":" + parts[i]
		}
	}
	switch n.Kind {
	case source.Object:
		r.Shuffle(len(parts), func(i, j int) { parts[i], parts[j] = parts[j], parts[i] })
		return "{" + strings.Join(parts, ",") + "}"
	case source.Array:
		return "[" + strings.Join(parts, ",") + "]"
	}
	return n.Raw()
}

// TestKeyOrderNeverShows holds that the order of keys changes no value, no
// list and no line tree.
func TestKeyOrderNeverShows(t *testing.T) {
	l := good(t, pontoon)
	want := dump(l)
	rapid.Check(t, func(t *rapid.T) {
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
		other, faults := loadText(shuffled(l.Root(), r))
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		if diff := cmp.Diff(want, dump(other)); diff != "" {
			t.Fatal(diff)
		}
	})
}

// TestLoadingTwiceIsTheSame holds that nothing is kept between loads.
func TestLoadingTwiceIsTheSame(t *testing.T) {
	if diff := cmp.Diff(dump(good(t, cabin)), dump(good(t, cabin))); diff != "" {
		t.Error(diff)
	}
	text := readText(t, malformed+"/many-at-once.json")
	_, first := loadText(text)
	_, second := loadText(text)
	if first.Error() != second.Error() || len(first) < 5 {
		t.Errorf("%v\n%v", first, second)
	}
}

func TestSurveys(t *testing.T) {
	l := good(t, pontoon)
	saloon := l.Spaces.Get("saloon")
	if !saloon.Surveyed.IsComplete(SurveyListFans) || saloon.Surveyed.IsComplete(SurveyListPenetrations) || l.Spaces.Get("float").Surveyed.IsComplete(SurveyListFans) {
		t.Error("a survey is read wrongly")
	}
	if !l.SurveyedBy.Complete.Has(InventoryListStoves) || mustLoad(t, `{ "format": "lowvent-layout/1" }`).SurveyedBy.Complete.Has(InventoryListStoves) {
		t.Error("an inventory is read wrongly")
	}
	seal := l.Lockers.Get("side").SealedFrom.Get("saloon")
	if grounds := seal.Evidence.Get("seal"); grounds.Spot().Pointer() != "/lockers/side/sealedFrom/saloon/evidence/seal" || !grounds.Spot().Written() {
		t.Error("the evidence stands elsewhere")
	}
}

// TestIDForm holds that an id is read as the published pattern has it.
func TestIDForm(t *testing.T) {
	published := regexp.MustCompile(`^` + idForm + `$`)
	rapid.Check(t, func(t *rapid.T) {
		key := rapid.OneOf(rapid.StringMatching(`[A-Za-z0-9_.-]{0,3}`), rapid.StringMatching(`[!-~é]{0,4}`),
			rapid.StringMatching(`[a-z]{62,66}`)).Draw(t, "key")
		if isID(key) != published.MatchString(key) {
			t.Fatalf("%q: %v, as published %v", key, isID(key), !isID(key))
		}
	})
}
