package tables

import (
	"encoding/json"
	"io"
	"maps"
	"runtime"
	"strings"
	"sync"
)

// What the chart's hash is made of is its JSON on one line, without version, date and what
// was reckoned. The rows are written by hand (row_json.go); all else is left to
// encoding/json.

// writeCanonical writes what the chart says.
func (s *Set) writeCanonical(w io.Writer) error {
	io.WriteString(w, `{"tables":[`)
	for n, rows := range s.canonicalTables() {
		head, tail := tableHead(s.Tables[n])
		if n > 0 {
			head = "," + head
		}
		io.WriteString(w, head)
		w.Write(<-rows)
		io.WriteString(w, tail)
	}
	rest := chartJSON{Sources: []sourceJSON{}, Retired: []retiredJSON{}}
	rest.besides(s)
	text, err := json.Marshal(rest)
	if err != nil {
		return err
	}
	_, after, _ := strings.Cut(string(text), `"tables":null`)
	_, err = io.WriteString(w, "]"+after+"\n")
	return err
}

// canonicalTables writes the rows of all tables, several tables at a time and not many more
// than there are cores; each is ready when it can be received.
func (s *Set) canonicalTables() []<-chan []byte {
	ready := make([]<-chan []byte, len(s.Tables))
	turn := make(chan struct{}, runtime.GOMAXPROCS(0))
	for n, t := range s.Tables {
		one := make(chan []byte)
		ready[n] = one
		go func() {
			turn <- struct{}{}
			rows := s.memory.rows(t)
			<-turn
			one <- rows
		}()
	}
	return ready
}

// tableHead is what stands before and behind the rows of a table.
func tableHead(t *Table) (before, behind string) {
	text, err := json.Marshal(headOf(t))
	if err != nil {
		panic("internal error: " + err.Error()) // strings and lists only
	}
	before, found := strings.CutSuffix(string(text), "]}")
	if !found {
		panic("internal error: the rows are not last")
	}
	return before, "]}"
}

// setMemory is what was made of the tables of a set that is loaded again and again, by their
// ids. Nil remembers nothing.
type setMemory struct {
	mu     sync.Mutex
	tables map[string]*pieces // what they write for the hash
	rich   map[string]richRow
}

// forget lets go of tables whose files are not there.
func (m *setMemory) forget(there map[string]bool) {
	m.mu.Lock()
	defer m.mu.Unlock()
	maps.DeleteFunc(m.tables, func(id string, _ *pieces) bool { return !there[id+".yaml"] })
	maps.DeleteFunc(m.rich, func(id string, _ richRow) bool { return !there[id+".yaml"] })
}

// rows writes those of a table, each behind the one before.
func (m *setMemory) rows(t *Table) []byte {
	w := newRowWriter(t, false, 0)
	one := func(b []byte, row *Row) []byte {
		w.b = b
		w.row(row)
		return w.b
	}
	if m == nil {
		text, _ := (*pieces)(nil).write(make([]byte, 0, 2*len(t.source)+1024), t.Rows, 1, one)
		return text
	}
	m.mu.Lock()
	before := m.tables[t.ID]
	m.mu.Unlock()
	made := before.same(t.Rows)
	if made == nil {
		var text []byte
		text, made = before.write(make([]byte, 0, before.size(2*len(t.source))), t.Rows, 1, one)
		made.text = text
	}
	m.mu.Lock()
	if m.tables == nil {
		m.tables = map[string]*pieces{}
	}
	m.tables[t.ID] = made
	m.mu.Unlock()
	return made.text
}
