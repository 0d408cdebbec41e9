package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"capspan/build"
	"capspan/build/diag"
	"capspan/static/matcher"
)

type identifyVerb struct {
	rootFlag
	languageFlag
	Hold   string   `placeholder:"WORD" help:"How the end is held: outside-clip, inside-clip, plate, strap, wing, injected, staked or unknown."`
	Faces  string   `placeholder:"WORD" help:"Between which faces the across was measured: over-caps, groove-inner, groove-outer, under-plates, hole-centres, wing-outer or unknown. Left out: those that go with the hold."`
	Taken  string   `placeholder:"WORD" help:"joint (unless given), or yoke: --cap is then a bore, --across the distance its hold has on the yoke."`
	Cap    []string `sep:";" placeholder:"READING" help:"Outside diameter of a cap, such as '1.062 in', '27,00 mm' or '1 1/16'; again for each reading, or several with ; between."`
	Across []string `sep:";" placeholder:"READING" help:"The distance across the end, likewise."`
	Clip   []string `sep:";" placeholder:"READING" help:"Beside a bare yoke only: the thickness of one of its clips, likewise. Left out: within the ranges makers print."`

	Hold2   string   `name:"hold2" placeholder:"WORD" group:"The other end, when the two differ:" help:"As above, for the other pair of caps."`
	Faces2  string   `name:"faces2" placeholder:"WORD" group:"The other end, when the two differ:" help:" "`
	Taken2  string   `name:"taken2" placeholder:"WORD" group:"The other end, when the two differ:" help:" "`
	Cap2    []string `name:"cap2" sep:";" placeholder:"READING" group:"The other end, when the two differ:" help:" "`
	Across2 []string `name:"across2" sep:";" placeholder:"READING" group:"The other end, when the two differ:" help:" "`
	Clip2   []string `name:"clip2" sep:";" placeholder:"READING" group:"The other end, when the two differ:" help:" "`

	Part         string   `placeholder:"TABLE" group:"A spline, a flange or another part:" help:"The table to look in, such as pto-shafts or flanges-male; --read then takes the place of --cap and --across."`
	Read         []string `sep:";" placeholder:"COLUMN=READING" group:"A spline, a flange or another part:" help:"A count or a reading of a column, such as 'splines=6' or 'diameter=34.80 mm'; again for each reading."`
	Between      string   `placeholder:"WORD" group:"A spline, a flange or another part:" help:"From which hole to which a bolt circle was measured: next (unless given) or farthest."`
	Edges        string   `placeholder:"WORD" group:"A spline, a flange or another part:" help:"Between which edges: outer (unless given), inner, same or centres."`
	HoleDiameter []string `name:"hole-diameter" sep:";" placeholder:"READING" group:"A spline, a flange or another part:" help:"The diameter of a hole, where outer or inner edges were measured."`

	Unit      string `placeholder:"in|mm" help:"The unit of readings written without one."`
	Tool      string `placeholder:"WORD" help:"digital-caliper (unless given), dial-caliper, vernier-caliper, vernier-caliper-coarse, micrometer, steel-rule or tape."`
	Condition string `placeholder:"WORD" help:"new, used (unless given), worn or rusted."`
	JSON      bool   `name:"json" help:"Print the answer as JSON."`
	Quiet     bool   `short:"q" help:"Print the verdict only."`
	Query     string `arg:"" optional:"" name:"query" help:"A dash here reads the query as JSON from standard input, in place of the flags above. The address of an identification is read too, and then what has changed in the chart since it was made is told."`
}

