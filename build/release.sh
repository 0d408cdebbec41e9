#!/usr/bin/env bash
# Everything of a release into release/<version>: bash build/release.sh [-help]
# Archives for six systems and the book as PDF; needs Go, git and, for the book, Chromium.
set -euo pipefail
cd "$(dirname "$0")/.."
exec go run ./build/release "$@"
