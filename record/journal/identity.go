package journal

import (
	"encoding/binary"
	"encoding/hex"
	"fmt"
	"io"
	"regexp"
	"sync"
	"time"
)

// Maker makes the ids of entries: UUIDs of version 7 (RFC 9562 section 5.7),
// which begin with the time and so sort in the order of making. Within one
// millisecond a counter of 12 bits keeps the order (section 6.2, method 1).
type Maker struct {
	now    func() time.Time
	random io.Reader

	mu      sync.Mutex
	millis  int64
	counter uint16
}

// NewMaker makes ids from a clock and a source of randomness.
func NewMaker(now func() time.Time, random io.Reader) *Maker {
	return &Maker{now: now, random: random}
}

// New is the next id.
func (m *Maker) New() (string, error) {
	var raw [16]byte
	if _, err := io.ReadFull(m.random, raw[:]); err != nil {
		return "", fmt.Errorf("no randomness for an id: %w", err)
	}
	millis, counter := m.tick(binary.BigEndian.Uint16(raw[6:8]))
	binary.BigEndian.PutUint64(raw[:8], uint64(millis)<<16|uint64(counter))
	raw[6] = raw[6]&0x0f | 0x70 // version 7
	raw[8] = raw[8]&0x3f | 0x80 // variant of RFC 9562
	return written(raw), nil
}

// tick answers the millisecond and the counter within it. The counter starts
// in the lower half of its range, and a full one borrows from the next
// millisecond, so that ids never run backwards, whatever the clock does.
func (m *Maker) tick(random uint16) (int64, uint16) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if now := m.now().UnixMilli(); now > m.millis {
		m.millis, m.counter = now, random&0x07ff
		return m.millis, m.counter
	}
	if m.counter++; m.counter > 0x0fff {
		m.millis, m.counter = m.millis+1, random&0x07ff
	}
	return m.millis, m.counter
}

func written(raw [16]byte) string {
	h := hex.EncodeToString(raw[:])
	return h[:8] + "-" + h[8:12] + "-" + h[12:16] + "-" + h[16:20] + "-" + h[20:]
}

// deviceName is the name of a place where entries are made: a prefix and four
// letters, never the name of the machine.
func deviceName(prefix string, random io.Reader) (string, error) {
	var raw [4]byte
	if _, err := io.ReadFull(random, raw[:]); err != nil {
		return "", err
	}
	for i := range raw {
		raw[i] = 'a' + raw[i]%26
	}
	return prefix + "-" + string(raw[:]), nil
}

var uuidForm = regexp.MustCompile(`^[0-9a-f]{8}-[0-9a-f]{4}-([0-9a-f])[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$`)

func isUUID(text string) bool { return uuidForm.MatchString(text) }

func isUUIDv7(text string) bool {
	parts := uuidForm.FindStringSubmatch(text)
	return parts != nil && parts[1] == "7"
}
