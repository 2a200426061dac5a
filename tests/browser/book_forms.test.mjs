// Beside the entries of the book, against the program itself: queens, photos, checklists, other forms, what was known then.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { deflateSync } from 'node:zlib';
import { open_browser, require, screenshots } from './browser.mjs';
import { is_built, program, serve_demo } from './program.mjs';

const axe = require('axe-core').source;
const skip = process.env.BEEGARTH_URL ? 'it serves a book of its own, once' : is_built ? false : `there is no ${program}`;
// Invented queens: Dora's daughter Anna by a son of Bess, and Gwen, who is not mated.
const queens = [
  ['queen_began', { queen: 'dora', name: 'Dora', origin: 'bought', year: 2024 }, '2024-06-01'],
  ['queen_began', { queen: 'bess', name: 'Bess', origin: 'bought', year: 2024 }, '2024-06-01'],
  ['queen_mated', { queen: 'dora', how: 'mating_site', drone_mothers: ['bess'] }, '2024-07-01'],
  ['queen_mated', { queen: 'bess', how: 'open' }, '2024-07-01'],
  ['queen_began', { queen: 'anna', name: 'Anna', mother: 'dora', origin: 'reared', year: 2025 }, '2025-06-01'],
  ['queen_mated', { queen: 'anna', how: 'open' }, '2025-07-01'],
  ['queen_began', { queen: 'gwen', name: 'Gwen', mother: 'bess', origin: 'reared', year: 2026 }, '2026-05-20'],
  ['score', { colony: 'cobble', queen: 'dora', trait: 'calm', score: 4 }, '2025-06-01'],
  ['score', { colony: 'cobble', queen: 'anna', trait: 'calm', score: 5 }, '2025-06-02'],
];
let served, browser;
before(async () => {
  if (skip) return;
  served = await serve_demo(queens);
  browser = await open_browser(served.url);
});
after(async () => {
  await browser?.close();
  await served?.close();
});

const with_page = (options, run) => browser.with_page(options, run);
const api = async (path) => (await fetch(served.url + path)).json();
const enter = async (kind, payload, date, corrects) => {
  const body = JSON.stringify({ kind, payload, date, ...(corrects ? { corrects } : {}) });
  const answer = await fetch(`${served.url}/api/entries`, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body });
  assert.equal(answer.status, 200, await answer.clone().text());
  return (await answer.json()).entries[0];
};
async function open(page, path) {
  await page.goto(served.url + path);
  await page.waitForFunction(() => document.fonts.status === 'loaded' && document.querySelector('main h1') && !/Reckoning/.test(document.querySelector('main').innerText));
}
const refused_here = (page) => (page.wrong = page.wrong.filter((text) => !/status of (400|413)/.test(text))); // Chromium logs each refusal

// A picture of one colour: PNG (W3C), with its check sums worked out here.
function png(width, height) {
  const table = Array.from({ length: 256 }, (_, n) => { let c = n; for (let k = 0; k < 8; ++k) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1; return c >>> 0; });
  const crc = (bytes) => (bytes.reduce((c, byte) => table[(c ^ byte) & 255] ^ (c >>> 8), 0xffffffff) ^ 0xffffffff) >>> 0;
  const chunk = (type, data) => {
    const body = Buffer.concat([Buffer.from(type), data]);
    const size = Buffer.alloc(4);
    const sum = Buffer.alloc(4);
    size.writeUInt32BE(data.length);
    sum.writeUInt32BE(crc(body));
    return Buffer.concat([size, body, sum]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 2, 0, 0, 0], 8);
  const row = Buffer.concat([Buffer.from([0]), Buffer.alloc(width * 3, 0x9d)]);
  return Buffer.concat([Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]), chunk('IHDR', head), chunk('IDAT', deflateSync(Buffer.concat(Array(height).fill(row)))), chunk('IEND', Buffer.alloc(0))]);
}

