// Aspirin and calcium, who and how much, by publication. Data.
import {
  acog222,
  acogAspirin,
  aspirinSchemes,
  isshp2021,
  nice133,
  ours,
  sogc2022,
  who2011,
  whoCalcium,
} from '../citations.ts';
import type { Citation, Need, PreventionFactor, PreventionRule, Threshold } from '../guideline.ts';
import { figure, say } from '../sentences.ts';
import { limit } from '../shared-values.ts';
import { establishedPreEclampsia } from '../states.ts';

const chronicHypertension: Need = {
  any: ['recorded-chronic', 'confirmed-before-20-weeks', 'treated-before-20-weeks'],
};
const who = who2011('aspirin, with its remarks', 'read');
const nice = nice133('1.1.2 and 1.1.3', 'read');
const acog = acogAspirin('factor lists, as reprinted', 'read');
const schemes = aspirinSchemes('table 1', 'read');
const isshpFactors = isshp2021('aspirin factors', 'from-memory');

const high = (
  id: string,
  factor: string,
  rest: Omit<PreventionFactor, 'id' | 'factor' | 'level'>,
): PreventionFactor => ({
  id,
  factor,
  level: 'high',
  ...rest,
});
const moderate = (
  id: string,
  factor: string,
  rest: Omit<PreventionFactor, 'id' | 'factor' | 'level'>,
): PreventionFactor => ({ id, factor, level: 'moderate', ...rest });

const earlier = high('earlier-pre-eclampsia', 'pre-eclampsia in an earlier pregnancy', {
  conditions: ['history-of-pre-eclampsia', 'history-of-eclampsia'],
  ever: true,
  beforeThisPregnancy: [
    'pre-eclampsia',
    'pre-eclampsia-severe',
    'superimposed-pre-eclampsia',
    'hellp',
    'eclampsia',
  ],
});
const earlierHypertension = high('earlier-hypertension', 'hypertensive disease in an earlier pregnancy', {
  ...earlier,
  beforeThisPregnancy: [
    ...(earlier.beforeThisPregnancy ?? []),
    'gestational-hypertension',
    'hypertension-in-pregnancy-unspecified',
  ],
});
const chronic = high('chronic-hypertension', 'chronic hypertension', {
  when: chronicHypertension,
  deniedBy: 'confirmed-before-20-weeks',
});
const diabetes = high('diabetes', 'diabetes known before pregnancy', {
  conditions: ['diabetes'],
});
const kidney = high('kidney-disease', 'chronic kidney disease', { conditions: ['chronic-kidney-disease'] });
const autoimmune = high('autoimmune-disease', 'lupus or antiphospholipid syndrome', {
  conditions: ['systemic-lupus-erythematosus', 'antiphospholipid-syndrome'],
});
const severalFetuses = (citation: Citation): Threshold =>
  limit('several-fetuses', '>=', 2, '{fetuses}', citation);
const twinsHigh = high('several-fetuses', 'more than one fetus', {
  conditions: ['multiple-pregnancy'],
  fetuses: severalFetuses(acog),
  elsewhere: { sentence: 'NICE counts more than one fetus as a moderate factor only.' },
});
const twinsModerate = moderate('several-fetuses', 'more than one fetus', {
  conditions: ['multiple-pregnancy'],
  fetuses: severalFetuses(nice),
  elsewhere: { sentence: 'USPSTF and ACOG count more than one fetus as a high factor: one is enough.' },
});
const first = moderate('first-birth', 'first birth to come', {
  conditions: ['nulliparity'],
  firstBirth: true,
});
const family = moderate('family-history', 'pre-eclampsia of mother or sister', {
  conditions: ['family-history-of-pre-eclampsia'],
});
const gap = (citation: Citation) =>
  moderate('long-interval', 'long interval since the last birth', {
    sinceLastBirth: limit('long-interval', '>', 10, 'a', citation),
  });
