// Command aerosteep plans, watches and records batches of aerated compost tea.
package main

import (
	"os"
	_ "time/tzdata" // zones also on machines that have none

	"aerosteep/face/cli"
)

func main() {
	terminal := cli.System()
	terminal.Serve = serve
	os.Exit(cli.Run(os.Args[1:], terminal))
}
