// A file comes in at the page, the book is checked and shown as it stood, and a colony goes into another hive: all
// against the program itself. Every file is invented.
import assert from 'node:assert/strict';
import { rmSync } from 'node:fs';
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
const api = async (path) => (await fetch(served.url + path)).json();
const head = async () => (await api('/api/book')).head;
const refused_here = (page) => (page.wrong = page.wrong.filter((text) => !/status of 4\d\d/.test(text))); // Chromium logs each refusal
async function open(page, path) {
  await page.goto(served.url + path);
  await page.waitForFunction(() => document.fonts.status === 'loaded' && document.querySelector('main h1') && !/Reckoning/.test(document.querySelector('main').innerText));
}
const choose = (page, name, text, label = /^File \(CSV/) => page.getByLabel(label).setInputFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
const mapping = (page) => page.getByLabel('The mapping, to be read and mended');
const looks = 'date,colony,frames of bees,brood combs,own words\n2026-05-11,Cobble,7,4,calm\n2026-05-18,Cobble,9,6,busy\n';

test('a table of the keeper’s own is drafted, tried without a trace, and brought in whole', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book');
    await page.getByRole('link', { name: 'Bring in a file' }).click();
    await choose(page, 'looks.csv', looks);
    await page.getByLabel('Each row is').selectOption('inspection');
    await page.getByRole('button', { name: 'Draft it' }).click();
    await page.getByText('The draft stands below.').waitFor();
    const draft = await mapping(page).inputValue();
    assert.match(draft, /seams = \{ column = "frames of bees" \}/);
    await mapping(page).fill(draft.replace('look = "full"', 'look = "quick"')); // the keeper mends the guess
    const before_it = await head();
    await page.getByRole('button', { name: 'Try it' }).click();
    await page.getByText('2 entries would come in. Nothing is written yet.').waitFor();
    assert.equal(await head(), before_it);
    const answer = await page.locator('.answer').innerText();
    assert.match(answer, /2 rows read/);
    assert.match(answer, /Look into a hive: 2/);
    assert.match(answer, /Columns not used: own words/);
    assert.match(answer, /11 May 2026 inspection.*cobble.*look quick/i);
    await page.screenshot({ path: `${screenshots}/import-tried.png`, fullPage: true });
    await page.getByRole('button', { name: 'Bring it in' }).click();
    await page.getByText('2 entries written in the book. The plan was made anew.').waitFor();
    assert.notEqual(await head(), before_it);
    await page.getByRole('button', { name: 'Try it' }).click();
    await page.getByText('Nothing new would come in.').waitFor();
    assert.equal(await page.getByRole('button', { name: 'Bring it in' }).count(), 0);
  }));

test('what is changed after it was tried is tried again before it can be kept', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book/import');
    await choose(page, 'notes.csv', 'day,words\n2026-05-12,ewes in\n');
    await mapping(page).fill('[date]\ncolumn = "day"\n[[entry]]\nkind = "note"\n[entry.fields]\ntext = { column = "words" }\n');
    await page.getByRole('button', { name: 'Try it' }).click();
    await page.getByRole('button', { name: 'Bring it in' }).waitFor();
    await mapping(page).press('End');
    await mapping(page).pressSequentially(' ');
    assert.equal(await page.getByRole('button', { name: 'Bring it in' }).count(), 0);
  }));