const massNice = limit('body-mass-index-nice', '>=', 35, 'kg/m2', nice);
const massAcog = limit('body-mass-index-acog', '>', 30, 'kg/m2', acog);
const plausible = ours('outside this range height or weight was mistyped');
const plausibleBodyMassIndex = {
  low: limit('plausible-body-mass-index-low', '>=', 12, 'kg/m2', plausible),
  high: limit('plausible-body-mass-index-high', '<=', 80, 'kg/m2', plausible),
};
const bodyMassNice = moderate('body-mass-index', 'body mass index', {
  bodyMassIndex: massNice,
  plausibleBodyMassIndex,
  elsewhere: { sentence: 'Body mass index: USPSTF and ACOG have a lower limit.', limit: massAcog },
});
const bodyMassAcog = moderate('body-mass-index', 'body mass index', {
  conditions: ['obesity'],
  bodyMassIndex: massAcog,
  plausibleBodyMassIndex,
  elsewhere: { sentence: 'Body mass index: NICE has a higher limit.', limit: massNice },
});
const ageNice = moderate('age', 'age', { ageAtDueDate: limit('age-nice', '>=', 40, 'a', nice) });
const ageAcog = moderate('age', 'age', {
  conditions: ['advanced-maternal-age'],
  ageAtDueDate: limit('age-acog', '>=', 35, 'a', acog),
});
const personal = moderate('poor-outcome', 'an earlier poor outcome or small baby', {
  conditions: ['poor-obstetric-history'],
  ever: true,
});
const assisted = moderate('assisted-conception', 'assisted conception', {
  conditions: ['assisted-conception'],
});

const one = (id: string, citation: Citation) => limit(id, '>=', 1, '{factors}', citation);
const moreThanOne = (id: string, citation: Citation) => limit(id, '>', 1, '{factors}', citation);

const contraindications = ['aspirin-allergy', 'active-bleeding', 'peptic-ulcer'] as const;

interface Scheme {
  readonly name: string;
  readonly citation: Citation;
  readonly mg: readonly [low: number, high?: number];
  /** First and last day of gestation on which it is begun, and the day it stops; absent: to birth. */
  readonly from: number;
  readonly until: number;
  readonly stop?: number;
  readonly best?: number;
}

const lengthOfPregnancy = 280;

function aspirin(
  scheme: Scheme,
  factors: readonly PreventionFactor[],
  enough: PreventionRule['enough'],
): PreventionRule {
  const { citation, mg, from, until, stop, best, name } = scheme;
  const prefix = `aspirin-${name.toLowerCase().replaceAll(/[^a-z]+/g, '-')}`;
  const dose = say(`{dose} a day, indicated by ${name}`, {
    dose: figure(`${prefix}-dose`, mg[0], 'mg', citation, mg[1]),
  });
  const begin = figure(`${prefix}-from`, from, 'd', citation);
  const end = figure(`${prefix}-until`, until, 'd', citation);
  const last =
    stop === undefined
      ? say('daily until birth')
      : say('stopped at {stop:weeks} weeks', { stop: figure(`${prefix}-stop`, stop, 'd', citation) });
  const early =
    best === undefined
      ? say('')
      : say(', best before {best:weeks}', { best: figure(`${prefix}-best`, best, 'd', citation) });
  const window =
    until === lengthOfPregnancy
      ? say('begun from {begin:weeks} weeks on', { begin })
      : say('begun from {begin:weeks} and before {end:weeks} weeks', { begin, end });
  return {
    id: 'aspirin',
    medicines: ['aspirin'],
    factors,
    enough,
    dose: dose.sentence,
    window: {
      from: limit(`${prefix}-window-from`, '>=', from, 'd', citation),
      until: limit(`${prefix}-window-until`, '<', until, 'd', citation),
      ...(stop === undefined ? {} : { stop: limit(`${prefix}-window-stop`, '>=', stop, 'd', citation) }),
      sentence: `${window.sentence}${early.sentence}; ${last.sentence}`,
    },
    contraindications,
    tooLateWhen: establishedPreEclampsia,
    figures: [...dose.figures, ...window.figures, ...early.figures, ...last.figures],
    citation,
  };
}

const whoHigh = [
  earlier,
  diabetes,
  chronic,
  kidney,
  autoimmune,
  { ...twinsHigh, fetuses: severalFetuses(who) },
];
const niceFactors = [
  earlierHypertension,
  kidney,
  autoimmune,
  diabetes,
  chronic,
  first,
  ageNice,
  gap(nice),
  bodyMassNice,
  family,
  twinsModerate,
];
const acogFactors = [
  earlier,
  twinsHigh,
  chronic,
  diabetes,
  kidney,
  autoimmune,
  first,
  bodyMassAcog,
  family,
  ageAcog,
  personal,
  gap(acog),
  assisted,
];
const widest = [earlierHypertension, ...acogFactors.slice(1)];

