// The FHIR operation $assess-hypertension.
import { compareEach, everyGuideline } from '../compare-guidelines.ts';
import { momentOrNow, type EvaluateOptions } from '../evaluate.ts';
import { evaluateEach } from '../evaluate-each.ts';
import { toFhirBundle, toFhirBundleOfComparisons, toFhirBundleOfMany } from '../presenters/fhir-result.ts';
import { receive, withReception, type Received } from '../receive.ts';
import { queriedInstant, type Call } from './call.ts';
import { guidelineOption } from './cds-services.ts';
import { checkFormat, isStrict } from './fhir-negotiation.ts';
import { parameterOf, readOperation, switchOf } from './operation-input.ts';
import { fhirReply, type Reply } from './reply.ts';

/**
 * `POST /fhir/$assess-hypertension`
 *
 * Given    call   body: a Bundle, or Parameters with `bundle` and optionally `guideline`, `asOf`, `subject`,
 *                 `riskModels`; these may be query parameters instead; `Prefer: handling=strict` refuses what breaks R4
 * Returns  a collection Bundle; one result set for each woman when several are in the input and none is named.
 *          With the guideline `all`: under the default one, with the answers of every other side by side.
 * Throws   RequestError 400: no Bundle, an unknown guideline, a time that cannot be read, one parameter said twice
 *          and differently; 400 or 422: refused as strict; 406: the client accepts no JSON.
 */
export async function assessReply(call: Call): Promise<Reply> {
  checkFormat(call);
  const asked = readOperation(await call.body(), ['bundle', 'data']);
  const guideline = parameterOf(call, asked, 'guideline');
  const subject = parameterOf(call, asked, 'subject');
  const options: EvaluateOptions = {
    ...call.site?.options,
    ...momentOrNow(parameterOf(call, asked, 'asOf', queriedInstant(call)), call.now),
    ...guidelineOption(guideline),
    ...(subject === undefined ? {} : { subject }),
    riskModels: switchOf(call, asked, 'riskModels'),
  };
  const received = receive(asked.data, { isStrict: isStrict(call), site: call.site?.setup });
  return fhirReply(guideline === everyGuideline ? compared(received, options) : assessed(received, options));
}

function compared(received: Received, options: EvaluateOptions) {
  const comparisons = compareEach(received.input, options).map((comparison) => ({
    ...comparison,
    evaluation: withReception(comparison.evaluation, received),
  }));
  return toFhirBundleOfComparisons(comparisons);
}

function assessed(received: Received, options: EvaluateOptions) {
  const evaluations = evaluateEach(received.input, { ...options, compare: true }).map((evaluation) =>
    withReception(evaluation, received),
  );
  const [first, ...others] = evaluations;
  return first === undefined || others.length > 0 ? toFhirBundleOfMany(evaluations) : toFhirBundle(first);
}
