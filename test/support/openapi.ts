// openapi.yaml as data, and its schemas as validators (JSON Schema 2020-12, which OpenAPI 3.1 uses).
import { Ajv2020 } from 'ajv/dist/2020.js';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

interface MediaType {
  readonly schema?: object;
  readonly example?: unknown;
}

interface ResponseObject {
  readonly $ref?: string;
  readonly content?: Readonly<Record<string, MediaType>>;
}

interface Operation {
  readonly operationId: string;
  readonly requestBody?: { readonly content: Readonly<Record<string, MediaType>> };
  readonly responses: Readonly<Record<string, ResponseObject>>;
}

export interface OpenApi {
  readonly openapi: string;
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly responses: Readonly<Record<string, ResponseObject>> };
}

interface Yaml {
  load: (text: string) => unknown;
}

const yaml = createRequire(import.meta.url)('js-yaml') as Yaml;

export const openApi = yaml.load(
  readFileSync(new URL('../../openapi.yaml', import.meta.url), 'utf8'),
) as OpenApi;

const documentId = 'https://openapi.test/document.json';
const ajv = new Ajv2020({ strict: false });
ajv.addSchema({ ...openApi, $id: documentId });

/** The faults of a value against a schema of the document; empty when it fits. */
export function schemaFaults(schema: object, value: unknown): readonly string[] {
  const text = JSON.stringify(schema).replaceAll('"#/', `"${documentId}#/`);
  const validate = ajv.compile(JSON.parse(text) as object);
  return validate(value)
    ? []
    : (validate.errors ?? []).map((error) => `${error.instancePath} ${error.message ?? ''}`);
}

/** What the document says about an answer: its media types; undefined when the status is not described. */
export function describedResponse(
  path: string,
  method: string,
  status: number,
): ResponseObject['content'] | undefined {
  const response = openApi.paths[path]?.[method]?.responses[String(status)];
  const name = response?.$ref?.split('/').at(-1);
  const resolved = name === undefined ? response : openApi.components.responses[name];
  return resolved === undefined ? undefined : (resolved.content ?? {});
}
