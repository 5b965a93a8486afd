#!/bin/sh
# Mutation testing of src/rules, src/timeline and the guidelines as data. Takes hours in full on two cores:
#   test/heavy/mutation/run.sh                     everything
#   MUTATION_SAMPLE=8 test/heavy/mutation/run.sh   one mutant in eight
#   MUTATION_MINUTES=20 test/heavy/mutation/run.sh src/rules/   those of one folder for which twenty minutes are enough
#   MUTATION_SEED=2 MUTATION_MINUTES=20 ...        another sample of as many
#   test/heavy/mutation/run.sh src/rules/checks/   one folder; `data frontline` for the data of one guideline
# Survivors are written beside the work folder. Needs `npm ci` in the project.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cd "$here"
[ -d node_modules/@stryker-mutator ] || npm install --no-audit --no-fund --no-package-lock
MUTATION_WORK=${MUTATION_WORK:-$(mktemp -d)/work}
export MUTATION_WORK
if [ "${1:-}" = data ]; then
  shift
  node guideline-data.mjs "$@"
elif [ $# -gt 0 ]; then
  node mutate.mjs "$@"
else
  node mutate.mjs src/rules/
  node mutate.mjs src/timeline/
  node guideline-data.mjs
fi
echo "Survivors: $(dirname "$MUTATION_WORK")"
