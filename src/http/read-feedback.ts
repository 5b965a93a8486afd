// Feedback as a client sends it, checked item by item. Row ids are those of the conformance checklist.
import { RequestError, type Issue } from '../errors.ts';
import { isObject } from './json-object.ts';
import { refused, requestIssue } from './request-issues.ts';

type Json = Readonly<Record<string, unknown>>;

/** One item, reduced to what may be counted: the comment itself is not read on. */
export interface FeedbackItem {
  readonly card: string;
  readonly outcome: 'accepted' | 'overridden';
  readonly acceptedSuggestions: readonly string[];
  readonly reason?: { readonly system: string; readonly code: string };
  readonly hasComment: boolean;
  /** Instant in UTC, ISO 8601. */
  readonly at: string;
}

/**
 * The items of a feedback body.
 *
 * Throws   RequestError 400 with one issue for each fault, by item and member (rows B-02 to B-07, B-11); then nothing
 *          of the body is taken.
 * Notes    1. An offset is normalised to UTC; a time without zone is refused (B-07).
 */
export function readFeedback(body: unknown): readonly FeedbackItem[] {
  const items: unknown = isObject(body) ? body['feedback'] : undefined;
  if (!Array.isArray(items)) {
    throw refused(400, 'required', 'required', 'feedback', '`feedback` is required and must be a list.');
  }
  const list: readonly unknown[] = items;
  const issues = list.flatMap((item, index) => faultsOf(item).map((member) => issueOf(index, member)));
  if (issues.length > 0) throw new RequestError(400, issues);
  return list.filter(isObject).map(toItem);
}

function issueOf(index: number, member: string): Issue {
  const place = `feedback[${index}].${member}`;
  return requestIssue('feedback-item', 'value', place, `\`${member}\` is missing or not valid.`);
}

function faultsOf(item: unknown): readonly string[] {
  if (!isObject(item)) return ['card'];
  const { card, outcome, outcomeTimestamp } = item;
  return [
    ...(isText(card) ? [] : ['card']),
    ...(outcome === 'accepted' || outcome === 'overridden' ? [] : ['outcome']),
    ...suggestionFaults(item),
    ...reasonFaults(item['overrideReason']),
    ...(instantOf(outcomeTimestamp) === undefined ? ['outcomeTimestamp'] : []),
  ];
}

/** Required when accepted (cds-fb-2): a list of at least one, each with the id of a suggestion. */
function suggestionFaults({ outcome, acceptedSuggestions }: Json): readonly string[] {
  if (acceptedSuggestions === undefined) return outcome === 'accepted' ? ['acceptedSuggestions'] : [];
  const isSound =
    Array.isArray(acceptedSuggestions) &&
    acceptedSuggestions.every((each: unknown) => isObject(each) && isText(each['id'])) &&
    (outcome !== 'accepted' || acceptedSuggestions.length > 0);
  return isSound ? [] : ['acceptedSuggestions'];
}

/** A reason, a comment, or both (cds-fb-3); a reason has code and system. */
function reasonFaults(overrideReason: unknown): readonly string[] {
  if (overrideReason === undefined) return [];
  if (!isObject(overrideReason)) return ['overrideReason'];
  const { reason, userComment } = overrideReason;
  if (reason === undefined) return isText(userComment) ? [] : ['overrideReason'];
  const isCoded = isObject(reason) && isText(reason['code']) && isText(reason['system']);
  return isCoded ? [] : ['overrideReason.reason'];
}

function toItem(item: Json): FeedbackItem {
  const { card, outcome, acceptedSuggestions, overrideReason, outcomeTimestamp } = item;
  const given = isObject(overrideReason) ? overrideReason : {};
  const reason = isObject(given['reason']) ? given['reason'] : undefined;
  const suggestions: readonly unknown[] = Array.isArray(acceptedSuggestions) ? acceptedSuggestions : [];
  return {
    card: String(card)
      .toLowerCase()
      .replace(/^urn:uuid:/, ''),
    outcome: outcome === 'accepted' ? 'accepted' : 'overridden',
    acceptedSuggestions: suggestions.flatMap((each) => (isObject(each) ? [String(each['id'])] : [])),
    ...(reason === undefined
      ? {}
      : { reason: { system: String(reason['system']), code: String(reason['code']) } }),
    hasComment: isText(given['userComment']),
    at: instantOf(outcomeTimestamp) ?? '',
  };
}

function isText(value: unknown): value is string {
  return typeof value === 'string' && value !== '';
}

const zoned = /^\d{4}-\d{2}-\d{2}[Tt]\d{2}:\d{2}:\d{2}(?:\.\d+)?(?:[Zz]|[+-]\d{2}:\d{2})$/;

function instantOf(value: unknown): string | undefined {
  if (typeof value !== 'string' || !zoned.test(value)) return undefined;
  const instant = Date.parse(value.toUpperCase());
  return Number.isNaN(instant) ? undefined : new Date(instant).toISOString();
}
