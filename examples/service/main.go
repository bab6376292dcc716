// Command service answers questions about the line sets of a house over HTTP: checks as JSON, free bodies as SVG, and a page with a
// slider that takes the batten from trim to trim. It keeps nothing: who wants a house of their own computed posts it with the question.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"os"
	"os/signal"
	"syscall"

	"example.com/steelyard/examples/quillmoor"
	"example.com/steelyard/purchase/lineset"
)

const usage = `service: answer questions about the line sets of a house over HTTP.

  go run ./examples/service [-listen HOST:PORT]

  -listen HOST:PORT   where to listen (if not given: 127.0.0.1:8080, which only this machine reaches; port 0 is any free one)

  GET /               a page with a trim slider that redraws the free body of a set
  GET /sets           the sets by name, the trims that they reach, and what exceeds its limit
  GET /checks         every answer about every set, in SI units; ?set=NAME about one
  GET /freebody.svg   a set as a free body: ?set=NAME&trim=12ft, and where wanted &way=still|out|in and &units=us|metric

The house is the Quillmoor Playhouse, an invented venue. To have another one computed, POST it to the same addresses:

  curl -H 'Content-Type: application/json' --data-binary @house.json http://127.0.0.1:8080/checks

It is JSON; examples/quillmoor/house.json shows every field. What is wrong is answered as {"errors": [...]}, each with its field, the
value, and what would be right: with status 400 where something cannot be read, and 422 where all can be read but not computed.

There is no login and no encryption: before others may reach it, put it behind a server that has both.
SIGINT and SIGTERM stop it when the requests under way are answered; a second one stops it at once.

`

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, stop) // from then on a signal does what it does to any program
	os.Exit(run(ctx, os.Args[1:], os.Stdout, os.Stderr))
}

// run is the program, with everything it touches handed in but the network. It serves until ctx is done, and gives the exit
// status: 0 where every request was answered, 1 where some were not, 2 where it could not be started as it was told.
func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	end := func(status int, err error) int {
		fmt.Fprintf(stderr, "service: %v\n", err)
		return status
	}
	address, err := read(args)
	if errors.Is(err, flag.ErrHelp) {
		fmt.Fprint(stdout, usage, lineset.Caution, "\n")
		return 0
	}
	if err != nil {
		return end(2, err)
	}
	listener, err := listen(address)
	if err != nil {
		return end(2, err)
	}
	defer listener.Close()
	s, err := open(usual(), slog.New(slog.NewTextHandler(stderr, nil)))
	if err != nil {
		return end(1, err)
	}
	fmt.Fprintf(stdout, "service: http://%v\n", listener.Addr())
	if err := s.serve(ctx, listener); err != nil {
		return end(1, err)
	}
	return 0
}

// read reads the flags.
func read(args []string) (address string, err error) {
	flags := flag.NewFlagSet("service", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.StringVar(&address, "listen", "127.0.0.1:8080", "")
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return "", err
	case err != nil:
		return "", fmt.Errorf("%w; -h explains the flags", err)
	case flags.NArg() > 0:
		return "", fmt.Errorf("%q is not a flag; -h explains those that there are", flags.Arg(0))
	}
	return address, nil
}

// listen opens the port. A port that is taken is told apart from an address that is none.
func listen(address string) (net.Listener, error) {
	if _, _, err := net.SplitHostPort(address); err != nil {
		return nil, fmt.Errorf("-listen %q is no address; want HOST:PORT, as 127.0.0.1:8080", address)
	}
	listener, err := net.Listen("tcp", address)
	if errors.Is(err, syscall.EADDRINUSE) {
		return nil, fmt.Errorf("-listen %s is in use by another program; want a free port, or 0 for any", address)
	}
	if err != nil {
		return nil, fmt.Errorf("-listen %s: %w; want HOST:PORT of this machine, as 127.0.0.1:8080", address, err)
	}
	return listener, nil
}

// open rigs the demo house, once: what was rigged does not change and answers many at a time.
func open(b bounds, log *slog.Logger) (*service, error) {
	house, err := quillmoor.SummerPlay()
	if err != nil {
		return nil, err
	}
	demo, err := house.Rig()
	if err != nil {
		return nil, err
	}
	return &service{bounds: b, demo: demo, turns: make(chan struct{}, b.atOnce), log: log}, nil
}

// serve answers until ctx is done. Then it takes no new requests, and waits a while for those under way.
func (s *service) serve(ctx context.Context, listener net.Listener) error {
	server := &http.Server{
		Handler:           s.handler(),
		ReadHeaderTimeout: s.header,
		ReadTimeout:       s.read,
		WriteTimeout:      s.read + s.compute + s.write,
		IdleTimeout:       s.idle,
		MaxHeaderBytes:    s.headers,
		ErrorLog:          slog.NewLogLogger(s.log.Handler(), slog.LevelWarn),
	}
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(listener) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	s.log.Info("stopping")
	wait, cancel := context.WithTimeout(context.WithoutCancel(ctx), s.stop)
	defer cancel()
	if err := server.Shutdown(wait); err != nil {
		server.Close()
		return fmt.Errorf("stopped after %v with requests that were not answered", s.stop)
	}
	return nil
}
