// A Bundle from an address: one GET, with a limit of size and of time. The command line's own reader, no part of the service.
import { UnreadableInput } from './read-input.ts';

const mostBytes = 50_000_000;
const longestMs = 30_000;

export const isAddress = (text: string): boolean => /^https?:\/\//i.test(text);

/**
 * The text at an address.
 *
 * Throws   UnreadableInput: not reached in time, a status other than 200, longer than 50 MB
 * Notes    1. No token is sent, and further pages are not followed: the check says so when there are any.
 */
export async function readAddress(address: string): Promise<string> {
  try {
    const response = await fetch(address, {
      headers: { Accept: 'application/fhir+json, application/json;q=0.9' },
      signal: AbortSignal.timeout(longestMs),
    });
    if (!response.ok) throw new UnreadableInput(`The address answered with status ${response.status}.`);
    return await textOf(response);
  } catch (error) {
    if (error instanceof UnreadableInput) throw error;
    throw new UnreadableInput('The address cannot be read.');
  }
}

async function textOf(response: Response): Promise<string> {
  const reader: ReadableStreamDefaultReader<Uint8Array> | undefined = response.body?.getReader();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (let part = await reader?.read(); part?.value !== undefined; part = await reader?.read()) {
    length += part.value.length;
    if (length > mostBytes)
      throw new UnreadableInput(`What the address sends is longer than ${mostBytes} bytes.`);
    chunks.push(part.value);
  }
  return Buffer.concat(chunks).toString('utf8');
}