// Help is shown below the one-line help.
func (identifyVerb) Help() string {
	return `Uses the chart in the program unless --root names a folder. Any verdict, also
"in no row" and "measure again", is an answer and exits with 0; readings that
cannot be read exit with 2.

Examples:
  capspan identify --hold outside-clip --cap '1.060 in' --cap '1.061 in' \
                   --across '3.226 in; 3.221 in; 3.222 in'
  capspan identify --hold inside-clip --faces groove-outer --unit mm \
                   --cap 27.00 --across 81.80 --tool vernier-caliper
  capspan identify --hold outside-clip --cap '1.062 in' --across '3.22 in' \
                   --hold2 inside-clip --cap2 '1.125 in' --across2 '3.62 in'
  capspan identify --taken yoke --hold outside-clip --cap '27.02 mm' \
                   --across '84.73 mm' --clip '1.50 mm'
  capspan identify --part pto-shafts --read splines=6 --read 'diameter=34.80 mm'
  capspan identify --part flanges-male --unit mm --read holes=8 \
                   --read circle=48.84 --read circle=48.85 \
                   --hole-diameter 10.0 --read pilot=75.02
  capspan identify 'https://example.org/identify/#hold=strap&cap=1.188in'
  echo '{"ends": [{"hold": "strap", "cap": ["1.188 in"], "across": ["3.62 in"]}]}' |
      capspan identify --json -`
}

// Run answers one query.
func (v *identifyVerb) Run(t *terminal) error {
	src, _, err := v.sources(false)
	if err != nil {
		return err
	}
	src, in, err := v.speaking(t, src)
	if err != nil {
		return err
	}
	q, err := v.asked(t.in)
	if err != nil {
		return err
	}
	if q.part != "" {
		return v.runPart(t, src, in, q)
	}
	m, problems := identifier(t, src)
	if problems.Blocked() {
		return printed(t, problems)
	}
	made := ""
	if q.address != "" {
		if made, err = q.decode(m.Matcher); err != nil {
			return err
		}
	}
	answer, err := m.Identify(q.query)
	if err != nil {
		return err
	}
	since, err := told(made, func() (matcher.Since, error) { return m.ChangedSince(made, answer) })
	if err != nil {
		return err
	}
	var refs []string
	for _, size := range answer.Sizes {
		refs = append(refs, size.Rows...)
	}
	own, problems := build.Counter(src, refs)
	if problems.Blocked() {
		return printed(t, problems)
	}
	whole := struct {
		matcher.Answer
		Since *matcher.Since   `json:"since,omitempty"`
		Own   []build.OwnWords `json:"own,omitempty"`
	}{answer, since, own}
	silent := len(answer.Complaints) > 0 && (v.Quiet || len(answer.Slips) == 0) // told below; there is no verdict to print
	if err := v.print(t, whole, answer.Verdict, silent, func() error { return printAnswer(t.out, in, answer, since, own) }); err != nil {
		return err
	}
	if len(answer.Complaints) > 0 {
		return misuse("%s", complaints(answer.Complaints, q.name))
	}
	return nil
}

// slow is how long somebody waits without asking why.
const slow = time.Second

// identifier is the core with the chart. What it makes of a chart that takes time is kept
// among the person's own files, and where it took long, they are told that it is for once.
func identifier(t *terminal, src build.Sources) (*build.Identifier, diag.List) {
	folder, err := os.UserCacheDir()
	if err == nil {
		folder = filepath.Join(folder, "capspan")
	}
	sparingly(400) // a third less, for half as much memory again
	start := time.Now()
	m, problems := build.NewIdentifier(src, folder)
	if took := time.Since(start); m.Kept && took > slow {
		fmt.Fprintf(t.err, "Reading this chart took %.1f s. It is kept in %s, and the next question is quicker.\n", took.Seconds(), folder)
	}
	return m, problems
}

// print writes an answer as it was asked for: whole as JSON, the verdict alone, or in words.
func (v *identifyVerb) print(t *terminal, whole any, verdict matcher.Verdict, silent bool, words func() error) error {
	switch {
	case v.JSON:
		return printJSON(t.out, whole)
	case silent:
		return nil
	case v.Quiet:
		_, err := fmt.Fprintln(t.out, verdict)
		return err
	}
	return words()
}

// printed puts problems of the sources on standard error.
func printed(t *terminal, problems diag.List) error {
	if err := problems.Print(t.err); err != nil {
		return err
	}
	return problemsFound
}

// asked is what flags, standard input or an address ask for.
type asked struct {
	query   matcher.Query
	name    func(matcher.Complaint) string // names a place in what was read
	address string                         // what stands behind the # of an address
	part    string                         // the table, when it is no joint
	parts   matcher.PartQuery
}

