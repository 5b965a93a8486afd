// Where in the weeks after birth is she? The days of the published plan, as figures and as questions. Data.
import { commonPractice, nice133, ours, postpartumReport, sogc2022 } from './citations.ts';
import type { Question } from './guideline.ts';
import { figure } from './sentences.ts';
import { limit } from './shared-values.ts';

export const plan = nice133('1.3.17, 1.4.10 and 1.5.13 to 1.5.16', 'read');
export const tests = nice133('1.5.23 to 1.5.27', 'read');
export const acogChecks = postpartumReport('schedule of ACOG', 'read');
export const dailyUntil = figure('after-birth-daily-until', 2, 'd', plan);
export const onceBetween = figure('after-birth-once-between', 3, 'd', plan, 5);
export const peak = figure(
  'after-birth-peak',
  3,
  'd',
  sogc2022('post partum, as digested on a teaching site', 'read'),
  7,
);
export const treatedUntil = figure('after-birth-treated-until', 2, 'wk', plan);
export const bloodAt = figure('after-birth-blood', 48, 'h', tests, 72);
export const reviewAt = figure('after-birth-review', 6, 'wk', tests, 8);

const until = (id: string, days: number, citation: Question['citation'], asks: string): Question => ({
  id,
  asks,
  check: 'days-after-birth',
  until: limit(`${id}-until`, '<=', days, 'd', citation),
  citation,
});

const reviewWindow = ours('the review is asked for until pressure that stays raised is called chronic');

const sixWeeks = commonPractice('six weeks after birth end what belongs to a pregnancy');

export const afterBirthQuestions: readonly Question[] = [
  until('after-birth-first-days', 2, plan, 'Is it within two days after birth?'),
  until('after-birth-three-days', 3, tests, 'Is it within three days after birth?'),
  until('after-birth-five-days', 5, plan, 'Is it within five days after birth?'),
  until('after-birth-ten-days', 10, acogChecks, 'Is it within ten days after birth?'),
  until('after-birth-two-weeks', 14, plan, 'Is it within two weeks after birth?'),
  {
    id: 'review-due',
    asks: 'Is it six to twelve weeks after birth?',
    check: 'days-after-birth',
    from: limit('review-due-from', '>=', 42, 'd', tests),
    until: limit('review-due-until', '<=', 84, 'd', reviewWindow),
    citation: tests,
  },
  {
    id: 'six-weeks-over',
    asks: 'Is it more than six weeks after birth?',
    check: 'days-after-birth',
    from: limit('six-weeks-over-from', '>', 42, 'd', sixWeeks),
    citation: sixWeeks,
  },
];
