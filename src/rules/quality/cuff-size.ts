// Does the cuff fit the arm? Hands on a doubt with its direction.
import type { CuffSize } from '../../guidelines/quality-rule.ts';
import type { PressureReading } from '../../timeline/timeline.ts';
import { numberText, ofReading } from '../answer.ts';
import { satisfies } from '../compare.ts';
import type { View } from '../view.ts';
import { doubtAbout, recentReadings, type Doubt } from './recent.ts';
import type { RuleOf } from './single-readings.ts';

export interface CuffFit {
  readonly fits: boolean;
  /** Absent when it fits. */
  readonly fault?: 'too-small' | 'too-large';
  /** Name of the size for this arm; absent when the table has none. */
  readonly right?: string;
}

/**
 * Does a cuff fit an arm?
 *
 * Given    armCm  circumference of the middle of the upper arm, in cm
 *          cuff   the words the cuff goes by
 *          sizes  of one publication, smallest arm first
 * Returns  the fit; undefined when the words name none of the sizes
 * Throws   never
 * Notes    1. The table is printed in whole cm, so the arm is rounded to whole cm, half up.
 */
export function cuffFit(armCm: number, cuff: string, sizes: readonly CuffSize[]): CuffFit | undefined {
  const used = sizes.findIndex((size) => size.words.includes(plainName(cuff)));
  const size = sizes[used];
  if (size === undefined) return undefined;
  const arm = Math.floor(armCm + 0.5);
  if (isWithin(arm, size)) return { fits: true };
  const isTooLarge = size.from !== undefined && satisfies({ value: arm }, size.from) === false;
  const right = sizes.find((each) => isWithin(arm, each))?.name;
  return {
    fits: false,
    fault: isTooLarge ? 'too-large' : 'too-small',
    ...(right === undefined ? {} : { right }),
  };
}

/** "Large adult cuff (blue)" as "large adult". */
function plainName(cuff: string): string {
  return cuff
    .toLowerCase()
    .replace(/\(.*?\)/g, ' ')
    .replace(/\b(?:cuff|size|sized|blood pressure|bp)\b/g, ' ')
    .replace(/[^a-z]+/g, ' ')
    .trim();
}

const isWithin = (arm: number, { from, to }: CuffSize): boolean =>
  [from, to].every((limit) => limit === undefined || satisfies({ value: arm }, limit) === true);

const faultWords = { 'too-small': 'too small, which reads high', 'too-large': 'too large, which reads low' };

/** Readings whose cuff and arm are both recorded and do not match. */
export function cuffSize(view: View, rule: RuleOf<'cuff-size'>): Doubt | undefined {
  const found = recentReadings(view, rule.freshWithin).flatMap((reading) => {
    const detail = misfit(reading, rule);
    return detail === undefined ? [] : [{ reading, detail }];
  });
  return doubtAbout(
    found.flatMap(({ reading }) => ofReading(reading)),
    [...new Set(found.map(({ detail }) => detail))].join(' '),
  );
}

function misfit({ technique }: PressureReading, rule: RuleOf<'cuff-size'>): string | undefined {
  const { armCircumferenceCm: arm, cuff } = technique;
  if (arm === undefined || cuff === undefined) return undefined;
  const fit = cuffFit(arm, cuff, rule.sizes);
  if (fit?.fault === undefined) return undefined;
  const advice = fit.right === undefined ? '' : ` Use the size "${fit.right}".`;
  const isAcceptedElsewhere = cuffFit(arm, cuff, rule.alternative)?.fits === true;
  const other = isAcceptedElsewhere ? ' An older table accepts this cuff.' : '';
  return `Arm ${numberText(arm)} cm, cuff "${cuff}": ${faultWords[fit.fault]}.${advice}${other}`;
}
