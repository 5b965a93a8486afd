// Starts the built service as its own process, for the heavy checks.
import { spawn } from 'node:child_process';

/**
 * Given    main          path of dist/http/main.js
 *          environment   the settings
 * Returns  base address, everything it printed so far, and how to stop it; rejects when it ends before it listens
 */
export function startService(main, environment) {
  const { PATH, HOME } = process.env;
  const child = spawn(process.execPath, [main], { env: { PATH, HOME, PORT: '0', ...environment } });
  let printed = '';
  const stop = () =>
    new Promise((resolve) => {
      child.once('close', resolve);
      child.kill('SIGTERM');
    });
  return new Promise((resolve, reject) => {
    const hear = (chunk) => {
      printed += chunk;
      const base = /Open (http:\S+)\//.exec(printed)?.[1];
      if (base !== undefined) resolve({ base, printed: () => printed, stop });
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('close', () => {
      reject(new Error(printed.trim()));
    });
  });
}

/** Says what holds, or stops with what does not. */
export function check(sentence, holds, detail = '') {
  if (!holds) throw new Error(`does not hold: ${sentence}${detail === '' ? '' : ` (${detail})`}`);
  console.log(`ok: ${sentence}`);
}
