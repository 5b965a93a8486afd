// The part of vitest that our synchronous tests use, so that one process can run them thousands of times.
import * as chai from 'chai';
import fc from 'fast-check';
import { JestAsymmetricMatchers, JestChaiExpect, JestExtend } from '@vitest/expect';

/** The same invented women for every mutant; the first that fails is enough. */
fc.configureGlobal({ seed: 20250310, endOnFailure: true });

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const { expect } = chai;
export const tests = [];
let path = [];

export function describe(name, body) {
  path.push(name);
  body();
  path.pop();
}
describe.each = (rows) => (name, body) => {
  for (const row of rows) describe(name, () => body(...(Array.isArray(row) ? row : [row])));
};

/** `it(name, options, body)` too: options are of the runner only. */
export function it(name, ...rest) {
  tests.push({ name: [...path, name].join(' > '), body: rest.at(-1) });
}
it.each =
  (rows) =>
  (name, ...rest) => {
    const body = rest.at(-1);
    rows.forEach((row, index) => {
      const values = Array.isArray(row) ? row : [row];
      it(`${name} [${index} ${String(values[0]).slice(0, 60)}]`, () => body(...values));
    });
  };

export const startFile = (file) => {
  path = [file];
};
