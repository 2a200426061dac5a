#!/usr/bin/env bash
# Proves ./run and ./test in an empty Debian 12 made with debootstrap, so that a machine with more on it hides nothing.
# Needs root, the package debootstrap, a Debian mirror and the npm registry. BEEGARTH_MIRROR names the mirror.
# usage: tests/fresh_machine.sh [run|test]   (default: both)
set -euo pipefail
cd "$(dirname "$0")/.."
what=${1:-both}
room=${BEEGARTH_FRESH_ROOM:-/var/tmp/beegarth-fresh}
sources=$(cat /etc/apt/sources.list /etc/apt/sources.list.d/*.list /etc/apt/sources.list.d/*.sources 2>/dev/null || true)
mirror=${BEEGARTH_MIRROR:-$(sed -nE 's/^deb (\[[^]]*\] )?([^ ]+) bookworm main.*/\2/p; s/^URIs: *//p' <<<"$sources" | sed -n 1p)}
command -v debootstrap >/dev/null || { echo "debootstrap is missing: apt-get install debootstrap" >&2; exit 1; }

if [ ! -e "$room/etc/debian_version" ]; then
  debootstrap --variant=minbase --include=ca-certificates,git bookworm "$room" "${mirror:-http://deb.debian.org/debian}"
fi
# What the machine needs to reach its registries: addresses, certificates, package sources, npm's settings.
cp -L /etc/resolv.conf /etc/hosts "$room/etc/"
cp -rL /etc/apt/sources.list* /etc/apt/apt.conf.d /etc/apt/trusted.gpg.d /etc/apt/keyrings "$room/etc/apt/" 2>/dev/null || true
cp -rL /usr/local/share/ca-certificates/. "$room/usr/local/share/ca-certificates/" 2>/dev/null || true
for rc in "$HOME/.npmrc" /usr/local/etc/npmrc /etc/npmrc; do [ -f "$rc" ] && cp "$rc" "$room/root/.npmrc"; done
for mount in proc sys dev dev/pts; do mountpoint -q "$room/$mount" || mount --rbind "/$mount" "$room/$mount"; done
trap 'for mount in dev/pts dev sys proc; do umount -l "$room/$mount" 2>/dev/null || true; done' EXIT
chroot "$room" update-ca-certificates >/dev/null 2>&1 || true

rm -rf "$room/root/beegarth"
git clone -q "$(pwd)" "$room/root/beegarth"
inside() { chroot "$room" /usr/bin/env -i HOME=/root PATH=/usr/sbin:/usr/bin:/sbin:/bin LANG=C.UTF-8 \
  $(env | grep -iE '^(https?_proxy|no_proxy|npm_config_registry|node_extra_ca_certs)=' || true) bash -c "cd /root/beegarth && $1"; }
if [ "$what" != test ]; then
  start=$(date +%s)
  inside "./run --build && build/release/beegarth demo build/demo.garth && build/release/beegarth plan build/demo.garth"
  echo "./run --build and the demo's plan on a fresh machine: $(($(date +%s) - start)) s"
fi
if [ "$what" != run ]; then
  start=$(date +%s)
  inside "./test"
  echo "./test on a fresh machine: $(($(date +%s) - start)) s"
fi
