package cli

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"runtime"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"aerosteep/record/holding"
	"aerosteep/wording"
)

// usualAddress is where the server listens if nothing else is said: this
// machine alone.
const usualAddress = "127.0.0.1:8417"

// Serving is what a server is asked for.
type Serving struct {
	Holding   *holding.Holding
	Listen    string
	Cert, Key string
	Now       func() time.Time
	Announce  func(address string)        // called once the address answers
	Report    func(where string, e error) // a fault of the program's own
}

// address are the flags of the verbs that serve.
type address struct {
	listen, cert, key string
	open              bool
}

func (a *address) flags(cmd *cobra.Command) {
	cmd.Flags().StringVar(&a.listen, "listen", usualAddress, "host:port; port 0 takes a free one")
	cmd.Flags().StringVar(&a.cert, "cert", "", "certificate (PEM), for HTTPS")
	cmd.Flags().StringVar(&a.key, "key", "", "key of the certificate (PEM)")
	cmd.Flags().BoolVar(&a.open, "open", false, "open it in the browser")
}

// serveVerb is `serve`: the pages and the HTTP interface of a data folder.
func (p *program) serveVerb() *cobra.Command {
	a := &address{}
	cmd := &cobra.Command{
		Use:   "serve",
		Short: wording.Say("cli.serve").String(),
		Args:  noArguments,
		RunE: func(*cobra.Command, []string) error {
			return p.withHolding(func(ctx context.Context, h *holding.Holding) error {
				return p.serve(ctx, h, a, p.Now)
			})
		},
	}
	a.flags(cmd)
	return cmd
}

// serve runs until it is told to stop: SIGTERM, or an interrupt from the
// keyboard.
func (p *program) serve(ctx context.Context, h *holding.Holding, a *address, now func() time.Time) error {
	ctx, stop := signal.NotifyContext(ctx, syscall.SIGTERM, os.Interrupt)
	defer stop()
	return p.Serve(ctx, Serving{
		Holding: h, Listen: a.listen, Cert: a.cert, Key: a.key, Now: now,
		Announce: func(address string) {
			fmt.Fprintln(p.Out, address)
			if a.open {
				openInBrowser(address)
			}
		},
		Report: func(where string, err error) { fmt.Fprintf(p.Err, "aerosteep: %s: %v\n", where, err) },
	})
}

// openInBrowser asks the system to show an address. Where it cannot, the
// address stands on the screen.
func openInBrowser(address string) {
	command := map[string][]string{"darwin": {"open"}, "windows": {"rundll32", "url.dll,FileProtocolHandler"}}[runtime.GOOS]
	if command == nil {
		command = []string{"xdg-open"}
	}
	_ = exec.Command(command[0], append(command[1:], address)...).Start()
}
