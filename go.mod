module aerosteep

go 1.26.0

require (
	github.com/pelletier/go-toml/v2 v2.4.3
	github.com/spf13/cobra v1.10.2
	github.com/spf13/pflag v1.0.9
	github.com/tidwall/geodesic v1.52.4
)

require (
	github.com/inconshreveable/mousetrap v1.1.0 // indirect
	gonum.org/v1/gonum v0.17.0 // indirect
)
