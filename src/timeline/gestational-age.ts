// Which dating of a pregnancy is used, and how far the others differ. Hands on the dating.
import { formatDay } from './calendar.ts';
import type { DatingFact } from './dating-facts.ts';
import { daysOf } from './duration.ts';
import { formatGestation } from './gestation-text.ts';
import type { Dating, TimelineValues } from './timeline.ts';

/**
 * Which of these facts dates the pregnancy?
 *
 * Given    facts   dating facts of one pregnancy, in any order
 *          values  re-dating table and lengths, in days
 * Returns  the dating with the other facts, remarks and whether there is a conflict; undefined without facts
 * Throws   never
 * Notes    1. Ultrasound and last period: the difference on the day of the earliest scan is held against the
 *             table; a larger one re-dates by ultrasound, else the last period stands.
 *          2. Otherwise, in this order: ultrasound, the due date the clinician chose, a known conception, a
 *             stated age, the last period; but a last period that agrees with a stated age within the limit
 *             of conflict goes before it, for a stated age is often given in whole weeks.
 *          3. Within a method the earliest stated one is used: the newest does not win.
 *          4. A conflict is a fact that differs by more than the limit; for scans the limit of their table row.
 *             A last period that ultrasound has replaced is not a conflict.
 * Source   clinical-rules 2.2 rules 9, 10, 13; order in note 2 ours.
 */
export function chooseDating(facts: readonly DatingFact[], values: TimelineValues): Dating | undefined {
  const sorted = [...facts].sort(compareFacts);
  const choice = chooseFact(sorted, values);
  if (choice === undefined) return undefined;
  const { fact, settled } = choice;
  const differing = sorted.filter(
    (other) => other !== fact && !settled.includes(other) && isConflicting(other, fact, values),
  );
  const remarks = [
    ...fact.remarks,
    ...choice.remarks,
    ...differing.map(
      (other) =>
        `${wording(other)} differs by ${String(Math.abs(other.startDay - fact.startDay))} days and was not used.`,
    ),
    ...withoutScan(sorted, fact, values),
  ];
  return {
    startDay: fact.startDay,
    method: fact.method,
    asSent: fact.asSent,
    source: sourceOf(fact),
    others: sorted.filter((other) => other !== fact).map(otherOf),
    remarks,
    conflict: differing.length > 0,
  };
}

interface Choice {
  readonly fact: DatingFact;
  /** Facts whose difference is accounted for by the table. */
  readonly settled: readonly DatingFact[];
  readonly remarks: readonly string[];
}

function chooseFact(sorted: readonly DatingFact[], values: TimelineValues): Choice | undefined {
  const first = (method: Dating['method']): DatingFact | undefined =>
    sorted.find((fact) => fact.method === method);
  const scan = first('ultrasound');
  const lastPeriod = first('last-period');
  if (scan !== undefined && lastPeriod !== undefined) return redated(scan, lastPeriod, values);
  const stated = first('stated-age');
  const agreeing =
    stated !== undefined && lastPeriod !== undefined && !isConflicting(stated, lastPeriod, values)
      ? lastPeriod
      : stated;
  const fact = scan ?? first('due-date') ?? first('conception') ?? agreeing ?? lastPeriod;
  return fact === undefined ? undefined : { fact, settled: [], remarks: [] };
}

function redated(scan: DatingFact, lastPeriod: DatingFact, values: TimelineValues): Choice {
  const settled = [scan, lastPeriod];
  const difference = Math.abs(scan.startDay - lastPeriod.startDay);
  const ageAtScan = scan.observedDay === undefined ? undefined : scan.observedDay - lastPeriod.startDay;
  const row = rowAt(ageAtScan, values);
  if (row === undefined || ageAtScan === undefined) {
    const remark =
      'Dated by ultrasound: the last period gives no age on the day of the scan to compare with.';
    return { fact: scan, settled, remarks: [remark] };
  }
  const { limitDays } = row;
  const facts = `${String(difference)} days apart, limit ${String(limitDays.value)} at ${formatGestation(ageAtScan)}`;
  const isBeyond =
    limitDays.comparator === '>=' ? difference >= limitDays.value : difference > limitDays.value;
  return isBeyond
    ? { fact: scan, settled, remarks: [`Re-dated by ultrasound: last period and scan are ${facts}.`] }
    : {
        fact: lastPeriod,
        settled,
        remarks: difference === 0 ? [] : [`Dated by the last period: it and the scan are ${facts}.`],
      };
}

function rowAt(ageDays: number | undefined, values: TimelineValues) {
  if (ageDays === undefined) return undefined;
  return values.redating.find((row) => ageDays >= row.fromDays && ageDays <= row.toDays);
}

function isConflicting(other: DatingFact, fact: DatingFact, values: TimelineValues): boolean {
  const difference = Math.abs(other.startDay - fact.startDay);
  const age = other.observedDay === undefined ? undefined : other.observedDay - fact.startDay;
  const row = other.method === 'ultrasound' ? rowAt(age, values) : undefined;
  return difference > daysOf(row?.limitDays ?? values.conflictDays);
}

function withoutScan(
  facts: readonly DatingFact[],
  fact: DatingFact,
  values: TimelineValues,
): readonly string[] {
  const limit = values.confirmingScanBefore;
  if (limit === undefined) return [];
  const isConfirmed = facts.some(
    ({ method, observedDay }) =>
      method === 'ultrasound' && observedDay !== undefined && observedDay - fact.startDay < daysOf(limit),
  );
  const before = formatGestation(daysOf(limit));
  return isConfirmed ? [] : [`No scan before ${before} was sent to confirm it: suboptimally dated.`];
}

/** Earliest stated first; without a day last; then by what it says, so that the order of entries never decides. */
function compareFacts(one: DatingFact, other: DatingFact): number {
  const byDay = (one.observedDay ?? Number.MAX_SAFE_INTEGER) - (other.observedDay ?? Number.MAX_SAFE_INTEGER);
  if (byDay !== 0) return byDay;
  if (one.startDay !== other.startDay) return one.startDay - other.startDay;
  return one.received.reference < other.received.reference ? -1 : 1;
}

const methodWords: Readonly<Record<Dating['method'], string>> = {
  ultrasound: 'Ultrasound',
  'last-period': 'The last period',
  'due-date': 'The due date',
  'stated-age': 'A stated gestational age',
  conception: 'The date of conception',
};

function wording(fact: DatingFact): string {
  const stated = fact.observedDay === undefined ? '' : ` of ${formatDay(fact.observedDay)}`;
  return `${methodWords[fact.method]}${stated}`;
}

function otherOf(fact: DatingFact): Dating['others'][number] {
  return { method: fact.method, startDay: fact.startDay, asSent: fact.asSent, source: sourceOf(fact) };
}

function sourceOf({ received }: DatingFact): Dating['source'] {
  return { reference: received.reference, preliminary: received.preliminary };
}