export const aspirinFrontline = aspirin(
  {
    name: 'NICE (dose) and ACOG (window)',
    citation: ours('the widest factor list; dose of NICE 1.1.2, window of ACOG: both read'),
    mg: [75, 150],
    from: 84,
    until: 196,
    best: 112,
  },
  widest,
  {
    high: one('aspirin-frontline-high', nice),
    moderate: moreThanOne('aspirin-frontline-moderate', nice),
  },
);
export const aspirinNice = aspirin(
  { name: 'NICE', citation: nice, mg: [75, 150], from: 84, until: lengthOfPregnancy },
  niceFactors,
  { high: one('aspirin-nice-high', nice), moderate: moreThanOne('aspirin-nice-moderate', nice) },
);
const acogScheme = acog222('aspirin, as tabulated in a pocket guideline', 'read');
export const aspirinAcog: PreventionRule = {
  ...aspirin({ name: 'ACOG', citation: acogScheme, mg: [81], from: 84, until: 196, best: 112 }, acogFactors, {
    high: one('aspirin-acog-high', acog),
    moderate: moreThanOne('aspirin-acog-moderate', acog),
  }),
  toAsk: ['low income, or living with racism (the list names Black race as its stand-in)'],
};
export const aspirinWho = aspirin({ name: 'WHO', citation: who, mg: [75], from: 84, until: 140 }, whoHigh, {
  high: one('aspirin-who-high', who),
});
export const aspirinIsshp = aspirin(
  {
    name: 'ISSHP',
    citation: {
      ...isshpFactors,
      note: 'dose and weeks read in a table; the factor list and the first week are from memory',
    },
    mg: [100, 162],
    from: 84,
    until: 112,
    stop: 252,
  },
  acogFactors,
  {
    high: one('aspirin-isshp-high', schemes),
    moderate: moreThanOne('aspirin-isshp-moderate', schemes),
  },
);
const sogc = sogc2022('prevention, as digested on a teaching site', 'read');
export const aspirinSogc = aspirin(
  {
    name: 'SOGC',
    citation: {
      ...sogc,
      known: 'from-memory',
      note: 'dose and weeks read; factor list and first week as in ACOG',
    },
    mg: [81, 162],
    from: 84,
    until: 112,
    stop: 252,
  },
  acogFactors,
  { high: one('aspirin-sogc-high', sogc), moderate: moreThanOne('aspirin-sogc-moderate', sogc) },
);
const silent = ours('the Indian texts read are silent; as WHO');
export const aspirinIndia = aspirin(
  { name: 'WHO', citation: silent, mg: [75], from: 84, until: 140 },
  whoHigh,
  { high: one('aspirin-india-high', silent) },
);

const calciumDose = (citation: Citation, name: string) =>
  say(`{dose} of elemental calcium a day in {parts:bare} parts, apart from iron, indicated by ${name}`, {
    dose: figure('calcium-dose', 1.5, 'g', citation, 2),
    parts: figure('calcium-parts', 3, '/d', citation),
  });

function calcium(name: string, citation: Citation, advice: string, doseSource = citation): PreventionRule {
  const dose = calciumDose(doseSource, name);
  return {
    id: 'calcium',
    medicines: ['calcium-supplement'],
    factors: [],
    enough: {},
    advice: `${advice}: ${dose.sentence}.`,
    toAsk: ['calcium in the diet'],
    dose: dose.sentence,
    contraindications: [],
    tooLateWhen: establishedPreEclampsia,
    figures: dose.figures,
    citation,
  };
}
const whereLow = 'Where the diet is low in calcium, calcium is offered to every pregnant woman';
const whoCitation = whoCalcium('recommendation, e-library summary', 'read');
export const calciumWho = calcium('WHO', whoCitation, whereLow);
export const calciumIndia = calcium('WHO', ours('the Indian texts read are silent; as WHO'), whereLow);
export const calciumSogc = calcium('WHO', sogc, whereLow, whoCitation);
export const calciumIsshp = calcium('WHO', isshp2021('calcium', 'from-memory'), whereLow, whoCitation);

const notAdvised = (citation: Citation): PreventionRule => ({
  ...calcium('WHO', citation, '', whoCitation),
  toAsk: [],
  notAdvised: 'This publication does not advise calcium to prevent pre-eclampsia.',
});
export const calciumNotInNice = notAdvised(nice133('no calcium in the transcription read', 'read'));
export const calciumNotInAcog = notAdvised(acog222('calcium', 'from-memory'));
