// Import direction and purity, read from the source text.
import { describe, expect, it } from 'vitest';
import { codeOnly, readSources } from './support/sources.ts';
import type { SourceImport } from './support/sources.ts';

const sources = readSources();

/** The main flow and its variants: one woman, several women, several guidelines. They may call one another. */
const flow = [
  'trend.ts',
  'what-next.ts',
  'evaluate.ts',
  'prepare-again.ts',
  'evaluate-each.ts',
  'opinions.ts',
  'compare-guidelines.ts',
  'receive.ts',
  'evaluate-measure.ts',
];
const flowRow = {
  row: 6,
  may: [
    ...flow,
    'fingerprint.ts',
    'bundle',
    'timeline',
    'rules',
    'findings',
    'guidelines',
    'errors.ts',
    'evaluation.ts:types',
    'terminology:types',
    'site',
    'measures',
  ],
  why: 'the main flow is four calls on one screen: it stays below presenters and shells',
};

/** What a part may import from ours: `folder`, `folder:types`, or a file. */
const rows: Readonly<
  Record<string, { readonly row: number; readonly may: readonly string[]; readonly why: string }>
> = {
  terminology: {
    row: 0,
    may: [],
    why: 'codes and units are data that everyone can trust without reading on',
  },
  'errors.ts': { row: 0, may: [], why: 'naming a failure needs nothing of the program' },
  'id-words.ts': { row: 0, may: [], why: 'the words of an id need nothing of the program' },
  guidelines: { row: 1, may: [], why: 'a guideline is data with citations; a clinician reads it alone' },
  messages: { row: 1, may: ['guidelines:types'], why: 'a language is texts; a translator reads it alone' },
  bundle: { row: 2, may: ['terminology', 'errors.ts'], why: 'reading FHIR must not know what is made of it' },
  findings: {
    row: 2,
    may: ['terminology', 'errors.ts', 'guidelines:types', 'evaluation.ts:types'],
    why: 'reasons are ranked and worded without looking at the facts again',
  },
  timeline: {
    row: 3,
    may: ['bundle:types', 'terminology', 'errors.ts', 'guidelines/guideline.ts:types'],
    why: 'facts are settled before any rule looks at them',
  },
  rules: {
    row: 4,
    may: [
      'timeline',
      'id-words.ts',
      'guidelines/guideline.ts',
      'guidelines:types',
      'findings:types',
      'evaluation.ts:types',
    ],
    why: 'a rule never sees FHIR, so it can be read and tested in clinical words',
  },
  'evaluation.ts': {
    row: 4,
    may: ['errors.ts:types', 'guidelines:types', 'findings:types', 'timeline:types'],
    why: 'the answer is a type, not a deed',
  },
  presenters: {
    row: 5,
    may: [
      'findings',
      'id-words.ts',
      'guidelines:types',
      'timeline:types',
      'terminology',
      'messages',
      'errors.ts',
      'evaluation.ts:types',
      'measures:types',
      'readiness:types',
    ],
    why: 'a presenter words what was decided and decides nothing',
  },
  site: {
    row: 3,
    may: ['terminology', 'errors.ts', 'guidelines/registry.ts'],
    why: 'a site maps its words to ours before anything is read, and knows nothing of what is made of them',
  },
  measures: {
    row: 6,
    may: [...flow, 'bundle:types', 'timeline', 'rules', 'findings:types', 'guidelines', 'terminology'],
    why: 'a measure counts what the rules decided; it decides nothing itself',
  },
  readiness: {
    row: 6,
    may: [...flow, 'bundle', 'timeline', 'site', 'guidelines', 'errors.ts', 'evaluation.ts:types'],
    why: 'the readiness check runs the flow and counts what it had to say',
  },
  'fingerprint.ts': {
    row: 5,
    may: ['guidelines:types'],
    why: 'a fingerprint is arithmetic over guideline data',
  },
  ...Object.fromEntries(flow.map((file) => [file, flowRow])),
  'answer-for.ts': {
    row: 7,
    may: [...flow, 'presenters'],
    why: 'the answer of the package is the flow and one presenter',
  },
  'index.ts': {
    row: 7,
    may: [
      ...flow,
      'answer-for.ts',
      'presenters',
      'guidelines',
      'errors.ts',
      'evaluation.ts:types',
      'findings:types',
      'timeline:types',
    ],
    why: 'it only re-exports what a user of the package may import',
  },
  http: {
    row: 7,
    may: [
      ...flow,
      'presenters',
      'messages',
      'guidelines',
      'errors.ts',
      'evaluation.ts:types',
      'site',
      'readiness',
    ],
    why: 'a shell calls the flow, then one presenter, and nothing deeper',
  },
  replay: {
    row: 7,
    may: [
      ...flow,
      'presenters',
      'measures',
      'guidelines',
      'errors.ts',
      'evaluation.ts:types',
      'findings:types',
      'timeline:types',
      // Which lines of a file could matter at all is decided before any woman is known.
      'terminology',
      'bundle',
      'timeline/observation-kind.ts',
      'timeline/birth.ts',
      'site',
      'http/site-folder.ts',
      // Rounding and copying are judged over the readings of a whole site.
      'rules/quality/digit-preference.ts',
    ],
    why: 'a shell calls the flow, then one presenter, and nothing deeper but what tells lines apart',
  },
  cli: {
    row: 7,
    may: [
      ...flow,
      'presenters',
      'guidelines',
      'errors.ts',
      'evaluation.ts:types',
      'http',
      'replay',
      'site',
      'readiness',
    ],
    why: 'a shell calls the flow, then one presenter, and nothing deeper; only the cli starts the other two',
  },
  web: {
    row: 8,
    may: [
      'id-words.ts',
      ...flow,
      'presenters',
      'messages',
      'guidelines',
      'site',
      'evaluation.ts:types',
      'findings',
      'rules:types',
      'readiness:types',
      // Telling resources apart and reading a time are done as the engine does them.
      'bundle/read-bundle.ts',
      'timeline:types',
      'timeline/moment.ts',
      'timeline/fields.ts',
      'timeline/observation-kind.ts',
    ],
    why: 'the page runs the same engine as the service; it decides nothing itself and calls nothing deeper',
  },
};

