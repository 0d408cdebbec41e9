package tables

import "bytes"

// OverlaySchema is the JSON Schema of a keeper's overlays, for editors: it completes the ids
// of the chart, the columns that the overlays declare and the words of choices. It keeps to
// draft-07, as [Schema] does; what only [LoadOverlay] sees it lets pass.
func OverlaySchema(set *Set, o *Overlay) []byte {
	rows, said := object{}, object{}
	if o != nil {
		for _, c := range o.Columns {
			said[c.ID] = ownValueSchema(c)
		}
	}
	row := object{"type": "object", "minProperties": 1, "properties": said, "additionalProperties": ref("text")}
	for r := range set.rows() {
		rows[r.ID] = ref("row")
	}
	column := mapping(object{"label": ref("text"), "kind": object{"enum": words(ownKinds)}, "unit": ref("text"),
		"words": listOf(ref("text")), "find": object{"enum": []any{true, "true"}}}, "label", "kind")
	column["if"] = object{"properties": object{"kind": object{"const": OwnChoice}}}
	column["then"] = object{"required": []string{"words"}}
	column["else"] = without("words")
	doc := mapping(object{
		"overlay": ref("id"),
		"columns": object{"type": "object", "minProperties": 1, "additionalProperties": column,
			"propertyNames": object{"pattern": idShape.String(), "maxLength": longestID}},
		"rows": object{"type": "object", "minProperties": 1, "properties": rows, "additionalProperties": false},
	}, overlayKeys...)
	doc["$schema"], doc["title"] = "http://json-schema.org/draft-07/schema#", "What a keeper adds to rows of the chart"
	doc["$comment"] = "Written by capspan schema from the chart and the overlays; do not edit."
	doc["definitions"] = object{"text": textSchema(), "id": idSchema(), "row": row}
	var b bytes.Buffer
	if err := encode(&b, doc); err != nil {
		panic("internal error: " + err.Error()) // strings, lists and maps only
	}
	return b.Bytes()
}

func ownValueSchema(c *OwnColumn) object {
	switch c.Kind {
	case OwnNumber:
		return object{"anyOf": []any{object{"type": "number", "minimum": 0}, object{"type": "string", "pattern": "^" + plainDecimal + "$"}}}
	case OwnChoice:
		all := []any{}
		for _, w := range c.Words {
			all = append(all, w)
			if plain, is := map[string]any{"true": true, "false": false}[w]; is {
				all = append(all, plain)
			}
		}
		return object{"enum": all}
	}
	return ref("text")
}
