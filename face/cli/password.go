package cli

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"strings"
	"unicode/utf8"

	"github.com/alexedwards/argon2id"
	"github.com/spf13/cobra"
	"golang.org/x/term"

	"aerosteep/fault"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// shortestPassword is in characters (NIST SP 800-63B section 5.1.1.2: at least
// eight).
const shortestPassword = 8

// passwordVerb is `password`: what the server asks for beyond this machine.
func (p *program) passwordVerb() *cobra.Command {
	return &cobra.Command{
		Use:   "password",
		Short: wording.Say("cli.password").String(),
		Args:  noArguments,
		RunE: func(*cobra.Command, []string) error {
			password, err := p.readPassword()
			if err != nil {
				return err
			}
			if utf8.RuneCountInString(password) < shortestPassword {
				return fault.New("password", "", wording.Say("cli.password.short"), wording.Say("cli.password.short.allowed", wording.Places{"n": shortestPassword}), wording.Say("cli.password.short.advice"))
			}
			return p.withJournal(func(ctx context.Context, j *journal.Journal) error {
				hash, err := argon2id.CreateHash(password, argon2id.DefaultParams)
				if err != nil {
					return err
				}
				if err := j.SetPassword(ctx, hash); err != nil {
					return err
				}
				return p.tell(map[string]bool{"set": true}, wording.Say("cli.password.set"))
			})
		},
	}
}

// readPassword reads one line: without showing it where a person types, or
// from whatever is piped in.
func (p *program) readPassword() (string, error) {
	if keyboard, is := p.In.(*os.File); is && term.IsTerminal(int(keyboard.Fd())) {
		fmt.Fprint(p.Err, wording.Say("cli.password.ask").String()+" ")
		typed, err := term.ReadPassword(int(keyboard.Fd()))
		fmt.Fprintln(p.Err)
		return string(typed), err
	}
	line, err := bufio.NewReader(p.In).ReadString('\n')
	if err != nil && line == "" {
		return "", nil // nothing was given: told as too short
	}
	return strings.TrimRight(line, "\r\n"), nil
}
