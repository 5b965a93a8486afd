// Ids of the guideline data as plain words. Wording only.

/** Words that keep their hyphen or their capitals. */
const spelled: Readonly<Record<string, string>> = {
  'pre eclampsia': 'pre-eclampsia',
  'white coat': 'white-coat',
  'sflt1 plgf ratio': 'sFlt-1/PlGF ratio',
  hellp: 'HELLP',
  ldh: 'LDH',
  alt: 'ALT',
  ast: 'AST',
  hcg: 'hCG',
  plgf: 'PlGF',
  nsaid: 'NSAID',
  'ace inhibitor': 'ACE inhibitor',
};

/** An id as plain words: "oxygen-saturation" becomes "oxygen saturation". */
export const idWords = (id: string): string =>
  Object.entries(spelled).reduce(
    (words, [plain, right]) => words.replace(new RegExp(`\\b${plain}\\b`, 'g'), right),
    id.replaceAll('-', ' '),
  );

/** "headache, clonus or seizure". */
export const manyWords = (ids: readonly string[], last = 'or'): string => {
  const words = ids.map(idWords);
  const end = words.at(-1) ?? '';
  return words.length < 2 ? end : `${words.slice(0, -1).join(', ')} ${last} ${end}`;
};
