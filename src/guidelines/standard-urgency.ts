// How fast: every rule that can raise the urgency. The most cautious one that holds wins.
import { isshp2018, nice133, ours, payne2014 } from './citations.ts';
import type { Edition } from './edition.ts';
import type { Citation, Need, ReferralRule, Urgency, UrgencyRule } from './guideline.ts';

const pregnant: Need = { any: ['now-before-20-weeks', 'now-from-20-weeks', 'now-unknown'] };
const nowKnown: Need = {
  any: ['now-before-20-weeks', 'now-from-20-weeks', 'now-after-birth', 'now-unknown'],
};

const raisedHypertension: Need = {
  any: [
    'class:pre-eclampsia',
    'class:superimposed-pre-eclampsia',
    'class:gestational-hypertension',
    'class:gestational-hypertension-severe-range',
    'class:hypertension-timing-unknown',
    'class:chronic-hypertension',
    'class:postpartum-hypertension',
    'class:raised-unconfirmed',
  ],
};

const preEclampsiaOfAnyKind: Need = {
  any: ['class:pre-eclampsia', 'class:superimposed-pre-eclampsia', 'class:postpartum-pre-eclampsia'],
};

/** Every urgency rule of an edition. */
export function standardUrgencyRules(edition: Edition): readonly UrgencyRule[] {
  const rule = (
    id: string,
    urgency: Urgency,
    sentence: string,
    when: Need,
    citation: Citation,
  ): UrgencyRule => ({ id, urgency, sentence, when, citation });
  const { citations } = edition;
  const cautious = ours('urgency is a default of this project, the most cautious of the publications read');
  return [
    rule(
      'seizure',
      'emergency',
      'A seizure or a coma, whatever its cause.',
      { any: ['seizure-any-time', 'class:eclampsia'] },
      citations.eclampsia,
    ),
    rule(
      'severe-waiting',
      'emergency',
      'A severe reading: act, and repeat within minutes.',
      'severe-open',
      edition.severe.systolic.citation,
    ),
    rule(
      'home-severe',
      'emergency',
      'The home average is in the severe range.',
      'home-severe',
      edition.severe.systolic.citation,
    ),
    rule(
      'severe-confirmed',
      'emergency',
      'Severe pressure, confirmed and not settled.',
      'severe-current',
      edition.severe.systolic.citation,
    ),
    rule(
      'imminent',
      'emergency',
      'Raised pressure with a danger symptom.',
      'class:imminent-eclampsia',
      nice133('1.8.3', 'read'),
    ),
    ...(edition.hellp === undefined
      ? []
      : [rule('hellp', 'emergency', 'HELLP.', 'class:hellp', edition.hellp.tennessee.platelets.citation)]),
    ...(edition.severeFeatures.named
      ? [
          rule(
            'severe-features',
            'emergency',
            'Pre-eclampsia with severe features.',
            'class:pre-eclampsia-severe-features',
            edition.severeFeatures.citation,
          ),
        ]
      : []),
    rule(
      'severe-organ',
      'emergency',
      'Pre-eclampsia with an organ severely involved.',
      {
        all: [{ any: [preEclampsiaOfAnyKind, 'class:hypertension-timing-unknown'] }, 'severe-organ'],
      },
      edition.severeFeatures.citation,
    ),
    rule(
      'severe-result-raised',
      'emergency',
      'Raised pressure, once is enough, with a blood result in the severe range.',
      {
        all: [
          'severe-result',
          'raised-once',
          { any: ['now-from-20-weeks', 'now-after-birth', 'now-unknown'] },
        ],
      },
      ours('as a danger symptom does (decision 1), a severe result makes one raised reading an emergency'),
    ),
    rule(
      'stroke',
      'emergency',
      'A stroke recorded in this pregnancy, with raised pressure or pre-eclampsia.',
      { all: ['recorded-stroke', { any: ['raised-once', preEclampsiaOfAnyKind] }] },
      isshp2018('neurological complications', 'from-memory'),
    ),
    rule(
      'oxygen-below-90',
      'emergency',
      'Oxygen saturation in the emergency range.',
      'oxygen-below-90',
      nice133('1.5.7', 'read'),
    ),
    rule(
      'oxygen-reduced-with-signs',
      'emergency',
      'Reduced oxygen saturation with raised pressure or breathlessness.',
      { all: ['oxygen-below-94', { any: ['raised-once', 'breathless'] }] },
      cautious,
    ),
    rule('lung-oedema', 'emergency', 'Pulmonary oedema.', 'lung-oedema', nice133('1.5.2', 'read')),
    rule(
      'slow-breathing-on-magnesium',
      'emergency',
      'Slow breathing on magnesium.',
      'slow-breathing-on-magnesium',
      edition.care.magnesiumSigns.slowBreathing.citation,
    ),
    rule(
      'abruption',
      'emergency',
      'Vaginal bleeding with abdominal pain: possible abruption.',
      { any: [{ all: ['vaginal-bleeding', 'abdominal-pain'] }, 'recorded-abruption'] },
      payne2014('predictors', 'read'),
    ),
    rule(
      'unusable-emergency',
      'emergency',
      'A blood pressure that cannot be used and may be severe: repeat now.',
      'unusable-emergency',
      cautious,
    ),

    rule(
      'unusable-same-day',
      'same-day',
      'A blood pressure that cannot be used: re-enter or repeat now.',
      'unusable-same-day',
      cautious,
    ),
    rule(
      'pre-eclampsia',
      'same-day',
      'Pre-eclampsia.',
      {
        all: [
          { any: ['class:pre-eclampsia', 'class:superimposed-pre-eclampsia'] },
          { any: ['now-before-20-weeks', 'now-from-20-weeks', 'now-unknown'] },
        ],
      },
      citations.preEclampsia,
    ),
    rule(
      'postpartum-pre-eclampsia',
      'same-day',
      'Postpartum pre-eclampsia with raised pressure.',
      { all: ['class:postpartum-pre-eclampsia', 'raised-once'] },
      citations.afterBirth,
    ),
    rule(
      'raised-unconfirmed',
      'same-day',
      'Raised and not confirmed: repeat by the clock.',
      {
        all: [
          { any: ['class:raised-unconfirmed', 'class:raised-after-the-window'] },
          { none: ['now-after-birth'] },
        ],
      },
      cautious,
    ),
    rule(
      'raised-from-20-weeks',
      'same-day',
      'Raised pressure from 20+0 weeks on.',
      {
        all: [
          'now-from-20-weeks',
          {
            any: [
              'raised-now',
              {
                all: [{ any: ['class:gestational-hypertension', 'class:chronic-hypertension'] }, notSettled],
              },
            ],
          },
        ],
      },
      cautious,
    ),
    rule(
      'average-raised-no-clinic',
      'same-day',
      'A raised average and no clinic reading: measure today.',
      'home-raised-no-clinic',
      cautious,
    ),
    rule(
      'pair-stale',
      'same-day',
      'Raised again, and the confirming readings lie too far apart: a fresh pair is needed.',
      { all: ['pair-stale', 'raised-now'] },
      cautious,
    ),
    rule(
      'raised-timing-unknown',
      'same-day',
      'Raised pressure at unknown length of pregnancy.',
      {
        all: [
          'now-unknown',
          { any: ['raised-now', { all: ['class:hypertension-timing-unknown', notSettled] }] },
        ],
      },
      cautious,
    ),
    rule(
      'severe-range-settled',
      'same-day',
      'Severe pressure was confirmed in this pregnancy.',
      { all: ['now-from-20-weeks', 'class:gestational-hypertension-severe-range'] },
      cautious,
    ),
    rule(
      'protein-before-20-weeks',
      'same-day',
      'Raised pressure with protein or organ involvement before 20+0 weeks.',
      'class:raised-with-protein-before-20-weeks',
      cautious,
    ),
    rule(
      'after-birth-same-day',
      'same-day',
      'After birth, at or above the limit for same-day review.',
      'after-birth-raised-same-day',
      edition.afterBirthSameDay.systolic.citation,
    ),
    rule(
      'danger-symptom-normal-pressure',
      'same-day',
      'A danger symptom: examine, repeat the pressure, take blood.',
      { any: ['danger-symptom', 'danger-sign', 'chest-pain'] },
      cautious,
    ),
    rule(
      'severe-result',
      'same-day',
      'A blood result in the severe range, whatever the pressure.',
      { all: ['severe-result', nowKnown] },
      cautious,
    ),
    rule(
      'bleeding',
      'same-day',
      'Vaginal bleeding in pregnancy.',
      { all: ['vaginal-bleeding', pregnant] },
      cautious,
    ),
    rule('oxygen-reduced', 'same-day', 'Reduced oxygen saturation.', 'oxygen-below-94', cautious),
    rule(
      'fetal-movement',
      'same-day',
      'Reduced fetal movement with hypertension.',
      { all: ['reduced-fetal-movement', raisedHypertension] },
      nice133('1.6.8', 'read'),
    ),
    rule(
      'agent-to-avoid',
      'same-day',
      'A medicine to be avoided in pregnancy is in use.',
      { all: ['agent-to-avoid', { any: ['now-before-20-weeks', 'now-from-20-weeks', 'now-unknown'] }] },
      nice133('1.3.3', 'read'),
    ),

    rule(
      'platelets-falling',
      'within-48-hours',
      'The platelets are falling: the count is repeated within a day.',
      'platelets-falling',
      ours('a falling count is followed before it crosses a cut-off'),
    ),
    rule(
      'isolated-proteinuria',
      'within-48-hours',
      'Protein with normal pressure.',
      {
        all: [
          'protein-now',
          'normal-now',
          {
            any: [
              { none: ['class:chronic-hypertension'] },
              'protein-perhaps-new',
              'now-before-20-weeks',
              'now-after-birth',
            ],
          },
        ],
      },
      cautious,
    ),
    rule(
      'after-birth',
      'within-48-hours',
      'Hypertension after birth.',
      {
        all: [
          'now-after-birth',
          {
            any: [
              'class:postpartum-hypertension',
              'class:postpartum-pre-eclampsia',
              'class:raised-unconfirmed',
              'class:gestational-hypertension',
              'class:gestational-hypertension-severe-range',
              'class:pre-eclampsia',
              'class:superimposed-pre-eclampsia',
              'raised-now',
            ],
          },
        ],
      },
      citations.afterBirth,
    ),

    rule(
      'chronic',
      'within-7-days',
      'Chronic hypertension.',
      'class:chronic-hypertension',
      citations.chronic,
    ),
    rule(
      'gestational-settled',
      'within-7-days',
      'Hypertension of this pregnancy, also while it is settled or controlled.',
      'class:gestational-hypertension',
      citations.gestational,
    ),
    rule(
      'treated-timing-unknown',
      'within-7-days',
      'Hypertension under treatment, its beginning not recorded.',
      'class:hypertension-timing-unknown',
      cautious,
    ),
    rule(
      'treated-after-birth',
      'within-7-days',
      'On treatment for pressure after birth.',
      { all: ['now-after-birth', 'treated'] },
      cautious,
    ),
    rule(
      'transient',
      'within-7-days',
      'Raised once and settled.',
      'class:transient-hypertension',
      citations.transient,
    ),
    rule(
      'aspirin-due',
      'within-7-days',
      'Aspirin to prevent pre-eclampsia is indicated, its window is open, and none is on record.',
      'prevention:aspirin-due',
      edition.care.prevention.find((prevention) => prevention.id === 'aspirin')?.citation ?? cautious,
    ),
    ...(edition.home === undefined
      ? []
      : [
          rule('home-raised', 'within-7-days', 'The home average is raised.', 'home-raised', citations.home),
          rule(
            'white-coat',
            'within-7-days',
            'White-coat hypertension.',
            'class:white-coat-hypertension',
            citations.home,
          ),
          rule(
            'masked',
            'within-7-days',
            'Masked hypertension.',
            'class:masked-hypertension',
            citations.home,
          ),
        ]),
    rule(
      'any-severe-before',
      'within-7-days',
      'Severe pressure was seen and settled.',
      'severe-closed',
      isshp2018('severe hypertension', 'from-memory'),
    ),
  ];
}

