// Ids of the data as plain words. Wording only.

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

const spellings = Object.entries(spelled).map(
  ([plain, right]) => [new RegExp(`\\b${plain}\\b`, 'g'), right] as const,
);
const spelt = new Map<string, string>();

/** An id as plain words: "oxygen-saturation" becomes "oxygen saturation", "alt" becomes "ALT". */
export function idWords(id: string): string {
  const known = spelt.get(id);
  if (known !== undefined) return known;
  const words = spellings.reduce(
    (text, [plain, right]) => text.replace(plain, right),
    id.replaceAll('-', ' '),
  );
  spelt.set(id, words);
  return words;
}

/** The same at the beginning of a sentence; a name that begins with a small letter by rule keeps it. */
export function idSentence(id: string): string {
  const words = idWords(id);
  return /^[a-z][A-Z]/.test(words) ? words : `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}

/** "headache, clonus or seizure". */
export const manyWords = (ids: readonly string[], last = 'or'): string => {
  const words = ids.map(idWords);
  const end = words.at(-1) ?? '';
  return words.length < 2 ? end : `${words.slice(0, -1).join(', ')} ${last} ${end}`;
};
