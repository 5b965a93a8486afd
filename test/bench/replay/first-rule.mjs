// One mode of the comparison in one process: node first-rule.mjs MODE FILE [THREADS]. Prints one line of JSON.
// The rule: a woman has two pressures of at least 140 systolic or 90 diastolic, four hours apart.
// The numbers only give every mode the same work; the rules of the product are in src/guidelines.
import { statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { openFastFilter } from '../../../dist/replay/simd-filter.js';
import { openLineFilter } from '../../../dist/replay/line-filter.js';
import { readRange } from '../../../dist/replay/read-source.js';
import { openLineCutter } from '../../../dist/replay/cut-lines.js';

const pressureCodes = new Set(['85354-9', '8480-6', '8462-4']);
const relevant = new Set(['85354-9', '20454-5', '777-3', '1742-6', '2160-0', '11778-8']);
const fourHours = 4 * 3_600_000;

/** Columns, 64-bit values, one number per woman. */
class Events {
  women = new Map();
  count = 0;
  capacity = 1 << 14;
  woman = new Uint32Array(this.capacity);
  time = new Float64Array(this.capacity);
  systolic = new Float64Array(this.capacity);
  diastolic = new Float64Array(this.capacity);
  add(reference, time, systolic, diastolic) {
    let woman = this.women.get(reference);
    if (woman === undefined) this.women.set(reference, (woman = this.women.size));
    if (this.count === this.capacity) this.grow();
    this.woman[this.count] = woman;
    this.time[this.count] = time;
    this.systolic[this.count] = systolic;
    this.diastolic[this.count] = diastolic;
    this.count += 1;
  }
  grow() {
    this.capacity *= 2;
    for (const [name, type] of [
      ['woman', Uint32Array],
      ['time', Float64Array],
      ['systolic', Float64Array],
      ['diastolic', Float64Array],
    ]) {
      const larger = new type(this.capacity);
      larger.set(this[name]);
      this[name] = larger;
    }
  }
  merge(other) {
    const numbers = other.references.map((reference) => {
      let woman = this.women.get(reference);
      if (woman === undefined) this.women.set(reference, (woman = this.women.size));
      return woman;
    });
    for (let at = 0; at < other.count; at += 1) {
      if (this.count === this.capacity) this.grow();
      this.woman[this.count] = numbers[other.woman[at]];
      this.time[this.count] = other.time[at];
      this.systolic[this.count] = other.systolic[at];
      this.diastolic[this.count] = other.diastolic[at];
      this.count += 1;
    }
  }
}

function take(resource, events) {
  if (resource.status !== 'final') return;
  const code = resource.code?.coding?.find((coding) => relevant.has(coding.code))?.code;
  if (code === undefined) return;
  let systolic = NaN;
  let diastolic = NaN;
  if (pressureCodes.has(code))
    for (const component of resource.component ?? []) {
      const half = component.code?.coding?.find((coding) => pressureCodes.has(coding.code))?.code;
      if (component.valueQuantity?.code !== 'mm[Hg]') continue;
      if (half === '8480-6') systolic = component.valueQuantity.value;
      else if (half === '8462-4') diastolic = component.valueQuantity.value;
    }
  events.add(resource.subject.reference, Date.parse(resource.effectiveDateTime), systolic, diastolic);
}

/** Women for whom the rule holds: counting sort by woman, then by time. */
function answer(events) {
  const women = events.women.size;
  const start = new Uint32Array(women + 1);
  for (let at = 0; at < events.count; at += 1) start[events.woman[at] + 1] += 1;
  for (let at = 0; at < women; at += 1) start[at + 1] += start[at];
  const place = new Uint32Array(events.count);
  const next = start.slice(0, women);
  for (let at = 0; at < events.count; at += 1) place[next[events.woman[at]]++] = at;
  let holds = 0;
  for (let woman = 0; woman < women; woman += 1) {
    const own = place
      .subarray(start[woman], start[woman + 1])
      .sort((a, b) => events.time[a] - events.time[b]);
    let first = NaN;
    for (const at of own) {
      if (!(events.systolic[at] >= 140 || events.diastolic[at] >= 90)) continue;
      if (Number.isNaN(first)) first = events.time[at];
      else if (events.time[at] - first >= fourHours) {
        holds += 1;
        break;
      }
    }
  }
  return holds;
}

function readLines(file, range, filter, events) {
  const isOne = filter !== undefined;
  const taker = {
    tooLong: () => undefined,
    block: (block, length) => {
      if (!isOne) {
        for (let from = 0; from < length;) {
          const to = block.indexOf(10, from);
          take(JSON.parse(block.toString('utf8', from, to < 0 ? length : to)), events);
          from = (to < 0 ? length : to) + 1;
        }
        return;
      }
      const count = filter.scan(block, length);
      const hits = filter.hits();
      let done = 0;
      for (let at = 0; at < count; at += 1) {
        const hit = hits[at];
        if (hit < done) continue;
        const from = block.lastIndexOf(10, hit) + 1;
        const found = block.indexOf(10, hit);
        done = found < 0 || found > length ? length : found;
        take(JSON.parse(block.toString('utf8', from, done)), events);
      }
    },
  };
  const cutter = openLineCutter(taker, { room: filter?.room?.() });
  readRange(file, range, cutter);
  cutter.end();
}

const filterOf = { parse: () => undefined, plain: () => openLineFilter(), simd: () => openFastFilter() };

function scanOnly(file) {
  const filter = openFastFilter();
  let hits = 0;
  const taker = { tooLong: () => undefined, block: (block, length) => (hits += filter.scan(block, length)) };
  const cutter = openLineCutter(taker, { room: filter.room?.() });
  readRange(file, { from: 0, to: statSync(file).size }, cutter);
  cutter.end();
  return hits;
}

async function duck(file, threads) {
  const { DuckDBInstance } = await import('@duckdb/node-api');
  const connection = await (await DuckDBInstance.create(':memory:', { threads: String(threads) })).connect();
  const reader = await connection.runAndReadAll(`
    with lines as (
      select status, subject.reference woman, code.coding[1].code code, effectiveDateTime::timestamptz t,
        component[1].valueQuantity.value systolic, component[2].valueQuantity.value diastolic
      from read_ndjson('${file}', columns = {
        status: 'VARCHAR', subject: 'STRUCT(reference VARCHAR)', effectiveDateTime: 'VARCHAR',
        code: 'STRUCT(coding STRUCT(code VARCHAR)[])',
        component: 'STRUCT(valueQuantity STRUCT(value DOUBLE))[]' })
      where status = 'final' and code.coding[1].code in (${[...relevant].map((code) => `'${code}'`).join()})),
    raised as (select woman, t from lines where code = '85354-9' and (systolic >= 140 or diastolic >= 90))
    select count(*) filter (where newest - oldest >= interval 4 hour)::int holds,
      (select count(*)::int from lines) events
    from (select woman, min(t) oldest, max(t) newest from raised group by woman)`);
  const [row] = reader.getRowObjects();
  return { holds: row.holds, events: row.events };
}

const rangeBytes = 8 << 20;

/** Range after range that no thread has begun, until there is none. */
function share(mode, file, next) {
  const { size } = statSync(file);
  const events = new Events();
  const filter = filterOf[mode]();
  for (;;) {
    const from = Atomics.add(next, 0, 1) * rangeBytes;
    if (from >= size) return events;
    readLines(file, { from, to: Math.min(from + rangeBytes, size) }, filter, events);
  }
}

/** This thread takes part, as in the product. */
async function threaded(mode, file, threads) {
  const next = new Int32Array(new SharedArrayBuffer(4));
  const others = Array.from(
    { length: threads - 1 },
    () =>
      new Promise((resolve, reject) => {
        const worker = new Worker(fileURLToPath(import.meta.url), { workerData: { mode, file, next } });
        worker.once('message', resolve);
        worker.once('error', reject);
      }),
  );
  const events = share(mode, file, next);
  for (const part of await Promise.all(others)) events.merge(part);
  return events;
}

if (!isMainThread) {
  const events = share(workerData.mode, workerData.file, workerData.next);
  const { count, woman, time, systolic, diastolic } = events;
  parentPort.postMessage({ count, woman, time, systolic, diastolic, references: [...events.women.keys()] }, [
    woman.buffer,
    time.buffer,
    systolic.buffer,
    diastolic.buffer,
  ]);
} else {
  const [mode, file, threadsText = '1'] = process.argv.slice(2);
  const threads = Number(threadsText);
  const cpu = process.cpuUsage();
  const before = performance.now();
  let result;
  if (mode === 'duck') result = await duck(file, threads);
  else if (mode === 'scan') result = { hits: scanOnly(file) };
  else {
    const events = await threaded(mode, file, threads);
    result = { holds: answer(events), events: events.count };
  }
  const seconds = (performance.now() - before) / 1000;
  const used = process.cpuUsage(cpu);
  console.log(
    JSON.stringify({
      mode,
      threads,
      seconds,
      cpu: (used.user + used.system) / 1e6,
      megabytes: process.resourceUsage().maxRSS / 1024,
      ...result,
    }),
  );
  process.exit(0);
}
