import { it } from 'vitest';
import { join } from 'node:path';
import { readCaseFile } from '../support/case-schema.ts';
import { caseAsOf, caseBundle } from '../support/case-bundle.ts';
import { compareGuidelines } from '../../src/compare-guidelines.ts';
it('x', () => {
  const f = readCaseFile(join(import.meta.dirname, '../cases/check-cases.json'));
  for (const row of f.rows) {
    const c = compareGuidelines(caseBundle(row.given), { asOf: row.asOf ?? caseAsOf(row.given) });
    console.log(row.id, row.name, '=>', c.evaluation.assessment.classification.join(), c.evaluation.assessment.urgency,
     c.evaluation.differs?.map((d) => `\n   ${d.id}: ${d.classification.join()} ${d.urgency}: ${d.because}`).join(''), '\n   partings', c.partings.map((p) => p.question).join());
  }
});
