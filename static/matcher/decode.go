package matcher

import "fmt"

// Decode reads the fragment of the identify page's address, with or without "#". What
// cannot be read comes back as complaints beside the rest of the query.
func (m *Matcher) Decode(fragment string) (Query, []Complaint, error) {
	var got struct {
		Query      Query       `json:"query"`
		Complaints []Complaint `json:"complaints"`
	}
	if err := m.into(&got, "decodeAddress", m.vm.ToValue(fragment)); err != nil {
		return Query{}, nil, fmt.Errorf("read the address: %w", err)
	}
	return got.Query, got.Complaints, nil
}
