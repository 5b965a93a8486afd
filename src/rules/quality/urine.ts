// Doubts about urine results: what makes a strip false, and samples not advised.
import type { Evidence } from '../../findings/finding.ts';
import type { Threshold } from '../../guidelines/guideline.ts';
import type { LaboratoryResult, Moment, UrineProtein } from '../../timeline/timeline.ts';
import { ofFact, ofResult, ofUrine } from '../answer.ts';
import { inUnitOf, milliseconds, satisfies } from '../compare.ts';
import type { View } from '../view.ts';
import { doubtAbout, isRecent, type Doubt } from './recent.ts';
import type { RuleOf } from './single-readings.ts';

type Strip = Extract<UrineProtein, { kind: 'strip' }>;

function recentStrips(view: View, freshWithin: Threshold): readonly Strip[] {
  return view.timeline.urineProteins.filter(
    (result): result is Strip => result.kind === 'strip' && isRecent(view, result.at, freshWithin),
  );
}

const isNear = (a: Moment, b: Moment, within: Threshold): boolean =>
  satisfies({ value: Math.max(0, a.earliest - b.latest, b.earliest - a.latest) }, inMilliseconds(within)) ===
  true;

const inMilliseconds = (limit: Threshold): Threshold => ({
  ...limit,
  value: milliseconds(limit),
  unit: 'ms',
});

const signWords = { nitrite: 'nitrite', leucocytes: 'leucocytes', blood: 'blood' } as const;

/** A strip that shows protein, beside something that makes protein appear on a strip. */
export function stripDoubtful(view: View, rule: RuleOf<'strip-doubtful'>): Doubt | undefined {
  const doubts = recentStrips(view, rule.freshWithin)
    .filter(({ grade }) => grade !== 0)
    .flatMap((strip) => {
      const causes = causesOf(view, strip, rule);
      return causes.length === 0 ? [] : [{ strip, causes }];
    });
  const causes = new Set(doubts.flatMap((doubt) => doubt.causes.map(({ cause }) => cause)));
  return doubtAbout(
    doubts.flatMap(({ strip, causes: found }) => [
      ofUrine(strip),
      ...found.flatMap(({ evidence }) => evidence ?? []),
    ]),
    `Found: ${[...causes].join(', ')}.`,
  );
}

interface Cause {
  readonly cause: string;
  readonly evidence?: Evidence;
}

function causesOf(view: View, strip: Strip, rule: RuleOf<'strip-doubtful'>): readonly Cause[] {
  const signs = view.timeline.urineSigns
    .filter(({ present, at }) => present && isNear(at, strip.at, rule.within))
    .map((item) => ({
      cause: signWords[item.sign],
      evidence: ofFact(`urine, ${signWords[item.sign]}`, item, item.at),
    }));
  return [
    ...signs,
    ...propertyThat(view, strip, rule.alkaline, rule.within, 'urine-ph').map((result) => ({
      cause: 'alkaline urine',
      evidence: ofResult(result),
    })),
    ...propertyThat(view, strip, rule.concentrated, rule.within, 'urine-specific-gravity').map((result) => ({
      cause: 'concentrated urine',
      evidence: ofResult(result),
    })),
    ...(strip.sample?.isContaminated === true ? [{ cause: 'contaminated sample' }] : []),
    ...(strip.sample?.hasAntiseptic === true ? [{ cause: 'antiseptic' }] : []),
  ];
}

function propertyThat(
  view: View,
  strip: Strip,
  limit: Threshold,
  within: Threshold,
  analyte: 'urine-ph' | 'urine-specific-gravity',
): readonly LaboratoryResult[] {
  return view.timeline.laboratory.filter((result) => {
    if (result.analyte !== analyte || !isNear(result.at, strip.at, within)) return false;
    const compared = inUnitOf(result.measured, result.byUnit, limit);
    return compared !== undefined && satisfies(compared.measured, compared.threshold) === true;
  });
}

/** A strip without protein in dilute urine. */
export function stripDilute(view: View, rule: RuleOf<'strip-dilute'>): Doubt | undefined {
  const found = recentStrips(view, rule.freshWithin)
    .filter(({ grade }) => grade === 0)
    .flatMap((strip) => {
      const dilute = propertyThat(view, strip, rule.dilute, rule.within, 'urine-specific-gravity');
      return dilute.length === 0 ? [] : [ofUrine(strip), ...dilute.map((result) => ofResult(result))];
    });
  return doubtAbout(found);
}

/** A strip tested in a hospital and not read by a device. */
export function stripReadByEye(view: View, rule: RuleOf<'strip-read-by-eye'>): Doubt | undefined {
  const found = recentStrips(view, rule.freshWithin).filter(
    ({ sample }) => sample?.isFromHospital === true && sample.readBy === 'eye',
  );
  return doubtAbout(found.map((strip) => ofUrine(strip)));
}

const ratios: readonly UrineProtein['kind'][] = ['protein-creatinine-ratio', 'albumin-creatinine-ratio'];

/** A ratio measured in the first urine of the morning. */
export function firstMorningRatio(view: View, rule: RuleOf<'first-morning-ratio'>): Doubt | undefined {
  const found = view.timeline.urineProteins.filter(
    (result) =>
      ratios.includes(result.kind) &&
      result.sample?.isFirstMorning === true &&
      isRecent(view, result.at, rule.freshWithin),
  );
  return doubtAbout(found.map((result) => ofUrine(result)));
}
