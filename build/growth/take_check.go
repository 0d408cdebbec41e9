package main

// takeCheck looks for problems in everything.
func takeCheck(c *catalogueFolder, figures map[string]figure) error {
	s, err := best(c.program, "check", "--root", c.root)
	figures["check"] = seconds(s.took)
	return err
}
