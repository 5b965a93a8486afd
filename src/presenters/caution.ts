// What every answer says about its own limits.

/**
 * The caution shown beside every answer.
 *
 * Source   clinical-rules section 5, condensed in our words.
 */
export const caution: readonly string[] = [
  'This supports the judgement of a licensed clinician and does not replace it.',
  'It can be wrong when data are missing, late or mistyped.',
  'No alert is not proof of health: if she looks ill, has a severe headache, blurred sight, pain under the ribs, breathlessness or fits, act at once and call for help.',
  'Local protocol, her condition and her wishes come first.',
  'Before giving a drug, check the local formulary, her allergies, kidneys and breast-feeding.',
  'Guidelines differ: the one used is named with its version, and values not checked against the printed text are marked.',
];
