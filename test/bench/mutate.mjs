// Malformed variants of real files, each from a number: the same number gives the same variant.

/** A small generator of numbers from 0 to 1 (mulberry32). */
function randomFrom(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const copyOf = (value) => (value === undefined ? value : JSON.parse(JSON.stringify(value)));

const nested = (levels) => {
  let value = { resourceType: 'Patient' };
  for (let level = 0; level < levels; level += 1) value = { resourceType: 'Patient', contained: [value] };
  return value;
};

const odd = [
  null,
  '',
  ' ',
  [],
  {},
  [[]],
  [null],
  true,
  0,
  -1,
  1e308,
  -0,
  0.1 + 0.2,
  'x'.repeat(5000),
  '2026-02-31',
  '2026-13-01T25:61:61Z',
  '9999-12-31T23:59:59.999999999+14:00',
  '0000',
  '#',
  '#x',
  'urn:uuid:',
  'Patient/../../etc/passwd',
  'Patient/1/_history/',
  '\u0000\ud800',
  '__proto__',
  'constructor',
  '(a+)+$'.repeat(20),
  { resourceType: 'Bundle', entry: [{ resource: { resourceType: 'Bundle' } }] },
  { resourceType: '__proto__' },
  { resourceType: 'toString', id: 'constructor' },
  { reference: '#' },
  { coding: [{ system: 'http://loinc.org', code: '8480-6' }, 'x', null] },
  nested(12),
];

const names = [
  '__proto__',
  'constructor',
  'toString',
  'valueQuantity',
  'valueString',
  'contained',
  'resourceType',
  'status',
  'modifierExtension',
  'effectivePeriod',
  'code',
  'entry',
  'reference',
  'id',
];

/** Every object and list of a value, for one of them to be changed. */
function holders(value, found = []) {
  if (typeof value !== 'object' || value === null) return found;
  found.push(value);
  for (const member of Object.values(value)) holders(member, found);
  return found;
}

function changeOne(root, random) {
  const all = holders(root);
  const pick = (list) => list[Math.floor(random() * list.length)];
  const holder = pick(all);
  const key = pick(Object.keys(holder)) ?? '0';
  const kind = Math.floor(random() * 8);
  const set = (name, value) =>
    Object.defineProperty(holder, name, { value, enumerable: true, configurable: true, writable: true });
  const copy = () => JSON.parse(JSON.stringify(holder[key] ?? null));
  if (kind === 0) delete holder[key];
  else if (kind === 1 || kind === 2) set(key, copyOf(pick(odd)));
  else if (kind === 3) set(Array.isArray(holder) ? key : pick(names), copyOf(pick(odd)));
  else if (kind === 4) set(key, [copy(), copy()]);
  else if (kind === 5) set(Array.isArray(holder) ? key : pick(names), copy());
  else if (kind === 6) set(key, typeof holder[key] === 'number' ? String(holder[key]) : Number(holder[key]));
  else if (Array.isArray(holder)) for (let at = 0; at < 30; at += 1) holder.push(copy());
  else set(`${key}_`, copy());
}

/**
 * One malformed variant as text.
 *
 * Given    files  parsed JSON of sound files
 *          seed   a whole number
 * Returns  JSON with one to four changes; one in twenty is cut off or holds a stray byte
 */
export function variantOf(files, seed) {
  const random = randomFrom(seed);
  const root = copyOf(files[Math.floor(random() * files.length)]);
  const changes = 1 + Math.floor(random() * 4);
  for (let change = 0; change < changes; change += 1) changeOne(root, random);
  const text = JSON.stringify(root) ?? 'null';
  if (random() > 0.05) return text;
  const cut = Math.floor(random() * text.length);
  return random() > 0.5 ? text.slice(0, cut) : `${text.slice(0, cut)}\u0001${text.slice(cut)}`;
}
