// Naming the resource a fact came from.
import type { Received } from '../bundle/read-bundle-types.ts';
import type { Source } from './timeline.ts';

export function sourceOf(received: Received): Source {
  return { reference: received.reference, preliminary: received.preliminary };
}
