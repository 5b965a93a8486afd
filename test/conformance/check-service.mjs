// The checklist against a base URL, row by row, over HTTP only.
import { rows as answer } from './rows/answer.mjs';
import { rows as card } from './rows/card.mjs';
import { rows as discovery } from './rows/discovery.mjs';
import { rows as feedback } from './rows/feedback.mjs';
import { rows as prefetch } from './rows/prefetch.mjs';
import { rows as request } from './rows/request.mjs';
import { rows as security } from './rows/security.mjs';
import { rows as suggestion } from './rows/suggestion.mjs';
import { rows as transport } from './rows/transport.mjs';
import { serviceAt } from './service.mjs';
import { NotTestable } from './verdict.mjs';

/** Every row that can be seen from outside. */
export const rows = [
  transport,
  discovery,
  request,
  answer,
  card,
  suggestion,
  prefetch,
  feedback,
  security,
].flat();

async function judge(row, service) {
  try {
    const said = await row.run(service);
    return said === undefined ? { state: 'pass' } : { state: 'fail', reason: said };
  } catch (error) {
    if (error instanceof NotTestable) return { state: 'not-testable', reason: error.message };
    return { state: 'fail', reason: `no answer could be judged: ${error.message}` };
  }
}

/**
 * Judges a service.
 *
 * Given    options   base, now, key, isCounted as in `serviceAt`; only: ids of the rows to run
 * Returns  { id, level, title, state: 'pass' | 'fail' | 'not-testable', reason? } for each row, in order of id
 */
export async function checkService({ only, ...options }) {
  const service = serviceAt(options);
  const results = [];
  for (const row of rows.filter(({ id }) => only === undefined || only.includes(id))) {
    const { id, level, title } = row;
    results.push({ id, level, title, ...(await judge(row, service)) });
  }
  return results;
}
