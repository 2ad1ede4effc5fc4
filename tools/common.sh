# shellcheck shell=bash
# Sourced by the four commands: where things are, and the few steps they share.
ROOT="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
CACHE="$ROOT/.cache"
JOBS="${JOBS:-$(nproc)}"
cd "$ROOT" || exit 1
mkdir -p "$CACHE"

say() { printf '%s\n' "$*" >&2; }
die() { say "$*"; exit 1; }

# Vite needs Node >= 20.19; a newer one on PATH wins over the bootstrapped one.
node_is_new_enough() {
  command -v node >/dev/null && command -v npm >/dev/null &&
    node -e 'const [a,b]=process.versions.node.split(".").map(Number);process.exit(a>20||(a===20&&b>=19)?0:1)'
}

use_node() {
  node_is_new_enough && return
  PATH="$CACHE/node/bin:$PATH"
  node_is_new_enough || die "No Node >= 20.19 here: run tools/setup web."
}

# build_preset PRESET [TARGET…]: configures once, then builds what is out of date; one build at a time per folder.
build_preset() {
  local preset="$1" dir="$ROOT/build/$1"
  shift
  mkdir -p "$dir"
  [[ -f "$dir/build.ninja" ]] || flock "$dir" cmake --preset "$preset" >"$dir/configure.log" 2>&1 ||
    { cat "$dir/configure.log" >&2; die "cmake --preset $preset failed."; }
  flock "$dir" ninja -C "$dir" -j "$JOBS" --quiet "$@" 2>&1 | { grep -vE '^ninja: (no work to do|Entering)' || true; } >&2
}

# npm_install FOLDER: npm ci when the lock file differs from the one installed.
npm_install() {
  local dir="$1" stamp="$1/node_modules/.installed-lock"
  cmp -s "$dir/package-lock.json" "$stamp" && return
  say "Installing the npm packages of $dir."
  (cd "$dir" && npm ci --no-audit --no-fund) >&2
  cp "$dir/package-lock.json" "$stamp"
}

# build_web: web/dist, when something below web/ changed since the last build.
build_web() {
  local stamp="$CACHE/web-built"
  npm_install web
  [[ -f web/dist/index.html && -f "$stamp" ]] &&
    [[ -z "$(find web -path web/node_modules -prune -o -path web/dist -prune -o -type f -newer "$stamp" -print -quit)" ]] && return
  say "Building the web app."
  : >"$stamp.new"
  (cd web && npm run --silent build) >&2
  mv "$stamp.new" "$stamp"
}
