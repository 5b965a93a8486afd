// Bundle/$validate: would this service be able to use these data?
import type { Issue } from '../errors.ts';
import { RequestError } from '../errors.ts';
import { toOperationOutcome } from '../presenters/operation-outcome.ts';
import { receive, strictIssues, withReception } from '../receive.ts';
import { judgeEach } from '../readiness/judge-each.ts';
import { queriedInstant, type Call } from './call.ts';
import { checkFormat } from './fhir-negotiation.ts';
import { readOperation } from './operation-input.ts';
import { fhirReply, type Reply } from './reply.ts';

/**
 * `POST /fhir/Bundle/$validate`
 *
 * Given    call   body: the Bundle, or Parameters with `resource`; without `asOf` each woman is judged at her newest
 *                 fact up to now, so that old data are checked as of their own time
 * Returns  200 with an OperationOutcome, also when the Bundle is not valid: what breaks R4, and what would be set aside
 *          and why; one information issue when there is nothing to report
 * Throws   RequestError 400 when the body is no resource; 406 when the client accepts no JSON
 * Source   FHIR R4 4.0.1 $validate; F-C04
 */
export async function validateReply(call: Call): Promise<Reply> {
  checkFormat(call);
  const { data } = readOperation(await call.body(), ['resource']);
  const broken = strictIssues(data);
  const seen = new Set(broken.map(({ expression }) => expression));
  const used = usability(data, call).filter(
    ({ expression }) => !seen.has(expression) && seen.add(expression).size > 0,
  );
  return fhirReply(toOperationOutcome([...broken, ...used]));
}

/** What would be set aside, for whichever woman; a resource that is another woman's is no fault of a Bundle. */
function usability(data: unknown, call: Call): readonly Issue[] {
  try {
    const received = receive(data, { isStrict: false, site: call.site?.setup });
    const asked = queriedInstant(call);
    return judgeEach(received.input, {
      ...call.site?.options,
      asOf: asked ?? call.now,
      atNewestFact: asked === undefined,
    })
      .map(({ evaluation }) => withReception(evaluation, received).account)
      .flatMap((account): readonly Issue[] => [
        ...account.entries.flatMap((entry) =>
          entry.outcome !== 'set-aside' || entry.code === 'other-subject'
            ? []
            : [
                {
                  severity: 'warning' as const,
                  code: entry.code,
                  type: 'processing',
                  expression: entry.expression,
                  message: entry.message,
                },
              ],
        ),
        ...account.issues,
      ]);
  } catch (error) {
    if (error instanceof RequestError) return error.issues;
    throw error;
  }
}
