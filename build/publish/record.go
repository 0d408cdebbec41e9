package publish

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io/fs"
)

// recordName is the object that tells what in a bucket is ours. It lies beside the site
// and names nothing that the site does not.
const recordName = ".capspan-site.json"

const recordHead = "Written by capspan publish, which removes a file of this list once the site no longer has it."

// record is what a publish put, or was about to.
type record struct {
	About string           `json:"about"`
	Whole bool             `json:"whole"` // the last publish came to its end
	Files map[string]entry `json:"files"`
}

// entry is what an object is, if the listing shows that sum for it. An entry without a
// type belongs to an object that is ours and whose fields nobody knows.
type entry struct {
	MD5      string `json:"md5,omitempty"`
	ETag     string `json:"etag,omitempty"` // what the store lists, when that is another sum
	Type     string `json:"type,omitempty"`
	Caching  string `json:"caching,omitempty"`
	Encoding string `json:"encoding,omitempty"`
}

// listed is the entity tag the listing shows for the object.
func (e entry) listed() string {
	if e.ETag != "" {
		return e.ETag
	}
	return e.MD5
}

// same compares all but what the store made of it.
func (e entry) same(other entry) bool {
	e.ETag, other.ETag = "", ""
	return e == other
}

func readRecord(text []byte) (record, error) {
	var r record
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&r); err != nil || r.About != recordHead || r.Files == nil {
		return r, fmt.Errorf("%s there is no list of ours; look who wrote it, then remove it and publish with --force", recordName)
	}
	for name := range r.Files {
		// A line that somebody bent must not lead out of the place.
		if !fs.ValidPath(name) || name == "." || name == recordName {
			return r, fmt.Errorf("%s: %q is no path of a published file; remove the list and publish with --force", recordName, name)
		}
	}
	return r, nil
}

// text is the record as it lies in the bucket: equal records are equal bytes.
func (r record) text() []byte {
	r.About = recordHead
	text, err := json.MarshalIndent(r, "", " ")
	if err != nil {
		panic("internal error: " + err.Error()) // strings and a bool
	}
	return append(text, '\n')
}
