#!/usr/bin/env bash
# The service against a real FHIR server: HAPI FHIR's JPA server, in memory, in this machine's Java. Needs `npm run build`.
set -euo pipefail
here="$(cd "$(dirname "$0")" && pwd)"
root="$(cd "${here}/../../.." && pwd)"
work="$(mktemp -d)"
server=''
cleanup() {
  [ -z "${server}" ] || kill "${server}" 2>/dev/null || true
  rm -rf "${work}"
}
trap cleanup EXIT

cd "${root}"
[ -f dist/http/main.js ] || npm run --silent build

cd "${here}"
mvn -q -B compile dependency:build-classpath -Dmdep.outputFile=target/classpath
: > "${work}/server.log"
export TOKEN="token-$(od -An -N12 -tx1 /dev/urandom | tr -d ' \n')"
java -Xmx1500m -cp "target/classes:$(cat target/classpath)" fhirserver.Main 0 > "${work}/server.log" 2>&1 &
server=$!
for _ in $(seq 180); do
  port="$(sed -n 's/^listening on //p' "${work}/server.log")"
  [ -z "${port}" ] || break
  kill -0 "${server}" 2>/dev/null || { tail -20 "${work}/server.log"; exit 1; }
  sleep 1
done
node real-server.mjs "http://127.0.0.1:${port}/fhir" || { grep -n 'ERROR\|Exception' "${work}/server.log" | tail -20; exit 1; }