const notSettled: Need = { none: ['settled'] };

const sameDayReasons: Need = {
  any: [
    { all: [preEclampsiaOfAnyKind, nowKnown] },
    'class:raised-with-protein-before-20-weeks',
    { all: ['class:gestational-hypertension', 'urgency:raised-from-20-weeks'] },
    { all: ['class:hypertension-timing-unknown', 'raised-now'] },
    { all: ['class:postpartum-hypertension', 'after-birth-raised-same-day'] },
    { all: ['class:chronic-hypertension', 'urgency:raised-from-20-weeks'] },
    { all: ['class:raised-unconfirmed', 'protein-now'] },
    'urgency:danger-symptom-normal-pressure',
    'urgency:severe-result',
    'urgency:bleeding',
    'urgency:oxygen-reduced',
    'urgency:fetal-movement',
  ],
};

const clinicReasons: Need = {
  any: [
    'class:chronic-hypertension',
    'class:gestational-hypertension',
    'class:postpartum-hypertension',
    'class:isolated-proteinuria',
    'class:raised-after-the-window',
    'urgency:agent-to-avoid',
  ],
};

/** Where to refer: the first level whose need holds. */
export function standardReferralRules(edition: Edition): readonly ReferralRule[] {
  return [
    {
      level: 'hospital-with-intensive-care',
      when: {
        any: [
          'urgency:seizure',
          'urgency:severe-waiting',
          'urgency:severe-confirmed',
          'urgency:home-severe',
          'urgency:imminent',
          ...(edition.hellp === undefined ? [] : ['urgency:hellp']),
          ...(edition.severeFeatures.named ? ['urgency:severe-features'] : []),
          'urgency:severe-organ',
          'urgency:stroke',
          'urgency:severe-result-raised',
          'urgency:oxygen-below-90',
          'urgency:oxygen-reduced-with-signs',
          'urgency:lung-oedema',
          'urgency:slow-breathing-on-magnesium',
          'urgency:abruption',
        ],
      },
      sentence: 'Emergency transfer to a hospital able to operate and to give intensive care.',
      citation: ours('emergency states at a first-level site go where surgery and intensive care are'),
    },
    {
      level: 'hospital',
      when: sameDayReasons,
      sentence: 'Referral to hospital, to be seen the same day.',
      whenSettled: 'Referral to hospital, to be seen within 48 hours.',
      citation: nice133('1.4.1, secondary-care assessment', 'read'),
    },
    {
      level: 'clinic',
      when: clinicReasons,
      sentence: 'Referral to a specialist or medical officer clinic.',
      citation: ours('gestational or chronic hypertension under control is followed in a clinic'),
    },
  ];
}
