// The readiness check over the wire: would these data work?
import { checkReadiness } from '../readiness/check-readiness.ts';
import { queriedInstant, type Call } from './call.ts';
import { guidelineOption } from './cds-services.ts';
import { jsonReply, type Reply } from './reply.ts';

/**
 * `POST /check`
 *
 * Given    call   body: a Bundle, Parameters, resource, or list of resources
 *                 without `asOf` each woman is judged at her newest fact up to now
 * Returns  counts with example places; never a clinical value
 * Throws   RequestError as `evaluate` does
 */
export async function checkReply(call: Call): Promise<Reply> {
  const asked = queriedInstant(call);
  const options = {
    ...call.site?.options,
    asOf: asked ?? call.now,
    atNewestFact: asked === undefined,
    ...guidelineOption(call.query('guideline')),
  };
  return jsonReply(checkReadiness(await call.body(), options, call.site?.setup));
}
