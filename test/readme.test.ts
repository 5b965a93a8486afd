import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../src/evaluate.ts';
import { toText } from '../src/presenters/text.ts';

const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');

describe('the README', () => {
  it('shows the answer that the program gives today', () => {
    const request: unknown = JSON.parse(
      readFileSync(new URL('../examples/first-raised-reading/request.json', import.meta.url), 'utf8'),
    );
    const answer = toText(evaluate(request, { asOf: '2025-03-10T09:20:00Z', compare: true }));
    const shown = /<!-- answer: first-raised-reading -->\n+```text\n([\s\S]*?)```/.exec(readme)?.[1];
    expect(shown?.trimEnd()).toBe(answer.trimEnd());
  });

  it('names the two commands', () => {
    expect(readme).toContain('npm ci && npm start\n');
    expect(readme).toContain('npm ci && npm test\n');
  });
});
