package main

// takeCompare tells what one changed row means.
func takeCompare(c *catalogueFolder, figures map[string]figure) error {
	s, err := best(c.program, "compare", c.root, "--root", c.edited)
	figures["compare one changed row"] = seconds(s.took)
	return err
}
