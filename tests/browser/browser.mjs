// Debian's Chromium, driven; and where the page is: BEEGARTH_URL, or the invented face.
import assert from 'node:assert/strict';
import { existsSync, mkdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { start_fake } from './fake_api.mjs';

// The packages stand in web/, beside the page that they test.
export const require = createRequire(new URL('../../web/package.json', import.meta.url));
const { chromium } = require('playwright-core');

const root = fileURLToPath(new URL('../../', import.meta.url));
export const screenshots = `${root}build/screenshots`;

// `at` is the address of a program that serves; else BEEGARTH_URL, else the invented face.
export async function open_browser(at = process.env.BEEGARTH_URL) {
  const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';
  if (!existsSync(executablePath)) throw new Error(`no browser at ${executablePath}: install chromium`);
  mkdirSync(screenshots, { recursive: true });
  const browser = await chromium.launch({
    executablePath,
    headless: true,
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });
  const fake = at ? null : await start_fake();
  const url = at?.replace(/\/$/, '') ?? fake.url;

  // A page that remembers what went wrong on it: every console error, and every request that leaves this machine.
  async function page_of(options = {}) {
    const context = await browser.newContext({ viewport: { width: 1180, height: 900 }, ...options });
    const page = await context.newPage();
    page.setDefaultTimeout(at ? 20_000 : 8_000);
    page.wrong = [];
    page.on('console', (message) => { if (message.type() === 'error' || message.type() === 'warning') page.wrong.push(message.text()); });
    page.on('pageerror', (error) => page.wrong.push(String(error)));
    page.on('request', (request) => {
      const { protocol, hostname } = new URL(request.url());
      if (protocol !== 'data:' && !['127.0.0.1', 'localhost', '[::1]'].includes(hostname)) page.wrong.push(`left the machine: ${request.url()}`);
    });
    return page;
  }
  // Runs on a page of its own; nothing may have gone wrong on it by the end.
  async function with_page(options, run) {
    const page = await page_of(options);
    try {
      await run(page);
      assert.deepEqual(page.wrong, []);
    } finally {
      await page.context().close();
    }
  }
  return { url, fake, page_of, with_page, close: async () => { await browser.close(); await fake?.close(); } };
}

// Where a place has shown its answer.
export async function go(page, url, path) {
  await page.goto(url + path);
  await page.locator(path === '/' ? '#undone-title' : path === '/colonies' ? 'main h2, main p' : '#events-title').first().waitFor();
  await page.waitForFunction(() => document.fonts.status === 'loaded' && !document.querySelector('main > p[role="status"]:not(.said)'));
}
