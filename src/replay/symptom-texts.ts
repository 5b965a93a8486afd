// Names of symptoms that count as text, and the codes under which a symptom stands in the value.
import { symptomHolderCodes, symptomNames } from '../terminology/severity.ts';

export const symptomHolders = symptomHolderCodes;

export const symptomNameList: readonly string[] = symptomNames.flatMap(({ names }) => [...names]);

/** A name may be written with one of these before it; the same words as in `symptomsNamed` of the timeline. */
export const severityWordsBeforeNames: readonly string[] = ['severe', 'moderate', 'mild', 'persistent'];
