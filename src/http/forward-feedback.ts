// Optional: hands each feedback item on to an address of the site.
import type { FeedbackEvent } from './take-feedback.ts';

const patienceMs = 5000;

/**
 * A forwarder that posts each item as JSON and never holds up nor fails the one who sent it.
 *
 * Given    address   of the site
 *          say       receives one line for each item that could not be delivered; it is not tried again
 */
export function forwardTo(address: string, say: (line: string) => void): (event: FeedbackEvent) => void {
  return (event) => {
    void post(address, event).catch(() => {
      say(JSON.stringify({ event: 'feedback-not-forwarded', card: event.card, rule: event.rule }));
    });
  };
}

async function post(address: string, event: FeedbackEvent): Promise<void> {
  const response = await fetch(address, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(event),
    redirect: 'error',
    signal: AbortSignal.timeout(patienceMs),
  });
  await response.body?.cancel();
  if (!response.ok) throw new Error('not taken');
}