// ---- lines ----
test('the queens are listed with line, inbreeding and scores, matings are suggested, and the pedigree is drawn', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book');
    await page.getByRole('link', { name: 'Lines of queens' }).click();
    await page.locator('h2', { hasText: 'Drawn' }).waitFor();
    const { queens: all, traits, matings } = await api('/api/lines');
    const list = page.locator('section', { has: page.locator('#queens-title') });
    assert.equal(await list.locator('tbody tr').count(), all.length);
    const anna = await list.locator('tbody tr', { hasText: 'Anna' }).innerText();
    assert.match(anna, /Dora/);
    const told = all.find((queen) => queen.queen === 'anna');
    assert.ok(anna.includes(`reliability ${told.scores.calm.reliability.toFixed(2)}, 1 score of her own`), anna);
    assert.ok((await list.innerText()).includes(traits[0].plainly.slice(1)));
    const mated = page.locator('section', { has: page.locator('#matings-title') });
    assert.equal(await mated.locator('tbody tr').count(), matings.crosses.length);
    assert.ok(matings.crosses.some((cross) => !cross.within_limit), 'mother and son is one of them');
    assert.match(await mated.locator('tbody tr', { hasText: 'Gwen with sons of Bess' }).innerText(), /0[.]25[^]*no/);
    assert.ok((await mated.innerText()).includes(matings.chosen[0]));
    const drawn = page.getByAltText(/The pedigree of \d+ queens/);
    await drawn.evaluate((img) => img.decode());
    assert.ok(await drawn.evaluate((img) => img.naturalWidth > 100));
    const picture = await fetch(`${served.url}/api/pedigree.svg`);
    assert.equal(picture.headers.get('content-type'), 'image/svg+xml');
    assert.match(await picture.text(), /^(<\?xml[^>]*\?>\s*)?<svg/);
  }));

// ---- photos ----
test('a photo is added to an entry and shown there; the same bytes come back with their own type', { skip }, () =>
  with_page({}, async (page) => {
    const { entries } = await api('/api/entries?kind=inspection&limit=1');
    await open(page, `/book/entries/${entries[0].id}`);
    await page.getByText('No photo belongs to this entry yet.').waitFor();
    const bytes = png(40, 30);
    await page.getByLabel(/^A photo/).setInputFiles({ name: 'comb of brood.png', mimeType: 'image/png', buffer: bytes });
    await page.getByLabel('What is to be seen').fill('patchy brood');
    await page.getByRole('button', { name: 'Add the photo' }).click();
    await page.getByText('The photo is kept beside the book.').waitFor();
    const picture = page.getByAltText(/^patchy brood, /);
    await picture.evaluate((img) => img.decode());
    assert.equal(await picture.evaluate((img) => `${img.naturalWidth} ${img.naturalHeight}`), '40 30');
    const { photos } = await api(`/api/entries/${entries[0].id}`);
    assert.equal(photos.length, 1);
    assert.equal(photos[0].fields.colony, entries[0].fields.colony, 'it shows what its entry is about');
    assert.equal(photos[0].happened, entries[0].happened);
    const answer = await fetch(`${served.url}/api/photos/${photos[0].id}`);
    assert.equal(answer.headers.get('content-type'), 'image/png');
    assert.equal(answer.headers.get('x-content-type-options'), 'nosniff');
    assert.deepEqual(Buffer.from(await answer.arrayBuffer()), bytes);
    await page.getByRole('link', { name: 'patchy brood', exact: true }).click();
    await page.locator('main h1', { hasText: 'Photo' }).waitFor();
    assert.equal(await page.getByAltText(/^patchy brood/).count(), 1, 'the entry of the photo shows it too');
  }));

test('what is no picture, or is too large, is refused in one line and nothing is written', { skip }, () =>
  with_page({}, async (page) => {
    const { entries } = await api('/api/entries?kind=inspection&limit=2');
    const { head } = await api('/api/book');
    await open(page, `/book/entries/${entries[1].id}`);
    await page.getByRole('button', { name: 'Add the photo' }).click();
    await page.getByRole('alert').getByText('Choose a photo first.').waitFor();
    const file = page.getByLabel(/^A photo/);
    await file.setInputFiles({ name: 'comb.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('this is no picture') });
    await page.getByRole('button', { name: 'Add the photo' }).click();
    await page.getByRole('alert').getByText('That is no JPEG, PNG or WebP picture').waitFor();
    await file.setInputFiles({ name: 'large.png', mimeType: 'image/png', buffer: Buffer.concat([png(4, 4), Buffer.alloc(24 * 1024 * 1024)]) });
    await page.getByRole('button', { name: 'Add the photo' }).click();
    await page.getByRole('alert').getByText('The picture is too large').waitFor();
    const sent = await fetch(`${served.url}/api/photos?date=2026-06-01`, { method: 'POST', headers: { 'Content-Type': 'image/png' }, body: Buffer.concat([png(4, 4), Buffer.alloc(24 * 1024 * 1024)]) });
    assert.equal(sent.status, 413);
    assert.equal((await api('/api/book')).head, head);
    refused_here(page);
  }));

// ---- checklists ----
test('every checklist can be read beforehand', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book');
    await page.getByRole('link', { name: 'Checklists' }).click();
    await page.locator('main h1', { hasText: 'What to do at once' }).waitFor();
    const { checklists } = await api('/api/checklists');
    await page.locator('main ol > li').first().waitFor();
    for (const list of checklists) {
      const section = page.locator('section', { has: page.locator('h2', { hasText: list.title }) });
      assert.deepEqual(await section.locator('ol > li').allInnerTexts(), list.steps.map((step) => step.words));
    }
    await page.getByRole('link', { name: 'A stinging accident' }).click();
    await page.getByText('Away from the bees first').waitFor();
    assert.ok((await page.locator('.caution').count()) >= 3);
  }));

