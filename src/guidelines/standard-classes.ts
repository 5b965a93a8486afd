// The classes, as all / any / none of questions. One table for every guideline; an edition leaves out what it does not have.
import { ours } from './citations.ts';
import type { Edition } from './edition.ts';
import type { Classification, ClassRule, Need } from './guideline.ts';

const late: Need = { any: ['now-from-20-weeks', 'now-after-birth'] };
const raisedEarly: Need = { any: ['raised-once', 'confirmed-before-20-weeks'] };
/** A disorder of a pregnancy on record counts until six weeks after the birth. */
const onRecord = (recorded: string): Need => ({ all: [recorded, { none: ['six-weeks-over'] }] });
const undated: Need = 'now-unknown';
const nowIsKnown = ['now-before-20-weeks', 'now-from-20-weeks', 'now-after-birth', 'now-unknown'] as const;
const nowKnown: Need = { any: nowIsKnown };
const known: Need = { any: ['recorded-chronic', 'confirmed-before-20-weeks', 'treated-before-20-weeks'] };
const hypertensionFrom20: Need = {
  any: ['confirmed-from-20-weeks', 'recorded-gestational', 'recorded-pre-eclampsia', 'treated-from-20-weeks'],
};
const anyDanger: Need = { any: ['danger-symptom', 'danger-sign'] };
const below: readonly Classification[] = [
  'raised-unconfirmed',
  'transient-hypertension',
  'isolated-proteinuria',
  'masked-hypertension',
  'hypertension-timing-unknown',
  'normotensive',
];
const chronicFamily: readonly Classification[] = ['chronic-hypertension', 'white-coat-hypertension'];
const gestationalFamily: readonly Classification[] = [
  'gestational-hypertension',
  'gestational-hypertension-severe-range',
];

/** Pre-eclampsia criteria of an edition: protein, and organs where the publication counts them. */
const preEclampsiaCriteria: Need = { any: ['protein-from-20-weeks', 'organ-from-20-weeks'] };

function severeFeatures(edition: Edition): Need {
  const { pressure, dangerSymptoms } = edition.severeFeatures;
  const severePressure: Need =
    pressure === 'alone' ? 'severe-confirmed' : { all: ['severe-confirmed', 'heavy-protein'] };
  return {
    any: [
      'severe-organ',
      'recorded-severe-pre-eclampsia',
      ...(pressure === 'no' ? [] : [severePressure]),
      ...(dangerSymptoms ? ['danger-symptom', 'danger-sign'] : []),
    ],
  };
}

