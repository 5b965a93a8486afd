import { join } from 'node:path';

export const root = join(import.meta.dirname, '..', '..', '..');
/** Set by run.sh; outside the project, because every file is written anew. */
export const work = process.env.MUTATION_WORK ?? join(import.meta.dirname, 'work');
