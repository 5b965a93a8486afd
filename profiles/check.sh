#!/usr/bin/env bash
# Compiles the FSH sources anew and fails when built/ differs from what is committed.
set -euo pipefail
cd "$(dirname "$0")"
committed="$(mktemp -d)"
trap 'rm -rf "${committed}"' EXIT
cp -r built "${committed}/"
npm ci --no-audit --no-fund
npm run --silent build
diff -r "${committed}/built" built
