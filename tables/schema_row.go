package tables

import (
	"encoding/json"
	"math/big"
	"slices"
)

// rowSchema is an entry of a table: what each of its columns allows, and, of joints, how
// hold, faces and ends go together.
func rowSchema(t *Table) object {
	properties := object{"id": ref("id"), "also": listOf(ref("text")), "twins": listOf(ref("text")), "note": ref("text")}
	var plain, conversion []string
	for _, c := range t.Columns {
		place := "row-" + t.ID + "/properties/" + c.ID
		if t.Joint() && c.ID == acrossColumn {
			place += "/allOf/0"
			properties[c.ID] = object{"allOf": []any{cellSchema(c, true, place), ref("faced")}}
		} else {
			properties[c.ID] = cellSchema(c, t.Joint(), place)
		}
		plain = append(plain, c.ID)
		if !jointColumn(c) {
			conversion = append(conversion, c.ID)
		}
	}
	if !t.Joint() {
		return mapping(properties, append([]string{"id"}, plain...)...)
	}
	for key, schema := range evidenceSchema() {
		properties[key] = schema
	}
	end := mapping(object{"like": ref("text")}, "like")
	properties["ends"] = object{"type": "array", "minItems": 2, "maxItems": 2, "items": end}
	row := mapping(properties, "id")
	row["if"] = object{"required": []string{"ends"}}
	row["then"] = object{"required": append([]string{"basis"}, conversion...), "allOf": []any{ref("evidence"), without(holdColumn, capColumn, acrossColumn)}}
	row["else"] = object{"required": plain, "allOf": []any{ref("held"), without("basis", "source", "at")}}
	return row
}

// without forbids keys.
func without(keys ...string) object {
	var present []any
	for _, key := range keys {
		present = append(present, object{"required": []string{key}})
	}
	return object{"not": object{"anyOf": present}}
}

// facesRules are the faces that go with each hold.
func facesRules() []any {
	var rules []any
	for _, hold := range holds {
		if allowed := facesOf[hold]; allowed != nil {
			rules = append(rules, object{
				"if":   object{"properties": object{holdColumn: object{"properties": object{"is": object{"const": hold}}, "required": []string{"is"}}}, "required": []string{holdColumn}},
				"then": object{"properties": object{acrossColumn: object{"properties": object{"faces": object{"enum": append(words(allowed), string(UnknownFaces))}}}}}})
		}
	}
	return rules
}

func evidenceSchema() object {
	return object{"basis": ref("basis"), "source": ref("sources"), "at": ref("text")}
}

// evidenceRules are those of the loader's evidence.
func evidenceRules() []any {
	has := func(key string) object { return object{"required": []string{key}} }
	return []any{
		object{"if": object{"properties": object{"basis": object{"const": Published}}, "required": []string{"basis"}}, "then": has("source")},
		object{"if": has("source"), "then": object{"required": []string{"basis"}, "properties": object{"basis": object{"enum": []Basis{Published, Measured}}}}},
		object{"if": has("at"), "then": has("source")},
	}
}

// cellSchema is a value of a column. What else is printed stands in others and is a value
// of the same column, which place names, without others of its own. An across must say its
// faces; among others it may.
func cellSchema(c Column, joint bool, place string) object {
	across := joint && c.ID == acrossColumn
	absent := []string{string(UnknownHold), "none"}
	if c.Kind == Holds {
		absent = absent[:1]
	}
	given := object{"properties": object{"is": object{"not": object{"enum": absent}}}, "required": []string{"is"}}
	properties := evidenceSchema()
	properties["is"] = object{}
	if allowed := unitsOf(c.Kind); allowed != nil {
		properties["unit"] = object{"enum": allowed}
	}
	rules := append([]any{ref("evidence")}, figureRules(c, absent)...)
	rules = append(rules, object{"if": given, "then": object{"required": []string{"basis"}}})
	if across {
		properties["faces"], properties["faces-basis"] = object{"enum": faces}, ref("basis")
		rules = append(rules, object{"if": object{"properties": object{"is": object{"const": "none"}}, "required": []string{"is"}}, "then": without("faces")})
	}
	properties["others"] = listOf(object{"allOf": []any{ref(place), given, without("others", "measured")}})
	if c.Kind == Length {
		properties["measured"] = ref(measuredName(c, joint))
		rules = append(rules, ref("read"))
	}
	cell := mapping(properties, "is")
	cell["allOf"] = rules
	return cell
}

// figureRules say what is may be, in the unit that stands beside it.
func figureRules(c Column, absent []string) []any {
	is := func(schema object) object { return object{"properties": object{"is": schema}} }
	switch c.Kind {
	case Holds:
		return []any{is(object{"enum": holds})}
	case Text:
		return []any{is(ref("text"))}
	}
	allowed := unitsOf(c.Kind)
	if allowed == nil {
		return []any{is(figureSchema(c, NoUnit, absent))}
	}
	other := allowed[1-slices.Index(allowed, c.Unit)]
	return []any{object{
		"if":   object{"properties": object{"unit": object{"const": other}}, "required": []string{"unit"}},
		"then": is(figureSchema(c, other, absent)), "else": is(figureSchema(c, c.Unit, absent))}}
}

// figureSchema is a number within the column's limits, in a unit. A text has no limits in
// a schema: of fractions, ranges and quoted numbers only the form is checked.
func figureSchema(c Column, unit Unit, absent []string) object {
	form := plainDecimal
	if c.Kind == Count {
		form = `(0|[1-9][0-9]*)(\.0+)?`
	}
	if unit == Inch && c.Kind == Length {
		form += "|" + inchFraction
	}
	if c.Range {
		form += "|" + plainDecimal + "-" + plainDecimal
	}
	kind := "number"
	if c.Kind == Count {
		kind = "integer"
	}
	return object{"anyOf": []any{
		object{"enum": absent},
		object{"type": kind, "minimum": limitIn(c.Least, unit, false), "maximum": limitIn(c.Greatest, unit, true)},
		object{"type": "string", "pattern": "^(" + form + ")$"},
	}}
}

// limitIn is a limit in another unit, rounded outwards where it has no end.
func limitIn(q Quantity, unit Unit, up bool) any {
	if q.Unit == unit || unit == NoUnit {
		return json.Number(q.Decimal())
	}
	factor := toSI(big.NewRat(1, 1), unit)
	v := new(big.Rat).Quo(q.si(), factor)
	const digits = 6
	text := v.FloatString(digits)
	rounded, _ := new(big.Rat).SetString(text)
	step := big.NewRat(1, 1_000_000)
	switch {
	case up && rounded.Cmp(v) < 0:
		rounded.Add(rounded, step)
	case !up && rounded.Cmp(v) > 0:
		rounded.Sub(rounded, step)
	}
	return json.Number(exact(rounded))
}
