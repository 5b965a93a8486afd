// Our public codes and the plain words for them. Data only; every presenter says the same word for the same code.
import { english } from '../messages/en.ts';

/** Base of our canonical addresses. A publisher of a fork replaces it here and nowhere else. */
export const canonicalBase = 'https://pregnancy-htn.example/fhir';

/** Our code systems, by what they code. */
export const codeSystems = {
  classification: `${canonicalBase}/CodeSystem/classification`,
  urgency: `${canonicalBase}/CodeSystem/urgency`,
  cardTopic: `${canonicalBase}/CodeSystem/card-topic`,
  missing: `${canonicalBase}/CodeSystem/missing`,
  issue: `${canonicalBase}/CodeSystem/issue`,
  overrideReason: `${canonicalBase}/CodeSystem/override-reason`,
  safetyIssue: `${canonicalBase}/CodeSystem/safety-issue`,
  measurePopulation: `${canonicalBase}/CodeSystem/measure-population`,
} as const;

/** Key of our member in every CDS Hooks `extension`. */
export const extensionKey = 'org.pregnancy-htn.assessment';

/** The English words for our codes; cards in another language take them from their own messages. */
export const { classWords, urgencyWords, neededByWords, referralWords } = english;
