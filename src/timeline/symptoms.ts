// Symptoms and signs as present or absent, from observations and from conditions. Never asked is neither.
import type { Condition, Observation } from 'fhir/r4.js';
import type { Received } from '../bundle/read-bundle-types.ts';
import type { SymptomId } from '../guidelines/guideline.ts';
import { readValue, reportMissingSystem } from './coded-value.ts';
import { conditionStateOf } from './condition-state.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { fieldsOf, listOf, textOf, wordingOf, type Fields } from './fields.ts';
import { notesOf } from './free-text.ts';
import { parseMoment } from './moment.ts';
import { readPresence, type Presence } from './presence.ts';
import { sourceOf } from './source.ts';
import {
  isRelieved,
  isSymptomHolder,
  severityOfConcept,
  severityWritten,
  symptomsNamed,
  symptomsOf,
} from './symptom-words.ts';
import type { Moment, Symptom } from './timeline.ts';
import { isUnusable, unusable } from './unusable.ts';

export { symptomsOf } from './symptom-words.ts';

/** Does this observation speak of a symptom: in its code, in a component, or in its value? */
export function isSymptomObservation(observation: unknown): boolean {
  const fields = fieldsOf(observation);
  if (symptomsOf(fields['code']).length > 0 || isSymptomHolder(fields['code'])) return true;
  return listOf(fields['component']).some((component) => symptomsOf(component['code']).length > 0);
}

/**
 * Which symptoms does this observation state, and are they present?
 *
 * Given    received  an observation that `isSymptomObservation` recognises
 *          context   takes notice of codings without a system
 *          at        its moment; absent when none was sent
 * Returns  one entry per symptom, in the order of code, value, components
 *          unusable  as `readPresence`; value-not-readable when the value names no symptom we know
 * Throws   never
 * Notes    1. A finding in the code, without any value, says that the finding is there.
 *          2. A severity as the value says that it is there.
 *          3. One readable component is enough; components that cannot be read are reported.
 * Source   FHIR R4 Observation, "code value pairs"; terminology.md section 5.
 */
export function readSymptoms(
  received: Received<Observation>,
  context: TimelineContext,
  at: Moment | undefined,
): readonly Symptom[] | Unusable {
  const { resource } = received;
  reportMissingSystem(received, resource.code, 'code', context);
  const components = readComponents(received, context, at);
  const own = readOwn(received, at);
  if (isUnusable(own)) return components.length > 0 ? components : own;
  return [...own, ...components];
}

function readOwn(received: Received<Observation>, at: Moment | undefined): readonly Symptom[] | Unusable {
  const { resource } = received;
  const inCode = symptomsOf(resource.code);
  if (inCode.length > 0) return readCoded(received, fieldsOf(resource), inCode, at, '');
  if (!isSymptomHolder(resource.code)) return unusable('code-missing', 'code', 'The code names no symptom.');
  return readNamedInValue(received, at);
}

function readComponents(
  received: Received<Observation>,
  context: TimelineContext,
  at: Moment | undefined,
): readonly Symptom[] {
  return listOf(received.resource.component).flatMap((component, position) => {
    const symptoms = symptomsOf(component['code']);
    if (symptoms.length === 0) return [];
    const element = `component[${position}].`;
    const read = readCoded(received, component, symptoms, at, element);
    if (!isUnusable(read)) return read;
    reportComponent(received, context, read);
    return [];
  });
}

function reportComponent(received: Received<Observation>, context: TimelineContext, why: Unusable): void {
  context.issue(received, {
    severity: 'warning',
    code: why.code,
    type: 'value',
    element: why.element,
    message: why.message,
  });
}

function readCoded(
  received: Received<Observation>,
  holder: Fields,
  symptoms: readonly SymptomId[],
  at: Moment | undefined,
  element: string,
): readonly Symptom[] | Unusable {
  const presence = presenceOf(holder, element);
  if (presence.kind === 'unusable') return presence;
  const severity = severityOf(holder);
  const name = wordingOf(holder['code']);
  const asSent = name === undefined ? presence.asSent : `${name}: ${presence.asSent}`;
  const isGone = isRelieved(notesOf(received.resource));
  return symptoms.map((symptom) =>
    entry(received, { symptom, presence: presence.presence, at, severity, relieved: isGone, asSent }),
  );
}

function presenceOf(holder: Fields, element: string): Presence | Unusable {
  const presence = readPresence(holder, element);
  if (presence.kind === 'usable') return presence;
  if (presence.code === 'value-missing') return { kind: 'usable', presence: 'present', asSent: 'recorded' };
  const severity = severityOfValue(holder);
  const mentioned =
    severity === undefined ? undefined : (wordingOf(holder['valueCodeableConcept']) ?? severity);
  return mentioned === undefined ? presence : { kind: 'usable', presence: 'present', asSent: mentioned };
}

