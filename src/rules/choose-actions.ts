// Which steps to show, in order, with the clock time where one counts.
import type { Action, Outcome } from '../findings/finding.ts';
import type { ActionRule, Guideline } from '../guidelines/guideline.ts';
import type { Moment } from '../timeline/timeline.ts';
import { formatInstant } from '../timeline/moment.ts';
import { combine, lookUp } from './combine.ts';
import { milliseconds, reaches } from './compare.ts';
import { atNextLevel, firstLevelSite, isPossibleAt, type Site } from './site.ts';
import { isRaised, type View } from './view.ts';

/**
 * The steps that apply.
 *
 * Given    outcomes  of questions, classes, urgency and referral rules
 *          site      what can be done here; a step it cannot do is put at the next level
 * Returns  actions in order; `time` is the clock time in the zone of the reading it counts from
 * Throws   when the data names an unknown question
 */
export function chooseActions(
  view: View,
  guideline: Guideline,
  outcomes: ReadonlyMap<string, Outcome>,
  site: Site = firstLevelSite,
): readonly Action[] {
  const outcomeOf = lookUp(outcomes);
  return guideline.actionRules
    .filter((rule) => combine(rule.when, outcomeOf) === 'met')
    .map((rule) => asAction(view, guideline, placed(rule, site)))
    .sort((a, b) => a.order - b.order);
}

const placed = (rule: ActionRule, site: Site): ActionRule =>
  isPossibleAt(site, rule.siteNeeds) ? rule : { ...rule, sentence: atNextLevel(site, rule.sentence) };

function asAction(view: View, guideline: Guideline, rule: ActionRule): Action {
  const base = { id: rule.id, kind: rule.kind, order: rule.order, source: rule.citation };
  const { clock } = rule;
  if (clock === undefined) return { ...base, sentence: rule.sentence };
  const start = clockStart(view, guideline, rule);
  const duration = durationText(clock.add.value, clock.add.unit);
  if (start === undefined || start.precision !== 'minute')
    return { ...base, sentence: rule.sentence.replace('{time}', `${duration} from the reading`) };
  const offset = start.offsetMinutes ?? 0;
  const due = start.earliest + milliseconds(clock.add);
  const text = (at: number): string => clockText(at, { offset, today: view.timeline.asOf });
  const sentence =
    due <= view.timeline.asOf
      ? clock.whenOver.replace('{time}', text(due))
      : rule.sentence.replace(
          '{time}',
          `${text(due)}, which is ${duration} after the reading at ${text(start.earliest)}`,
        );
  return { ...base, time: formatInstant(due, offset), sentence };
}

/** "13:10"; on another day "13:10 on 2025-03-11". */
function clockText(
  at: number,
  { offset, today }: { readonly offset: number; readonly today: number },
): string {
  const [text, now] = [formatInstant(at, offset), formatInstant(today, offset)];
  const day = text.slice(0, 10);
  return `${text.slice(11, 16)}${day === now.slice(0, 10) ? '' : ` on ${day}`}`;
}

const unitWords: Readonly<Record<string, string>> = { min: 'minute', h: 'hour', d: 'day', wk: 'week' };

function durationText(value: number, unit: string): string {
  return `${String(value)} ${unitWords[unit] ?? unit}${value === 1 ? '' : 's'}`;
}

function clockStart(view: View, guideline: Guideline, rule: ActionRule): Moment | undefined {
  const { hypertension, severe } = guideline.chartLimits;
  switch (rule.clock?.from) {
    case 'first-raised-occasion': {
      const raised = view.occasions.filter((occasion) => isRaised(occasion, hypertension));
      const last = raised.at(-1);
      return raised.find((occasion) => occasion.place.period === last?.place.period)?.at;
    }
    case 'last-severe-reading':
      return view.everyReading.filter(({ reading }) => reaches(reading, severe)).at(-1)?.reading.at;
    case undefined:
      return undefined;
  }
}
