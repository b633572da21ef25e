module ribwright/render/eyes

go 1.26

require (
	github.com/klippa-app/go-pdfium v1.17.2
	ribwright v0.0.0
)

require (
	github.com/go-pdf/fpdf v0.9.0 // indirect
	github.com/google/uuid v1.6.0 // indirect
	github.com/jolestar/go-commons-pool/v2 v2.1.2 // indirect
	github.com/pelletier/go-toml/v2 v2.4.3 // indirect
	github.com/tetratelabs/wazero v1.9.0 // indirect
	golang.org/x/net v0.44.0 // indirect
	golang.org/x/text v0.29.0 // indirect
)

replace ribwright => ../..
