# The app in a small image; the database is a service beside it.
FROM golang:1.26-bookworm AS build
WORKDIR /src
COPY go.mod go.sum ./
RUN go mod download
COPY . .
RUN CGO_ENABLED=0 go build -trimpath -ldflags=-s -o /strokeledger ./cmd/strokeledger

FROM debian:bookworm-slim
RUN useradd --system --uid 10001 ledger
COPY --from=build /strokeledger /usr/local/bin/strokeledger
USER ledger
EXPOSE 8177
ENTRYPOINT ["strokeledger"]
CMD ["serve"]
