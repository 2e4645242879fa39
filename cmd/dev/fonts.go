package main

// cutFonts makes the typefaces in static/fonts again, from the originals that
// npm has.
func cutFonts() error {
	const tools = "cmd/dev/fonts"
	if err := command("npm", "ci", "--no-audit", "--no-fund", "--prefix", tools); err != nil {
		return err
	}
	return command("node", tools+"/cut.mjs", "static/fonts")
}
