package publish

import (
	"bytes"
	"context"
	"crypto/md5"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"fmt"
	"io"
	"strings"

	"github.com/minio/minio-go/v7"

	"capspan/build"
)

// bucket is a target in a store that speaks the S3 protocol.
type bucket struct {
	client *minio.Client
	key    key
	name   string // of the bucket
	prefix string // "", or with a slash at its end
	host   string
	region string // "" when the client is to find it
}

func (b *bucket) String() string { return "s3://" + b.name + "/" + b.prefix }

// Publish does what the head of the package says.
func (b *bucket) Publish(ctx context.Context, out build.Output, opt Options) (Report, error) {
	listing, err := b.list(ctx)
	if err != nil {
		return Report{}, b.explain(err, "list", "")
	}
	var last record
	_, known := listing[recordName]
	if known {
		if last, err = b.record(ctx); err != nil {
			return Report{}, err
		}
		delete(listing, recordName)
	}
	p := makePlan(objects(out.Files, opt.Plain), listing, last, known)
	if len(p.foreign) > 0 && !opt.Force {
		return Report{}, &ForeignError{Target: b.String(), Files: p.foreign}
	}
	report := p.report()
	if opt.DryRun || p.rested {
		return report, nil
	}
	w := &work{b: b, plan: p, opt: opt, all: len(p.put) + len(p.remove)}
	if err := w.run(ctx); err != nil {
		if ctx.Err() != nil {
			err = fmt.Errorf("stopped after %d of %d files", w.done, w.all)
		}
		return report, fmt.Errorf("%w\n    hint: readers have whole pages, some of them older; the same command again does the rest", err)
	}
	return report, nil
}

// list returns the entity tags below the prefix, by path. One request gives a thousand.
func (b *bucket) list(ctx context.Context) (map[string]string, error) {
	listing := map[string]string{}
	owner := false
	for o := range b.client.ListObjectsIter(ctx, b.name, minio.ListObjectsOptions{Prefix: b.prefix, Recursive: true, FetchOwner: &owner}) {
		if o.Err != nil {
			return nil, o.Err
		}
		name := strings.TrimPrefix(o.Key, b.prefix)
		if name == "" || strings.HasSuffix(name, "/") && o.Size == 0 {
			continue // what some tools put to show a folder
		}
		listing[name] = strings.Trim(o.ETag, `"`)
	}
	return listing, nil
}

func (b *bucket) record(ctx context.Context) (record, error) {
	o, err := b.client.GetObject(ctx, b.name, b.prefix+recordName, minio.GetObjectOptions{})
	if err != nil {
		return record{}, b.explain(err, "read", recordName)
	}
	defer o.Close()
	const most = 64 << 20 // far more than the list of the largest site
	text, err := io.ReadAll(io.LimitReader(o, most))
	if err != nil {
		return record{}, b.explain(err, "read", recordName)
	}
	return readRecord(text)
}

// put writes one object whole and returns its entity tag. The store refuses bytes that
// were damaged on their way; what it was too busy for is tried again by the client.
func (b *bucket) put(ctx context.Context, o object) (string, error) {
	whole, digest := sha256.Sum256(o.bytes), md5.Sum(o.bytes)
	// Signed as a whole: in signed pieces, as the client would send it without TLS, it has
	// an encoding "aws-chunked", which some stores keep.
	info, err := minio.Core{Client: b.client}.PutObject(ctx, b.name, b.prefix+o.path, bytes.NewReader(o.bytes), int64(len(o.bytes)),
		base64.StdEncoding.EncodeToString(digest[:]), hex.EncodeToString(whole[:]), minio.PutObjectOptions{
			ContentType: o.entry.Type, CacheControl: o.entry.Caching, ContentEncoding: o.entry.Encoding,
			DisableContentSha256: true,
		})
	if err != nil {
		return "", b.explain(err, "write", o.path)
	}
	return strings.Trim(info.ETag, `"`), nil
}

// remove takes one object away; one that is gone already is fine.
func (b *bucket) remove(ctx context.Context, name string) error {
	if err := b.client.RemoveObject(ctx, b.name, b.prefix+name, minio.RemoveObjectOptions{}); err != nil {
		return b.explain(err, "remove", name)
	}
	return nil
}