test('an urgent entry that is kept shows its checklist at once, from the form and from a note', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book/new/urgent');
    await page.getByLabel(/^What/).selectOption('flood');
    await page.getByLabel(/^Site/).selectOption({ index: 1 });
    await page.getByRole('button', { name: 'Keep it in the book' }).click();
    await page.locator('h2', { hasText: 'At once: ' }).waitFor();
    const flood = (await api('/api/checklists')).checklists.find((list) => list.what === 'flood');
    assert.deepEqual(await page.locator('.at-once ol > li').allInnerTexts(), flood.steps.map((step) => step.words));
    assert.ok((await page.locator('.at-once .caution').allInnerTexts()).some((text) => /Emergency/.test(text)));
    await page.getByRole('link', { name: 'Then see the new plan' }).click();
    await page.locator('#undone-title').waitFor();
    await page.getByLabel('One line, as you would write it in a notebook').fill('Cobble: blown over');
    await page.getByRole('button', { name: 'Read it back' }).click();
    await page.getByRole('button', { name: 'Keep it', exact: true }).click();
    await page.locator('h2', { hasText: 'At once: A hive is blown over' }).waitFor();
    const urgent = (await api('/api/entries?kind=urgent&limit=1')).entries[0];
    await open(page, `/book/entries/${urgent.id}`);
    await page.getByRole('link', { name: 'What to do at once' }).click();
    await page.locator('h2', { hasText: 'A hive is blown over' }).waitFor();
  }));

// ---- other forms ----
test('the book is downloaded in each of its forms', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book');
    await page.getByRole('link', { name: 'Hand on or keep safe' }).click();
    const links = page.locator('dl a');
    await links.first().waitFor();
    const begins = { 'book.zip': /^PK\x03\x04/, 'book.jsonl': /^\{"device"/, 'places.geojson': /"FeatureCollection"/, 'dates.ics': /^BEGIN:VCALENDAR\r\n/ };
    assert.equal(await links.count(), Object.keys(begins).length);
    for (const link of await links.all()) {
      const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
      const name = download.suggestedFilename();
      const stream = await download.createReadStream();
      const parts = [];
      for await (const part of stream) parts.push(part);
      assert.match(Buffer.concat(parts).toString('latin1'), begins[name], name);
      delete begins[name];
    }
    assert.deepEqual(begins, {});
  }));

// ---- what was known then ----
test('a register shows what was known on a day beside what is known now', { skip }, () =>
  with_page({}, async (page) => {
    const feeds = (await api('/api/entries?kind=feed&limit=200')).entries.filter((entry) => entry.counts);
    const old = feeds.at(-1);
    await enter('feed', { ...old.fields, kg: old.fields.kg + 1 }, old.happened, old.id); // corrected long after
    await open(page, '/book/registers/feeding');
    await page.getByLabel('As it was known on').fill('2026-03-01');
    await page.getByRole('button', { name: 'Show these days' }).click();
    const said = page.getByText(/known so on 1 March 2026 only/);
    await said.waitFor();
    assert.match(await said.innerText(), /^1 row was known so on 1 March 2026 only, \d+ rows? (is|are) known so now only[.]$/);
    const then = await page.locator('tr.then-only').innerText();
    assert.match(then, /^then only/);
    assert.ok(then.includes(String(old.fields.kg)));
    assert.ok((await page.locator('tr.then-only s').count()) > 0);
    const now = await api('/api/registers/feeding');
    const known = await api('/api/registers/feeding?known=2026-03-01');
    assert.equal(await page.locator('tbody tr:not(.now-only)').count(), known.rows.length);
    assert.equal(await page.locator('tbody tr:not(.then-only)').count(), now.rows.length);
    assert.match(await page.getByRole('link', { name: /As CSV/ }).getAttribute('href'), /known=2026-03-01/);
    assert.equal(new URL(page.url()).searchParams.get('known'), '2026-03-01');
    await page.getByLabel('As it was known on').fill('1990-01-01');
    await page.getByRole('button', { name: 'Show these days' }).click();
    await page.getByRole('alert').getByText(/Nothing was written yet on/).waitFor();
    refused_here(page);
  }));

