// Package journal keeps what happened: entries that are added and never
// edited or deleted.
//
// An Entry is made where something happened (a terminal, a phone without
// signal) with an id of its own, so that the same entry sent twice is one
// entry, and entries may arrive in any order. A mistake is mended by an entry
// that replaces another; both stay.
//
// The journal that first stores an entry gives it a place in its chain: its
// own name, a number, and the digest of the entry numbered before. Whoever
// holds an export can therefore tell whether anything in it was changed or
// taken out:
//
//	aerosteep export | head -1 | tr -d '\n' | sha256sum
//
// prints the digest that the next entry of the same journal carries as
// "before".
//
// Acknowledged means on disk: Store answers after SQLite has synced. The clock
// and the source of randomness are handed in.
package journal
