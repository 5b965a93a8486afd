// Prefetch: each template of the service, with its tokens filled in, asked of the record.

/** `Observation?patient={{context.patientId}}` with the values of the context. */
const expand = (template, context) =>
  template.replaceAll(/\{\{context\.(\w+)\}\}/g, (_token, field) => context[field] ?? '');

/** All keys at once, as the answers of the FHIR server stand. A key that cannot be read is left out. */
export async function prefetch(templates, context, store) {
  const answers = await Promise.all(
    Object.entries(templates).map(async ([key, template]) => [
      key,
      await store.get(expand(template, context)),
    ]),
  );
  return Object.fromEntries(answers.filter(([, answer]) => answer !== undefined));
}
