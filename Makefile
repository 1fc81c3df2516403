# Needs Go and make; make test also a Chromium or Chrome (or BROWSER=none), and
# a WebKit and a Firefox if they are to be tested on.
ADDR ?= 127.0.0.1:8012
FUZZTIME ?= 10s

.PHONY: run build test bench size picture fuzz clean

run: build
	go run ./tools/serve -addr $(ADDR)

build:
	go run ./tools/build

test:
	go run ./tools/browser
	test -z "$$(gofmt -l . | tee -a /dev/stderr)"
	go vet ./...
	GOOS=js GOARCH=wasm go vet ./wasm ./tools/empty/... ./web/browser/dying
	GOOS=js GOARCH=wasm go build -o /dev/null ./wasm
	go test $$(go list ./... | grep -v /web/browser)
	go test -count=1 -timeout 60m ./web/browser

bench:
	go test -run '^$$' -bench . -count 10 $$(go list ./... | grep -v /web/browser)
	go test -run '^$$' -bench . -benchtime 1x -timeout 60m ./web/browser

size:
	go run ./tools/size
	go run ./tools/size -steps

picture:
	PINTWELVE_PICTURE=$(CURDIR)/testdata/first-screen.png go test -count=1 -run '^TestTheReadmesPicture$$' ./web/browser

fuzz:
	@set -e; for file in $$(grep -rl --include='*_test.go' '^func Fuzz' .); do \
		for name in $$(sed -n 's/^func \(Fuzz[A-Za-z0-9_]*\)(.*/\1/p' $$file); do \
			go test -run '^$$' -fuzz "^$$name\$$" -fuzztime $(FUZZTIME) ./$$(dirname $$file); \
		done; \
	done

clean:
	rm -rf dist
