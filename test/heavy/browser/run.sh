#!/usr/bin/env bash
# The page in real Chromium: stories, launch, print, axe; then pictures and measurements. Needs /usr/bin/chromium.
# Fails with the first check that does not hold; figures of speed are only printed.
set -euo pipefail
cd "$(dirname "$0")"
npm ci --no-audit --no-fund --silent
mkdir -p out
(cd ../../.. && npm run --silent build)
node check-page.mjs
node screenshots.mjs
node measure.mjs || echo 'speed could not be measured'
