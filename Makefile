# What a person does here, one target each.
#
#   make demo      the main job on Tern Hollow: prints the address to open
#   make test      install what the tests need, then check everything
#   make check     the same without installing and without the browser
#   make fuzz      try strange input on everything that reads outside text
#   make bits      compare the golden forecasts in WebAssembly, bit for bit
#   make golden    write the golden files anew (then read the difference)
#   make bench     time saturation and the integrator against compiled libraries
#   make truth     score the forecast on brews simulated by other models
#   make brews     write 96 such brews into dist/brews
#   make release   one file for each kind of machine, in dist/

GO ?= go
VERSION ?= $(shell git describe --tags --always --dirty 2>/dev/null || echo dev)
FLAGS = -trimpath -ldflags="-s -w -X aerosteep/face/cli.Version=$(VERSION)"
export CGO_ENABLED ?= 0

# Debian packages that the tests stand on: a browser, a second opinion on
# oxygen saturation and on units, and a place to run WebAssembly.
NEEDS = chromium nodejs python3-gsw units

.PHONY: demo page-engine build test install check formatted vetted engine race browser bits fuzz golden bench truth brews release

build: page-engine
	$(GO) build $(FLAGS) -o bin/aerosteep ./cmd/aerosteep

# The engine for the browser, squeezed once here and carried by the program.
ENGINE = face/web/assets/engine
page-engine:
	GOOS=js GOARCH=wasm $(GO) build -trimpath -ldflags="-s -w" -o $(ENGINE)/aerosteep.wasm ./cmd/engine
	$(GO) run -C tools ./squeeze $(CURDIR)/$(ENGINE)/aerosteep.wasm
	rm $(ENGINE)/aerosteep.wasm
	cp "$$($(GO) env GOROOT)/lib/wasm/wasm_exec.js" $(ENGINE)/wasm_exec.js

demo: build
	bin/aerosteep demo

test: install check bits browser

install:
	@missing=""; for p in $(NEEDS); do dpkg -s $$p >/dev/null 2>&1 || missing="$$missing $$p"; done; \
	if [ -n "$$missing" ]; then \
		apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $$missing; \
	fi
	@command -v gcc >/dev/null || (apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends gcc libc6-dev)
	$(GO) mod download

check: formatted vetted engine race

formatted:
	@files="$$(gofmt -l .)"; if [ -n "$$files" ]; then echo "not formatted:"; echo "$$files"; exit 1; fi

vetted:
	$(GO) vet ./...
	$(GO) tool -modfile=tools/go.mod staticcheck ./...

# The pure floors run in a browser too.
engine:
	GOOS=js GOARCH=wasm $(GO) build ./wording/... ./fault/... ./source/... ./quantity/... ./numeric/... ./table/... ./science/... ./job/... ./worksheet/...

race: page-engine
	CGO_ENABLED=1 $(GO) test -race -timeout 30m ./...

browser: page-engine
	$(GO) test -tags browser -count=1 -timeout 45m ./face/web/...

# The golden forecasts as WebAssembly under node, bit for bit
bits:
	$(GO) test -tags node -run WebAssembly -timeout 20m ./job/forecast

fuzz:
	@for target in $$(grep -rl --include='*_test.go' '^func Fuzz' . | xargs -n1 dirname | sort -u); do \
		for name in $$(grep -rhoE '^func Fuzz[A-Za-z]+' $$target/*_test.go | sed 's/func //'); do \
			$(GO) test -run='^$$' -fuzz="^$$name\$$" -fuzztime=$(or $(TIME),10s) $$target || exit 1; \
		done; \
	done

golden:
	$(GO) test ./job/forecast -update

# Needs Debian's python3-gsw, libsundials-dev and gcc.
bench:
	bench/saturation.sh
	bench/cvode.sh

BREWS ?= examples/brews

truth:
	$(GO) run ./cmd/truth $(BREWS)

brews:
	$(GO) run ./cmd/brews --count 96 --seed 7 dist/brews

release: page-engine
	for target in linux/amd64 linux/arm64 darwin/arm64 windows/amd64; do \
		GOOS=$${target%/*} GOARCH=$${target#*/} $(GO) build $(FLAGS) -o dist/aerosteep-$${target%/*}-$${target#*/} ./cmd/aerosteep || exit 1; \
	done
