// What every answer says about its own limits.
import { english } from '../messages/en.ts';

/**
 * The caution shown beside every answer, in English.
 *
 * Source   clinical-rules section 5, condensed in our words.
 */
export const caution: readonly string[] = english.caution;
