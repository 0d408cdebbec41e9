package tables

import (
	"bytes"
	"slices"
)

// The JSON Schema of this folder's files, for editors: it completes keys and words and
// marks most mistakes while somebody types. It is made from the declarations the loader
// reads, so that a new column or table needs no line here. What only Load can see (an id
// used twice, a tab, a range that falls) the schema lets pass; its test lists those rules.

type object = map[string]any

// Schema writes the schema of every file of the set: its tables by name, each row by its
// table's columns, the registry, the list of retired ids and the history. It keeps to draft-07, which
// editors know best.
func Schema(s *Set) []byte {
	defs := object{
		"text": textSchema(), "id": idSchema(),
		"basis":    object{"enum": words(bases)},
		"sources":  listOf(sourceSchema(s)),
		"head":     headSchema(),
		"evidence": object{"allOf": evidenceRules()},
		"faced": object{"if": object{"properties": object{"is": object{"not": object{"enum": []string{"unknown", "none"}}}}, "required": []string{"is"}},
			"then": object{"required": []string{"faces"}}},
		"held":     object{"allOf": facesRules()},
		"read":     readingsSchema(),
		"registry": registrySchema(),
		"retired":  retiredSchema(),
		"history":  historySchema(),
	}
	addMeasured(defs)
	var byName []any
	for _, t := range s.Tables {
		defs["row-"+t.ID] = rowSchema(t)
		byName = append(byName, object{"if": object{"properties": object{"table": object{"const": t.ID}}, "required": []string{"table"}},
			"then": object{"properties": object{"rows": object{"items": ref("row-" + t.ID)}}}})
	}
	table := object{"allOf": append([]any{ref("head")}, byName...)}
	doc := object{
		"$schema": "http://json-schema.org/draft-07/schema#", "title": "Tables of the chart", "type": "object", "definitions": defs,
		"$comment": "Written by capspan schema from the declarations of the tables; do not edit.",
		"if":       object{"required": []string{"sources"}}, "then": ref("registry"),
		"else": object{"if": object{"required": []string{"retired"}}, "then": ref("retired"),
			"else": object{"if": object{"required": []string{"history"}}, "then": ref("history"), "else": table}},
	}
	var b bytes.Buffer
	if err := encode(&b, doc); err != nil {
		panic("internal error: " + err.Error()) // strings, lists and maps only
	}
	return b.Bytes()
}

func ref(name string) object { return object{"$ref": "#/definitions/" + name} }

func listOf(item object) object { return object{"type": "array", "minItems": 1, "items": item} }

// mapping allows the keys of properties and no others.
func mapping(properties object, required ...string) object {
	if required == nil {
		required = []string{}
	}
	return object{"type": "object", "properties": properties, "additionalProperties": false, "required": required}
}

// scalar is what the loader reads as text, whatever YAML takes it for.
var scalar = []string{"string", "number", "boolean"}

func textSchema() object {
	return object{"type": scalar, "pattern": `^[^\p{Cc}\p{Cf}\p{Zl}\p{Zp}]*[^\s\p{Cc}\p{Cf}\p{Zl}\p{Zp}][^\p{Cc}\p{Cf}\p{Zl}\p{Zp}]*$`, "maxLength": shipped.text}
}

// idSchema allows numbers, because 1310 is one to YAML.
func idSchema() object {
	return object{"type": []string{"string", "number"}, "pattern": idShape.String(), "maxLength": longestID, "minimum": 0}
}

// sourceSchema completes the ids of the registry.
func sourceSchema(s *Set) object {
	if len(s.Sources) == 0 {
		return object{"not": object{}}
	}
	var known []string
	for _, source := range s.Sources {
		known = append(known, source.ID)
	}
	return object{"enum": known}
}

func words[W ~string](list []W) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = string(w)
	}
	return out
}

