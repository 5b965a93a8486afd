// The last pressures side by side, so that nobody closes a card to look up the earlier ones.
import type { PressureReading } from '../timeline/timeline.ts';
import { fill } from '../messages/say.ts';
import type { Telling } from './card-context.ts';
import { spokenTime } from './clock.ts';
import { escapeMarkdown } from './markdown.ts';
import { spokenValue } from './newest-data.ts';

const shown = 3;

/**
 * The last three clinic readings, oldest first, and the change over them; nothing when there are fewer than two.
 *
 * Notes    1. Values as sent. The change is arithmetic; whether it matters is for the rules.
 */
export function trendLines({ evaluation, messages }: Telling): readonly string[] {
  const last = evaluation.timeline.pressures.slice(-shown);
  const [first] = last;
  const newest = last.at(-1);
  if (first === undefined || newest === undefined || first === newest) return [];
  const change = [
    changeOf(first.systolicMmHg, newest.systolicMmHg),
    changeOf(first.diastolicMmHg, newest.diastolicMmHg),
  ];
  const readings = last.map((reading) => readingText(reading, messages.months));
  if (change.every((each) => each === '-')) return readings;
  return [...readings, escapeMarkdown(fill(messages.phrases['trend-change'], { change: change.join('/') }))];
}

function readingText({ asSent, at }: PressureReading, months: readonly string[]): string {
  return escapeMarkdown(`${spokenTime(at.text, months)}: ${spokenValue(asSent, months)}`);
}

/** "+12", "−4", "0"; "-" when a half is missing. */
function changeOf(before: number | undefined, after: number | undefined): string {
  if (before === undefined || after === undefined) return '-';
  const difference = Math.round(after - before);
  if (difference === 0) return '0';
  return difference > 0 ? `+${difference}` : `−${-difference}`;
}
