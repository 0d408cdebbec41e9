package tables

import "capspan/build/diag"

// Rule is one thing the tables may not do; each has a golden case of the same name
// in testdata/check.
type Rule struct {
	ID    string
	What  string // what is refused and why, one sentence
	Level diag.Level
}

// rules are in the order in which a reader meets them: the file, the YAML, the keys, the
// words, the numbers, the rows, the chart.
var rules = []Rule{
	{"unreadable", "the folder or a file in it cannot be read from the disk", diag.Error},
	{"no-tables", "no table is in the folder; a site without a chart is not built", diag.Error},
	{"file-size", "a file is larger than 1 MiB, some five thousand rows: split the table, a phone has to load it", diag.Error},
	{"encoding", "a file is not plain UTF-8: it starts with a byte order mark or holds bytes of another encoding", diag.Error},
	{"tab", "a tab is in the file; its width differs from editor to editor, and the columns with it", diag.Error},
	{"control-character", "an invisible character is in the file: control, or one that turns the direction of text so that a reader sees other digits than the program", diag.Error},
	{"bad-yaml", "the file is not YAML, is empty, or holds more than one document", diag.Error},
	{"depth", "lists and mappings are nested deeper than 8", diag.Error},
	{"alias", "an anchor, alias or merge key is used; every value stands where it is read", diag.Error},
	{"tag", "a YAML tag (!…) is used; the column says what a value is", diag.Error},
	{"duplicate-key", "a key is written twice in one mapping", diag.Error},
	{"unknown-key", "a key is not known at this place, or a row has a column its table does not declare", diag.Error},
	{"missing-key", "a key that must be there is not, or a row lacks one of its table's columns", diag.Error},
	{"empty-value", "a value is empty; absence has two words, unknown and none", diag.Error},
	{"wrong-shape", "a list, a mapping or a plain value stands where another of them is expected", diag.Error},
	{"one-line", "a value in braces runs over several lines, or is written as a block; one value, one line", diag.Error},
	{"text-length", "a text is longer than 400 characters, or an id longer than 40", diag.Error},
	{"table-name", "the table's name is not the file's", diag.Error},
	{"bad-version", "a version is not three whole numbers, such as 1.2.0", diag.Error},
	{"bad-date", "a date is not a day of the calendar as YYYY-MM-DD", diag.Error},
	{"bad-column", "a column's declaration does not make sense: its kind or unit is unknown, its limits cross, it cannot hold ranges, or a joint table lacks hold, cap or across", diag.Error},
	{"bad-id", "an id is not made of letters and digits joined by single hyphens or points", diag.Error},
	{"duplicate-id", "an id is used twice in the chart, letter case ignored; a row's address is made of it", diag.Error},
	{"bad-number", "a number is not a plain decimal, a fraction of an inch such as 1 3/16, or a rising range where the column allows one", diag.Error},
	{"implausible", "a number lies outside what its column allows", diag.Error},
	{"unknown-unit", "a unit is not one its column is measured in (in or mm, lbf.ft or N.m), or stands where there is none", diag.Error},
	{"missing-unit", "a reading does not end in its unit; a reading is of nobody's table, and says it itself", diag.Error},
	{"unknown-hold", "the hold is not one of the known words", diag.Error},
	{"unknown-faces", "the faces are not one of the known words", diag.Error},
	{"missing-faces", "a distance across does not say between which faces", diag.Error},
	{"wrong-faces", "the faces do not go with the hold, or stand beside a value that has none", diag.Error},
	{"missing-basis", "a value does not say why it is believed", diag.Error},
	{"unknown-basis", "the basis is not one of the known words", diag.Error},
	{"missing-source", "a published value names no source", diag.Error},
	{"unknown-source", "a source is not in the registry", diag.Error},
	{"senseless-source", "a source or a place in one stands beside a value that does not rest on it", diag.Error},
	{"unknown-tool", "the instrument of a measurement is not one of the known words; its limit of error depends on it", diag.Error},
	{"unknown-condition", "the condition of the measured part is not one of the known words", diag.Error},
	{"missing-readings", "a length is called measured and has neither readings nor a source that tells of the measuring", diag.Error},
	{"not-as-measured", "a value is called measured and lies more than 0.3 mm outside its readings, farther than wear or rust explain", diag.Error},
	{"unknown-kind", "the kind of a source is not one of the known words", diag.Error},
	{"bad-ends", "a row has both ends and measures of its own, or not exactly two ends", diag.Error},
	{"like-nowhere", "an end is like a row that is not in the chart, or one without ends of its own", diag.Error},
	{"like-retired", "an end is like a row that has been retired", diag.Error},
	{"like-conversion", "an end is like a conversion joint, which has two different ends", diag.Error},
	{"like-circle", "ends name one another in a circle", diag.Error},
	{"twin-nowhere", "a twin is not in the chart, or is the row itself", diag.Error},
	{"impossible-twins", "twins differ in hold, or by more than a caliper and the printed digits could hide", diag.Error},
	{"one-sided-twins", "a row names a twin that does not name it back", diag.Warning},
	{"unnamed-twins", "two rows are one size to a caliper and do not name each other as twins", diag.Warning},
	{"retired-in-use", "a retired id is still, or again, a row of the chart", diag.Error},
	{"retired-nowhere", "a retired id leads to a row that is not in the chart", diag.Error},
	{"too-many-rows", "the chart has more than 200,000 rows, beyond what the site was measured with", diag.Error},
}

// levels answers for one rule; a rule that is not listed is a fault of ours.
var levels = func() map[string]diag.Level {
	m := map[string]diag.Level{}
	for _, r := range rules {
		m[r.ID] = r.Level
	}
	return m
}()
