package main

import (
	"context"
	"fmt"
	"time"

	"capspan/build"
	"capspan/build/publish"
)

type publishVerb struct {
	Target string `arg:"" help:"A folder, or s3://bucket/prefix?endpoint=https://host&region=name."`
	From   string `default:"dist" placeholder:"DIR" help:"The folder that capspan build wrote (${default})."`
	DryRun bool   `help:"List what would be put and removed, and write nothing."`
	Force  bool   `help:"Write where files of somebody else are: over those of the site's own names, beside the others."`
	Encode string `default:"gzip" enum:"gzip,none" placeholder:"WHAT" help:"How pages and what they load lie in a bucket: gzip, or none for a host that packs by itself (${default})."`
	Jobs   int    `default:"8" placeholder:"N" help:"Requests to a bucket at a time (${default})."`
	JSON   bool   `name:"json" help:"Print what was done as JSON."`
	Quiet  bool   `short:"q" help:"Print problems only."`
}

// Help is shown below the one-line help.
func (publishVerb) Help() string {
	return `Puts a built site into a folder or an S3-compatible bucket. Only what differs is written: what
pages load first, then pages, and removals last. Cut off at any point, run it again.

The key comes from AWS_ACCESS_KEY_ID and AWS_SECRET_ACCESS_KEY, or from the shared credentials
file (AWS_PROFILE); the endpoint from the target, AWS_ENDPOINT_URL_S3 or AWS_ENDPOINT_URL; the
region from the target, AWS_REGION or AWS_DEFAULT_REGION.

Examples:
  capspan publish /srv/www/joints
  capspan publish s3://joints --dry-run
  capspan publish 's3://shop/joints?endpoint=https://s3.example.com'`
}

// Run publishes.
func (v *publishVerb) Run(ctx context.Context, t *terminal) error {
	if v.Jobs < 1 || v.Jobs > 64 {
		return misuse("--jobs %d: give a number from 1 to 64", v.Jobs)
	}
	target, err := publish.To(v.Target)
	if err != nil {
		return misuse("%v", err)
	}
	start := time.Now()
	progress := newProgress(t, v.Quiet || v.JSON)
	progress.say("reading " + v.From)
	out, err := build.Read(v.From)
	if err != nil {
		progress.clear()
		return err
	}
	progress.say("comparing with " + target.String())
	report, err := target.Publish(ctx, out, publish.Options{
		DryRun: v.DryRun, Force: v.Force, Plain: v.Encode == "none", Jobs: v.Jobs,
		Progress: func(done, all int) { progress.say(fmt.Sprintf("%d of %d files", done, all)) },
	})
	progress.clear()
	if err != nil {
		return err
	}
	if v.JSON {
		return printJSON(t.out, struct {
			Target string         `json:"target"`
			DryRun bool           `json:"dryRun"`
			Files  publish.Report `json:"files"`
		}{target.String(), v.DryRun, report})
	}
	if v.DryRun {
		for _, c := range report.Changes {
			if _, err := fmt.Fprintf(t.out, "%s %s\n", c.Do, c.Path); err != nil {
				return err
			}
		}
	}
	if v.Quiet {
		return nil
	}
	did := [2]string{"put", "removed"}
	if v.DryRun {
		did = [2]string{"to put", "to remove"}
	}
	_, err = fmt.Fprintf(t.out, "%s: %d files %s (%d kB), %d %s, %d unchanged; %d ms\n", target,
		report.Written, did[0], (report.Bytes+999)/1000, report.Removed, did[1], report.Same, time.Since(start).Milliseconds())
	return err
}
