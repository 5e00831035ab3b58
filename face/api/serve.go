package api

import (
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"net"
	"net/http"
	"time"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Server is what it takes to serve a holding on an address.
type Server struct {
	Listen    string // host:port; port 0 takes a free one
	Cert, Key string // files in PEM; both or none
	Password  string // argon2id hash; "" where none was set
	API       *API
	Pages     http.Handler         // everything that is not the API
	Announce  func(address string) // called once the address answers
}

// How long a slow client may take, and how long an answer that has begun may
// go on after the server was told to stop.
const (
	headerTime = 10 * time.Second
	bodyTime   = 60 * time.Second
	answerTime = 2 * time.Minute
	idleTime   = 2 * time.Minute
	stopTime   = 3 * time.Second
)

// Run serves until the context ends. What is wrong with the address or the
// certificate is a fault; an address that is taken is an ordinary error.
func (s Server) Run(ctx context.Context) error {
	host, err := s.check()
	if err != nil {
		return err
	}
	certificate, names, err := s.certificate()
	if err != nil {
		return err
	}
	listener, err := net.Listen("tcp", s.Listen)
	if err != nil {
		return &trouble{wording.Say("api.listen.failed", wording.Places{"address": s.Listen, "cause": err.Error()}), wording.Say("api.listen.failed.advice"), err}
	}
	scheme := "http"
	if certificate != nil {
		scheme = "https"
		listener = tls.NewListener(listener, &tls.Config{Certificates: []tls.Certificate{*certificate}, MinVersion: tls.VersionTLS12, NextProtos: []string{"h2", "http/1.1"}})
	}
	_, port, _ := net.SplitHostPort(listener.Addr().String())
	door := &Door{Address: net.JoinHostPort(host, port), Names: names, Password: s.Password, Secure: certificate != nil}
	return s.serve(ctx, listener, door, scheme)
}

func (s Server) serve(ctx context.Context, listener net.Listener, door *Door, scheme string) error {
	server := &http.Server{
		Handler: door.Guard(s.API, s.mux()), ReadHeaderTimeout: headerTime, ReadTimeout: bodyTime,
		WriteTimeout: answerTime, IdleTimeout: idleTime, MaxHeaderBytes: 64 << 10,
	}
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(listener) }()
	s.Announce(scheme + "://" + shownAddress(door.Address))
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	stopping, cancel := context.WithTimeout(context.Background(), stopTime)
	defer cancel()
	if err := server.Shutdown(stopping); errors.Is(err, context.DeadlineExceeded) {
		return server.Close()
	} else if err != nil {
		return err
	}
	return nil
}

func (s Server) mux() http.Handler {
	mux := http.NewServeMux()
	answers := s.API.Handler()
	for _, address := range []string{"/api/", "/healthz", "/readyz", "/metrics"} {
		mux.Handle(address, answers)
	}
	if s.Pages != nil {
		mux.Handle("/", s.API.refusalsOf(s.Pages))
	}
	return mux
}

// check reads the address, and asks for a password beyond the own machine.
func (s Server) check() (host string, err error) {
	host, _, err = net.SplitHostPort(s.Listen)
	if err != nil {
		return "", said("listen", s.Listen, "api.listen.address")
	}
	ip := net.ParseIP(host)
	if own := host == "localhost" || ip != nil && ip.IsLoopback(); !own && s.Password == "" {
		return "", said("listen", s.Listen, "api.listen.password")
	}
	return host, nil
}

// certificate reads the certificate, with the names it is for.
func (s Server) certificate() (*tls.Certificate, []string, error) {
	if s.Cert == "" && s.Key == "" {
		return nil, nil, nil
	}
	if s.Cert == "" || s.Key == "" {
		return nil, nil, said("cert", s.Cert+s.Key, "api.listen.half-certificate")
	}
	pair, err := tls.LoadX509KeyPair(s.Cert, s.Key)
	if err != nil {
		return nil, nil, fault.New("cert", s.Cert, wording.Say("api.listen.certificate", wording.Places{"cause": err.Error()}), wording.Say("api.listen.certificate.allowed"), wording.Say("api.listen.certificate.advice"))
	}
	var names []string
	if pair.Leaf != nil {
		names = pair.Leaf.DNSNames
	}
	return &pair, names, nil
}

// shownAddress is an address that can be opened on this machine: the one
// listened on, or this machine where that is all of its addresses.
func shownAddress(address string) string {
	host, port, _ := net.SplitHostPort(address)
	if everyAddress(host) {
		host = "127.0.0.1"
	}
	return net.JoinHostPort(host, port)
}

// trouble is what kept the server from starting.
type trouble struct {
	what, advice wording.Text
	cause        error
}

func (t *trouble) Error() string                    { return fmt.Sprintf("%s (%v)", t.what, t.cause) }
func (t *trouble) Unwrap() error                    { return t.cause }
func (t *trouble) Say() (what, advice wording.Text) { return t.what, t.advice }
