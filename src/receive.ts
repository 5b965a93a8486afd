// What a door does before and after the flow: strict reading, the site's own codes, words for what was set aside.
import { envelopeWarnings, validateStrict } from './bundle/strict/validate-strict.ts';
import { wordFaults } from './bundle/strict/word-faults.ts';
import { RequestError } from './errors.ts';
import type { Issue } from './errors.ts';
import type { EvaluateOptions } from './evaluate.ts';
import type { AccountEntry, Evaluation } from './evaluation.ts';
import { adaptInput } from './site/adapt-input.ts';
import type { SiteSetup } from './site/site.ts';

/** What was submitted, ready to be evaluated, with what there is to say about its reception. */
export interface Received {
  readonly input: unknown;
  readonly submitted: unknown;
  readonly remarks: readonly Issue[];
  readonly site: SiteSetup | undefined;
}

export interface Reception {
  readonly isStrict: boolean;
  readonly site?: SiteSetup | undefined;
}

/**
 * Takes in what was submitted.
 *
 * Given    input      parsed JSON
 *          reception  strict: everything that breaks R4 refuses the request; site: its local codes are read as ours
 * Returns  the input as the flow should see it
 * Throws   RequestError in strict mode, naming every error: 400 where the form of R4 is broken, 422 where only its
 *          invariants and rules are
 * Notes    1. Strict warnings do not refuse: they are remarks of the answer.
 */
export function receive(input: unknown, { isStrict, site }: Reception): Received {
  const issues = isStrict ? validateStrict(input) : envelopeWarnings(input);
  if (issues.some(({ severity }) => severity === 'error')) throw refusal(issues);
  const adapted = site === undefined ? { input, remarks: [] } : adaptInput(input, site);
  return { input: adapted.input, submitted: input, remarks: [...issues, ...adapted.remarks], site };
}

/** Everything that breaks or bends R4 in what was submitted, for a door that asks only that. */
export const strictIssues: (input: unknown) => readonly Issue[] = validateStrict;

const ruleTypes: readonly string[] = ['invariant', 'business-rule', 'extension', 'not-found'];

function refusal(issues: readonly Issue[]): RequestError {
  const errors = issues.filter(({ severity }) => severity === 'error');
  return new RequestError(errors.every(({ type }) => ruleTypes.includes(type)) ? 422 : 400, issues);
}

/** The evaluation with the remarks of the reception, words for what is out of form, and to whom the site refers. */
export function withReception(evaluation: Evaluation, received: Received): Evaluation {
  const { account } = evaluation;
  const said = new Set(account.issues.map((issue) => `${issue.code} ${issue.expression}`));
  const worded = wordFaults(received.submitted, account.entries.filter(isSetAside)).filter(
    (issue) => !said.has(`${issue.code} ${issue.expression}`),
  );
  const performers = received.site?.performers;
  return {
    ...evaluation,
    account: { ...account, issues: [...account.issues, ...received.remarks, ...worded] },
    ...(performers === undefined || performers.size === 0 ? {} : { performers }),
  };
}

function isSetAside(entry: AccountEntry): entry is AccountEntry & { readonly outcome: 'set-aside' } {
  return entry.outcome === 'set-aside';
}

/** What the flow takes from a site; `offset` is the site's time zone as the shell counts it. */
export function siteOptions(
  site: SiteSetup | undefined,
  offset: EvaluateOptions['facilityOffsetMinutes'],
): Omit<EvaluateOptions, 'asOf' | 'subject' | 'compare'> {
  return {
    ...(offset === undefined ? {} : { facilityOffsetMinutes: offset }),
    ...(site?.guideline === undefined ? {} : { guideline: site.guideline }),
    ...(site?.pressureUnit === undefined ? {} : { defaultPressureUnit: site.pressureUnit }),
    ...(site?.level === undefined ? {} : { site: site.level }),
  };
}
