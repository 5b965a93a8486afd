// The FHIR operation $assess-hypertension.
import { compareEach, everyGuideline } from '../compare-guidelines.ts';
import { evaluateEach } from '../evaluate-each.ts';
import { toFhirBundle, toFhirBundleOfComparisons, toFhirBundleOfMany } from '../presenters/fhir-result.ts';
import { isObject } from './cds-request.ts';
import { guidelineOption } from './cds-services.ts';
import { fhirReply, type Reply } from './reply.ts';
import { refused } from './request-issues.ts';
import { queriedInstant, type Call } from './call.ts';

interface Asked {
  readonly input: unknown;
  readonly guideline?: string | undefined;
  readonly asOf?: string | undefined;
  readonly subject?: string | undefined;
}

/**
 * `POST /fhir/$assess-hypertension`
 *
 * Given    call   body: a Bundle, or Parameters with `bundle` and optionally `guideline`, `asOf`, `subject`; the
 *                 three may be query parameters instead
 * Returns  a collection Bundle; one result set for each woman when several are in the input and none is named.
 *          With the guideline `all`: under the default one, with the answers of every other side by side.
 * Throws   RequestError 400: no Bundle, an unknown guideline, a time that cannot be read, one parameter said twice
 *          and differently; 406: the client accepts no JSON.
 */
export async function assessReply(call: Call): Promise<Reply> {
  checkAccept(call);
  const asked = readAsked(await call.body());
  const asOf = one('asOf', asked.asOf, queriedInstant(call));
  const guideline = one('guideline', asked.guideline, call.query('guideline'));
  const subject = one('subject', asked.subject, call.query('subject'));
  const options = { asOf: asOf ?? call.now, ...(subject === undefined ? {} : { subject }) };
  if (guideline === everyGuideline)
    return fhirReply(toFhirBundleOfComparisons(compareEach(asked.input, options)));
  const evaluations = evaluateEach(asked.input, { ...options, ...guidelineOption(guideline), compare: true });
  const [first, ...others] = evaluations;
  return fhirReply(
    first === undefined || others.length > 0 ? toFhirBundleOfMany(evaluations) : toFhirBundle(first),
  );
}

function checkAccept({ accept }: Call): void {
  if (accept === undefined || /json|\*\/\*|application\/\*/i.test(accept)) return;
  throw refused(406, 'not-acceptable', 'not-supported', 'http.Accept', 'This service answers in JSON only.');
}

function readAsked(body: unknown): Asked {
  if (!isObject(body) || typeof body['resourceType'] !== 'string') {
    throw refused(
      400,
      'not-a-resource',
      'structure',
      '',
      'The body must be a FHIR Bundle, or Parameters with one.',
    );
  }
  if (body['resourceType'] !== 'Parameters') return { input: body };
  const parameters: readonly unknown[] = Array.isArray(body['parameter']) ? body['parameter'] : [];
  const named = (name: string) =>
    parameters.find(
      (each): each is Readonly<Record<string, unknown>> => isObject(each) && each['name'] === name,
    );
  const input = named('bundle')?.['resource'];
  if (input === undefined) {
    throw refused(
      400,
      'required',
      'required',
      'Parameters.parameter',
      'A parameter `bundle` with a resource is required.',
    );
  }
  return {
    input,
    guideline: valueOf(named('guideline')),
    asOf: valueOf(named('asOf')),
    subject: valueOf(named('subject')),
  };
}

function valueOf(parameter: Readonly<Record<string, unknown>> | undefined): string | undefined {
  if (parameter === undefined) return undefined;
  const reference = parameter['valueReference'];
  if (isObject(reference) && typeof reference['reference'] === 'string') return reference['reference'];
  const [, value] =
    Object.entries(parameter).find(([key, each]) => key.startsWith('value') && typeof each === 'string') ??
    [];
  return typeof value === 'string' ? value : undefined;
}

function one(name: string, inBody: string | undefined, inQuery: string | undefined): string | undefined {
  if (inBody !== undefined && inQuery !== undefined && inBody !== inQuery) {
    throw refused(
      400,
      'said-twice',
      'invalid',
      `http.${name}`,
      `\`${name}\` is given twice, with different values.`,
    );
  }
  return inBody ?? inQuery;
}
