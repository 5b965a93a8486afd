// The readiness check as a page of text for integrators.
import type { Counted, ElementFound, Readiness } from '../readiness/readiness.ts';

/** Lines to read from top to bottom: what was found, what was not used, what cannot be answered, what breaks R4. */
export function toReadinessText(readiness: Readiness): string {
  const { women, classified, received, used, notNeeded, mapped } = readiness;
  const aside = readiness.setAside.reduce((sum, { count }) => sum + count, 0);
  return `${[
    `${received} resources received about ${plural(women, 'woman', 'women')}: ${used} used, ${aside} set aside, ${notNeeded} not needed.`,
    `${classified} of ${women} can be given a class.`,
    ...(mapped === 0 ? [] : [`${plural(mapped, 'local code', 'local codes')} read by the site's maps.`]),
    ...section('Found', readiness.elements.flatMap(elementLines)),
    ...section(
      'Set aside',
      readiness.setAside.flatMap((each) => countedLines(each, `${each.name}: ${each.message}`)),
    ),
    ...section(
      'Cannot be answered for any woman',
      readiness.neverAnswered.map(
        ({ question, missing }) => `  ${question}${missing === undefined ? '' : `: needs ${missing}`}`,
      ),
    ),
    ...section(
      'Breaks or bends FHIR R4',
      readiness.strict.flatMap((each) =>
        countedLines(each, `${each.severity} ${each.name}: ${each.message}`),
      ),
    ),
  ].join('\n')}\n`;
}

function plural(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

function section(title: string, lines: readonly string[]): readonly string[] {
  return ['', `${title}:`, ...(lines.length === 0 ? ['  nothing'] : lines)];
}

function elementLines({ element, facts, shapes }: ElementFound): readonly string[] {
  const sent = shapes.reduce((sum, { count }) => sum + count, 0);
  const head = sent === 0 && facts === 0 ? `  ${element}: none found` : `  ${element}: ${facts} usable`;
  return [
    head,
    ...shapes.map(({ name, count, examples }) => `    ${count} x ${name}, such as ${examples[0] ?? ''}`),
  ];
}

function countedLines({ count, examples }: Counted, what: string): readonly string[] {
  return [`  ${count} x ${what}`, ...examples.map((example) => `      ${example}`)];
}