// asked reads flags, standard input or an address.
func (v *identifyVerb) asked(in io.Reader) (asked, error) {
	first := matcher.QueryEnd{Hold: matcher.Hold(v.Hold), Faces: matcher.Faces(v.Faces), Taken: v.Taken, Cap: trim(v.Cap), Across: trim(v.Across), Clip: trim(v.Clip)}
	second := matcher.QueryEnd{Hold: matcher.Hold(v.Hold2), Faces: matcher.Faces(v.Faces2), Taken: v.Taken2, Cap: trim(v.Cap2), Across: trim(v.Across2), Clip: trim(v.Clip2)}
	empty := func(e matcher.QueryEnd) bool {
		return e.Hold == "" && e.Faces == "" && e.Taken == "" && len(e.Cap)+len(e.Across)+len(e.Clip) == 0
	}
	joint := !empty(first) || !empty(second)
	part := v.Between+v.Edges != "" || len(v.Read)+len(v.HoleDiameter) > 0
	switch {
	case joint && (part || v.Part != ""):
		return asked{}, misuse("flags of a joint and of a part at once\n    hint: ask for one at a time")
	case part && v.Part == "":
		return asked{}, misuse("which table?\n    hint: name it, such as --part pto-shafts")
	}
	if v.Query != "" {
		if v.Query != "-" {
			q, err := v.address()
			if err == nil && (joint || part || v.Unit+v.Tool+v.Condition != "") {
				err = misuse("flags and an address at once\n    hint: the address says everything; leave the flags out")
			}
			return q, err
		}
		if joint || part || v.Unit+v.Tool+v.Condition != "" {
			return asked{}, misuse("flags and a query on standard input at once\n    hint: write everything into the query, or leave the dash out")
		}
		if v.Part != "" {
			return v.partJSON(in)
		}
		text, err := io.ReadAll(io.LimitReader(in, matcher.MaxQuery+1))
		if err != nil {
			return asked{}, fmt.Errorf("read the query: %w", err)
		}
		query, err := matcher.DecodeQuery(text)
		if err != nil {
			return asked{}, misuse("%v\n    hint: capspan identify --help shows a query", err)
		}
		return asked{query: query, name: nameInJSON}, nil
	}
	if v.Part != "" {
		return v.partFlags()
	}
	query := matcher.Query{Ends: []matcher.QueryEnd{first}, Unit: matcher.Unit(v.Unit),
		Tool: matcher.Tool(v.Tool), Condition: matcher.Condition(v.Condition)}
	if !empty(second) {
		query.Ends = append(query.Ends, second)
	}
	readings := 0
	for i := range query.Ends {
		e := &query.Ends[i]
		readings += len(e.Cap) + len(e.Across)
		if e.Hold == "" {
			e.Hold = "unknown"
		}
	}
	if readings == 0 {
		return asked{}, misuse("there is no reading\n    hint: give --cap and --across, such as capspan identify --hold outside-clip --cap '1.062 in' --across '3.22 in'")
	}
	return asked{query: query, name: nameInFlags}, nil
}

func trim(readings []string) []string {
	for i := range readings {
		readings[i] = strings.TrimSpace(readings[i])
	}
	return readings
}

func nameInJSON(c matcher.Complaint) string {
	if c.Quantity == "query" {
		return "query"
	}
	return fmt.Sprintf("ends[%d].%s[%d]", c.End, c.Quantity, c.Index)
}

func nameInFlags(c matcher.Complaint) string {
	if c.Quantity == "query" {
		return "flags"
	}
	number := ""
	if c.End > 0 {
		number = "2"
	}
	return fmt.Sprintf("--%s%s, reading %d", c.Quantity, number, c.Index+1)
}

// complaints lists what could not be read, each with its place; the core's own words
// say what to write instead.
func complaints(list []matcher.Complaint, name func(matcher.Complaint) string) string {
	lines := make([]string, len(list))
	for i, c := range list {
		lines[i] = fmt.Sprintf("%s: %s", name(c), c.Says)
	}
	return strings.Join(lines, "\ncapspan: ")
}
