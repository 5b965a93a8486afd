#!/usr/bin/env bash
# The shared replay store against a real redis-server (Debian's), with two processes of the service. Needs `npm run build`.
set -euo pipefail
cd "$(dirname "$0")"

if ! command -v redis-server >/dev/null; then
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends redis-server
fi
[ -f ../../../dist/http/main.js ] || (cd ../../.. && npm run --silent build)
npm ci --no-audit --no-fund --silent
# Beside its own node_modules, as in a place where somebody installed the optional package.
rm -rf dist
cp -r ../../../dist dist
node replay.mjs
