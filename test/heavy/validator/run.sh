#!/usr/bin/env bash
# Validates every conformance resource, example and answer with the HAPI FHIR validator, offline once Maven has fetched it.
set -euo pipefail
here="$(cd "$(dirname "$0")" && pwd)"
root="$(cd "${here}/../../.." && pwd)"
answers="$(mktemp -d)"
trap 'rm -rf "${answers}"' EXIT

cd "${root}"
[ -f dist/cli/main.js ] || npm run --silent build
node "${here}/answers.mjs" "${answers}"

cd "${here}"
mvn -q -B compile dependency:build-classpath -Dmdep.outputFile=target/classpath
cd "${root}"
java -Xmx2g -cp "${here}/target/classes:$(cat "${here}/target/classpath")" org.pregnancyhtn.Validate \
  profiles/built,profiles/generated "${here}/explained-warnings.md" \
  profiles/built profiles/generated examples "${answers}"
