#!/usr/bin/env bash
# The page in real Chromium: stories, launch, print, axe; then pictures and measurements. Needs /usr/bin/chromium.
set -euo pipefail
cd "$(dirname "$0")"
npm ci --no-audit --no-fund --silent
mkdir -p out
[ -f ../../../dist/web/page.js ] || (cd ../../.. && npm run --silent build)
node check-page.mjs
node screenshots.mjs
node measure.mjs
