package templates

import (
	"errors"
	"fmt"
	"html/template"
	"slices"
	"strconv"
	"strings"
	"text/template/parse"

	"capspan/build/diag"
	"capspan/templates/words"
)

// How a template says the words of the catalogue:
//
//	{{word "joint.also" "names" .Also}}        text, also in an attribute
//	{{prose "search.without" "list" (at "/a-z/")}}   text with links and words that matter
//
// Values come after their names; (part "num" .Version) is one that a template of that
// name shows. Where such a call stands by itself it is put into the template's tree when
// the templates are parsed: the words become text of the template, and each value an
// action of its own, which html/template escapes by where it stands. So words cost nothing
// when a page is rendered, and none of them is trusted as markup.

// speaker puts words into parsed templates and notes the uses.
type speaker struct {
	words *words.Catalogue
	file  *parse.Tree
	uses  []words.Use
}

// speak goes through every template of the set.
func speak(source *template.Template, catalogue *words.Catalogue) ([]words.Use, error) {
	s := &speaker{words: catalogue}
	all := source.Templates()
	slices.SortFunc(all, func(a, b *template.Template) int { return strings.Compare(a.Name(), b.Name()) })
	for _, t := range all {
		if t.Tree == nil || t.Tree.Root == nil {
			continue
		}
		s.file = t.Tree
		if err := s.list(t.Tree.Root); err != nil {
			return nil, err
		}
	}
	return s.uses, nil
}

func (s *speaker) list(list *parse.ListNode) error {
	if list == nil {
		return nil
	}
	var nodes []parse.Node
	for _, n := range list.Nodes {
		said, err := s.node(n)
		if err != nil {
			location, _ := s.file.ErrorContext(n)
			return fmt.Errorf("%s: %w", location, err)
		}
		nodes = append(nodes, said...)
	}
	list.Nodes = nodes
	return nil
}

// node returns what stands in a node's place.
func (s *speaker) node(n parse.Node) ([]parse.Node, error) {
	switch n := n.(type) {
	case *parse.ActionNode:
		if call := callOf(n.Pipe); call != nil {
			return s.call(n, call)
		}
		return []parse.Node{n}, s.inside(n.Pipe)
	case *parse.TemplateNode:
		return []parse.Node{n}, s.inside(n.Pipe)
	case *parse.IfNode:
		return []parse.Node{n}, s.branch(&n.BranchNode)
	case *parse.WithNode:
		return []parse.Node{n}, s.branch(&n.BranchNode)
	case *parse.RangeNode:
		return []parse.Node{n}, s.branch(&n.BranchNode)
	}
	return []parse.Node{n}, nil
}

func (s *speaker) branch(b *parse.BranchNode) error {
	return errors.Join(s.inside(b.Pipe), s.list(b.List), s.list(b.ElseList))
}

// callOf is the call of word or prose a pipeline consists of.
func callOf(pipe *parse.PipeNode) *parse.CommandNode {
	if pipe == nil || len(pipe.Decl) > 0 || len(pipe.Cmds) != 1 {
		return nil
	}
	args := pipe.Cmds[0].Args
	name, ok := args[0].(*parse.IdentifierNode)
	if !ok || name.Ident != "word" && name.Ident != "prose" {
		return nil
	}
	return pipe.Cmds[0]
}

// inside notes the calls among the arguments of another; they are made when a page is
// rendered.
func (s *speaker) inside(pipe *parse.PipeNode) error {
	if pipe == nil {
		return nil
	}
	if call := callOf(pipe); call != nil {
		if call.Args[0].String() == "prose" {
			return errors.New("prose stands by itself: what takes its words would not take its markup")
		}
		_, err := s.use(call)
		return err
	}
	for _, command := range pipe.Cmds {
		for _, arg := range command.Args {
			inner, ok := arg.(*parse.PipeNode)
			if !ok {
				continue
			}
			if err := s.inside(inner); err != nil {
				return err
			}
		}
	}
	return nil
}

