// Every story of examples/ answers as recorded: request.json, posted to the address in story.md, gives response.json.
import { describe, expect, it } from 'vitest';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { client } from './http/client.ts';

const stories = readdirSync('examples').filter((name) => existsSync(`examples/${name}/request.json`));

const text = (story: string, file: string): string => readFileSync(`examples/${story}/${file}`, 'utf8');

describe('the stories', () => {
  it('are there', () => {
    expect(stories.length).toBeGreaterThanOrEqual(5);
  });

  it.each(stories)(
    '%s answers as recorded (else: npm run examples, and read the difference)',
    async (story) => {
      const address = /^POST (\S+)$/m.exec(text(story, 'story.md'))?.[1] ?? '';
      const response = await client()
        .post(address)
        .set('Content-Type', 'application/json')
        .send(text(story, 'request.json'));
      expect(response.status).toBe(200);
      expect(response.body).toEqual(JSON.parse(text(story, 'response.json')));
    },
  );
});
