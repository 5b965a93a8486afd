#!/usr/bin/env bash
# Spark (pyspark from PyPI) against the single-machine run: identical bytes with two workers, with one, and with an
# executor killed in the middle. Prints the scaling figure: one worker has one core, two workers have two.
# Needs Java 17, Python 3 and `npm run build`. LINES_OF_EXPORT sets the size, VENV and WORK keep things between runs.
set -euo pipefail
cd "$(dirname "$0")"
root="$(cd ../../.. && pwd)"
lines="${LINES_OF_EXPORT:-20000}"
work="${WORK:-$(mktemp -d)}"
[ -n "${WORK:-}" ] || trap 'rm -rf "$work"' EXIT
program="$root/dist/cli/main.js"
[ -f "$program" ] || (cd "$root" && npm run --silent build)

venv="${VENV:-$work/venv}"
if [ ! -x "$venv/bin/spark-submit" ]; then
  python3 -m venv "$venv"
  "$venv/bin/pip" install --quiet --disable-pip-version-check -r requirements.txt
fi
export PYSPARK_PYTHON="$venv/bin/python3" SPARK_LOCAL_IP=127.0.0.1

# A window, so that the measures are reported too.
asked=(--every visit --from 2025-01-01 --to 2025-12-31)

fail() {
  echo "spark: $1" >&2
  [ -z "${2:-}" ] || grep -E 'ERROR|Error|Exception|pregnancy-htn:' "$work/$2.log" | tail -20 >&2
  exit 1
}

# spark NAME CORES MASTER [OPTION...]: one run on so many cores; its seconds stand in NAME.seconds.
spark() {
  local name="$1" cores="$2" master="$3" before="$EPOCHREALTIME"
  shift 3
  rm -rf "${work:?}/$name" "$work/$name.log"
  taskset -c "0-$((cores - 1))" "$venv/bin/spark-submit" --master "$master" --conf spark.ui.enabled=false \
    --conf spark.executor.memory=1g --conf spark.task.maxFailures=8 "$root/src/replay/spark/replay_job.py" \
    --command "node $program" --out "$work/$name" --splits 6 --partitions 6 --stage-options "${asked[*]}" "$@" \
    "$work/export" > "$work/$name.out" 2> "$work/$name.log" || return 1
  node -p "($EPOCHREALTIME - $before).toFixed(1)" > "$work/$name.seconds"
}

# same NAME: results and every file of the report are, byte for byte, those of the single-machine run.
same() {
  cat "$work/$1"/results.ndjson/part-* | cmp - "$work/alone/results.ndjson" || fail "$1: other results" "$1"
  cat "$work/$1"/tally.ndjson/part-* | node "$program" replay-stage report "${asked[@]}" --out "$work/$1/report"
  node compare-reports.mjs "$work/$1/report" "$work/alone" || fail "$1: another report" "$1"
  echo "spark $1: identical results and report, $(wc -l < "$work/alone/results.ndjson") lines, $(cat "$work/$1.seconds") s"
}

# Kills one executor of a run once so many of its tasks are done; fails when the run was over before.
kill_one() {
  local driver="$1" tasks="$2" application victim
  while kill -0 "$driver" 2> /dev/null; do
    sleep 0.1
    [ "$(cat "$work/killed.log" 2> /dev/null | grep -c 'Finished task')" -ge "$tasks" ] || continue
    application="$(grep -o -m 1 'app-[0-9]*-[0-9]*' "$work/killed.log" | head -1)"
    [ -n "$application" ] || continue
    victim="$(pgrep -f "CoarseGrainedExecutorBackend.*$application" | head -1)"
    [ -n "$victim" ] && kill -9 "$victim" && echo "killed an executor after $tasks tasks" && return 0
  done
  return 1
}

node make-export.mjs "$work/export" "$lines"
node "$program" replay "$work/export" "${asked[@]}" --threads 1 --out "$work/alone" > /dev/null 2>&1

spark two 2 'local-cluster[2,1,1024]' --parquet || fail 'the run with two workers failed' two
ls "$work/two/results.parquet"/*.parquet > /dev/null
same two
spark one 1 'local-cluster[1,1,1024]' --parquet || fail 'the run with one worker failed' one
same one

# In the middle: six tasks read the export, six judge the women. Should the run be over first, kill earlier.
lost=''
for tasks in 8 4 1; do
  rm -f "$work/killed.log"
  spark killed 2 'local-cluster[2,1,1024]' &
  run=$!
  kill_one "$run" "$tasks" || true
  wait "$run" || fail 'the run with a killed executor failed' killed
  if grep -Eq 'Lost executor' "$work/killed.log"; then
    lost=yes
    break
  fi
done
[ -n "$lost" ] || fail 'no executor could be killed before the run was over; take a larger LINES_OF_EXPORT'
same killed
echo "spark, two workers against one: $(node -p "($(cat "$work/one.seconds") / $(cat "$work/two.seconds")).toFixed(2)") ($lines lines)"
