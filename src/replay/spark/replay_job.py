# Replay on Apache Spark: our stages as filters, driven by Spark.
"""Replay on Apache Spark: Spark reads, shuffles by woman, schedules and retries; the stages are our own program.

spark-submit replay_job.py --command "pregnancy-htn" --out OUT [--parquet] [--partitions N] [--stage-options "..."] PATH...

PATH is anything Spark reads as text (folders, globs, s3a://, hdfs://, .gz). OUT gets results.ndjson/ (part files,
sorted by woman over all parts), tally.ndjson/ and, when asked, results.parquet/. Nothing is decided here.
"""

import argparse
import json
import shlex

from pyspark import StorageLevel
from pyspark.sql import SparkSession

SHARED = "*"
COUNTS = "#counts"
TALLY = "#tally"


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


def main():
    asked = arguments()
    spark = SparkSession.builder.appName("pregnancy-htn replay").getOrCreate()
    context = spark.sparkContext
    stage = shlex.join(shlex.split(asked.command) + ["replay-stage"])
    splits = asked.splits or context.defaultParallelism
    partitions = asked.partitions or context.defaultParallelism * 2

    lines = context.textFile(",".join(asked.paths), minPartitions=splits)
    kept = lines.pipe(f"{stage} extract", checkCode=True).persist(StorageLevel.DISK_ONLY)
    counts = kept.filter(lambda line: key_of(line) == COUNTS).map(lambda line: json.loads(line.split("\t", 2)[2]))
    totals = counts.map(lambda each: [each[name] for name in ("lines", "blank", "kept", "notNeeded", "setAside", "rejected")])
    sums = totals.reduce(lambda a, b: [x + y for x, y in zip(a, b)])
    shared = context.broadcast(sorted(set(kept.filter(lambda line: key_of(line) == SHARED).collect())))

    # By woman: equal keys to one partition, then sorted inside it, so that her lines follow each other.
    by_woman = (
        kept.filter(lambda line: key_of(line) not in (SHARED, COUNTS))
        .map(lambda line: (key_of(line), line))
        .repartitionAndSortWithinPartitions(partitions)
        .map(lambda pair: pair[1])
        .mapPartitions(lambda own: [*shared.value, *own] if shared.value else own)
    )
    assessed = by_woman.pipe(f"{stage} assess {asked.stage_options}", checkCode=True).persist(StorageLevel.DISK_ONLY)
    results = assessed.filter(lambda line: key_of(line) != TALLY)
    sorted_results = (
        results.zipWithIndex()
        .sortBy(lambda pair: (order(key_of(pair[0])), pair[1]))
        .map(lambda pair: pair[0].split("\t", 2)[2])
    )
    sorted_results.saveAsTextFile(f"{asked.out}/results.ndjson")
    assessed.filter(lambda line: key_of(line) == TALLY).map(lambda line: line.split("\t", 2)[2]).saveAsTextFile(
        f"{asked.out}/tally.ndjson"
    )
    if asked.parquet:
        spark.read.json(f"{asked.out}/results.ndjson").write.mode("overwrite").parquet(f"{asked.out}/results.parquet")
    print(json.dumps(dict(zip(("lines", "blank", "kept", "notNeeded", "setAside", "rejected"), sums))))
    spark.stop()


if __name__ == "__main__":
    main()
