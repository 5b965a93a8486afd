#!/usr/bin/env bash
# Compares the arithmetic of our measures with fqm-execution. Needs the registry once, then nothing; needs dist/.
set -euo pipefail
cd "$(dirname "$0")"
[ -d node_modules/fqm-execution ] || npm ci --no-audit --no-fund --silent
(cd ../../.. && npm run --silent build)
node compare.mjs