const (
	// The days of each month; which year is a leap year, no pattern says.
	dayPattern   = `^[0-9]{4}-((0[1-9]|1[0-2])-(0[1-9]|1[0-9]|2[0-9])|(0[13-9]|1[0-2])-30|(0[13578]|1[02])-31)$`
	plainDecimal = `(0|[1-9][0-9]*)(\.[0-9]+)?`
	inchFraction = `([1-9][0-9]{0,5} )?[1-9][0-9]{0,2}/(2|4|8|16|32|64|128)`
)

func registrySchema() object {
	properties := object{"id": ref("id"), "kind": object{"enum": sourceKinds}, "date": object{"type": "string", "pattern": dayPattern}}
	for _, key := range sourceKeys {
		if properties[key] == nil {
			properties[key] = ref("text")
		}
	}
	entry := mapping(properties, "id", "kind", "title", "publisher")
	return mapping(object{"sources": object{"type": "array", "items": entry}}, "sources")
}

func retiredSchema() object {
	entry := mapping(object{"id": ref("id"), "to": listOf(ref("text")), "why": ref("text")}, "id", "why")
	return mapping(object{"retired": object{"type": "array", "items": entry}}, "retired")
}

func historySchema() object {
	text := func(keys []string) object {
		properties := object{}
		for _, key := range keys {
			properties[key] = ref("text")
		}
		return properties
	}
	release := text(releaseKeys)
	release["chart"] = object{"type": "string", "pattern": chartName.String()}
	release["from"] = release["chart"]
	release["date"] = object{"type": "string", "pattern": dayPattern}
	release["tables"] = object{"type": "array", "items": ref("text")}
	release["changes"] = object{"type": "array", "items": mapping(text(recordedKeys), "of", "what")}
	return mapping(object{"history": object{"type": "array", "items": mapping(release, releaseNeeds()...)}}, "history")
}

// headSchema is a table without its rows: they hang on its columns.
func headSchema() object {
	columns := object{"type": "object", "minProperties": 1, "additionalProperties": columnSchema(),
		"propertyNames": object{"pattern": idShape.String(), "maxLength": longestID, "not": object{"enum": slices.Concat(rowFirst, rowLast)}}}
	together, kindsOf := object{}, object{}
	for id, kind := range map[string]Kind{holdColumn: Holds, capColumn: Length, acrossColumn: Length} {
		together[id] = []string{holdColumn, capColumn, acrossColumn}
		kindsOf[id] = object{"properties": object{"kind": object{"const": kind}}, "not": object{"required": []string{"range"}}}
	}
	columns["dependencies"], columns["properties"] = together, object{}
	for id, schema := range kindsOf {
		columns["properties"].(object)[id] = object{"allOf": []any{schema, columnSchema()}}
	}
	return mapping(object{
		"table": ref("id"), "title": ref("text"), "about": ref("text"), "cautions": listOf(ref("text")),
		"version": object{"type": "string", "pattern": versionShape.String()},
		"date":    object{"type": "string", "pattern": dayPattern},
		"unit":    object{"enum": words(units)},
		"columns": columns,
		"rows":    object{"type": "array"},
	}, "table", "title", "about", "version", "date", "columns", "rows")
}

// columnSchema is one declaration.
func columnSchema() object {
	limit := object{"anyOf": []any{object{"type": "number", "minimum": 0}, object{"type": "string", "pattern": "^(" + plainDecimal + "|" + inchFraction + ")$"}}}
	all := mapping(object{"label": ref("text"), "kind": object{"enum": words(kinds)}, "unit": object{"enum": words(units)},
		"range": object{"enum": []any{true, "true"}}, "least": limit, "greatest": limit, "method": ref("id"),
		"match": object{"enum": words(matches)}, "below": limit}, "label", "kind")
	var numeric []string
	for _, k := range kinds {
		if k.numeric() {
			numeric = append(numeric, string(k))
		}
	}
	all["if"] = object{"properties": object{"kind": object{"enum": numeric}}}
	all["then"] = object{"required": []string{"least", "greatest"}}
	all["else"] = without("least", "greatest", "range")
	all["allOf"] = matchRules()
	return all
}