const shells = ['http', 'replay', 'cli', 'web'];
const partOf = (path: string): string => (path.includes('/') ? path.slice(0, path.indexOf('/')) : path);
const isOurs = (imported: SourceImport): boolean =>
  imported.to.endsWith('.ts') && !imported.to.startsWith('..');

function isAllowed(imported: SourceImport): boolean {
  const part = partOf(imported.from);
  if (partOf(imported.to) === part) return true;
  return (rows[part]?.may ?? []).some((entry) => {
    const [place = '', restriction] = entry.split(':');
    const covers = place === imported.to || place === partOf(imported.to);
    return covers && (restriction === undefined || imported.typeOnly);
  });
}

function crossing(imported: SourceImport): string {
  const part = partOf(imported.from);
  const row = rows[part];
  if (row === undefined) return `src/${imported.from} lies in no row of the import table: place it first`;
  const kind = imported.typeOnly ? 'types of' : 'code of';
  return `src/${imported.from} (row ${row.row}) imports ${kind} src/${imported.to}: ${row.why}`;
}

describe('import direction', () => {
  it('reads the source and its imports', () => {
    expect(sources.length).toBeGreaterThan(5);
    expect(sources.flatMap((file) => file.imports).length).toBeGreaterThan(5);
  });

  it('gives every file a row', () => {
    expect(sources.map((file) => partOf(file.path)).filter((part) => rows[part] === undefined)).toEqual([]);
  });

  it('lets lower rows know nothing of higher ones', () => {
    const crossed = sources.flatMap((file) => file.imports).filter((one) => isOurs(one) && !isAllowed(one));
    expect(crossed.map(crossing)).toEqual([]);
  });

  it('keeps src closed: nothing in it imports from outside src', () => {
    const outside = sources.flatMap((file) => file.imports).filter((one) => one.to.startsWith('..'));
    expect(outside.map((one) => `src/${one.from} imports ${one.to} from outside src`)).toEqual([]);
  });
});

