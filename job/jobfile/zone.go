package jobfile

import (
	"bytes"
	"encoding/binary"
	"sync"
	"time"
)

// A browser's engine has no table of time zones: a zone that travelled there is
// made known by name, and read from then on like any other.
var zones sync.Map // name -> *time.Location

// KnowZone makes a zone known that the machine has no table of.
func KnowZone(l *time.Location) { zones.Store(l.String(), l) }

// zoneNamed finds a zone by its IANA name.
func zoneNamed(name string) (*time.Location, error) {
	if l, known := zones.Load(name); known {
		return l.(*time.Location), nil
	}
	return time.LoadLocation(name)
}

// zoneYears is how far a zone that travels reaches to either side.
const zoneYears = 2

// ZoneData is a zone for some years around a moment in the form that
// time.LoadLocationFromTZData reads.
//
// Source: RFC 8536, TZif version 2.
func ZoneData(l *time.Location, around time.Time) []byte {
	from, until := around.AddDate(-zoneYears, 0, 0), around.AddDate(zoneYears, 0, 0)
	changes := []time.Time{from}
	for at := from; at.Before(until); at = at.Add(24 * time.Hour) {
		if next := at.Add(24 * time.Hour); !alikeIn(l, at, next) {
			changes = append(changes, changeBetween(l, at, next))
		}
	}
	return tzif(l, changes)
}

func alikeIn(l *time.Location, a, b time.Time) bool {
	nameA, offsetA := a.In(l).Zone()
	nameB, offsetB := b.In(l).Zone()
	return nameA == nameB && offsetA == offsetB && a.In(l).IsDST() == b.In(l).IsDST()
}

// changeBetween finds the first second after a change of the clock.
func changeBetween(l *time.Location, before, after time.Time) time.Time {
	for after.Unix()-before.Unix() > 1 {
		middle := time.Unix((before.Unix()+after.Unix())/2, 0)
		if alikeIn(l, before, middle) {
			before = middle
		} else {
			after = middle
		}
	}
	return after
}

// tzif writes a block of version 1 that is empty, as RFC 8536 allows, and the one
// of version 2, with one type for each change.
func tzif(l *time.Location, changes []time.Time) []byte {
	var times, kinds, types, names bytes.Buffer
	for i, at := range changes {
		name, offset := at.In(l).Zone()
		_ = binary.Write(&times, binary.BigEndian, at.Unix())
		kinds.WriteByte(byte(i))
		_ = binary.Write(&types, binary.BigEndian, int32(offset))
		dst := byte(0)
		if at.In(l).IsDST() {
			dst = 1
		}
		types.Write([]byte{dst, byte(names.Len())})
		names.WriteString(name + "\x00")
	}
	head := func(n, chars int) []byte {
		var b bytes.Buffer
		b.WriteString("TZif2" + string(make([]byte, 15)))
		_ = binary.Write(&b, binary.BigEndian, []uint32{0, 0, 0, uint32(n), uint32(max(n, 1)), uint32(chars)})
		return b.Bytes()
	}
	var out bytes.Buffer
	out.Write(head(0, 1))
	out.Write(make([]byte, 7)) // one type, one letter
	out.Write(head(len(changes), names.Len()))
	for _, part := range []*bytes.Buffer{&times, &kinds, &types, &names} {
		out.Write(part.Bytes())
	}
	out.WriteString("\n\n")
	return out.Bytes()
}
