// Package api is the face for programs: HTTP with JSON in and out, described
// by OpenAPI 3.1 at /api/v1/openapi.json. It asks the floors below and shows
// what they answer; it computes nothing.
//
// It is also the door of the server: who may come in (guard.go), how the
// address is opened, announced and closed (serve.go).
package api
