// What one observation says about blood pressure: its halves, and how it was taken. Hands on the parts.
import type { Received } from '../bundle/read-bundle-types.ts';
import { pressureCodes, pressurePanelCodes, unusedPressureCodes } from '../terminology/pressure-codes.ts';
import type { PressureCode, PressurePanelCode } from '../terminology/pressure-codes.ts';
import { loinc } from '../terminology/loinc.ts';
import { snomed } from '../terminology/snomed.ts';
import { systems } from '../terminology/systems.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import type { TimelineContext, Unusable } from './context.ts';
import type { Fields } from './fields.ts';
import { codingsOf, fieldsOf, listOf, textOf, wordingOf } from './fields.ts';
import type { Circumstances } from './pressure-technique.ts';
import { circumstancesOf } from './pressure-technique.ts';
import type { PressureValue } from './pressure-value.ts';
import { readPressureText, readPressureValue } from './pressure-value.ts';
import { readQuantity } from './quantity.ts';
import { withoutRepetition, withoutAmbiguity, isValue, faultIn, type Read } from './repeated-halves.ts';
import { unusable } from './unusable.ts';
import type { Writable } from './writable.ts';

const codeIndex = indexCodes(pressureCodes);
const panelIndex = indexCodes(pressurePanelCodes);
const unusedIndex = indexCodes(unusedPressureCodes);

export interface PressureParts {
  readonly received: Received;
  readonly values: readonly PressureValue[];
  /** Why a half that was named could not be used; the number of such a half may be among the values. */
  readonly failures: readonly Unusable[];
  /** Its code names one half, so that the other may stand in another observation. */
  readonly isStandAlone: boolean;
  readonly isOver24h: boolean;
  readonly numberOfReadings?: number;
  readonly circumstances: Circumstances;
}

/** Does the code, or a component, of this observation name a blood pressure? */
export function isPressure(fields: Fields): boolean {
  const codings = codingsOf(fields['code']);
  if (rowsFor(codings, codeIndex).length > 0 || rowsFor(codings, panelIndex).length > 0) return true;
  if (rowsFor(codings, unusedIndex).length > 0) return true;
  return listOf(fields['component']).some((part) => rowsFor(codingsOf(part['code']), codeIndex).length > 0);
}

/** Is it a panel of vital signs, whose members are read by themselves? */
export function isVitalSignsPanel(fields: Fields): boolean {
  return rowsFor(codingsOf(fields['code']), panelIndex).some((row) => row.holds === 'vital-signs');
}

const arterialIndex = indexCodes([
  ...loinc['blood-pressure-mean-arterial'].map((row) => ({ ...row, system: systems.loinc })),
  ...snomed['blood-pressure-mean-arterial'].map((row) => ({ ...row, system: systems.snomed })),
]);

/** Is it a mean arterial pressure, which no rule asks for? */
export function isMeanArterial(fields: Fields): boolean {
  return rowsFor(codingsOf(fields['code']), arterialIndex).length > 0;
}

/**
 * What does this observation say about blood pressure?
 *
 * Given    received  an observation for which `isPressure` holds
 *          context   the bundle, the unit a site declares, and where to report oddities
 * Returns  the halves found, by their codes and never by their order, and why others could not be used
 * Throws   never
 * Notes    1. A component with a code of a reading and a code of an average is an average.
 *          2. A component that repeats the code of the observation is ignored and reported (obs-7).
 *          3. Two components of one half with different values are ambiguous: the higher is for urgency only.
 * Source   fhir checklist F-P01 to F-P07, F-P10; terminology.md section 1.
 */
export function readPressureParts(received: Received, context: TimelineContext): PressureParts {
  const fields = fieldsOf(received.resource);
  const codings = codingsOf(fields['code']);
  const components = listOf(fields['component']);
  const own = rowsFor(codings, codeIndex);
  const halves: NamedHalf[] = [];
  const others: Fields[] = [];
  components.forEach((component, index) => {
    const rows = rowsFor(codingsOf(component['code']), codeIndex);
    if (rows.length > 0) halves.push({ component, rows, index });
    else others.push(component);
  });
  const rows = halves.length === 0 ? own : [...own, ...halves.flatMap((half) => half.rows)];
  const panels = rowsFor(codings, panelIndex);
  const circumstances = withTraitsOf(rows, circumstancesOf(received, others, context));
  const blocked = blockedBy(fields, circumstances);
  const all =
    blocked === undefined ? readHalves({ received, fields, own, halves, panels }, context) : [blocked];
  const parts: Writable<PressureParts> = {
    received,
    values: all.filter(isValue),
    failures: all.flatMap((read) => faultIn(read) ?? []),
    isStandAlone: own.length > 0 && halves.length === 0,
    isOver24h: panels.some((panel) => panel.holds === 'mean-24h') || rows.some(isOver24h),
    circumstances,
  };
  const numberOfReadings = others.length === 0 ? undefined : countIn(others);
  if (numberOfReadings !== undefined) parts.numberOfReadings = numberOfReadings;
  return parts;
}

