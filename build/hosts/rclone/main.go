// Command rclone is rclone with one store, the local disk, and all its commands' rest but
// "serve s3" left out: the S3 server that the tests of publishing talk to. Its code is
// rclone's own, of the version in go.mod; only what the tests need is compiled, which
// takes a quarter of the time and a sixth of the bytes. It is a module of its own, so
// that none of it weighs on the program.
package main

import (
	_ "github.com/rclone/rclone/backend/local"
	"github.com/rclone/rclone/cmd"
	_ "github.com/rclone/rclone/cmd/serve/s3"
)

func main() { cmd.Main() }
