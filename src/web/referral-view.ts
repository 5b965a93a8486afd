// The referral note: one page to print, and the same as a FHIR document.
import type { Patient } from 'fhir/r4.js';
import type { Evaluation } from '../evaluation.ts';
import { spokenTime } from '../presenters/clock.ts';
import { toReferralDocument } from '../presenters/referral-document.ts';
import { toReferralNote, type NotePart, type Person } from '../presenters/referral-note.ts';
import { isJson, resourcesIn, type Case } from './case.ts';
import { list, make, save } from './dom.ts';

/** The note of what is shown, with its buttons. */
export function referralView(evaluation: Evaluation, shown: Case): HTMLElement {
  const patient = patientIn(shown, evaluation.subject);
  const note = toReferralNote(evaluation, personOf(patient));
  const { name, birthDate, identifier } = note.person;
  const blank = (heading: string) => make('p', { class: 'blank' }, `${heading}: `, make('span', {}));
  const saveDocument = (): void =>
    save(
      'referral-note.json',
      'application/fhir+json',
      JSON.stringify(toReferralDocument(evaluation, note, patient), null, 2),
    );
  return make(
    'div',
    {},
    make(
      'p',
      { class: 'no-print' },
      make('button', { type: 'button', onclick: () => window.print() }, 'Print or save as PDF'),
      ' ',
      make('button', { type: 'button', id: 'save-note', onclick: saveDocument }, 'Save as FHIR document'),
    ),
    make(
      'article',
      { class: 'note', 'aria-labelledby': 'note-heading' },
      make('h2', { id: 'note-heading' }, note.title),
      make(
        'p',
        { class: 'who' },
        make('b', {}, name ?? 'Name: ____________________'),
        `, born ${birthDate === undefined ? '__________' : spokenTime(birthDate)}, number ${identifier ?? '__________'}; as of ${note.asOf}`,
      ),
      ...note.sections.map(({ title, parts }) =>
        make(
          'section',
          { class: 'note-section' },
          make('h3', {}, title),
          make('div', { class: 'parts' }, ...parts.map(partOf)),
        ),
      ),
      make(
        'section',
        { class: 'note-cautions' },
        make('h3', {}, 'Caution'),
        make('p', {}, note.cautions.join(' ')),
      ),
      make(
        'div',
        { class: 'signatures' },
        blank('Given before leaving, with dose and time'),
        blank('Referred by'),
        blank('Time left'),
        blank('Received by'),
        blank('Time arrived'),
      ),
      make(
        'p',
        { class: 'source' },
        `Rules: ${note.madeWith}. Worded by a program; checked and signed by the clinician above.`,
      ),
    ),
  );
}

function partOf({ heading, lines, toTick }: NotePart): HTMLElement {
  const items = lines.map((line) =>
    toTick === true ? make('label', {}, make('input', { type: 'checkbox' }), ` ${line}`) : line,
  );
  return make(
    'div',
    { class: 'part' },
    make('h4', {}, heading),
    list('ul', items, toTick === true ? { class: 'ticks' } : {}),
  );
}

function patientIn({ input }: Case, subject: string | undefined): Patient | undefined {
  return resourcesIn(input).find((each): each is Patient => isPatient(each, subject));
}

function isPatient(resource: unknown, subject: string | undefined): resource is Patient {
  if (!isJson(resource) || resource['resourceType'] !== 'Patient') return false;
  return (
    subject === undefined ||
    !subject.startsWith('Patient/') ||
    subject === `Patient/${String(resource['id'])}`
  );
}

function personOf(patient: Patient | undefined): Person {
  const name = patient?.name?.[0];
  const text = name?.text ?? [...(name?.given ?? []), name?.family ?? ''].join(' ').trim();
  const identifier = patient?.identifier?.[0]?.value;
  return {
    ...(text === '' ? {} : { name: text }),
    ...(patient?.birthDate === undefined ? {} : { birthDate: patient.birthDate }),
    ...(identifier === undefined ? {} : { identifier }),
  };
}