test('what is wrong is said beside its step, nothing is written, and what was typed stays', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book/import');
    const before_it = await head();
    const step = (name) => page.locator('section', { has: page.getByRole('heading', { name }) });
    await page.getByRole('button', { name: 'Try it' }).click();
    await step('1. The file').getByText('No file is chosen').waitFor();
    // Latin-1, as an old spreadsheet saves it.
    await page.getByLabel(/^File \(CSV/).setInputFiles({ name: 'old.csv', mimeType: 'text/csv', buffer: Buffer.from([0x61, 0x2c, 0xe9, 0x0a]) });
    await step('1. The file').getByText('The file is not written in UTF-8').waitFor();
    await choose(page, 'looks.csv', looks);
    await page.getByRole('button', { name: 'Draft it' }).click();
    await step('2. What its columns mean').getByText('No kind of entry is chosen').waitFor();
    const wrong = '[date]\ncolumn = "date"\n[[entry]]\nkind = "inspection"\n[entry.fields]\ncolony = { column = "colony", as_key = true }\nlook = "full"\nbrood_combs = { column = "brood_combs" }\n';
    await mapping(page).fill(wrong);
    await page.getByRole('button', { name: 'Try it' }).click();
    await step('2. What its columns mean').getByText("looks.csv has no column 'brood_combs'", { exact: false }).waitFor();
    assert.match(await step('2. What its columns mean').getByRole('alert').innerText(), /The mapping, line 8: use one of date, colony/);
    assert.equal(await mapping(page).inputValue(), wrong);
    await mapping(page).fill(wrong.replace('"brood_combs" }', '"own words" }'));
    await page.getByRole('button', { name: 'Try it' }).click();
    const tried = step('3. Try it');
    await tried.getByText('Nothing can come in yet: 2 things stand in the way.').waitFor();
    assert.match(await tried.innerText(), /Line 2, column 'own words': 'calm' is not a number/);
    assert.equal(await page.getByRole('button', { name: 'Bring it in' }).count(), 0);
    await choose(page, 'torn.csv', 'date,"colony\n');
    await page.getByRole('button', { name: 'Try it' }).click();
    await step('1. The file').getByRole('alert').waitFor();
    await page.screenshot({ path: `${screenshots}/import-refused.png`, fullPage: true });
    assert.equal(await head(), before_it);
    refused_here(page);
  }));

test('a mapping that is there or the keeper’s own fills the field, and what it took the place of comes back', { skip }, () =>
  with_page({}, async (page) => {
    // The list of mappings comes late, as from a program that is busy: the press before it is not lost.
    await page.route('**/api/import-maps', async (route) => {
      await new Promise((go_on) => setTimeout(go_on, 1500));
      await route.continue();
    });
    await open(page, '/book/import');
    await choose(page, 'looks.csv', looks);
    await mapping(page).fill('# my own words');
    await page.getByLabel('Begin with').selectOption('shipped');
    await page.getByRole('button', { name: 'Take it' }).click();
    await page.getByRole('button', { name: 'Bring back what stood here before' }).waitFor();
    assert.match(await mapping(page).inputValue(), /A simple map, for a keeper's own file/);
    await page.getByRole('button', { name: 'Bring back what stood here before' }).click();
    assert.equal(await mapping(page).inputValue(), '# my own words');
    await page.getByLabel('Begin with').selectOption('own');
    await choose(page, 'mine.toml', 'about = "mine"\n', 'Mapping file (TOML)');
    await page.getByText('The mapping stands below.').waitFor();
    assert.equal(await mapping(page).inputValue(), 'about = "mine"\n');
  }));

test('places, a calendar and another book’s export are known by their endings', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book/import');
    await mapping(page).fill('# meant for a table'); // and for nothing else
    const point = { type: 'Feature', id: 'site-mill', geometry: { type: 'Point', coordinates: [-1.5, 52] }, properties: { kind: 'site', name: 'Mill (invented)' } };
    await choose(page, 'places.geojson', JSON.stringify(point));
    await page.getByRole('button', { name: 'Try it' }).click();
    await page.getByText('1 entry would come in. Nothing is written yet.').waitFor();
    await choose(page, 'diary.ics', ['BEGIN:VCALENDAR', 'BEGIN:VEVENT', 'UID:1@invented', 'DTSTART;VALUE=DATE:20260502', 'SUMMARY:Cobble: calm', 'END:VEVENT', 'END:VCALENDAR', ''].join('\r\n'));
    await page.waitForFunction(() => document.getElementById('own-form').value === 'calendar');
    await page.getByRole('button', { name: 'Try it' }).click();
    await page.getByText('Note: 1').waitFor();
    const journal = await (await fetch(`${served.url}/api/export.jsonl`)).text();
    await choose(page, 'book.jsonl', journal);
    await page.getByText('It needs no mapping').waitFor();
    await page.getByRole('button', { name: 'Try it' }).click();
    await page.getByText('Nothing new would come in.').waitFor();
    await choose(page, 'book.jsonl', journal.replace('"who":"', '"who":"x'));
    await page.getByRole('button', { name: 'Try it' }).click();
    await page.getByRole('alert').getByText('The hash does not fit the content').waitFor();
    assert.match(await page.getByRole('alert').innerText(), /book[.]jsonl, line 1/);
    await choose(page, 'looks.csv', looks);
    await page.waitForFunction(() => document.getElementById('map-text')?.value === '# meant for a table');
    refused_here(page);
  }));

