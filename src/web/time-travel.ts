// The slider: the pregnancy again, moment by moment.
import { localInstant } from '../presenters/clock.ts';
import { make } from './dom.ts';
import { clockWords } from './words.ts';

export interface TimeTravel {
  readonly element: HTMLElement;
  readonly show: (moments: readonly number[], at: number, offsetMinutes: number) => void;
}

/**
 * An empty slider.
 *
 * Given    onMove   called with the moment a person went to, milliseconds since 1970-01-01T00:00Z
 * Notes    1. It stops where something became known; in between the facts are the same, and the field takes any moment.
 */
export function createTimeTravel(onMove: (asOf: number) => void): TimeTravel {
  let moments: readonly number[] = [];
  let offset = 0;
  const slider = make('input', { type: 'range', id: 'moment', min: 0, max: 0, step: 1 });
  const words = make('output', { for: 'moment' });
  const field = make('input', { id: 'moment-field', type: 'datetime-local' });
  const goTo = (at: number): void => {
    slider.value = String(at);
    const time = moments[at];
    if (time !== undefined) onMove(time);
  };
  const step = (by: number) => (): void =>
    goTo(Math.min(moments.length - 1, Math.max(0, Number(slider.value) + by)));
  slider.addEventListener('input', () => goTo(Number(slider.value)));
  field.addEventListener('change', () => {
    // The clock of the clinic, read as if it were UTC.
    const time = Date.parse(`${field.value}Z`);
    if (!Number.isNaN(time)) onMove(time - offset * 60_000);
  });
  return {
    element: make(
      'div',
      { class: 'time-travel', role: 'group', 'aria-label': 'Moment of the answer' },
      make('label', { for: 'moment' }, 'As it was at '),
      words,
      make(
        'div',
        { class: 'slide' },
        make('button', { type: 'button', 'aria-label': 'One moment back', onclick: step(-1) }, '◀'),
        slider,
        make('button', { type: 'button', 'aria-label': 'One moment on', onclick: step(1) }, '▶'),
        make('label', { for: 'moment-field' }, 'or at ', field),
      ),
    ),
    show: (given, at, offsetMinutes) => {
      moments = given;
      offset = offsetMinutes;
      slider.max = String(Math.max(0, moments.length - 1));
      const before = moments.filter((time) => time <= at).length - 1;
      slider.value = String(Math.max(0, before));
      const text = clockWords(at, offset);
      words.textContent = `${text}${before === moments.length - 1 ? ' (the newest data)' : ''}`;
      slider.setAttribute('aria-valuetext', text);
      field.value = localInstant(at, offset).slice(0, 'yyyy-mm-ddThh:mm'.length);
    },
  };
}
