// Procedures that tell of her: terminology.csv, clinical-rules 2.10.
import { describe, expect, it } from 'vitest';
import { readProcedure } from '../../src/timeline/procedures.ts';
import { contextWith, received } from './received.ts';

const snomed = 'http://snomed.info/sct';
const concept = (system: string, code: string) => ({ coding: [{ system, code }] });

describe('procedures', () => {
  const performed = (code: string) =>
    readProcedure(
      received({
        resourceType: 'Procedure',
        status: 'completed',
        subject: { reference: 'Patient/1' },
        code: concept(snomed, code),
        performedDateTime: '2025-12-01',
      }),
      contextWith(),
    );

  it('assisted fertilisation, a procedure code of terminology.csv, tells of assisted conception', () => {
    expect(performed('63487001')).toMatchObject([
      { condition: 'assisted-conception', state: 'active', onset: { text: '2025-12-01' } },
    ]);
  });

  it('any other is not needed, also when its code names a disease', () => {
    expect(performed('398254007')).toMatchObject({ kind: 'not-needed' });
  });
});
