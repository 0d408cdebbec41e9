package publish

import (
	"context"
	"errors"
	"fmt"
	"net"
	"strings"

	"github.com/minio/minio-go/v7"
)

// explain says what could not be done to which object, why, and what helps. The texts of
// the store are shown, but never a key that stands in one.
func (b *bucket) explain(err error, do, name string) error {
	if errors.Is(err, context.Canceled) {
		return err
	}
	what := fmt.Sprintf("%s %s", do, b)
	if name != "" {
		what += name
	}
	answer := minio.ToErrorResponse(err)
	why, hint := b.hint(answer, do, err)
	return fmt.Errorf("%s: %s\n    hint: %s", what, b.hide(why), hint)
}

func (b *bucket) hint(answer minio.ErrorResponse, do string, err error) (why, hint string) {
	why = strings.TrimSpace(answer.Code + ": " + answer.Message)
	var unreached *net.OpError
	var unknown *net.DNSError
	switch answer.Code {
	case "InvalidAccessKeyId", "SignatureDoesNotMatch", "UnauthorizedAccess", "InvalidToken", "ExpiredToken", "ExpiredTokenException":
		return why, "the key is from " + b.key.from + "; look whether both its parts belong together, to " + b.host + ", and are still good"
	case "RequestTimeTooSkewed", "RequestExpired":
		return why, "set the clock of this machine"
	case "AccessDenied", "AllAccessDisabled", "AccountProblem", "Forbidden":
		return why, "the key (from " + b.key.from + ") is refused; it needs leave to list the bucket and to read, write and remove objects below the prefix"
	case "NoSuchBucket":
		return why, "make the bucket first, or look at its name and the endpoint (" + b.host + ")"
	case "AuthorizationHeaderMalformed", "PermanentRedirect", "IllegalLocationConstraintException", "InvalidRegion":
		return why, "name the bucket's region in AWS_REGION, or with ?region= in the target"
	case "XMinioStorageFull", "XMinioAdminBucketQuotaExceeded", "QuotaExceeded", "QuotaExceededException", "InsufficientStorage", "507 Insufficient Storage":
		return why, "the store is full: make room there, then publish again"
	case "BadDigest", "InvalidDigest":
		return why, "the bytes were damaged on their way; publish again"
	}
	switch {
	case errors.As(err, &unknown), errors.As(err, &unreached):
		return err.Error(), "nobody answers at " + b.host + "; look at ?endpoint= or AWS_ENDPOINT_URL and at the network"
	case answer.StatusCode == 401 || answer.StatusCode == 403:
		return why, "the key is from " + b.key.from + "; look whether it is good for " + b.host + " and may " + do + " there"
	case answer.StatusCode >= 500:
		return why, "the store is in trouble (is it full?); publish again later"
	case answer.Code == "" || answer.Code == "InternalError":
		return err.Error(), "publish again; look at the endpoint (" + b.host + ") if it stays so"
	}
	return why, "look at the endpoint (" + b.host + ") and what it allows"
}

// hide takes the parts of the key out of a text.
func (b *bucket) hide(text string) string {
	for _, secret := range []string{b.key.value.SecretAccessKey, b.key.value.SessionToken, b.key.value.AccessKeyID} {
		if secret != "" {
			text = strings.ReplaceAll(text, secret, "…")
		}
	}
	return text
}
