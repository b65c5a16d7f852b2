package layout

import (
	"fmt"
	"reflect"
)

// visitValues calls visit for every Given, Measure and Words below an object
// of the contract, and into for every list and object, written or not.
func visitValues(v reflect.Value, visit func(Stated, reflect.Value), into func(spot *Spot, known bool)) {
	for _, f := range shapeOf(v.Type()).fields {
		part := v.FieldByIndex(f.index)
		switch held := part.Addr().Interface().(type) {
		case Stated:
			visit(held, part.Addr().MethodByName("Get").Call(nil)[0])
		case interface{ base() *Object }:
			into(held.base().Spot(), held.base().Present())
			visitValues(part, visit, into)
		case interface {
			element() reflect.Type
			Known() bool
			Spot() *Spot
		}:
			into(held.Spot(), held.Known())
			items := part.Addr().MethodByName("All").Call(nil)[0]
			for i := range items.Len() {
				if thing, ok := items.Index(i).Interface().(interface{ base() *Object }); ok {
					into(thing.base().Spot(), thing.base().Present())
				}
				visitValues(items.Index(i).Elem(), visit, into)
			}
		}
	}
}

// dump spells out all that a layout states, by pointer, without its places.
func dump(l *Layout) map[string]string {
	out := map[string]string{}
	visit := func(s Stated, value reflect.Value) {
		if s.Known() {
			e := s.Evidence()
			out[s.Spot().Pointer()] = fmt.Sprintf("%v [%s %s]", value.Interface(), e.Basis, e.By)
		}
	}
	visitValues(reflect.ValueOf(l).Elem(), visit, func(spot *Spot, known bool) {
		if known {
			out[spot.Pointer()] = "present"
		}
	})
	for ref, thing := range l.byRef {
		line := func(lines []*Line) (ids []string) {
			for _, one := range lines {
				ids = append(ids, one.ID())
			}
			return ids
		}
		out["ref "+string(ref)] = fmt.Sprintf("%s fed by %v, leads to %v", thing.Label(), line(l.FedBy(ref)), line(l.LeadsTo(ref)))
	}
	return out
}