// use notes a call and returns its values by name.
func (s *speaker) use(call *parse.CommandNode) (map[string]parse.Node, error) {
	args := call.Args[1:]
	if len(args)%2 != 1 || !isText(args[0]) {
		return nil, errors.New("word and prose take a key, then names and values by turns")
	}
	use := words.Use{Key: args[0].(*parse.StringNode).Text, Prose: call.Args[0].String() == "prose", Pos: s.pos(call)}
	values := map[string]parse.Node{}
	for i := 1; i < len(args); i += 2 {
		if !isText(args[i]) {
			return nil, fmt.Errorf("the name before %s is no string", args[i+1])
		}
		name := args[i].(*parse.StringNode).Text
		use.Names = append(use.Names, name)
		values[name] = args[i+1]
		if inner, ok := args[i+1].(*parse.PipeNode); ok {
			if err := s.inside(inner); err != nil {
				return nil, err
			}
		}
	}
	s.uses = append(s.uses, use)
	return values, nil
}

func isText(n parse.Node) bool { _, ok := n.(*parse.StringNode); return ok }

// pos reads the parser's own "name:line:column", whose column begins with 0.
func (s *speaker) pos(n parse.Node) diag.Pos {
	location, _ := s.file.ErrorContext(n)
	at := diag.Pos{File: "templates/" + s.file.ParseName}
	if part := strings.Split(location, ":"); len(part) == 3 {
		at.Line, _ = strconv.Atoi(part[1])
		if col, err := strconv.Atoi(part[2]); err == nil {
			at.Col = col + 1
		}
	}
	return at
}

// call puts the words in the place of a call that stands by itself. A phrase that hangs
// on a number stays a call; one that is not there stays too, and is a problem elsewhere.
func (s *speaker) call(n *parse.ActionNode, call *parse.CommandNode) ([]parse.Node, error) {
	values, err := s.use(call)
	if err != nil {
		return nil, err
	}
	phrase := s.words.Find(s.uses[len(s.uses)-1].Key)
	if phrase == nil || phrase.Counted() {
		return []parse.Node{n}, nil
	}
	var nodes []parse.Node
	text := func(markup string) {
		nodes = append(nodes, &parse.TextNode{NodeType: parse.NodeText, Pos: n.Pos, Text: []byte(markup)})
	}
	for _, piece := range phrase.Text() {
		given := values[piece.Name]
		if piece.Name != "" && given == nil {
			return []parse.Node{n}, nil
		}
		switch piece.Mark {
		case words.Plain:
			text(plainText.Replace(piece.Words))
		case words.Strong:
			text("<strong>" + plainText.Replace(piece.Words) + "</strong>")
		case words.Value:
			nodes = append(nodes, show(n, given))
		case words.Link:
			text(`<a href="`)
			nodes = append(nodes, show(n, given))
			text(`">` + plainText.Replace(piece.Words) + "</a>")
		}
	}
	return nodes, nil
}

// plainText makes words text between tags or inside a quoted attribute.
var plainText = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&#34;")

// show is the action that shows a value.
func show(n *parse.ActionNode, value parse.Node) parse.Node {
	pipe, ok := value.(*parse.PipeNode)
	if !ok {
		pipe = pipeOf(n, value)
	}
	if len(pipe.Cmds) == 1 && len(pipe.Cmds[0].Args) == 3 && pipe.Cmds[0].Args[0].String() == "part" && isText(pipe.Cmds[0].Args[1]) {
		shown := pipe.Cmds[0].Args[2]
		inner, ok := shown.(*parse.PipeNode)
		if !ok {
			inner = pipeOf(n, shown)
		}
		return &parse.TemplateNode{NodeType: parse.NodeTemplate, Pos: n.Pos, Line: n.Line,
			Name: pipe.Cmds[0].Args[1].(*parse.StringNode).Text, Pipe: inner}
	}
	return &parse.ActionNode{NodeType: parse.NodeAction, Pos: n.Pos, Line: n.Line, Pipe: pipe}
}

func pipeOf(n *parse.ActionNode, value parse.Node) *parse.PipeNode {
	return &parse.PipeNode{NodeType: parse.NodePipe, Pos: n.Pos, Line: n.Line,
		Cmds: []*parse.CommandNode{{NodeType: parse.NodeCommand, Pos: n.Pos, Args: []parse.Node{value}}}}
}

// part stands for a template inside the values of a phrase; it is never called.
func part(name string, _ any) (string, error) {
	return "", fmt.Errorf("part %q stands outside word and prose", name)
}
