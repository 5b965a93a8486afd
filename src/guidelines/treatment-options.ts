// Drugs and doses the publications name: reference values with their source. Data.
import {
  acog203,
  acog222,
  acog767,
  doseTable2009,
  easterling2019,
  magnesiumReview,
  nice133,
  sogc2022,
  sogcDoseTable,
  who2003,
  who2017,
} from './citations.ts';
import type { Edition } from './edition.ts';
import type { Citation, Need, TreatmentRule } from './guideline.ts';
import { figure, say, type Said } from './sentences.ts';
import { magnesiumLoadWithin } from './shared-values.ts';
import { afterBirth, anyHypertension, kidneyTrouble, noEmergency, pregnant, forDrugs } from './states.ts';

type Against = TreatmentRule['against'];

const acute: Need = { any: ['severe-current', 'severe-open'] };
const hourly = (id: string, citation: Citation) => figure(id, 1, 'h', citation);

const notForLabetalol: Against = [
  { conditions: ['asthma'], sentence: 'Asthma is on record.' },
  { conditions: ['heart-block'], sentence: 'Heart block is on record.' },
  { conditions: ['heart-failure'], sentence: 'Heart failure is on record.' },
  { conditions: ['bradycardia'], sentence: 'A slow pulse is on record.' },
];
const magnesiumGiven = { medicines: ['magnesium-sulfate'], within: magnesiumLoadWithin } as const;
const withMagnesium: Against = [
  {
    medicines: ['magnesium-sulfate'],
    given: magnesiumGiven,
    sentence:
      'Magnesium is given or on order: publications differ on giving both; neither is withheld in an emergency. Watch pressure and breathing.',
  },
];
const notForMethyldopa: Against = [
  { conditions: ['depression'], sentence: 'Depression is on record.' },
  { when: afterBirth, sentence: 'After birth methyldopa is not used.' },
];
const notForMagnesium: Against = [
  { when: 'slow-breathing-on-magnesium', sentence: 'Breathing is slow on magnesium: stop it.' },
  { given: magnesiumGiven, sentence: 'Magnesium was given or is running: no second loading dose.' },
  {
    when: { all: ['magnesium-perhaps-given', { none: ['magnesium-given'] }] },
    sentence: 'Magnesium is on order: if it was given, no second loading dose.',
  },
  {
    when: kidneyTrouble,
    sentence:
      'Signs of kidney impairment: loading dose unchanged, maintenance reduced, urine and knee jerk watched.',
  },
];

const option = (
  id: string,
  medicine: string,
  medicines: TreatmentRule['medicines'],
  purpose: TreatmentRule['purpose'],
  when: Need,
  dose: Said,
  against: Against,
  citation: Citation,
  rest: { readonly rank?: number; readonly siteNeeds?: string } = {},
): TreatmentRule => ({
  id,
  medicine,
  medicines,
  ...(medicines.includes('labetalol') ? { alsoCalled: ['a beta-blocker'] } : {}),
  purpose,
  when,
  dose: dose.sentence,
  figures: dose.figures,
  against: [{ allergyTo: medicines, sentence: 'An allergy to it is on record.' }, ...against],
  citation,
  ...rest,
});

const trial = easterling2019('abstract', 'read');
const canada = sogc2022('treatment, as digested on a teaching site', 'read');
const doses = sogcDoseTable('table 2', 'read');
const acog = acog767('first-line therapy', 'read');
const old = doseTable2009('table III', 'read');
const firstManual = who2003('severe hypertension, dosing', 'read');

