package cli

import (
	"context"
	"crypto/rand"
	"os"
	"path/filepath"
	"runtime"

	"aerosteep/fault"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// dataFolder is where the records lie: --data, $AEROSTEEP_DATA, or the
// system's usual place for a program's data.
func (p *program) dataFolder() (string, error) {
	if p.data != "" {
		return p.data, nil
	}
	if folder := p.Getenv("AEROSTEEP_DATA"); folder != "" {
		return folder, nil
	}
	if folder := p.usualFolder(); folder != "" {
		return filepath.Join(folder, "aerosteep"), nil
	}
	return "", fault.New("data", "", wording.Say("cli.no-data-folder"), wording.Text{}, wording.Say("cli.no-data-folder.advice"))
}

// usualFolder is the place for data: on Linux by the XDG Base Directory
// Specification, elsewhere where the system keeps what programs remember.
func (p *program) usualFolder() string {
	if runtime.GOOS == "darwin" || runtime.GOOS == "windows" {
		folder, _ := os.UserConfigDir()
		return folder
	}
	if folder := p.Getenv("XDG_DATA_HOME"); filepath.IsAbs(folder) {
		return folder
	}
	if home := p.Getenv("HOME"); home != "" {
		return filepath.Join(home, ".local", "share")
	}
	return ""
}

func (p *program) means() journal.Means { return journal.Means{Now: p.Now, Random: rand.Reader} }

// withJournal opens the journal for one verb and lets go of it afterwards.
func (p *program) withJournal(do func(context.Context, *journal.Journal) error) error {
	folder, err := p.dataFolder()
	if err != nil {
		return err
	}
	ctx := context.Background()
	j, err := journal.Open(ctx, folder, p.means())
	if err != nil {
		return err
	}
	err = do(ctx, j)
	if closing := j.Close(); err == nil {
		err = closing
	}
	return err
}
