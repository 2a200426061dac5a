// The weather of the week ahead typed at the page, against the program itself.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { open_browser, require, screenshots } from './browser.mjs';
import { is_built, program, serve_demo } from './program.mjs';

const axe = require('axe-core').source;
const skip = process.env.BEEGARTH_URL ? 'it serves a book of its own, once' : is_built ? false : `there is no ${program}`;
let served, browser;
before(async () => {
  if (skip) return;
  served = await serve_demo();
  browser = await open_browser(served.url);
});
after(async () => {
  await browser?.close();
  await served?.close();
});
const with_page = (options, run) => browser.with_page(options, run);
const forecasts = async () => (await (await fetch(served.url + '/api/entries?kind=weather&limit=200')).json()).count;

test('a word where a number belongs is said with its day, and nothing is written', { skip }, () =>
  with_page({}, async (page) => {
    await page.goto(served.url + '/book');
    await page.getByRole('link', { name: 'Weather of the week ahead' }).click();
    const before_it = await forecasts();
    await page.getByRole('textbox', { name: /highest/ }).first().fill('warm');
    await page.getByRole('button', { name: 'Keep the forecast' }).click();
    await page.getByText('“warm” is no number').waitFor();
    assert.equal(await forecasts(), before_it);
  }));

test('seven rows are typed from one cell to the next with the keyboard, and kept', { skip }, () =>
  with_page({ viewport: { width: 390, height: 844 } }, async (page) => {
    await page.goto(served.url + '/book/weather');
    await page.getByRole('textbox').first().focus();
    for (const text of ['19', '9,5', '2', '4', '9', '21']) {
      await page.keyboard.type(text);
      await page.keyboard.press('Tab');
    }
    await page.evaluate(axe);
    const found = await page.evaluate(() => window.axe.run());
    assert.deepEqual(found.violations.map((one) => one.id), []);
    await page.screenshot({ path: `${screenshots}/week_ahead_phone.png`, fullPage: true });
    const before_it = await forecasts();
    await page.getByRole('button', { name: 'Keep the forecast' }).click();
    await page.getByText('2 days of forecast written in the book').waitFor();
    assert.equal(await forecasts(), before_it + 2);
    assert.match(await page.locator('.answer li').first().innerText(), /min 9.5 C, .*max 19 C/);
  }));