test('what stands where is shown by site for a day, and a day before the book is refused', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book');
    await page.getByRole('link', { name: 'What stands where' }).click();
    await page.locator('tbody tr').first().waitFor();
    const { sites, hives, colonies } = await api('/api/standing');
    assert.deepEqual(await page.locator('main section h2').allInnerTexts(), sites.map((site) => site.name));
    const text = await page.locator('main').innerText();
    for (const hive of hives) assert.ok(text.includes(hive.name), hive.name);
    for (const colony of colonies) assert.ok(text.includes(colony.name), colony.name);
    await page.emulateMedia({ media: 'print' });
    assert.equal(await page.locator('main form:visible, main button:visible').count(), 0);
    await page.emulateMedia({ media: 'screen' });
    const early = '2026-04-01';
    await page.getByLabel('Day').fill(early);
    await page.getByRole('button', { name: 'Show this day' }).click();
    await page.getByText('As it stood on 1 April 2026.').waitFor();
    assert.equal(new URL(page.url()).search, `?date=${early}`);
    await page.getByLabel('Day').fill('1999-01-01');
    await page.getByRole('button', { name: 'Show this day' }).click();
    await page.getByRole('alert').getByText('lies before the book began').waitFor();
    refused_here(page);
  }));

test('the ways into another hive are told by what the book says of both, and a hive must be chosen', { skip }, () =>
  with_page({}, async (page) => {
    const { names } = await api('/api/kinds');
    const colony = names.colony.find((one) => one.name === 'Snipe');
    const hive = names.hive.find((one) => one.name === 'Meadow stand 3');
    await open(page, `/colonies/${colony.key}`);
    await page.getByText('Into another hive').click();
    await page.getByRole('button', { name: 'Show the ways' }).click();
    await page.getByRole('alert').getByText('No hive is chosen').waitFor();
    await page.getByLabel('Hive it shall live in').selectOption(hive.key);
    await page.getByRole('button', { name: 'Show the ways' }).click();
    await page.locator('details article').first().waitFor();
    const { ways } = await api(`/api/colonies/${colony.key}/transfer-ways?into=${hive.key}`);
    assert.equal(await page.locator('details article').count(), ways.length);
    const text = (await page.locator('details', { hasText: 'Into another hive' }).innerText()).replace(/\s+/g, ' ');
    for (const way of ways.filter((one) => !one.possible)) assert.ok(text.toLowerCase().includes(way.against[0].toLowerCase()), way.against[0]);
    assert.match(text, /no trial that compares the ways was found/);
    assert.doesNotMatch(text, /[a-z]_[a-z]/);
    const none = await fetch(`${served.url}/api/colonies/${colony.key}/transfer-ways?into=none`);
    assert.equal(none.status, 400);
  }));

