package words

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"go.yaml.in/yaml/v4"
)

// Begin makes of a file of English words that of another language, with every phrase of it
// still to be said: what it is of is filled in, and what it is is empty.
func Begin(english []byte) ([]byte, error) {
	var root yaml.Node
	if err := yaml.Unmarshal(english, &root); err != nil {
		return nil, err
	}
	if root.Kind != yaml.DocumentNode || root.Content[0].Kind != yaml.MappingNode {
		return nil, fmt.Errorf("the file holds no phrases")
	}
	var b bytes.Buffer
	phrases := root.Content[0].Content
	for i := 0; i+1 < len(phrases); i += 2 {
		name, value := phrases[i], phrases[i+1]
		if name.HeadComment != "" {
			fmt.Fprintln(&b, name.HeadComment)
		}
		is := `""`
		if value.Kind == yaml.MappingNode {
			var forms []string
			for j := 0; j < len(value.Content); j += 2 {
				forms = append(forms, value.Content[j].Value+`: ""`)
			}
			is = "{" + strings.Join(forms, ", ") + "}"
		}
		fmt.Fprintf(&b, "%s: {of: %s, is: %s}\n", name.Value, Quoted(said(value)), is)
	}
	return b.Bytes(), nil
}

// Quoted writes a text as YAML takes it in double quotes.
func Quoted(text string) string {
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(text); err != nil {
		panic("internal error: " + err.Error()) // a string can be written
	}
	return strings.TrimSpace(b.String())
}
