import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { evaluate, evaluateInFull, toAnswer } from '../src/index.ts';

const file = new URL('../examples/protein-and-pressure/request.json', import.meta.url);
const asOf = '2025-03-10T13:40:00Z';

it('the package gives the answer that the command line prints, byte for byte', () => {
  const request: unknown = JSON.parse(readFileSync(file, 'utf8'));
  const printed = execFileSync(
    process.execPath,
    ['dist/cli/main.js', 'assess', file.pathname, '--as-of', asOf, '--format', 'json'],
    { encoding: 'utf8' },
  );
  const answer = evaluate(request, { asOf });
  expect(answer.classification[0]).toBe('pre-eclampsia');
  expect(JSON.stringify(answer, undefined, 2).trim()).toBe(printed.trim());
});

it('the evaluation in full feeds the presenters', () => {
  const request: unknown = JSON.parse(readFileSync(file, 'utf8'));
  expect(toAnswer(evaluateInFull(request, { asOf, compare: true }))).toEqual(evaluate(request, { asOf }));
});
