// Questions about magnesium: was it given, is it only on order, and does she breathe slowly on it? Data.
import { nice133, ours } from './citations.ts';
import type { Edition } from './edition.ts';
import type { Question } from './guideline.ts';
import { magnesiumLoadWithin } from './shared-values.ts';

const medicines = ['magnesium-sulfate'] as const;

/** Asked by every edition, with its own limit of breathing. */
export const magnesiumQuestions = (edition: Edition): readonly Question[] => [
  {
    id: 'magnesium-given',
    asks: 'Was magnesium sulfate given within the last day, or is it running?',
    check: 'medicine-given',
    medicines,
    within: magnesiumLoadWithin,
    citation: nice133('1.8.4', 'read'),
  },
  {
    id: 'magnesium-perhaps-given',
    asks: 'Is magnesium sulfate on order, or was it given at a time not recorded?',
    check: 'medicine-perhaps-given',
    medicines,
    within: magnesiumLoadWithin,
    citation: ours('an order is no dose: the first load is not withheld for it'),
  },
  {
    id: 'slow-breathing-on-magnesium',
    asks: 'On magnesium, is her newest breathing rate so low that it is stopped?',
    check: 'laboratory-on-medicine',
    analyte: 'respiratory-rate',
    limit: edition.care.magnesiumSigns.slowBreathing,
    medicines,
    within: magnesiumLoadWithin,
    citation: edition.care.magnesiumSigns.slowBreathing.citation,
  },
];