interface NamedHalf {
  readonly component: Fields;
  readonly rows: readonly PressureCode[];
  /** Position among all components. */
  readonly index: number;
}

interface Named {
  readonly received: Received;
  readonly fields: Fields;
  /** Rows that the code of the observation itself names. */
  readonly own: readonly PressureCode[];
  readonly halves: readonly NamedHalf[];
  readonly panels: readonly PressurePanelCode[];
}

const isOver24h = (row: PressureCode): boolean => row.use === 'mean-24h';

function readHalves({ received, fields, own, halves, panels }: Named, context: TimelineContext) {
  const holds = panels[0]?.holds;
  const isMeanPanel = holds === 'mean-of-readings' || holds === 'mean-24h';
  const root = own.length === 0 ? [] : [readNamed(fields, own, '', isMeanPanel, context)];
  const inComponents = halves.map(({ component, rows, index }) =>
    readNamed(component, rows, `component[${String(index)}].`, isMeanPanel, context),
  );
  const named = root.length === 0 ? inComponents : withoutRepetition(received, root, inComponents, context);
  return named.length === 0 ? fromText(received, fields, isMeanPanel, context) : withoutAmbiguity(named);
}

/** A standing panel by its code, and an invasive pressure by its method, are not used as a whole. */
function blockedBy(fields: Fields, { technique }: Circumstances): Unusable | undefined {
  if (technique.method === 'invasive')
    return notUsable('an invasive pressure is not a cuff pressure', 'method');
  if (isMeanArterial(fields)) return undefined;
  const standing = rowsFor(codingsOf(fields['code']), unusedIndex)[0];
  return standing === undefined ? undefined : notUsable(standing.why, 'code');
}

function readNamed(
  element: Fields,
  rows: readonly PressureCode[],
  prefix: string,
  isMeanPanel: boolean,
  context: TimelineContext,
): Read {
  const blocked = rows.find((row) => row.use === 'not-usable');
  if (blocked !== undefined) return notUsable(blocked.why, `${prefix}code`);
  const half = rows[0]?.half ?? 'systolic';
  if (rows.some((row) => row.half !== half))
    return unusable(
      'value-ambiguous',
      `${prefix}code`,
      'The codes name both systolic and diastolic pressure.',
    );
  const isMean = isMeanPanel || rows.some((row) => row.use !== 'reading');
  return readPressureValue(element, { half, isMean, prefix }, context);
}

function notUsable(why: string | undefined, element: string): Unusable {
  const text = why ?? 'the method cannot be used';
  return unusable('method-not-usable', element, `${text.charAt(0).toUpperCase()}${text.slice(1)}.`);
}

function fromText(
  received: Received,
  fields: Fields,
  isMean: boolean,
  context: TimelineContext,
): readonly Read[] {
  const text = textOf(fields['valueString']);
  const found = text === undefined ? undefined : readPressureText(text, isMean, context);
  if (found === undefined) return noHalves(fields);
  context.issue(received, {
    severity: 'warning',
    code: 'pressure-as-text',
    type: 'value',
    element: 'valueString',
    message: 'Both pressures were sent as one text: send two components with quantities.',
  });
  return found;
}

function noHalves(fields: Fields): readonly Unusable[] {
  if (fields['dataAbsentReason'] !== undefined)
    return [unusable('value-absent-with-reason', 'dataAbsentReason', 'The pressure was not taken.')];
  const name = Object.keys(fields).find((key) => /^value[A-Z]/.test(key));
  if (name === undefined)
    return [unusable('value-missing', 'component', 'No pressure was sent: send two components.')];
  return [unusable('value-type-not-usable', name, 'A pressure panel holds its values in components.')];
}

function withTraitsOf(rows: readonly PressureCode[], found: Circumstances): Circumstances {
  if (!rows.some(hasTrait)) return found;
  const position = found.technique.position ?? rows.find((row) => row.position !== undefined)?.position;
  const method = found.technique.method ?? rows.find((row) => row.method !== undefined)?.method;
  const place = found.place ?? rows.find((row) => row.setting !== undefined)?.setting;
  return {
    ...found,
    technique: {
      ...found.technique,
      ...(position === undefined ? {} : { position }),
      ...(method === undefined ? {} : { method }),
    },
    ...(place === undefined ? {} : { place }),
  };
}

const hasTrait = ({ position, method, setting }: PressureCode): boolean =>
  position !== undefined || method !== undefined || setting !== undefined;

/** SNOMED CT 246432004 "Number of occurrences" (US Core average blood pressure example, read), or the words. */
const countCode = '246432004';

function countIn(components: readonly Fields[]): number | undefined {
  const component = components.find(
    ({ code }) =>
      codingsOf(code).some((coding) => coding.code === countCode) ||
      /number of (readings|measurements|occurrences)/i.test(wordingOf(code) ?? ''),
  );
  if (component === undefined) return undefined;
  const { valueInteger, valueQuantity } = component;
  const read = readQuantity(valueInteger === undefined ? valueQuantity : { value: valueInteger }, 'count');
  return read.kind === 'usable' && Number.isInteger(read.measured.value) ? read.measured.value : undefined;
}
