package main

import (
	"context"
	"time"

	"aerosteep/face/api"
	"aerosteep/face/cli"
	"aerosteep/face/web"
)

// skyEvery is how often it is looked whether the kept forecast has expired.
const skyEvery = 5 * time.Minute

// serve puts the pages and the HTTP interface behind one address. Here they
// meet: the faces do not know each other.
func serve(ctx context.Context, s cli.Serving) error {
	password, err := s.Holding.Journal().Password(ctx)
	if err != nil {
		return err
	}
	site := web.New(s.Holding, s.Now, s.Report)
	server := api.Server{
		Listen: s.Listen, Cert: s.Cert, Key: s.Key, Password: password,
		API:      api.New(s.Holding, s.Now, time.Local, s.Report),
		Pages:    site.Handler(),
		Announce: s.Announce,
	}
	following, stop := context.WithCancel(ctx)
	defer stop()
	go site.Warm(following)
	go s.Holding.FollowSky(following, skyEvery, func(err error) { s.Report("weather", err) })
	return server.Run(ctx)
}