const acuteOptions: readonly TreatmentRule[] = [
  option(
    'labetalol-by-mouth',
    'labetalol, by mouth',
    ['labetalol'],
    'acute-pressure',
    acute,
    say('{dose} by mouth, repeated after {again} where needed', {
      dose: figure('labetalol-oral-acute', 200, 'mg', trial),
      again: hourly('labetalol-oral-again', trial),
    }),
    notForLabetalol,
    trial,
    { rank: 1 },
  ),
  option(
    'nifedipine-by-mouth',
    'nifedipine, by mouth',
    ['nifedipine'],
    'acute-pressure',
    acute,
    say('{dose} by mouth every {interval}; never under the tongue', {
      dose: figure('nifedipine-oral-acute', 5, 'mg', doses, 10),
      interval: figure('nifedipine-oral-interval', 30, 'min', doses),
    }),
    withMagnesium,
    doses,
    { rank: 2 },
  ),
  option(
    'nifedipine-retard-by-mouth',
    'nifedipine retard, by mouth',
    ['nifedipine'],
    'acute-pressure',
    acute,
    say('{dose} by mouth, repeated after {again} where needed', {
      dose: figure('nifedipine-retard-acute', 10, 'mg', trial),
      again: hourly('nifedipine-retard-again', trial),
    }),
    withMagnesium,
    trial,
    { rank: 3 },
  ),
  option(
    'labetalol-into-a-vein',
    'labetalol, into a vein',
    ['labetalol'],
    'acute-pressure',
    acute,
    say('{first} over {over}, then {second} and {third} at intervals of {interval}; at most {most}', {
      first: figure('labetalol-vein-first', 20, 'mg', acog),
      over: figure('labetalol-vein-over', 2, 'min', acog),
      second: figure('labetalol-vein-second', 40, 'mg', acog),
      third: figure('labetalol-vein-third', 80, 'mg', doses),
      interval: figure('labetalol-vein-interval', 10, 'min', acog),
      most: figure('labetalol-vein-most', 300, 'mg', doses),
    }),
    notForLabetalol,
    acog,
    { rank: 4, siteNeeds: 'intravenous-drugs' },
  ),
  option(
    'hydralazine-into-a-vein',
    'hydralazine, into a vein',
    ['hydralazine'],
    'acute-pressure',
    acute,
    say(
      '{first}, then {more} every {interval}; another drug after {most}. Pressure falls too low more often',
      {
        first: figure('hydralazine-vein-first', 5, 'mg', old),
        more: figure('hydralazine-vein-more', 5, 'mg', old, 10),
        interval: figure('hydralazine-vein-interval', 20, 'min', old, 40),
        most: figure('hydralazine-vein-most', 20, 'mg', old),
      },
    ),
    [],
    old,
    { rank: 5, siteNeeds: 'intravenous-drugs' },
  ),
  option(
    'methyldopa-by-mouth-once',
    'methyldopa, by mouth',
    ['methyldopa'],
    'acute-pressure',
    acute,
    say('{dose} by mouth, once; slow, only where nothing faster is at hand', {
      dose: figure('methyldopa-acute', 1000, 'mg', canada),
    }),
    [
      ...notForMethyldopa,
      { when: acute, sentence: 'The European position paper does not use it for urgent lowering.' },
    ],
    canada,
    { rank: 6 },
  ),
];

const table = acog203('oral drug table', 'read');

/** Confirmed, at or above the start of the edition, and nothing more urgent first. */
const maintenanceBefore = (edition: Edition): Need => ({
  all: [pregnant, 'start-drug', forDrugs(edition), noEmergency],
});
const maintenanceAfter: Need = { all: [afterBirth, 'after-birth-treatment', anyHypertension] };

