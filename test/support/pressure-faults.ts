// Ways in which systems send a blood pressure wrongly, each as a change of a sound panel of two components.
import type { Observation, ObservationComponent } from 'fhir/r4.js';

/** JSON as it arrives: it need not be FHIR. */
type Sent = Readonly<Record<string, unknown>>;

const valueOf = (half: ObservationComponent | undefined): number => half?.valueQuantity?.value ?? 0;

/** The same panel with the value of each component sent as something else. */
const eachValue =
  (change: (value: number) => Sent) =>
  (panel: Observation): Sent => ({
    ...panel,
    component: (panel.component ?? []).map((half) => ({ code: half.code, ...change(valueOf(half)) })),
  });
const quantity =
  (change: (value: number) => Sent) =>
  (panel: Observation): Sent =>
    eachValue((value) => ({ valueQuantity: change(value) }))(panel);
const withFields =
  (fields: Sent) =>
  (panel: Observation): Sent => ({ ...panel, ...fields });
const mmHg = { unit: 'mmHg', system: 'http://unitsofmeasure.org', code: 'mm[Hg]' };
const modifier = [{ url: 'https://example.org/what', valueBoolean: true }];

const asText =
  (text: (systolic: number, diastolic: number) => string) =>
  ({ component, ...panel }: Observation): Sent => ({
    ...panel,
    valueString: text(valueOf(component?.[0]), valueOf(component?.[1])),
  });

/** A second systolic component beside the first, which stays. */
const secondSystolic =
  (other: number) =>
  (panel: Observation): Sent => {
    const [systolic] = panel.component ?? [];
    const second = { code: systolic?.code, valueQuantity: { ...mmHg, value: other } };
    return { ...panel, component: [...(panel.component ?? []), second] };
  };

/** Faults of form: the numbers are there, and nothing may rest on them. */
export const faults = {
  'a whole number instead of a quantity': eachValue((value) => ({ valueInteger: value })),
  'text instead of a quantity': eachValue((value) => ({ valueString: String(value) })),
  'text with its unit': eachValue((value) => ({ valueString: `${value} mmHg` })),
  'a range': eachValue((value) => ({
    valueRange: { low: { ...mmHg, value: value - 4 }, high: { ...mmHg, value } },
  })),
  'two values': eachValue((value) => ({
    valueQuantity: { ...mmHg, value: 100 },
    valueString: String(value),
  })),
  'a value and a reason for its absence': eachValue((value) => ({
    valueQuantity: { ...mmHg, value },
    dataAbsentReason: { text: 'unknown' },
  })),
  'a number as JSON text': quantity((value) => ({ ...mmHg, value: String(value) })),
  'a unit nobody knows': quantity((value) => ({ value, unit: 'points' })),
  'a unit of pressure that is not accepted': quantity((value) => ({ value: value / 10, unit: 'cmHg' })),
  'a unit of tyres': quantity((value) => ({ value: value / 51.7149, code: '[psi]' })),
  'a comparator nobody knows': quantity((value) => ({ ...mmHg, value, comparator: 'ad' })),
  'one text among words': asText((systolic, diastolic) => `BP: ${systolic}/${diastolic}`),
  'no status': withFields({ status: undefined }),
  'the status unknown': withFields({ status: 'unknown' }),
  'a status wrongly spelled': withFields({ status: 'Final' }),
  'a status before there is a result': withFields({ status: 'registered' }),
  'two times': withFields({
    effectivePeriod: { start: '2025-03-10T11:00:00Z', end: '2025-03-10T11:02:00Z' },
  }),
  'a modifier nobody knows': withFields({ modifierExtension: modifier }),
  'a modifier nobody knows on a component': (panel: Observation): Sent => ({
    ...panel,
    component: (panel.component ?? []).map((half) => ({ ...half, modifierExtension: modifier })),
  }),
  'a rule set nobody knows': withFields({ implicitRules: 'https://example.org/rules' }),
  'a second, lower systolic component': secondSystolic(101),
} as const satisfies Readonly<Record<string, (panel: Observation) => Sent>>;

export type FaultName = keyof typeof faults;
