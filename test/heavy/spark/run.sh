#!/usr/bin/env bash
# Spark (pyspark from PyPI) against the single-machine run: identical bytes with two workers, with one, and with an
# executor killed in the middle. Prints the scaling figure. Needs Java 17, Python 3 and `npm run build`.
set -euo pipefail
cd "$(dirname "$0")"
lines="${LINES_OF_EXPORT:-40000}"
work="${WORK:-$(mktemp -d)}"
program="$(cd ../../.. && pwd)/dist/cli/main.js"
job="$(cd ../../.. && pwd)/src/replay/spark/replay_job.py"
[ -f "$program" ] || (cd ../../.. && npm run --silent build)

venv="${VENV:-$work/venv}"
if [ ! -x "$venv/bin/spark-submit" ]; then
  python3 -m venv "$venv"
  "$venv/bin/pip" install --quiet "pyspark==3.5.6"
fi
export PYSPARK_PYTHON="$venv/bin/python3" SPARK_LOCAL_IP=127.0.0.1

node make-export.mjs "$work/export" "$lines"
node "$program" replay "$work/export" --every visit --threads 1 --out "$work/alone" >/dev/null 2>&1
cut_sums() { node -e 'process.stdout.write(JSON.stringify(JSON.parse(require("fs").readFileSync(process.argv[1], "utf8")).tally))' "$1"; }

# spark NAME MASTER: one run; the seconds stand in NAME.seconds.
spark() {
  local name="$1" master="$2"
  rm -rf "$work/$name"
  local before; before="$(date +%s.%N)"
  "$venv/bin/spark-submit" --master "$master" --conf spark.ui.enabled=false --conf spark.eventLog.enabled=false \
    --conf spark.executor.memory=1g --conf spark.task.maxFailures=8 \
    "$job" --command "node $program" --out "$work/$name" --splits 8 --partitions 8 ${PARQUET:-} \
    "$work/export" >"$work/$name.out" 2>"$work/$name.log"
  echo "$(date +%s.%N) - $before" | bc >"$work/$name.seconds"
}

# same NAME: the bytes of results and the sums of the report.
same() {
  cat "$work/$1"/results.ndjson/part-* | cmp - "$work/alone/results.ndjson"
  cat "$work/$1"/tally.ndjson/part-* | node "$program" replay-stage report --every visit --out "$work/$1/report"
  [ "$(cut_sums "$work/$1/report/report.json")" = "$(cut_sums "$work/alone/report.json")" ]
  echo "spark $1: identical results and sums, $(wc -l <"$work/alone/results.ndjson") lines, $(cat "$work/$1.seconds") s"
}

PARQUET=--parquet spark two 'local-cluster[2,1,1024]'
same two
ls "$work/two/results.parquet"/*.parquet >/dev/null
spark one 'local-cluster[1,1,1024]'
same one

# Kill one executor while tasks run: the oldest one that belongs to this run, by its id.
spark killed 'local-cluster[2,1,1024]' &
run=$!
victim=''
for _ in $(seq 1 240); do
  sleep 0.5
  kill -0 "$run" 2>/dev/null || break
  grep -q 'Starting task' "$work/killed.log" 2>/dev/null || continue
  victim="$(pgrep -f "CoarseGrainedExecutorBackend.*$(grep -o 'app-[0-9]*-[0-9]*' "$work/killed.log" | head -1)" | head -1 || true)"
  [ -n "$victim" ] || continue
  sleep "${KILL_AFTER:-2}"
  kill -9 "$victim" && echo "killed executor process $victim"
  break
done
wait "$run"
[ -n "$victim" ] || { echo 'no executor was found to kill' >&2; exit 1; }
grep -Eq 'Lost executor|Executor.*(lost|exited)' "$work/killed.log"
same killed
echo "spark, two workers against one: $(echo "scale=2; $(cat "$work/one.seconds") / $(cat "$work/two.seconds")" | bc)"
