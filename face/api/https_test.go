package api

import (
	"context"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"io"
	"math/big"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// certified writes a certificate for this machine and the shed's name, with its
// key, and answers the pool that trusts it.
func certified(t *testing.T) (cert, key string, trust *x509.CertPool) {
	t.Helper()
	made, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	template := x509.Certificate{
		SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: "shed.example"}, DNSNames: []string{"shed.example"},
		IPAddresses: []net.IP{net.IPv4(127, 0, 0, 1)}, NotBefore: time.Now().Add(-time.Hour), NotAfter: time.Now().Add(time.Hour),
		IsCA: true, BasicConstraintsValid: true,
	}
	der, err := x509.CreateCertificate(rand.Reader, &template, &template, &made.PublicKey, made)
	if err != nil {
		t.Fatal(err)
	}
	keyDER, err := x509.MarshalECPrivateKey(made)
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	write := func(name, kind string, content []byte) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, pem.EncodeToMemory(&pem.Block{Type: kind, Bytes: content}), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	trust = x509.NewCertPool()
	trust.AppendCertsFromPEM(pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der}))
	return write("cert.pem", "CERTIFICATE", der), write("key.pem", "EC PRIVATE KEY", keyDER), trust
}

// With a certificate the server speaks HTTPS and nothing else: the address that
// it announces answers, by HTTP/2, also under the certificate's name; an entry
// sent over it is stored, and a plain request is turned away.
func TestHTTPS(t *testing.T) {
	cert, key, trust := certified(t)
	h := newHolding(t)
	ctx, stop := context.WithCancel(t.Context())
	announced, ended := make(chan string, 1), make(chan error, 1)
	server := Server{Listen: "127.0.0.1:0", Cert: cert, Key: key, API: New(h, time.Now, time.UTC, nil), Announce: func(a string) { announced <- a }}
	go func() { ended <- server.Run(ctx) }()
	address := <-announced
	if !strings.HasPrefix(address, "https://127.0.0.1:") {
		t.Fatalf("announced %s", address)
	}
	host := strings.TrimPrefix(address, "https://")
	client := &http.Client{Transport: &http.Transport{
		ForceAttemptHTTP2: true, TLSClientConfig: &tls.Config{RootCAs: trust, MinVersion: tls.VersionTLS12},
		DialContext: func(ctx context.Context, network, _ string) (net.Conn, error) {
			return (&net.Dialer{}).DialContext(ctx, network, host) // the shed's name leads to this machine
		},
	}}
	_, port, _ := net.SplitHostPort(host)
	for _, at := range []string{address, "https://shed.example:" + port} {
		response, err := client.Get(at + "/healthz")
		if err != nil {
			t.Fatal(err)
		}
		_, _ = io.Copy(io.Discard, response.Body)
		response.Body.Close()
		if response.StatusCode != http.StatusOK || response.ProtoMajor != 2 {
			t.Errorf("%s answers %d by %s", at, response.StatusCode, response.Proto)
		}
	}
	entry := `{"id":"018f3c5e-0000-7000-8000-000000000abc","kind":"note","at":"2026-05-12T12:00:00Z","by":"","device":"d","subject":"bed:K","body":{"text":"x"},"replaces":null}`
	response, err := client.Post(address+"/api/v1/entries", "application/json", strings.NewReader(entry))
	if err != nil {
		t.Fatal(err)
	}
	text, _ := io.ReadAll(response.Body)
	response.Body.Close()
	if response.StatusCode != http.StatusOK || !strings.Contains(string(text), `"stored"`) {
		t.Errorf("an entry answers %d %s", response.StatusCode, text)
	}
	if response, err := http.Get("http://" + host + "/healthz"); err == nil && response.StatusCode == http.StatusOK {
		t.Error("plain HTTP is answered")
	}
	stop()
	if err := <-ended; err != nil {
		t.Error(err)
	}
}
