// Where trimesters begin, for the breakdown of measures. Data only.
import { commonPractice } from './citations.ts';
import { limit } from './shared-values.ts';

const weeks = commonPractice('trimesters are counted from 14+0 and 28+0 weeks');

export const secondTrimesterFrom = limit('second-trimester-from', '>=', 98, 'd', weeks);
export const thirdTrimesterFrom = limit('third-trimester-from', '>=', 196, 'd', weeks);
