// What a site says of itself, without code: the shape of site.json, and of the ConceptMaps beside it.
import { z } from 'zod';

const id = z.string().regex(/^[a-z0-9-]+$/, 'use lower-case letters, digits and hyphens');
const reference = z.strictObject({
  reference: z
    .string()
    .regex(
      /^(Organization|HealthcareService|PractitionerRole|CareTeam|Location)\/[A-Za-z0-9\-.]{1,64}$|^https?:\/\/\S+$/,
      {
        message: 'write Organization/id or HealthcareService/id',
      },
    ),
  display: z.string().min(1).optional(),
});
const level = z.strictObject({
  id,
  title: z.string().min(1),
  /** Names of needs, as in the guideline data: `magnesium`, `laboratory`, `operate`. */
  can: z.array(z.string().min(1)),
  /** Id of the level this one refers to; absent: there is none above. */
  next: id.optional(),
});

const isZone = (name: string): boolean => {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
};

/** site.json; every member but the name may be left out. */
export const siteShape = z
  .strictObject({
    $schema: z.string().optional(),
    name: z.string().min(1),
    guideline: id.optional(),
    language: z
      .string()
      .regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, 'write a BCP 47 tag such as en or en-GB')
      .optional(),
    timeZone: z.string().refine(isZone, 'write an IANA zone such as Africa/Accra').optional(),
    pressureUnit: z.enum(['mm[Hg]', 'kPa']).optional(),
    /** Refuse requests that break R4, without being asked. */
    strict: z.boolean().optional(),
    levels: z.array(level).optional(),
    /** Id of the level this installation serves; default the first. */
    level: id.optional(),
    referral: z
      .strictObject({
        clinic: reference.optional(),
        hospital: reference.optional(),
        'hospital-with-intensive-care': reference.optional(),
      })
      .optional(),
    /** Files of ConceptMaps beside site.json, by what they map. */
    conceptMaps: z
      .strictObject({
        codes: z.array(z.string()).optional(),
        units: z.array(z.string()).optional(),
        stripTexts: z.array(z.string()).optional(),
      })
      .optional(),
  })
  .superRefine((site, context) => {
    const ids = (site.levels ?? []).map((each) => each.id);
    (site.levels ?? []).forEach((each, at) => {
      if (each.next !== undefined && !ids.includes(each.next))
        context.addIssue({
          code: 'custom',
          path: ['levels', at, 'next'],
          message: 'there is no level of this id',
        });
    });
    if (site.level !== undefined && !ids.includes(site.level))
      context.addIssue({ code: 'custom', path: ['level'], message: 'there is no level of this id' });
  });

export type SiteJson = z.infer<typeof siteShape>;

const equivalences = [
  'relatedto',
  'equivalent',
  'equal',
  'wider',
  'subsumes',
  'narrower',
  'specializes',
  'inexact',
  'unmatched',
  'disjoint',
] as const;

const target = z
  .object({
    code: z.string().min(1).optional(),
    display: z.string().min(1).optional(),
    equivalence: z.enum(equivalences),
    comment: z.string().min(1).optional(),
  })
  .refine(
    ({ equivalence, comment }) => comment !== undefined || !['narrower', 'inexact'].includes(equivalence),
    'a narrower or inexact mapping needs a comment (cmd-1)',
  );

/**
 * The part of a ConceptMap that is read; other members of R4 are allowed and ignored.
 *
 * Source   FHIR R4 4.0.1 ConceptMap, cmd-1 and cmd-2; fhir.md F-S02
 */
export const conceptMapShape = z.object({
  resourceType: z.literal('ConceptMap'),
  url: z.string().min(1),
  version: z.string().min(1).optional(),
  status: z.enum(['draft', 'active', 'retired', 'unknown']),
  group: z
    .array(
      z.object({
        source: z.string().min(1),
        target: z.string().min(1),
        element: z
          .array(
            z.object({
              code: z.string().min(1),
              display: z.string().optional(),
              target: z.array(target).optional(),
            }),
          )
          .min(1),
        unmapped: z
          .object({ mode: z.enum(['provided', 'fixed', 'other-map']), code: z.string().min(1).optional() })
          .refine(
            ({ mode, code }) => mode !== 'fixed' || code !== undefined,
            'mode fixed needs a code (cmd-2)',
          )
          .optional(),
      }),
    )
    .min(1),
});

export type ConceptMapJson = z.infer<typeof conceptMapShape>;