const maintenanceOptions = (edition: Edition): readonly TreatmentRule[] => {
  const anyTime: Need = { any: [maintenanceBefore(edition), maintenanceAfter] };
  const enalapril = nice133('1.9.4 to 1.9.9', 'read', 'the publication states no dose here');
  return [
    option(
      'labetalol-maintenance',
      'labetalol, by mouth',
      ['labetalol'],
      'maintenance',
      anyTime,
      say('{start} {times}, within {low:bare} to {high} in {parts:bare} doses', {
        start: figure('labetalol-start', 100, 'mg', table, 200),
        times: figure('labetalol-times', 2, '/d', table),
        low: figure('labetalol-low', 200, 'mg/d', table),
        high: figure('labetalol-high', 2400, 'mg/d', table),
        parts: figure('labetalol-parts', 2, '/d', table, 3),
      }),
      notForLabetalol,
      table,
      { rank: 1 },
    ),
    option(
      'nifedipine-maintenance',
      'nifedipine, extended release, by mouth',
      ['nifedipine'],
      'maintenance',
      anyTime,
      say('start {start}, within {range}, extended release; never under the tongue', {
        start: figure('nifedipine-start', 30, 'mg/d', table, 60),
        range: figure('nifedipine-range', 30, 'mg/d', table, 120),
      }),
      withMagnesium,
      table,
      { rank: 2 },
    ),
    option(
      'methyldopa-maintenance',
      'methyldopa, by mouth',
      ['methyldopa'],
      'maintenance',
      maintenanceBefore(edition),
      say('{start} {times}, within {range}', {
        start: figure('methyldopa-start', 250, 'mg', table),
        times: figure('methyldopa-times', 2, '/d', table, 3),
        range: figure('methyldopa-range', 500, 'mg/d', table, 3000),
      }),
      notForMethyldopa,
      table,
      { rank: 3 },
    ),
    option(
      'enalapril-after-birth',
      'enalapril, by mouth',
      ['enalapril'],
      'maintenance',
      maintenanceAfter,
      say('dose by the local formulary; potassium and creatinine are watched'),
      [{ when: kidneyTrouble, sentence: 'Signs of kidney impairment.' }],
      enalapril,
      { rank: 0 },
    ),
    option(
      'amlodipine-after-birth',
      'amlodipine, by mouth',
      ['amlodipine'],
      'maintenance',
      maintenanceAfter,
      say('dose by the local formulary; nifedipine or amlodipine for women of African or Caribbean origin'),
      withMagnesium,
      enalapril,
    ),
  ];
};

const magnesiumState: Need = {
  any: [
    'class:eclampsia',
    'class:imminent-eclampsia',
    'class:pre-eclampsia-severe-features',
    'class:hellp',
    {
      all: [
        {
          any: ['class:pre-eclampsia', 'class:superimposed-pre-eclampsia', 'class:postpartum-pre-eclampsia'],
        },
        { any: ['severe-current', 'severe-organ'] },
      ],
    },
  ],
};
const regimens = magnesiumReview('table 2', 'read');
const goOn = figure('magnesium-go-on', 24, 'h', regimens);
const vein = figure('magnesium-vein', 4, 'g', regimens);
const veinMinutes = figure('magnesium-vein-minutes', 15, 'min', regimens, 20);
const perHour = figure('magnesium-per-hour', 1, 'g/h', regimens);
const everyFour = figure('magnesium-muscle-interval', 4, 'h', regimens);
const fiveInMuscle = figure('magnesium-muscle', 5, 'g', regimens);
const nice = nice133('1.8.4', 'read');
const acogMagnesium = acog222('magnesium', 'from-memory');

const magnesium = (id: string, name: string, dose: Said, citation: Citation, when: Need): TreatmentRule =>
  option(
    id,
    `magnesium sulfate, ${name}`,
    ['magnesium-sulfate'],
    'seizure',
    when,
    dose,
    notForMagnesium,
    citation,
    { siteNeeds: 'magnesium' },
  );

const magnesiumRegimens = (edition: Edition): readonly TreatmentRule[] => {
  const also = edition.care.magnesiumAlso;
  const when: Need = also === undefined ? magnesiumState : { any: [magnesiumState, also] };
  return [
    magnesium(
      'magnesium-into-the-muscle',
      'into the muscle',
      say(
        '{vein} into a vein over {minutes} and {muscle} into each buttock, then {muscle} into the muscle every {every}; for {goOn} after the last fit or birth, whichever is later',
        { vein, minutes: veinMinutes, muscle: fiveInMuscle, every: everyFour, goOn },
      ),
      regimens,
      when,
    ),
    magnesium(
      'magnesium-into-the-vein',
      'into the vein',
      say(
        '{vein} into a vein over {minutes}, then {hour}; for {goOn} after the last fit or birth, whichever is later',
        {
          vein,
          minutes: veinMinutes,
          hour: perHour,
          goOn,
        },
      ),
      regimens,
      when,
    ),
    magnesium(
      'magnesium-low-dose',
      'low dose',
      say('{vein} into a vein and {muscle} into each buttock, then {later} into the muscle every {every}', {
        vein,
        muscle: figure('magnesium-low-muscle', 3, 'g', regimens),
        later: figure('magnesium-low-later', 2.5, 'g', regimens),
        every: everyFour,
      }),
      regimens,
      when,
    ),
    magnesium(
      'magnesium-nice',
      'as NICE',
      say('{vein} into a vein over {minutes}, then {hour} for {goOn}; after a further fit {again} more', {
        vein: figure('magnesium-nice-vein', 4, 'g', nice),
        minutes: figure('magnesium-nice-minutes', 5, 'min', nice, 15),
        hour: figure('magnesium-nice-hour', 1, 'g/h', nice),
        goOn: figure('magnesium-nice-go-on', 24, 'h', nice),
        again: figure('magnesium-nice-again', 2, 'g', nice, 4),
      }),
      nice,
      when,
    ),
    magnesium(
      'magnesium-acog',
      'as ACOG',
      say('{vein} into a vein over {minutes}, then {hour}', {
        vein: figure('magnesium-acog-vein', 4, 'g', acogMagnesium, 6),
        minutes: figure('magnesium-acog-minutes', 20, 'min', acogMagnesium, 30),
        hour: figure('magnesium-acog-hour', 1, 'g/h', acogMagnesium, 2),
      }),
      acogMagnesium,
      when,
    ),
  ];
};

