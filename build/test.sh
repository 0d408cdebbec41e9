#!/usr/bin/env bash
# Every check of the project, as the shared build runs it: bash build/test.sh
# Go alone builds the site; what is installed here serves the checks only.
set -euo pipefail
export GOGC=400 # memory for time: collecting garbage is a fifth of what these tests take otherwise
cd "$(dirname "$0")/.."

step() { printf '\n== %s\n' "$1"; }
fail() { printf 'capspan: %s\n' "$1" >&2; exit 1; }

# ---- what the checks need, and only what is missing

as_root() {
  if [ "$(id -u)" -eq 0 ]; then "$@"; else sudo "$@"; fi
}

missing=()
command -v chromium-headless-shell >/dev/null || command -v chromium >/dev/null || missing+=(chromium-headless-shell)
command -v node >/dev/null || missing+=(nodejs)
command -v npm >/dev/null || missing+=(npm)
command -v pdftoppm >/dev/null || missing+=(poppler-utils)
command -v java >/dev/null || missing+=(default-jre-headless)
command -v nginx >/dev/null || [ -x /usr/sbin/nginx ] || missing+=(nginx)
[ -e /usr/lib/nginx/modules/ngx_http_brotli_static_module.so ] || missing+=(libnginx-mod-http-brotli-static)
command -v caddy >/dev/null || missing+=(caddy)
command -v wrk >/dev/null || missing+=(wrk)
if [ "${#missing[@]}" -gt 0 ]; then
  step "install ${missing[*]}"
  command -v apt-get >/dev/null || fail "install these first: ${missing[*]}"
  as_root apt-get update -qq
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}"
fi

# What takes long and needs no watching runs beside the checks. What it says is shown when
# it is waited for, and where the checks end early it ends with them.
said=$(mktemp -d)
leave() {
  for pid in "$said"/*.pid; do
    [ ! -e "$pid" ] || kill "$(cat "$pid")" 2>/dev/null || true
  done
  rm -rf "$said"
}
trap leave EXIT

beside() { # NAME PROGRAM ARGUMENT...
  "${@:2}" >"$said/$1" 2>&1 &
  echo $! >"$said/$1.pid"
}

await() { # NAME WHAT
  step "$2"
  wait "$(cat "$said/$1.pid")" || { cat "$said/$1"; fail "it failed: $2"; }
  rm "$said/$1.pid"
  cat "$said/$1"
}

tools=build/npm/node_modules
npm_tools() {
  cmp -s build/npm/package-lock.json "$tools/.capspan-lock" && return
  npm ci --prefix build/npm --ignore-scripts --no-audit --no-fund
  cp build/npm/package-lock.json "$tools/.capspan-lock"
}

rclone=build/.cache/rclone
rclone_store() {
  [ -x "$rclone" ] && cmp -s build/hosts/rclone/go.mod "$rclone.mod" && return
  mkdir -p build/.cache
  nice -n 10 go build -C build/hosts/rclone -ldflags=-s -o ../../.cache/rclone .
  cp build/hosts/rclone/go.mod "$rclone.mod"
}

beside npm npm_tools
beside rclone rclone_store

tsc=$tools/.bin/tsc biome=$tools/.bin/biome

# ---- the checks, cheapest first

step "gofmt"
unformatted=$(gofmt -l build cmd content static tables templates | grep -v node_modules || true)
[ -z "$unformatted" ] || fail "run gofmt -w on: $unformatted"
echo "gofmt: every file is in form"

step "go vet"
go vet ./...
go vet -tags browser ./build/browser/
go vet -tags hosts ./build/hosts/
echo "go vet: nothing found"

# Chromium and servers wait often, for pages and for other processes, and so do the checks
# before them: the tests of the packages run behind all that, where they take only what it
# leaves of the machine. They are vetted already, and no debugger (-w) will look at them.
beside packages nice -n 10 go test -vet=off -ldflags=-w -timeout 30m ./...

await npm "npm tools of the checks"

step "types of the core, the calculations, the slip and the record (no DOM), of the page parts and of the service worker (no DOM either)"
"$tsc" -p static/matcher
"$tsc" -p static/driveline
"$tsc" -p static/order
"$tsc" -p static/shaft
"$tsc" -p static/parts
"$tsc" -p static/worker
echo "tsc: types agree"

step "lint and form of scripts and styles"
"$biome" check --config-path=build/npm --error-on-warnings static content

step "the shipped tables, pages and links"
go run ./cmd/capspan check --root .
go run ./cmd/capspan fmt --root . --check
go run ./cmd/capspan schema --root . --check

step "what the other languages lack"
for folder in content/[a-z][a-z] content/[a-z][a-z]-*; do
  [ ! -d "$folder" ] || go run ./cmd/capspan translate --root . "${folder#content/}"
done

step "the site in Chromium, by axe and by the HTML checker"
go test -vet=off -tags browser -count=1 -timeout 20m ./build/browser/

await rclone "rclone, the store that publishing is tried on"

step "the site behind nginx and Caddy, and on its way into a store"
go test -vet=off -tags hosts -count=1 ./build/hosts/

await packages "go test, what it said"

printf '\nall checks passed\n'
