// Command service embeds the library in a small HTTP service: checks as JSON, free bodies as SVG, and a page with a slider for the
// trim. It keeps nothing: a house is posted with the question, and without one the Quillmoor Playhouse answers.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"os"
	"os/signal"
	"syscall"
	"time"

	"example.com/steelyard/examples/quillmoor"
)

const usage = `service: a small HTTP service that answers checks as JSON and draws free bodies as SVG.

  go run ./examples/service [-listen HOST:PORT]

  -listen HOST:PORT  where it listens; nobody but this machine reaches 127.0.0.1 (if not given: 127.0.0.1:8080)

  GET /              a page: choose a set, slide the trim
  GET /sets          the sets and the trims that they reach, as JSON
  GET /checks        every check of every set, as JSON; ?set=NAME one set
  GET /freebody.svg  ?set=NAME&trim=20+ft&way=still|out|in&units=us|metric

To have a house of yours answered, POST it as JSON to the same address; the Quillmoor Playhouse answers a GET.

Overhead lifting can kill. These figures are for planning and teaching, from a model that leaves much out. Local
codes, the manufacturers' ratings and a licensed engineer or qualified rigger on site decide.
`

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], os.Stdout, os.Stderr, func(net.Addr) {}))
}

// run is the program until the context ends, with everything it touches handed in. It gives the exit status, and tells where it
// listens.
func run(ctx context.Context, args []string, stdout, stderr io.Writer, ready func(net.Addr)) int {
	flags := flag.NewFlagSet("service", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	listen := flags.String("listen", "127.0.0.1:8080", "")
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		fmt.Fprint(stdout, usage)
		return 0
	case err != nil:
		fmt.Fprintf(stderr, "service: %v; -h explains the flags\n", err)
		return 2
	case flags.NArg() > 0:
		fmt.Fprintf(stderr, "service: %q is not a flag; -h explains those that there are\n", flags.Arg(0))
		return 2
	}
	if err := serve(ctx, *listen, stdout, stderr, ready); err != nil {
		fmt.Fprintf(stderr, "service: %v\n", err)
		return 2
	}
	return 0
}

// serve answers until the context ends; what was asked before is still answered.
func serve(ctx context.Context, listen string, stdout, stderr io.Writer, ready func(net.Addr)) error {
	house, err := quillmoor.SummerPlay()
	if err != nil {
		return err
	}
	demo, err := house.Rig()
	if err != nil {
		return err
	}
	socket, err := net.Listen("tcp", listen)
	if err != nil {
		return fmt.Errorf("%w; -listen wants a free host and port, such as 127.0.0.1:8080", err)
	}
	logger := log.New(stderr, "service: ", log.LstdFlags)
	server := &http.Server{
		Handler:           logged(logger, http.TimeoutHandler(newService(demo), 25*time.Second, `{"errors":[{"error":"the answer took too long; want a smaller house"}]}`)),
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       15 * time.Second,
		WriteTimeout:      30 * time.Second,
		IdleTimeout:       60 * time.Second,
		MaxHeaderBytes:    1 << 14,
		ErrorLog:          logger,
	}
	fmt.Fprintf(stdout, "listening on http://%s/, until interrupted\n", socket.Addr())
	ready(socket.Addr())

	stopped := make(chan error, 1)
	go func() {
		<-ctx.Done()
		last, cancel := context.WithTimeout(context.WithoutCancel(ctx), 10*time.Second)
		defer cancel()
		stopped <- server.Shutdown(last)
	}()
	if err := server.Serve(socket); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return <-stopped
}

// logged writes a line for every answer. What was asked stands in quotes: anybody may have written it.
func logged(logger *log.Logger, next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		begun, status := time.Now(), &answered{w, http.StatusOK}
		next.ServeHTTP(status, r)
		logger.Printf("%d %s %q %s", status.code, r.Method, r.URL.Path, time.Since(begun).Round(time.Microsecond))
	})
}

// answered remembers the status of an answer.
type answered struct {
	http.ResponseWriter
	code int
}

// Unwrap lets net/http reach the connection, which it closes under whoever sends too much.
func (a *answered) Unwrap() http.ResponseWriter { return a.ResponseWriter }

func (a *answered) WriteHeader(code int) {
	a.code = code
	a.ResponseWriter.WriteHeader(code)
}