/** ACOG, from memory. */
export const nifedipineAcog: TreatmentRule = option(
  'nifedipine-acog',
  'nifedipine, immediate release, by mouth',
  ['nifedipine'],
  'acute-pressure',
  acute,
  say('{first} by mouth, then {second} after {interval}, at most {times:bare} times more', {
    first: figure('nifedipine-acog-first', 10, 'mg', acog222('acute treatment', 'from-memory')),
    second: figure('nifedipine-acog-second', 20, 'mg', acog222('acute treatment', 'from-memory')),
    interval: figure('nifedipine-acog-interval', 20, 'min', acog222('acute treatment', 'from-memory')),
    times: figure('nifedipine-acog-times', 2, '{times}', acog222('acute treatment', 'from-memory')),
  }),
  withMagnesium,
  acog222('acute treatment', 'from-memory'),
);

/** WHO, first edition of the manual. */
export const hydralazineWho: TreatmentRule = option(
  'hydralazine-who',
  'hydralazine, into a vein or muscle',
  ['hydralazine'],
  'acute-pressure',
  acute,
  say('{vein} into a vein every {interval}, or {muscle} into the muscle every {hours}', {
    vein: figure('hydralazine-who-vein', 5, 'mg', firstManual),
    interval: figure('hydralazine-who-interval', 5, 'min', firstManual),
    muscle: figure('hydralazine-who-muscle', 12.5, 'mg', firstManual),
    hours: figure('hydralazine-who-hours', 2, 'h', firstManual),
  }),
  [],
  firstManual,
  { siteNeeds: 'intravenous-drugs' },
);

export const labetalolWho: TreatmentRule = option(
  'labetalol-who',
  'labetalol, into a vein',
  ['labetalol'],
  'acute-pressure',
  acute,
  say('{first:bare}, {second:bare}, {third:bare}, {fourth} at intervals of {interval}', {
    first: figure('labetalol-who-first', 10, 'mg', firstManual),
    second: figure('labetalol-who-second', 20, 'mg', firstManual),
    third: figure('labetalol-who-third', 40, 'mg', firstManual),
    fourth: figure('labetalol-who-fourth', 80, 'mg', firstManual),
    interval: figure('labetalol-who-interval', 10, 'min', firstManual),
  }),
  notForLabetalol,
  firstManual,
  { siteNeeds: 'intravenous-drugs' },
);

export const methyldopaWho: TreatmentRule = option(
  'methyldopa-who',
  'methyldopa, by mouth',
  ['methyldopa'],
  'acute-pressure',
  acute,
  say('{dose} by mouth, repeated after {again}', {
    dose: figure('methyldopa-who-dose', 750, 'mg', who2017('severe hypertension', 'from-memory')),
    again: figure('methyldopa-who-again', 3, 'h', who2017('severe hypertension', 'from-memory')),
  }),
  notForMethyldopa,
  who2017('severe hypertension', 'from-memory'),
);

/** Every option of an edition: the common ones, then its own. */
export const standardTreatmentRules = (edition: Edition): readonly TreatmentRule[] => [
  ...acuteOptions,
  ...edition.care.treatments,
  ...maintenanceOptions(edition),
  ...magnesiumRegimens(edition),
];