/** Every class rule of an edition. */
export function standardClassRules(edition: Edition): readonly ClassRule[] {
  const { citations, severeFeatures: severe, home } = edition;
  const preEclampsia: Need = {
    any: [onRecord('recorded-pre-eclampsia'), { all: [late, hypertensionFrom20, preEclampsiaCriteria] }],
  };
  const molar: Need = {
    all: [
      'now-before-20-weeks',
      'recorded-trophoblastic',
      raisedEarly,
      { any: ['protein-before-20-weeks', 'organ-before-20-weeks'] },
    ],
  };
  return [
    {
      id: 'eclampsia',
      classification: 'eclampsia',
      sentence:
        'A seizure or an unexplained coma from 20+0 weeks to six weeks after birth is eclampsia until another cause is proven, at any pressure.',
      appliesTo:
        'pregnant women from 20+0 weeks or of unknown gestation, and women within six weeks after birth; not when epilepsy is recorded; before 20+0 weeks only with trophoblastic disease',
      when: {
        any: [
          onRecord('recorded-eclampsia'),
          { all: ['seizure', { none: ['recorded-epilepsy'] }] },
          { all: [nowKnown, 'seizure-in-pregnancy', { none: ['recorded-epilepsy'] }] },
          { all: ['seizure-any-time', 'recorded-trophoblastic', { none: ['recorded-epilepsy'] }] },
        ],
      },
      supersedes: ['imminent-eclampsia', 'severe-unconfirmed', ...below],
      citation: citations.eclampsia,
    },
    {
      id: 'imminent-eclampsia',
      classification: 'imminent-eclampsia',
      sentence: 'Raised pressure, once is enough, with a danger symptom warns of eclampsia.',
      appliesTo: 'women from 20+0 weeks (or of unknown gestation) to six weeks after birth',
      when: { all: [{ any: ['now-from-20-weeks', 'now-after-birth', undated] }, 'raised-once', anyDanger] },
      supersedes: ['severe-unconfirmed', ...below.filter((item) => item !== 'hypertension-timing-unknown')],
      citation: ours('the trade calls this imminent eclampsia; pressure and symptoms as in NICE NG133 1.8.3'),
    },
    ...(edition.hellp === undefined
      ? []
      : [
          {
            id: 'hellp',
            classification: 'hellp',
            sentence:
              'Haemolysis, raised liver enzymes and low platelets together are HELLP, also without hypertension or protein.',
            appliesTo: 'every pregnant woman and women within six weeks after birth',
            when: { any: [onRecord('recorded-hellp'), 'hellp-criteria'] },
            supersedes: [...below],
            citation: edition.hellp.tennessee.platelets.citation,
          } satisfies ClassRule,
        ]),
    ...(severe.named
      ? [
          {
            id: 'pre-eclampsia-severe-features',
            classification: 'pre-eclampsia-severe-features',
            sentence:
              'Pre-eclampsia with confirmed severe pressure, a danger symptom or severe laboratory values has severe features.',
            appliesTo: 'women with pre-eclampsia from 20+0 weeks on',
            when: { all: [preEclampsia, severeFeatures(edition)] },
            supersedes: ['pre-eclampsia', ...gestationalFamily, 'severe-unconfirmed', ...below],
            citation: severe.citation,
          } satisfies ClassRule,
        ]
      : []),
    {
      id: 'superimposed-pre-eclampsia',
      classification: 'superimposed-pre-eclampsia',
      sentence:
        'Chronic hypertension with new protein, a new sign of organ involvement or, in some publications, sudden loss of control from 20+0 weeks on is superimposed pre-eclampsia.',
      appliesTo: 'women with chronic hypertension from 20+0 weeks on',
      when: {
        any: [
          onRecord('recorded-superimposed'),
          {
            all: [
              late,
              known,
              {
                any: [
                  'protein-from-20-weeks',
                  'organ-from-20-weeks',
                  ...(edition.lossOfControl === undefined ? [] : ['control-lost']),
                ],
              },
            ],
          },
        ],
      },
      supersedes: [
        'pre-eclampsia',
        'pre-eclampsia-severe-features',
        ...gestationalFamily,
        ...chronicFamily,
        ...below,
      ],
      citation: citations.superimposed,
    },
    {
      id: 'postpartum-pre-eclampsia',
      classification: 'postpartum-pre-eclampsia',
      sentence:
        'Raised pressure within six weeks after birth with protein, an organ sign or a danger symptom is postpartum pre-eclampsia.',
      appliesTo: 'women within six weeks after birth',
      when: {
        all: [
          'now-after-birth',
          { any: ['raised-once', 'confirmed-after-birth', 'recorded-pre-eclampsia'] },
          {
            any: ['protein-after-birth', 'organ-after-birth', 'danger-symptom', 'danger-sign', preEclampsia],
          },
        ],
      },
      supersedes: [
        'postpartum-hypertension',
        'pre-eclampsia',
        'pre-eclampsia-severe-features',
        ...gestationalFamily,
        ...below,
      ],
      citation: citations.afterBirth,
    },
    {
      id: 'severe-unconfirmed',
      classification: 'severe-unconfirmed',
      sentence: 'One severe reading, not yet repeated, is enough to act.',
      appliesTo: 'every woman; pregnant or within six weeks after birth',
      when: 'severe-open',
      supersedes: [...below],
      citation: edition.severe.systolic.citation,
    },
    {
      id: 'pre-eclampsia',
      classification: 'pre-eclampsia',
      sentence:
        'Hypertension from 20+0 weeks on with significant protein or organ involvement is pre-eclampsia.',
      appliesTo: 'women from 20+0 weeks on; before 20+0 weeks only with trophoblastic disease',
      when: { any: [preEclampsia, molar] },
      supersedes: [...gestationalFamily, 'white-coat-hypertension', ...below],
      citation: citations.preEclampsia,
    },
    {
      id: 'gestational-hypertension-severe-range',
      classification: 'gestational-hypertension-severe-range',
      sentence: 'Gestational hypertension with confirmed severe pressure and no other feature.',
      appliesTo: 'women from 20+0 weeks on, not known to have chronic hypertension',
      when: { all: [late, hypertensionFrom20, 'severe-confirmed'] },
      supersedes: ['gestational-hypertension', 'severe-unconfirmed', ...below],
      citation: citations.gestational,
    },
    {
      id: 'postpartum-hypertension',
      classification: 'postpartum-hypertension',
      sentence:
        'Raised pressure within six weeks after birth, confirmed, or once where a hypertensive disorder is known.',
      appliesTo: 'women within six weeks after birth',
      when: {
        all: [
          'now-after-birth',
          {
            any: [
              'confirmed-after-birth',
              'recorded-postpartum',
              {
                all: [
                  'raised-now',
                  {
                    any: [
                      'confirmed-from-20-weeks',
                      'confirmed-before-20-weeks',
                      'recorded-any-hypertension',
                      'recorded-chronic',
                    ],
                  },
                ],
              },
            ],
          },
        ],
      },
      supersedes: [...gestationalFamily, ...below],
      citation: citations.afterBirth,
    },
    {
      id: 'gestational-hypertension',
      classification: 'gestational-hypertension',
      sentence: 'New hypertension, confirmed from 20+0 weeks on, without protein or organ involvement.',
      appliesTo: 'women from 20+0 weeks on, not known to have chronic hypertension',
      when: { all: [late, hypertensionFrom20] },
      supersedes: [...below],
      citation: citations.gestational,
    },
    {
      id: 'seizure-not-explained',
      classification: 'cannot-classify',
      sentence:
        'A seizure before 20+0 weeks, or with epilepsy recorded, is an emergency whose cause is to be found.',
      appliesTo: 'women with a seizure that is not classed as eclampsia',
      when: { all: ['seizure-any-time', { none: ['class:eclampsia'] }] },
      supersedes: ['normotensive', 'transient-hypertension', 'isolated-proteinuria', 'raised-unconfirmed'],
      citation: citations.eclampsia,
    },
    {
      id: 'raised-with-protein-before-20-weeks',
      classification: 'cannot-classify',
      sentence:
        'Raised pressure with protein or organ involvement before 20+0 weeks: think of trophoblastic, kidney or antiphospholipid disease; scan and hCG.',
      appliesTo: 'women before 20+0 weeks without recorded trophoblastic disease',
      when: {
        all: [
          'now-before-20-weeks',
          raisedEarly,
          { none: ['recorded-trophoblastic'] },
          { any: ['protein-before-20-weeks', 'organ-before-20-weeks'] },
        ],
      },
      supersedes: ['normotensive', 'raised-unconfirmed', 'isolated-proteinuria'],
      citation: ours(
        'by definition not pre-eclampsia before 20 weeks; shown first because it must not be missed',
      ),
    },
    ...(home === undefined
      ? []
      : [
          {
            id: 'white-coat-hypertension',
            classification: 'white-coat-hypertension',
            sentence: 'Clinic pressure confirmed as raised while the home average is below its limits.',
            appliesTo: 'pregnant women with a home series',
            when: {
              all: [
                { any: ['confirmed-before-20-weeks', 'confirmed-from-20-weeks', 'confirmed-unknown'] },
                'home-below',
              ],
            },
            supersedes: ['raised-unconfirmed', 'normotensive'],
            citation: citations.home,
          } satisfies ClassRule,
          {
            id: 'masked-hypertension',
            classification: 'masked-hypertension',
            sentence: 'Clinic pressure below the limits while the home average is raised.',
            appliesTo: 'pregnant women with a home series',
            when: { all: ['normal-now', 'home-raised'] },
            supersedes: ['normotensive'],
            citation: citations.home,
          } satisfies ClassRule,
        ]),
    {
      id: 'chronic-hypertension',
      classification: 'chronic-hypertension',
      sentence:
        'Hypertension confirmed before 20+0 weeks, known before pregnancy, or treated before 20+0 weeks.',
      appliesTo: 'every woman',
      when: known,
      supersedes: [...gestationalFamily, ...below],
      citation: citations.chronic,
    },
    {
      id: 'hypertension-timing-unknown',
      classification: 'hypertension-timing-unknown',
      sentence:
        'Confirmed or treated hypertension of which it is not known whether it began before 20+0 weeks.',
      appliesTo:
        'pregnant women without a usable gestational age; women on treatment whose beginning is not recorded',
      when: {
        any: [
          { all: [undated, { any: ['confirmed-unknown', 'treated'] }] },
          { all: ['now-from-20-weeks', 'treated'] },
        ],
      },
      supersedes: [...below.filter((item) => item !== 'hypertension-timing-unknown')],
      citation: citations.gestational,
    },
    {
      id: 'raised-after-the-window',
      classification: 'cannot-classify',
      sentence:
        'Raised pressure more than six weeks after birth is outside these rules: it may be chronic hypertension; arrange a review.',
      appliesTo: 'women more than six weeks after birth',
      when: { all: ['raised-open', { none: [...nowIsKnown, 'recorded-chronic'] }] },
      supersedes: ['raised-unconfirmed', 'normotensive', 'isolated-proteinuria', 'transient-hypertension'],
      citation: citations.chronic,
    },
    {
      id: 'raised-unconfirmed',
      classification: 'raised-unconfirmed',
      sentence: 'Raised pressure that has not been confirmed or cleared.',
      appliesTo: 'every woman',
      when: 'raised-open',
      supersedes: ['normotensive', 'transient-hypertension', 'isolated-proteinuria'],
      citation: edition.confirmation.citation,
    },
    {
      id: 'isolated-proteinuria',
      classification: 'isolated-proteinuria',
      sentence: 'Significant protein with normal pressure.',
      appliesTo: 'pregnant women and women within six weeks after birth',
      when: { all: ['normal-now', 'protein-now'] },
      supersedes: ['normotensive'],
      citation: ours('infection is looked for, the test repeated and quantified'),
    },
    {
      id: 'transient-hypertension',
      classification: 'transient-hypertension',
      sentence: 'Raised once and settled on repeat: not the same as normal, surveillance goes on.',
      appliesTo: 'every woman',
      when: 'transient',
      supersedes: ['normotensive'],
      citation: citations.transient,
    },
    {
      id: 'normotensive',
      classification: 'normotensive',
      sentence: 'The newest contact is below the limits and nothing else was found. Not proof of health.',
      appliesTo: 'every woman',
      when: 'normal-now',
      supersedes: [],
      citation: edition.hypertension.systolic.citation,
    },
  ];
}
