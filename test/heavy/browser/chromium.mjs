// Debian's Chromium with a fresh profile; errors of the page's console fail a check.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

const args = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const profiles = mkdtempSync(join(tmpdir(), 'browser-'));
// A browser that is still closing may hold a file: what cannot be removed is left to the system.
process.once('exit', () => {
  try {
    rmSync(profiles, { recursive: true, force: true, maxRetries: 3 });
  } catch {
    // Only a temporary folder.
  }
});

/** A busy machine is waited for this long, in milliseconds, before a check fails. */
const patience = 60_000;

/** A browser context; `options` as playwright's. */
export async function openBrowser(options = {}) {
  const profile = mkdtempSync(join(profiles, 'profile-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args,
    headless: true,
    ...options,
  });
  context.setDefaultTimeout(patience);
  return context;
}

export const phone = { viewport: { width: 360, height: 740 }, hasTouch: true, deviceScaleFactor: 2 };
export const desktop = { viewport: { width: 1280, height: 900 } };

/** A page that collects what its console and the policy complain about. */
export async function openPage(context, address) {
  const page = await context.newPage();
  const faults = [];
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  page.on('pageerror', (error) => faults.push(String(error)));
  await page.goto(address);
  await page.waitForSelector('html[data-ready=true]');
  return { page, faults };
}
