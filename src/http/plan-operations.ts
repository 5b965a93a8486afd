// PlanDefinition/[id]/$apply: a guideline applied to the data of one woman.
import { evaluate, momentOrNow } from '../evaluate.ts';
import { guidelineOf } from '../guidelines/registry.ts';
import { toPlanBundle } from '../presenters/plan-result.ts';
import { receive, withReception } from '../receive.ts';
import { queriedInstant, type Call } from './call.ts';
import { checkFormat, isStrict } from './fhir-negotiation.ts';
import { parameterOf, readOperation } from './operation-input.ts';
import { fhirReply, type Reply } from './reply.ts';
import { refused } from './request-issues.ts';

/**
 * `POST /fhir/PlanDefinition/{id}/$apply`
 *
 * Given    call   path: id of a guideline; body: Parameters with `data` (Bundle) and optionally `subject`, `asOf`; or
 *                 the bare Bundle
 * Returns  a collection Bundle: a RequestGroup and the proposals it holds together
 * Throws   RequestError 404 unknown guideline; 400 no data, or a parameter that cannot be read; 422 several women
 *          and none named
 * Notes    1. The `data` form of CPG-on-FHIR: this service stores no patients, so that a subject alone cannot be looked up.
 */
export async function applyReply(call: Call): Promise<Reply> {
  checkFormat(call);
  const guideline = call.parameter('id') ?? '';
  if (guidelineOf(guideline) === undefined)
    throw refused(404, 'unknown-plan', 'not-found', 'http.id', 'There is no PlanDefinition of this id.');
  const asked = readOperation(await call.body(), ['data', 'bundle']);
  const [subject, ...others] = [...asked.texts('subject'), ...[call.query('subject') ?? []].flat()];
  if (others.length > 0)
    throw refused(
      400,
      'one-subject',
      'not-supported',
      'http.subject',
      'Apply the plan to one woman at a time: give one `subject`.',
    );
  const received = receive(asked.data, { isStrict: isStrict(call), site: call.site?.setup });
  const evaluation = evaluate(received.input, {
    ...call.site?.options,
    ...momentOrNow(parameterOf(call, asked, 'asOf', queriedInstant(call)), call.now),
    guideline,
    ...(subject === undefined ? {} : { subject }),
  });
  return fhirReply(toPlanBundle(withReception(evaluation, received)));
}
