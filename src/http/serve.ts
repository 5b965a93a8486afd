// Starts the service: the one place that opens a port and reads the clock.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import type { Server } from 'node:http';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createApp } from './app.ts';
import { loadSite } from './site-folder.ts';
import { forwardTo } from './forward-feedback.ts';
import { readSettings, type Environment, type Settings } from './settings.ts';
import { redisReplayStore } from './trust/redis-replay-store.ts';
import type { ReplayStore } from './trust/replay-store.ts';
import { startUpLines } from './trust/start-up-lines.ts';

export interface Address {
  readonly host: string;
  readonly port: number;
}

/**
 * The address to listen on.
 *
 * Given    environment   PORT and HOST; absent: 8080 and 127.0.0.1
 * Throws   Error when PORT is not a number from 0 to 65535.
 */
export function addressFrom(environment: Readonly<Record<string, string | undefined>>): Address {
  const port = Number(environment['PORT'] ?? '8080');
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    throw new Error('PORT must be a number from 0 to 65535.');
  return { host: environment['HOST'] ?? '127.0.0.1', port };
}

/**
 * Listens until the process is told to stop.
 *
 * Given    environment   the settings, by name; default: those of this process
 * Returns  the server, once it listens.
 * Throws   Error when a setting is wrong, the replay store cannot be reached, or the port cannot be opened.
 */
export async function serve(
  address: Address,
  say: (line: string) => void,
  environment: Environment = process.env,
): Promise<Server> {
  const settings = readSettings({ ...environment, HOST: address.host }, (path) => readFileSync(path, 'utf8'));
  const replay = await sharedReplayStore(settings);
  const folder = environment['SITE'] ?? '';
  const site = folder === '' ? undefined : loadSite(folder);
  const { feedbackForwardUrl } = settings;
  const forwardFeedback = feedbackForwardUrl === undefined ? undefined : forwardTo(feedbackForwardUrl, say);
  const app = createApp({
    now,
    log: say,
    settings,
    site,
    forwardFeedback,
    ...(replay === undefined ? {} : { replay }),
  });
  const server = await new Promise<Server>((resolve, reject) => {
    const listening = app.listen(address.port, address.host, (error?: Error) => {
      if (error === undefined) resolve(listening);
      else reject(error);
    });
  });
  for (const line of [...startUpLines(settings), ...greeting(server, address.host)]) say(line);
  server.once('close', () => void replay?.close?.());
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      server.close();
      server.closeIdleConnections();
    });
  }
  return server;
}

const now = (): number => Date.now();

async function sharedReplayStore({ trust, replayStore }: Settings): Promise<ReplayStore | undefined> {
  return trust === 'open' || replayStore === 'memory' ? undefined : redisReplayStore(replayStore, now);
}

function greeting(server: Server, host: string): readonly string[] {
  const bound = server.address();
  const port = typeof bound === 'object' && bound !== null ? bound.port : 0;
  const base = `http://${host.includes(':') ? `[${host}]` : host}:${port}`;
  return [`Open ${base}/`, `Or paste: ${curlLine(base)}`];
}

/** A line that works as pasted: the first story of examples/ that is a bundle, at the moment its story names. */
function curlLine(base: string): string {
  const story = storyRequest();
  const type = "-H 'Content-Type: application/fhir+json'";
  if (story !== undefined)
    return `curl -s -X POST '${base}${story.path}' ${type} --data @${quoted(story.file)}`;
  return `curl -s '${base}/cds-services'`;
}

interface StoryRequest {
  readonly file: string;
  /** Path and query to post to, as the story's own text gives them. */
  readonly path: string;
}

function storyRequest(): StoryRequest | undefined {
  const examples = fileURLToPath(new URL('../../examples', import.meta.url));
  if (!existsSync(examples)) return undefined;
  return readdirSync(examples)
    .sort()
    .map((name) => join(examples, name))
    .filter((folder) => existsSync(join(folder, 'request.json')) && existsSync(join(folder, 'story.md')))
    .flatMap((folder) => {
      const path = /^POST (\/fhir\/\S+)$/m.exec(readFileSync(join(folder, 'story.md'), 'utf8'))?.[1];
      return path === undefined
        ? []
        : [{ file: relative(process.cwd(), join(folder, 'request.json')), path }];
    })[0];
}

function quoted(path: string): string {
  return /^[\w./-]+$/.test(path) ? path : `'${path.replaceAll("'", String.raw`'\''`)}'`;
}
