package publish

import (
	"cmp"
	"fmt"
	"io/fs"
	"net/http"
	"net/url"
	"os"
	"strings"

	"github.com/minio/minio-go/v7"
	"github.com/minio/minio-go/v7/pkg/credentials"
	"github.com/minio/minio-go/v7/pkg/s3utils"
)

// key is what signs requests. Its values are never printed.
type key struct {
	value credentials.Value
	from  string // where it was found, for messages
}

// newBucket reads s3://bucket/prefix?endpoint=…&region=… and finds key, endpoint and
// region where the environment has them. It asks nobody.
func newBucket(target string) (*bucket, error) {
	u, err := url.Parse(target)
	if err != nil || u.User != nil {
		// Not shown: somebody may have written a key into it.
		return nil, fmt.Errorf("the target is no address such as s3://bucket/prefix?endpoint=https://host; a key never stands in it, but in AWS_ACCESS_KEY_ID and AWS_SECRET_ACCESS_KEY")
	}
	query := u.Query()
	for name := range query {
		if name != "endpoint" && name != "region" {
			return nil, fmt.Errorf("the target has ?%s=, and may have endpoint and region", name)
		}
	}
	b := &bucket{name: u.Host, prefix: strings.Trim(u.Path, "/")}
	if err := s3utils.CheckValidBucketNameStrict(b.name); err != nil {
		return nil, fmt.Errorf("the bucket %q: %w", b.name, err)
	}
	if b.prefix != "" {
		if !fs.ValidPath(b.prefix) {
			return nil, fmt.Errorf("the prefix %q is no plain path", b.prefix)
		}
		b.prefix += "/"
	}
	endpoint := cmp.Or(query.Get("endpoint"), os.Getenv("AWS_ENDPOINT_URL_S3"), os.Getenv("AWS_ENDPOINT_URL"))
	region := cmp.Or(query.Get("region"), os.Getenv("AWS_REGION"), os.Getenv("AWS_DEFAULT_REGION"))
	if endpoint == "" {
		endpoint = "https://s3.amazonaws.com" // the client finds the bucket's region itself
	} else {
		region = cmp.Or(region, "us-east-1") // what stores without regions call theirs
	}
	at, err := url.Parse(endpoint)
	if err != nil || at.Scheme != "https" && at.Scheme != "http" || at.Host == "" || strings.Trim(at.Path, "/") != "" || at.User != nil || at.RawQuery != "" {
		return nil, fmt.Errorf("the endpoint is no address such as https://s3.example.com (from ?endpoint=, AWS_ENDPOINT_URL_S3 or AWS_ENDPOINT_URL)")
	}
	if b.key, err = findKey(); err != nil {
		return nil, err
	}
	b.host, b.region = at.Host, region
	b.client, err = minio.New(at.Host, &minio.Options{
		Creds:  credentials.NewStaticV4(b.key.value.AccessKeyID, b.key.value.SecretAccessKey, b.key.value.SessionToken),
		Secure: at.Scheme == "https", Region: region, MaxRetries: 6,
	})
	if err != nil {
		return nil, fmt.Errorf("the endpoint %s: %w", b.host, err)
	}
	return b, nil
}

// findKey looks where the tools for such stores look: the environment, the shared files
// (AWS_SHARED_CREDENTIALS_FILE, AWS_PROFILE), and what a job of a cluster is given. A
// machine's own metadata service is not asked: elsewhere nobody answers there.
func findKey() (key, error) {
	type place struct {
		from     string
		provider credentials.Provider
	}
	places := []place{
		{"AWS_ACCESS_KEY_ID and AWS_SECRET_ACCESS_KEY", &credentials.EnvAWS{}},
		{"the profile " + cmp.Or(os.Getenv("AWS_PROFILE"), "default") + " of the shared credentials file", &credentials.FileAWSCredentials{}},
	}
	for _, name := range []string{"AWS_WEB_IDENTITY_TOKEN_FILE", "AWS_CONTAINER_CREDENTIALS_RELATIVE_URI", "AWS_CONTAINER_CREDENTIALS_FULL_URI"} {
		if os.Getenv(name) != "" {
			places = append(places, place{name, &credentials.IAM{}})
		}
	}
	for _, p := range places {
		v, err := p.provider.RetrieveWithCredContext(&credentials.CredContext{Client: http.DefaultClient})
		if err == nil && v.AccessKeyID != "" && v.SecretAccessKey != "" {
			return key{v, p.from}, nil
		}
	}
	return key{}, fmt.Errorf("there is no key for the bucket: set AWS_ACCESS_KEY_ID and AWS_SECRET_ACCESS_KEY, or AWS_PROFILE for one of ~/.aws/credentials")
}