/** Packages, and the parts that own them. `@noble/hashes` is pure arithmetic and allowed for fingerprints and stable ids. */
const packageOwners: readonly (readonly [name: RegExp, owners: readonly string[], why: string])[] = [
  [/^express$/, ['http'], 'the web server belongs to the http shell'],
  [/^express-rate-limit$/, ['http'], 'calls are counted where they come in'],
  [/^jose$/, ['http'], 'tokens are checked at the door'],
  [/^undici$/, ['http'], 'only the http shell talks to other servers'],
  [/^ajv/, ['bundle'], 'schemas are checked where untrusted input is read'],
  [/^zod/, ['bundle', 'http', 'site'], 'shapes are checked where untrusted input enters'],
  [/^fhirpath/, ['bundle'], 'fhirpath is far too slow for the hot path; twins are tested instead'],
  [/^marked$/, ['http'], 'the rules become a page where a browser asks'],
  [/^commander$/, ['cli'], 'arguments belong to the command line'],
  [
    /^@noble\/hashes/,
    ['presenters', 'guidelines', 'findings', 'fingerprint.ts'],
    'one way to make fingerprints and stable ids',
  ],
  [/^d3-/, ['web', 'replay'], 'drawing belongs to the page and the report'],
  [/^hyparquet-writer$/, ['replay'], 'columns for whoever reads results with an engine of their own'],
  [/^node:/, ['http', 'replay', 'cli'], 'below the shells the program runs in a browser'],
];

describe('packages stay with their owner', () => {
  const bare = sources
    .flatMap((file) => file.imports)
    .filter((one) => !isOurs(one) && !one.to.startsWith('..') && !one.to.endsWith('.json'));

  it('uses no package without an owner', () => {
    const unowned = bare.filter(
      (one) => !one.to.startsWith('fhir/') && !packageOwners.some(([name]) => name.test(one.to)),
    );
    expect(unowned.map((one) => `src/${one.from} imports ${one.to}, which has no owner`)).toEqual([]);
  });

  it.each(packageOwners)('%s is imported only by %s', (name, owners, why) => {
    const strays = bare.filter(
      (one) =>
        name.test(one.to) &&
        !owners.includes(partOf(one.from)) &&
        !(one.typeOnly && shells.includes(partOf(one.from))),
    );
    expect(strays.map((one) => `src/${one.from} imports ${one.to}: ${why}`)).toEqual([]);
  });
});

const impure: readonly (readonly [what: string, pattern: RegExp])[] = [
  ['the clock (Date.now)', /\bDate\.now\b/],
  ['the clock (new Date without argument)', /\bnew Date\(\s*\)/],
  ['chance', /\bMath\.random\b|\bcrypto\b/],
  ['the network', /\bfetch\s*\(/],
  ['the console', /\bconsole\s*\./],
  ['the environment', /\bprocess\s*\./],
  ['timers', /\bset(?:Timeout|Interval|Immediate)\s*\(/],
];

describe('purity below the shells', () => {
  const below = sources.filter((file) => !shells.includes(partOf(file.path)));

  it.each(impure)('nothing below the shells touches %s', (_what, pattern) => {
    const touching = below.filter((file) => pattern.test(codeOnly(file.text)));
    expect(touching.map((file) => `src/${file.path} matches ${pattern.source}`)).toEqual([]);
  });
});

/** Numbers that are limits of some guideline; compared with, they belong in src/guidelines. */
const clinicalNumbers = '(?:90|110|140|160|130|135|150|300|97|8\\.8|1\\.1)';
const comparison = new RegExp(
  `(?:(?<!=)[<>]=?|[=!]==?)\\s*${clinicalNumbers}(?![\\d.])|(?<![\\d.])${clinicalNumbers}\\s*(?:[<>]=?|[=!]==?)(?!>)`,
);

describe('clinical numbers', () => {
  const deciding = sources.filter((file) =>
    ['rules', 'timeline', 'presenters', 'findings'].includes(partOf(file.path)),
  );

  it('are compared nowhere outside src/guidelines', () => {
    const lines = deciding.flatMap((file) =>
      codeOnly(file.text)
        .split('\n')
        .filter((line) => comparison.test(line))
        .map((line) => `src/${file.path}: ${line.trim()}`),
    );
    expect(lines).toEqual([]);
  });

  it('are recognised when they are compared', () => {
    expect(['x >= 140', '90 <= y', 'a === 1.1'].filter((line) => comparison.test(line))).toHaveLength(3);
    expect(['x >= 1400', 'y < 1.10', 'max: 90', '(a) => 90'].filter((line) => comparison.test(line))).toEqual(
      [],
    );
  });
});
