package cli

import (
	"context"
	"fmt"
	"net"
	"os"
	"os/exec"
	"os/signal"
	"runtime"
	"strings"
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
			p.tellPhone(h, a, address)
			if a.open {
				openInBrowser(address)
			}
		},
		Report: func(where string, err error) { fmt.Fprintf(p.Err, "aerosteep: %s: %v\n", where, err) },
	})
}

// tellPhone says how the phone in the shed reaches the server: by which addresses
// of this machine, or what it takes to be reached at all.
func (p *program) tellPhone(h *holding.Holding, a *address, address string) {
	r, err := p.reader(h.Reader())
	if err != nil {
		return
	}
	host, _, _ := net.SplitHostPort(a.listen)
	if ip := net.ParseIP(host); host == "localhost" || ip != nil && ip.IsLoopback() {
		fmt.Fprintln(p.Out, wrap(wording.Say("cli.serve.phone.not").For(r), columns, ""))
		return
	}
	scheme, rest, _ := strings.Cut(address, "://")
	_, port, _ := net.SplitHostPort(rest)
	for _, ip := range ownAddresses() {
		fmt.Fprintln(p.Out, wording.Say("cli.serve.phone", wording.Places{"address": scheme + "://" + net.JoinHostPort(ip, port)}).For(r))
	}
	if scheme == "http" {
		fmt.Fprintln(p.Out, wrap(wording.Say("cli.serve.phone.plain").For(r), columns, ""))
	}
}

// ownAddresses are those under which other machines of the network see this one.
func ownAddresses() []string {
	all, err := net.InterfaceAddrs()
	if err != nil {
		return nil // the address on the first line still stands
	}
	var own []string
	for _, a := range all {
		if n, ok := a.(*net.IPNet); ok && n.IP.To4() != nil && !n.IP.IsLoopback() && !n.IP.IsLinkLocalUnicast() {
			own = append(own, n.IP.String())
		}
	}
	return own
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
