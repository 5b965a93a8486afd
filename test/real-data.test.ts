// Files nobody here wrote: each is answered, accounted for, and rests on nothing that was withdrawn.
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Evaluation } from '../src/evaluation.ts';
import { readInputs, resourcesIn } from './support/data-files.ts';
import type { DataInput } from './support/data-files.ts';
import { evaluateSoundly } from './support/engine.ts';
import { crossTable } from './support/table.ts';

const ownFolder = join(import.meta.dirname, 'data');
const otherFolder = process.env['SHARED_DATA'];
const folders = otherFolder === undefined ? [ownFolder] : [ownFolder, otherFolder];

/** One run without naming anybody when there is at most one patient, else one run per patient. */
function evaluateAll({ input, asOf, subjects }: DataInput): Evaluation[] {
  if (subjects.length < 2) return [evaluateSoundly(input, { asOf })];
  return subjects.map((subject) => evaluateSoundly(input, { asOf, subject }));
}

/** References of resources whose every version was entered in error or cancelled, read from the file itself. */
function withdrawn(input: unknown): Set<string> {
  const standing = new Set<string>();
  const gone = new Set<string>();
  for (const resource of resourcesIn(input)) {
    const reference = `${String(resource['resourceType'])}/${String(resource['id'])}`;
    const isGone = resource['status'] === 'entered-in-error' || resource['status'] === 'cancelled';
    (isGone ? gone : standing).add(reference);
  }
  return new Set([...gone].filter((reference) => !standing.has(reference)));
}

describe.each(folders)('real files of %s', (folder) => {
  const inputs = readInputs(folder);

  it('are found', () => {
    expect(inputs.length).toBeGreaterThan(100);
    const outcomes = inputs.flatMap((one) =>
      evaluateAll(one).map((evaluation) => summaryOf(one, evaluation)),
    );
    console.log(`\nAnswers to ${inputs.length} inputs of real files:\n${crossTable(outcomes)}\n`);
  });

  it.each(inputs.map((one) => [one.name, one] as const))(
    '%s is answered, and the account adds up',
    (_name, one) => {
      const gone = withdrawn(one.input);
      for (const { assessment } of evaluateAll(one)) {
        const cited = assessment.findings.flatMap(({ evidence }) =>
          evidence.map(({ reference }) => reference),
        );
        expect(cited.filter((reference) => gone.has(reference))).toEqual([]);
        expect(assessment.classification.length).toBeGreaterThan(0);
      }
    },
  );
});

function summaryOf({ name }: DataInput, { assessment }: Evaluation): [string, string] {
  return [assessment.classification[0] ?? 'none', name.slice(0, name.indexOf('/'))];
}

describe('readings that were withdrawn', () => {
  it('occur in the files, so that the check above is not empty', () => {
    const all = readInputs(ownFolder).flatMap(({ input }) => [...withdrawn(input)]);
    expect(all.length).toBeGreaterThan(0);
  });
});