function readNamedInValue(
  received: Received<Observation>,
  at: Moment | undefined,
): readonly Symptom[] | Unusable {
  const { resource } = received;
  const sole = readValue(resource);
  if (sole.kind === 'unusable') return sole;
  const symptoms =
    sole.name === 'valueString' ? symptomsNamed(textOf(sole.value) ?? '') : symptomsOf(sole.value);
  if (symptoms.length === 0) {
    return unusable('value-not-readable', sole.name, 'The value names no symptom that a rule asks for.');
  }
  const wording = sole.name === 'valueString' ? textOf(sole.value) : wordingOf(sole.value);
  const severity = severityOf(fieldsOf(resource)) ?? severityWritten(wording);
  const isGone = isRelieved(notesOf(resource));
  return symptoms.map((symptom) =>
    entry(received, {
      symptom,
      presence: 'present',
      at,
      severity,
      relieved: isGone,
      asSent: wording ?? symptom,
    }),
  );
}

function severityOf(holder: Fields): Symptom['severity'] {
  const ofComponents = listOf(holder['component'])
    .filter((component) => symptomsOf(component['code']).length === 0)
    .map((component) => severityOfConcept(component['valueCodeableConcept']));
  return (
    severityOfValue(holder) ??
    ofComponents.find((severity) => severity !== undefined) ??
    listOf(holder['interpretation'])
      .map(severityOfConcept)
      .find((severity) => severity !== undefined) ??
    severityWritten(textOf(fieldsOf(holder['code'])['text'])) ??
    severityWritten(notesOf(holder))
  );
}

function severityOfValue(holder: Fields): Symptom['severity'] {
  return severityOfConcept(holder['valueCodeableConcept']) ?? severityWritten(textOf(holder['valueString']));
}

interface Entry {
  readonly symptom: SymptomId;
  readonly presence: Symptom['presence'];
  readonly at: Moment | undefined;
  readonly severity: Symptom['severity'];
  readonly relieved: boolean;
  readonly asSent: string;
}

function entry(received: Received, { symptom, presence, at, severity, relieved, asSent }: Entry): Symptom {
  return {
    symptom,
    presence,
    relieved,
    asSent,
    source: sourceOf(received),
    ...(at === undefined ? {} : { at }),
    ...(severity === undefined ? {} : { severity }),
  };
}

/**
 * Which symptoms does this condition state?
 *
 * Given    received  a condition whose code `symptomsOf` recognises
 *          context   zone of the facility
 * Returns  active: present at its onset. Refuted: absent when recorded. Over: present and relieved at its onset,
 *          and absent from the time it ended; without an onset only absent
 * Throws   never
 * Notes    1. A seizure is an event: a resolved one was there all the same, and is never made absent by having ended.
 *          2. Without an onset the recording time counts.
 * Source   terminology.md section 5 ("absent symptoms"); fhir checklist F-M09; the note on seizures is ours.
 */
export function readSymptomsOfCondition(
  received: Received<Condition>,
  context: TimelineContext,
): readonly Symptom[] {
  const { resource } = received;
  const fields = fieldsOf(resource);
  const state = conditionStateOf(resource, context);
  const onset = state.onset ?? state.recorded;
  const severity =
    severityOfConcept(fields['severity']) ?? severityWritten(textOf(fieldsOf(fields['code'])['text']));
  const asSent = wordingOf(fields['code']) ?? 'condition';
  const common = { severity, asSent };
  reportMissingSystem(received, fields['code'], 'code', context);
  return symptomsOf(fields['code']).flatMap((symptom) => {
    if (state.certainty === 'refuted') {
      return [entry(received, { ...common, symptom, presence: 'absent', at: onset, relieved: false })];
    }
    const isGone = state.state === 'inactive';
    const relieved = symptom !== 'seizure' && (isGone || isRelieved(notesOf(resource)));
    const present = entry(received, { ...common, symptom, presence: 'present', at: onset, relieved });
    if (!isGone || symptom === 'seizure') return [present];
    const absent = entry(received, {
      ...common,
      symptom,
      presence: 'absent',
      at: endOf(fields, context),
      relieved,
    });
    return onset === undefined ? [absent] : [present, absent];
  });
}

function endOf(fields: Fields, context: TimelineContext): Moment | undefined {
  const end = textOf(fields['abatementDateTime']) ?? textOf(fieldsOf(fields['abatementPeriod'])['end']);
  return end === undefined ? undefined : parseMoment(end, context.facilityOffsetMinutes);
}
