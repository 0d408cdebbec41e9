package tables

// measuredName is the definition that a column's measurements keep to: cap and across of
// joints say the condition of the part, an across its faces too.
func measuredName(c Column, joint bool) string {
	if worn(c, joint) {
		return "measured-" + c.ID
	}
	return "measured"
}

// addMeasured adds those definitions. Of readings a schema sees the form only: they are
// texts, with their unit.
func addMeasured(defs object) {
	inches, millimetres := "("+plainDecimal+"|"+inchFraction+") "+string(Inch), plainDecimal+" "+string(Millimetre)
	all := object{
		"readings":  listOf(object{"type": "string", "pattern": "^(" + inches + "|" + millimetres + ")$"}),
		"tool":      object{"enum": tools},
		"condition": object{"enum": conditions},
		"faces":     object{"enum": faces},
		"on":        object{"type": "string", "pattern": dayPattern},
		"by":        ref("id"),
	}
	for _, id := range []string{"", capColumn, acrossColumn} {
		c, some := Column{ID: id}, object{}
		for _, key := range measuredKeys(c, true) {
			some[key] = all[key]
		}
		defs[measuredName(c, true)] = listOf(mapping(some, "readings", "tool"))
	}
}

// readingsSchema asks of a length that is called measured for its readings, or for the
// source that tells of them.
func readingsSchema() object {
	absent := []string{"unknown", "none"}
	return object{
		"if":   object{"properties": object{"basis": object{"const": Measured}, "is": object{"not": object{"enum": absent}}}, "required": []string{"is", "basis"}},
		"then": object{"anyOf": []any{object{"required": []string{"measured"}}, object{"required": []string{"source"}}}}}
}
