# Replay on Apache Spark: our stages as filters, driven by Spark.
"""Replay on Apache Spark: Spark reads, shuffles by woman, schedules and retries; the stages are our own program.

spark-submit replay_job.py --command "pregnancy-htn" --out OUT [--parquet] [--partitions N] [--stage-options "..."] PATH...

PATH is anything Spark reads as text (folders, globs, s3a://, hdfs://, .gz). OUT gets results.ndjson/ (part files,
sorted by woman over all parts), tally.ndjson/ and, when asked, results.parquet/. Nothing is decided here.
--stage-options are those of `replay` (--every, --guideline, --from, --to, --site).
"""

import argparse
import bisect
import heapq
import itertools
import json
import shlex
import zlib

from pyspark import StorageLevel
from pyspark.sql import SparkSession

SHARED = "*"
COUNTS = "#counts"
TALLY = "#tally"
BY_IDENTIFIER = "Patient?identifier="
INDEX = "#" + BY_IDENTIFIER
WOMAN = "woman"
SAMPLE = 200
COUNTED = ("lines", "blank", "kept", "notNeeded", "setAside", "rejected")


def key_of(line):
    return line.split("\t", 1)[0]


def arguments():
    parser = argparse.ArgumentParser()
    parser.add_argument("paths", nargs="+")
    parser.add_argument("--command", default="pregnancy-htn")
    parser.add_argument("--out", required=True)
    parser.add_argument("--partitions", type=int, default=0)
    parser.add_argument("--splits", type=int, default=0)
    parser.add_argument("--parquet", action="store_true")
    parser.add_argument("--stage-options", default="")
    return parser.parse_args()


def order(key):
    """UTF-16 units: the order in which the single-machine run sorts women."""
    return key.encode("utf-16-be", "surrogatepass")


def aside(lines):
    """Of one split: what is about all of it, and a sample of its women, the same one whenever it is taken."""
    women = set()
    for line in lines:
        key = key_of(line)
        if key in (SHARED, COUNTS):
            yield key, line
        elif not key.startswith(INDEX):
            women.add(key)
    yield from ((BY_IDENTIFIER, key) for key in sorted(women) if key.startswith(BY_IDENTIFIER))
    for key in heapq.nsmallest(SAMPLE, women, key=lambda key: zlib.crc32(key.encode("utf-8", "surrogatepass"))):
        yield WOMAN, key


def owners_of(asked, kept):
    """Whose the identifiers are by which lines name a woman; not those that nobody has, or that several have."""
    if not asked:
        return {}
    indexed = kept.filter(lambda line: line.startswith(INDEX) and key_of(line)[1:] in asked).distinct().collect()
    owners = {}
    for line in indexed:
        owners.setdefault(key_of(line)[1:], set()).add(json.loads(line.split("\t", 2)[2]))
    return {key: women.pop() for key, women in owners.items() if len(women) == 1}


def limits_of(women, partitions):
    """Where one partition ends and the next begins, so that the parts are sorted by woman over all of them."""
    keys = sorted(set(order(key) for key in women))
    return [keys[len(keys) * at // partitions] for at in range(1, partitions)] if keys else []


def main():
    asked = arguments()
    spark = SparkSession.builder.appName("pregnancy-htn replay").getOrCreate()
    context = spark.sparkContext
    stage = shlex.join(shlex.split(asked.command) + ["replay-stage"])
    splits = asked.splits or context.defaultParallelism
    partitions = asked.partitions or context.defaultParallelism * 2

    lines = context.textFile(",".join(asked.paths), minPartitions=splits)
    kept = lines.pipe(f"{stage} extract {asked.stage_options}", checkCode=True).persist(StorageLevel.DISK_ONLY)
    found = {COUNTS: [], SHARED: [], BY_IDENTIFIER: [], WOMAN: []}
    for kind, text in kept.mapPartitions(aside).collect():
        found[kind].append(text)
    counts = [json.loads(line.split("\t", 2)[2]) for line in found[COUNTS]]
    shared = context.broadcast(sorted(set(found[SHARED])))
    limits = limits_of(found[WOMAN], partitions)
    owners = context.broadcast(owners_of(set(found[BY_IDENTIFIER]), kept))

    # By woman: equal keys to one partition, then sorted inside it, so that her lines follow each other.
    by_woman = (
        kept.filter(lambda line: key_of(line) not in (SHARED, COUNTS) and not line.startswith(INDEX))
        .map(lambda line: (key_of(line), line.split("\t", 1)[1]))
        .map(lambda pair: (owners.value.get(pair[0], pair[0]), pair[1]))
        .repartitionAndSortWithinPartitions(
            partitions, partitionFunc=lambda key: bisect.bisect_right(limits, order(key)), keyfunc=order
        )
        .map(lambda pair: f"{pair[0]}\t{pair[1]}")
        .mapPartitions(lambda own: itertools.chain(shared.value, own))
    )
    assessed = by_woman.pipe(f"{stage} assess {asked.stage_options}", checkCode=True).persist(StorageLevel.DISK_ONLY)
    for name, is_wanted in (
        ("results.ndjson", lambda line: key_of(line) != TALLY),
        ("tally.ndjson", lambda line: key_of(line) == TALLY),
    ):
        assessed.filter(is_wanted).map(lambda line: line.split("\t", 2)[2]).saveAsTextFile(f"{asked.out}/{name}")
    if asked.parquet:
        spark.read.json(f"{asked.out}/results.ndjson").write.mode("overwrite").parquet(f"{asked.out}/results.parquet")
    print(json.dumps({name: sum(each[name] for each in counts) for name in COUNTED}))
    spark.stop()


if __name__ == "__main__":
    main()
