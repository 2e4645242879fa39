# What a developer types. The work itself is in cmd/dev.

# Go, npm and the private Postgres keep things in the user's home. When there is
# none that can be written to, they keep them here, out of sight of ./...
ifneq ($(shell test -n "$$HOME" && test -d "$$HOME" && test -w "$$HOME" && echo yes),yes)
export HOME := $(CURDIR)/build/.home
export GOFLAGS := $(GOFLAGS) -modcacherw
$(shell mkdir -p build/.home)
endif

.PHONY: help run test screenshots fmt race cover sizes bench fuzz calibrate

help: ## these lines
	@grep -E '^[a-z]+:.*##' Makefile | sed 's/:.*## /\t/'

run: ## the web app on http://127.0.0.1:8177, with a made-up club to explore
	@go run ./cmd/dev run

test: ## the whole check, as the build server runs it
	@go run ./cmd/dev check

screenshots: ## a picture of every page at two widths, light and dark
	@go run ./cmd/dev screenshots

fmt: ## format every Go file
	@go run ./cmd/dev fmt

race: ## the race detector over what does several things at once
	@go run ./cmd/dev race

cover: ## how much of each package its tests run
	@go run ./cmd/dev cover

sizes: ## how large files and functions are, beside the goals
	@go run ./cmd/dev sizes

bench: ## every benchmark once
	@go test -run '^$$' -bench . -benchtime 1s ./...

fuzz: ## two minutes of broken shots files
	@go test -run '^$$' -fuzz FuzzReader -fuzztime 2m ./analysis/shotsfile

calibrate: ## fit the golfer to the published figures anew (minutes)
	@go run ./cmd/strokeledger calibrate