test('the list of entries as it was known on a day says what does not count any more', { skip }, () =>
  with_page({}, async (page) => {
    const old = (await api('/api/entries?kind=weight&limit=200')).entries.concat((await api('/api/entries?kind=inspection&limit=200')).entries).filter((entry) => entry.counts && entry.written < '2026-03-01').at(-1);
    await enter(old.kind, { ...old.fields, remark: 'corrected long after' }, old.happened, old.id);
    await open(page, `/book?kind=${old.kind}&from=${old.happened}&to=${old.happened}&known=2026-03-01`);
    await page.getByText('As it was known on 1 March 2026: what was written later is left out.').waitFor();
    const { count } = await api(`/api/entries?kind=${old.kind}&from=${old.happened}&to=${old.happened}&known=2026-03-01`);
    await page.locator('.count', { hasText: new RegExp(`^${count} entr`) }).waitFor();
    const row = page.locator('li', { has: page.locator(`a[href="/book/entries/${old.id}"]`) });
    assert.match(await row.innerText(), /Does not count any more/);
    assert.equal(await row.evaluate((li) => li.classList.contains('struck')), false, 'it counted then');
    assert.ok(!(await page.locator('main').innerText()).includes('corrected long after'));
  }));

for (const scheme of ['light', 'dark']) {
  for (const [device, viewport] of [['laptop', { width: 1280, height: 850 }], ['phone', { width: 390, height: 844 }]]) {
    test(`the other places of the book are readable for everyone: ${scheme}, ${device}`, { skip }, () =>
      with_page({ colorScheme: scheme, viewport, hasTouch: device === 'phone', isMobile: device === 'phone' }, async (page) => {
        const with_photo = (await api('/api/entries?kind=photo&limit=1')).entries[0];
        const places = [['lines', '/book/lines'], ['checklists', '/book/checklists'], ['stings', '/book/checklists/stings'], ['forms', '/book/forms'],
          ['known', '/book/registers/feeding?known=2026-03-01'], ['known-list', '/book?known=2026-03-01'], ...(with_photo ? [['photo', `/book/entries/${with_photo.fields.entry}`]] : [])];
        for (const [name, path] of places) {
          await open(page, path);
          if (name === 'lines') await page.locator('h2', { hasText: 'Drawn' }).waitFor();
          await page.evaluate(axe);
          const found = await page.evaluate(() => globalThis.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
          assert.ok(found.passes.length > 10);
          assert.deepEqual(found.violations.map((v) => `${name}: ${v.id}: ${v.nodes.map((n) => n.target).join(' ')}`), []);
          const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
          assert.ok(wide <= 0, `${name} scrolls sideways by ${wide}px at ${viewport.width}`);
          if (device === 'phone')
            for (const target of await page.locator('main button:not(.quiet):visible, main form input:visible:not([type=checkbox]), main form select:visible').all()) {
              const box = await target.boundingBox();
              assert.ok(box && box.height >= 44, `${name}: ${await target.evaluate((e) => e.id || e.innerText)} is ${box?.height}px high`);
            }
          await page.screenshot({ path: `${screenshots}/book-${name}-${scheme}-${device}.png`, fullPage: true });
        }
      }));
  }
}

test('on paper the queens, the drawing and the checklists stand without anything to press', { skip }, () =>
  with_page({}, async (page) => {
    for (const path of ['/book/lines', '/book/checklists/stings', '/book/checklists']) {
      await open(page, path);
      await page.emulateMedia({ media: 'print' });
      assert.equal(await page.locator('main a:visible, main button:visible, main input:visible, main summary:visible').count(), 0, path);
      assert.ok((await page.pdf({ path: `${screenshots}/printed${path.replaceAll('/', '-')}.pdf` })).length > 1000);
      await page.emulateMedia({ media: 'screen' });
    }
  }));
