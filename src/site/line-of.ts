// On which line of a JSON text does a member stand? For the faults of hand-written files.

const token = /"(?:[^"\\]|\\.)*"|[{}[\],:]|[^\s{}[\],:"]+/g;

/**
 * The line of a member.
 *
 * Given    text   JSON that parses
 *          path   member names and list positions from the root
 * Returns  line number from 1; where the path does not exist, the line of the last step that does
 * Throws   never
 */
export function lineOf(text: string, path: readonly (string | number)[]): number {
  const tokens = [...text.matchAll(token)].map((match) => ({ word: match[0], at: match.index }));
  let position = 0;
  let found = tokens[0]?.at ?? 0;
  for (const step of path) {
    const next = find(tokens, position, step);
    if (next === undefined) break;
    found = tokens[next.name]?.at ?? found;
    position = next.value;
  }
  return text.slice(0, found).split('\n').length;
}

interface Token {
  readonly word: string;
  readonly at: number;
}

/** Positions of a member's name and of its value, in the object or list that begins at `start`. */
function find(
  tokens: readonly Token[],
  start: number,
  step: string | number,
): { readonly name: number; readonly value: number } | undefined {
  const opening = tokens[start]?.word;
  if (opening !== '{' && opening !== '[') return undefined;
  let depth = 0;
  let index = 0;
  for (let at = start; at < tokens.length; at += 1) {
    const word = tokens[at]?.word ?? '';
    if (word === '}' || word === ']') depth -= 1;
    if (depth === 0 && at > start) return undefined;
    if (depth === 1 && opening === '{' && isNameOf(tokens, at, step)) return { name: at, value: at + 2 };
    if (depth === 1 && opening === '[' && word === ',') index += 1;
    if (depth === 1 && opening === '[' && word !== ',' && index === step) return { name: at, value: at };
    if (word === '{' || word === '[') {
      depth += 1;
      if (depth === 1 && opening === '[' && step === 0) return { name: at + 1, value: at + 1 };
    }
  }
  return undefined;
}

function isNameOf(tokens: readonly Token[], at: number, step: string | number): boolean {
  return tokens[at + 1]?.word === ':' && tokens[at]?.word === JSON.stringify(step);
}
