# Sourced by ./run and ./test: says what is missing, installs it on Debian 12, names it elsewhere.

# say WORDS: what is being done now, and how many minutes and seconds after the start
say() { printf '\033[1m== %s\033[0m (after %d:%02d)\n' "$*" $((SECONDS / 60)) $((SECONDS % 60)); }

# packages_in FILE...: the names in package lists, without comments
packages_in() { grep -hvE '^[[:space:]]*(#|$)' "$@"; }

# install_packages FILE...: installs what is missing
install_packages() {
  local wanted missing=() name
  wanted=$(packages_in "$@")
  command -v node >/dev/null 2>&1 || wanted="$wanted nodejs"
  command -v npm >/dev/null 2>&1 || wanted="$wanted npm"
  if ! command -v dpkg-query >/dev/null 2>&1 || ! grep -q '^VERSION_ID="12"' /etc/os-release 2>/dev/null ||
     ! grep -q '^ID=debian' /etc/os-release 2>/dev/null; then
    echo "This is not Debian 12. Install these packages, or their like, and build with CMake yourself:" >&2
    echo "$wanted" | tr '\n' ' ' >&2
    echo >&2
    return 1
  fi
  for name in $wanted; do
    [ "$(dpkg-query -W -f='${db:Status-Status}' "$name" 2>/dev/null)" = installed ] || missing+=("$name")
  done
  if [ ${#missing[@]} -eq 0 ]; then
    echo "every package needed is installed"
    return 0
  fi
  local root=()
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null 2>&1 || { echo "sudo is missing: as root, run apt-get install ${missing[*]}" >&2; return 1; }
    root=(sudo)
  fi
  say "installing ${#missing[@]} Debian packages: ${missing[*]}"
  "${root[@]}" apt-get update -q
  "${root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -qq -y --no-install-recommends "${missing[@]}" >/dev/null
}

# build_page: builds web/ into web/dist when a source changed since the last build
build_page() {
  [ -f web/package.json ] || return 0
  local stamp=build/page.sum now
  mkdir -p build
  now=$(find web src/http/openapi.json -path web/node_modules -prune -o -path web/dist -prune -o -path web/src/generated -prune \
        -o -type f -print0 | sort -z | xargs -0 sha256sum | sha256sum)
  if [ -f web/dist/index.html ] && [ "$(cat "$stamp" 2>/dev/null)" = "$now" ]; then
    echo "the page is up to date"
    return 0
  fi
  say "building the page (npm ci, vite)"
  (cd web && npm ci --no-audit --no-fund --loglevel=error && npm run --silent build)
  echo "$now" > "$stamp"
}