test('ways of acting are held side by side on the page of a colony; what cannot be read and what is refused is said', { skip }, () =>
  with_page({}, async (page) => {
    const { names } = await api('/api/kinds');
    const colony = names.colony.find((one) => one.name === 'Cobble');
    const { head } = await api('/api/book');
    await open(page, `/colonies/${colony.key}`);
    await page.getByText('What if', { exact: true }).click();
    const part = page.locator('details', { hasText: 'What if' });
    await page.getByRole('button', { name: 'Compare' }).click();
    await page.getByRole('alert').getByText('No way is given').waitFor();
    await page.getByLabel('Ways of acting').fill('soon: thymol');
    await page.getByRole('button', { name: 'Compare' }).click();
    await page.getByRole('alert').getByText("'soon' is no day").waitFor();
    await page.getByLabel('Ways of acting').fill('2026-08-10: treated with thymol for 28 days\n2026-07-10: fed 2 kg syrup; 2026-07-20: harvested 10 kg');
    await page.getByRole('button', { name: 'Compare' }).click();
    await part.locator('table').waitFor();
    const told = (await part.innerText()).replace(/\s+/g, ' ');
    assert.match(told, /Nothing done/);
    assert.match(told, /Not followed: 2026-07-10: fed 2 kg syrup.*This honey is not for people/);
    assert.equal(await part.locator('tbody tr').count(), 2);
    assert.equal(await part.locator('figure svg').count(), 8);
    await part.getByRole('button', { name: /Show as a table.*Their courses/ }).click();
    assert.equal(await part.locator('figure svg').count(), 0);
    assert.equal(await part.getByRole('region', { name: /^(bees|brood|stores|mites)/i }).locator('table').count(), 4);
    assert.match(await part.getByRole('region', { name: /^bees/i }).locator('tbody tr').last().innerText(), /\d+ [(]\d+.*–\d+/);
    await part.getByRole('button', { name: /Show as a plot.*Their courses/ }).click();
    assert.doesNotMatch(told, /NaN|undefined|\b(0|100) %/);
    assert.equal((await api('/api/book')).head, head);
    refused_here(page);
  }));

test('the book is checked at its foot; a photo that has gone missing is a fault', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book');
    const check = page.getByRole('button', { name: 'Check the book' });
    await check.click();
    await page.getByText(/Checked: \d+ entries, sound[.]/).waitFor();
    const kept = await fetch(`${served.url}/api/photos?date=2026-06-01&name=comb.jpg&about=cobble`, {
      method: 'POST', headers: { 'Content-Type': 'image/jpeg' }, body: Buffer.from([0xff, 0xd8, 0xff, 0x20, 0x69]),
    });
    assert.equal(kept.status, 200, await kept.text());
    rmSync(`${served.book}.photos`, { recursive: true });
    await check.click();
    await page.getByText(/NOT sound; 1 fault:/).waitFor();
    await page.getByText(/photo comb[.]jpg/).waitFor();
  }));

for (const [device, viewport] of [['desk', { width: 1280, height: 900 }], ['phone', { width: 390, height: 844 }]]) {
  for (const colorScheme of ['light', 'dark'])
    test(`bringing in, what stands where and the ways are readable for everyone: ${colorScheme}, ${device}`, { skip }, () =>
      with_page({ colorScheme, viewport, hasTouch: device === 'phone', isMobile: device === 'phone' }, async (page) => {
        const { names } = await api('/api/kinds');
        const snipe = names.colony.find((one) => one.name === 'Snipe').key;
        const seen = async (name) => {
          await page.evaluate(axe);
          const found = await page.evaluate(() => globalThis.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
          assert.deepEqual(found.violations.map((v) => `${name}: ${v.id}: ${v.nodes.map((n) => n.target).join(' ')}`), []);
          const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
          assert.ok(wide <= 0, `${name} scrolls sideways by ${wide}px`);
          if (device === 'phone')
            for (const target of await page.locator('main button:not(.quiet):visible, main form input:visible, main form select:visible, main form textarea:visible').all()) {
              const box = await target.boundingBox();
              assert.ok(box && box.height >= 44, `${name}: ${await target.evaluate((e) => e.id || e.innerText)} is ${box?.height}px high`);
            }
          await page.screenshot({ path: `${screenshots}/${name}-${colorScheme}-${device}.png`, fullPage: true });
        };
        await open(page, '/book/import');
        await seen('import');
        await choose(page, 'looks.csv', looks.replaceAll('2026-05', '2026-04'));
        await page.getByLabel('Each row is').selectOption('inspection');
        await page.getByRole('button', { name: 'Draft it' }).click();
        await page.getByText('The draft stands below.').waitFor();
        await page.getByRole('button', { name: 'Try it' }).click();
        await page.getByRole('alert').or(page.locator('.answer')).first().waitFor();
        await seen('import-drafted');
        await open(page, '/book/standing');
        await page.locator('tbody tr').first().waitFor();
        await seen('standing');
        await open(page, `/colonies/${snipe}`);
        await page.getByText('Into another hive').click();
        await page.getByLabel('Hive it shall live in').selectOption({ label: 'Meadow stand 3' });
        await page.getByRole('button', { name: 'Show the ways' }).click();
        await page.locator('details article').first().waitFor();
        await seen('into-hive');
        refused_here(page);
      }));
}
