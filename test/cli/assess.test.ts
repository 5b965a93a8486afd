// The assess command: forms of input, forms of output, exit codes.
import { describe, expect, it } from 'vitest';
import { assessText, exitCodes, type AssessOptions } from '../../src/cli/assess.ts';
import { readInput, UnreadableInput } from '../../src/cli/read-input.ts';
import { exampleAsOf, exampleBundle } from '../../src/http/example-bundle.ts';

const now = Date.parse(exampleAsOf);
const bundleText = JSON.stringify(exampleBundle);
const lines = exampleBundle.entry.map((entry) => JSON.stringify(entry.resource));
const otherLines = lines.map((line) => line.replaceAll('example', 'other').replaceAll('-reading', '-other'));

function assess(text: string, options: Partial<AssessOptions> = {}) {
  return assessText(text, { format: 'json', ...options }, now);
}

function outputOf(text: string, options: Partial<AssessOptions> = {}): unknown {
  const value: unknown = JSON.parse(assess(text, options).output);
  return value;
}

describe('the input', () => {
  it('may be a Bundle, or NDJSON lines with the same resources: the same class, urgency and findings', () => {
    const chosen = (value: unknown) => {
      const { classification, urgency, missing, actions } = value as Record<string, unknown>;
      return { classification, urgency, missing, actions };
    };
    expect(chosen(outputOf(lines.join('\n')))).toEqual(chosen(outputOf(bundleText)));
  });

  it('F-K04: may have a byte order mark, CRLF, blank lines and no line feed at the end', () => {
    const plain = readInput(lines.join('\n'));
    expect(readInput(`\uFEFF${lines.join('\r\n\r\n')}`)).toEqual(plain);
    expect(readInput(`\uFEFF${bundleText}`)).toEqual(exampleBundle);
  });

  it('may be one resource', () => {
    expect(readInput(lines[2] ?? '')).toMatchObject({
      resourceType: 'Bundle',
      entry: [{ resource: { id: 'first-reading' } }],
    });
  });

  it('names the first line that is no JSON object, and quotes nothing', () => {
    expect(() => readInput(`${lines[0] ?? ''}\n{"id": "secret`)).toThrow(
      new UnreadableInput('Line 2 is not a JSON object.'),
    );
    expect(() => readInput('Asha, 152/98')).toThrow(
      new UnreadableInput('The input is neither JSON nor NDJSON.'),
    );
    expect(() => readInput(' \n')).toThrow(new UnreadableInput('The input is empty.'));
  });
});

describe('the output', () => {
  it('is one object for one woman and a list for several, unless one is named', () => {
    const both = [...lines, ...otherLines].join('\n');
    expect(outputOf(bundleText)).toMatchObject({ subject: 'Patient/example' });
    expect(outputOf(both)).toMatchObject([{ subject: 'Patient/example' }, { subject: 'Patient/other' }]);
    expect(outputOf(both, { subject: 'Patient/other' })).toMatchObject({ subject: 'Patient/other' });
    expect(outputOf(both, { format: 'cards' })).toMatchObject([
      { subject: 'Patient/example' },
      { subject: 'Patient/other' },
    ]);
  });

  it('is text, JSON, a FHIR Bundle or cards', () => {
    expect(assess(bundleText, { format: 'text' }).output).toContain('WHAT TO DO');
    expect(outputOf(bundleText, { format: 'fhir' })).toMatchObject({
      resourceType: 'Bundle',
      type: 'collection',
    });
    expect(Object.keys(outputOf(bundleText, { format: 'cards' }) as object)).toEqual(['cards']);
  });

  it('F-Q12, R-13: is the same bytes for the same input and time', () => {
    expect(assess(bundleText).output).toBe(assess(bundleText).output);
    expect(assess(bundleText, { asOf: exampleAsOf }).output).toBe(assess(bundleText).output);
  });
});

describe('exit codes', () => {
  it('0: answered', () => {
    expect(assess(bundleText)).toMatchObject({ exitCode: exitCodes.answered, errors: '' });
  });

  it('2: an unknown guideline or a time that is none, said on standard error', () => {
    for (const options of [{ guideline: 'no-such' }, { asOf: 'yesterday' }]) {
      const result = assess(bundleText, options);
      expect([result.exitCode, result.output]).toEqual([exitCodes.usage, '']);
      expect(result.errors).toMatch(/^pregnancy-htn: /);
    }
  });

  it('3: input that cannot be read', () => {
    expect(assess('no json')).toMatchObject({ exitCode: exitCodes.unreadable, output: '' });
  });

  it('4: answered, but she cannot be classified from what was sent', () => {
    const result = assess(lines[0] ?? '');
    expect(result.exitCode).toBe(exitCodes.cannotClassify);
    expect(result.output).toContain('"cannot-classify"');
  });
});
