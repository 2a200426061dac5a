// The place Book, against the program itself: what is written here goes into a demo book of this test's own.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
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
async function open(page, path) {
  await page.goto(served.url + path);
  await settled(page);
}
const settled = (page) =>
  page.waitForFunction(() => document.fonts.status === 'loaded' && document.querySelector('main h1') && !/Reckoning/.test(document.querySelector('main').innerText));
const rows = (page) => page.locator('main section li');
const newest = async (kind) => (await api(`/api/entries?kind=${kind}&limit=1`)).entries[0];
const refused_here = (page) => (page.wrong = page.wrong.filter((text) => !/status of 400/.test(text))); // Chromium logs each refusal

test('the book opens at its newest entries, and says how many there are', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/');
    await page.locator('nav a', { hasText: 'Book' }).click();
    await page.locator('main h1', { hasText: 'Book' }).waitFor();
    await rows(page).first().waitFor();
    const { count } = await api('/api/entries?kind=notebook');
    assert.match(await page.locator('.count').innerText(), new RegExp(`^${count} entries, newest first`));
    assert.equal(await rows(page).count(), Math.min(50, count));
    assert.doesNotMatch(await page.locator('main').innerText(), /[a-z]_[a-z]/, 'no word of the program is left with its underscores');
    await page.getByRole('button', { name: 'Show older entries' }).click();
    await page.waitForFunction((n) => document.querySelectorAll('main section li').length === n, Math.min(100, count));
  }));

test('words, a kind, a colony and days narrow the list, and going back finds the same search', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book');
    const { entries: looks } = await api('/api/entries?kind=inspection&limit=200');
    await page.getByLabel('Kind').selectOption({ label: 'Look into a hive' });
    await page.locator('.count', { hasText: `${looks.length} entries` }).waitFor();
    const colony = looks[0].fields.colony;
    const about = looks.filter((entry) => entry.fields.colony === colony);
    await page.getByLabel('Colony or site').selectOption(colony);
    await page.locator('.count', { hasText: new RegExp(`^${about.length} entr`) }).waitFor();
    await page.getByLabel('Colony or site').selectOption('');
    await page.getByLabel('Words').fill('EGGS');
    const { count } = await api('/api/entries?kind=inspection&text=eggs');
    assert.ok(count > 0);
    await page.locator('.count', { hasText: new RegExp(`^${count} entr`) }).waitFor();
    assert.equal(new URL(page.url()).search, '?text=EGGS&kind=inspection');
    await rows(page).first().getByRole('link').first().click();
    await page.locator('main h1', { hasText: 'Look into a hive' }).waitFor();
    await page.goBack();
    await page.locator('.count', { hasText: new RegExp(`^${count} entr`) }).waitFor();
    assert.equal(await page.getByLabel('Words').inputValue(), 'EGGS');
    await page.getByLabel('From').fill(looks[0].happened);
    await page.getByLabel('Words').fill('nothing like this was ever said');
    await page.getByText('No entry fits.').waitFor();
  }));

test('a correction stands beside what it corrects; both stay in the list, the old one struck', { skip }, () =>
  with_page({}, async (page) => {
    const feed = await newest('feed');
    await open(page, `/book/entries/${feed.id}`);
    await page.getByRole('button', { name: 'Correct' }).click();
    await page.getByText('stays in the book, struck').waitFor();
    const kg = page.getByLabel(/^Weight/);
    assert.equal(await kg.inputValue(), String(feed.fields.kg), 'what was said is filled in');
    await kg.fill('3,5'); // a comma is as good as a point
    await page.getByRole('button', { name: 'Keep it in the book' }).click();
    await page.getByText('Written in the book. The entry before it stays, struck.').waitFor();
    const heads = await page.locator('thead th').allInnerTexts();
    assert.match(heads[0], /^As entered on .+Known so until/s);
    assert.match(heads[1], /^As corrected on .+What is known now/s);
    const weight = page.locator('tbody tr', { hasText: 'Weight' });
    assert.equal(await weight.locator('s').innerText(), `${feed.fields.kg}\u00a0kg`);
    assert.match(await weight.locator('td').nth(1).innerText(), /3[.]5\u00a0kg\s+changed/);
    await page.screenshot({ path: `${screenshots}/book-corrected.png`, clip: { x: 0, y: 0, width: 1180, height: 560 } });
    await page.getByRole('link', { name: 'All entries' }).click();
    await page.getByLabel('Kind').selectOption({ label: 'Feed given' });
    const struck = page.locator('li.struck');
    await struck.first().waitFor();
    assert.match(await struck.first().innerText(), /Corrected: see what stands in its place/);
    const again = await api(`/api/entries/${feed.id}`);
    assert.equal(again.fields.kg, feed.fields.kg, 'nothing seen is lost');
    assert.deepEqual(again.known_then, [feed.id]);
    assert.deepEqual(again.known_now, [again.superseded_by]);
  }));

test('an entry is taken back with a reason, and stays to be seen', { skip }, () =>
  with_page({}, async (page) => {
    const weight = await newest('need_answered') ?? await newest('note') ?? await newest('inspection');
    await open(page, `/book/entries/${weight.id}`);
    await page.getByRole('button', { name: 'Take back' }).click();
    await page.getByLabel('Why is it taken back?').fill('Written for the wrong hive');
    await page.getByRole('button', { name: 'Take back' }).click();
    await page.getByText('Taken back. The entry stays in the book, struck.').waitFor();
    assert.match(await page.locator('main').innerText(), /Taken back on .+: Written for the wrong hive[.]/);
    await page.getByText('Nothing of it counts now. It stays in the book.').waitFor();
    assert.equal((await api(`/api/entries/${weight.id}`)).counts, false);
  }));

test('a new entry of a kind is filled in by choosing it; what is missing is said beside the field', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book');
    await page.getByRole('link', { name: 'Write an entry' }).click();
    await page.getByRole('link', { name: 'Feed given' }).click();
    await page.getByRole('button', { name: 'Keep it in the book' }).click();
    await page.getByText('3 fields want another look. Nothing was written.').waitFor();
    assert.equal(await page.evaluate(() => document.activeElement.id), 'field-colony');
    assert.equal(await page.locator('#field-kg-fault').innerText(), 'This is needed.');
    await page.getByLabel(/^Weight/).fill('900');
    await page.getByLabel(/^Colony/).selectOption({ index: 1 });
    await page.getByLabel(/^Form/).selectOption('syrup');
    await page.getByRole('button', { name: 'Keep it in the book' }).click();
    await page.getByText('Give 0.05 to 40.').waitFor();
    const words = await page.locator('select option').allInnerTexts();
    assert.ok(words.includes('own honey') && words.includes('bought feed'), words.join(' | '));
    assert.deepEqual(words.filter((word) => word.includes('_')), [], 'each choice is in plain words');
  }));

test('what would carry disease is refused plainly, beside the field, and nothing is written', { skip }, () =>
  with_page({}, async (page) => {
    const before = (await api('/api/book')).head;
    await open(page, '/book/new/feed');
    await page.getByLabel(/^Colony/).selectOption({ index: 1 });
    await page.getByLabel(/^Weight/).fill('2');
    await page.getByLabel(/^Form/).selectOption('syrup');
    await page.getByLabel(/^Source/).selectOption('honey_of_unknown_origin');
    await page.getByRole('button', { name: 'Keep it in the book' }).click();
    await page.getByRole('alert').getByText('honey of unknown origin can carry foulbrood and is never fed').waitFor();
    assert.match(await page.getByRole('alert').innerText(), /feed sugar, or honey and combs of your own healthy colonies/);
    assert.match(await page.locator('#field-source-fault').innerText(), /can carry foulbrood/);
    assert.equal((await api('/api/book')).head, before);
    await page.screenshot({ path: `${screenshots}/book-refused.png`, fullPage: true });
    refused_here(page);
  }));

test('every kind that is filled in by hand has a form in plain words', { skip }, () =>
  with_page({}, async (page) => {
    const { groups } = await api('/api/kinds');
    for (const { kind, by_hand } of groups.flatMap((group) => group.kinds)) {
      if (!by_hand) continue;
      await open(page, `/book/new/${kind}`);
      const labels = await page.locator('main label, main legend, main option').allInnerTexts();
      assert.ok(labels.length > 2, kind);
      assert.deepEqual(labels.filter((text) => /[a-z]_[a-z]/i.test(text)), [], kind);
    }
  }));

test('a register is shown for a span of days, links to its CSV and PDF, and prints across the sheet', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book/registers');
    await page.getByRole('link', { name: 'Feeding', exact: true }).click();
    await page.locator('tbody tr').first().waitFor();
    const { columns, rows: all } = await api('/api/registers/feeding');
    assert.equal(await page.locator('tbody tr').count(), all.length);
    assert.equal(await page.locator('thead th').count(), columns.length + 1);
    const csv = page.getByRole('link', { name: 'As CSV' });
    assert.equal(await csv.getAttribute('href'), '/api/registers/feeding.csv');
    const text = await (await fetch(served.url + (await csv.getAttribute('href')))).text();
    assert.equal(text.split('\r\n')[0], columns.map((column) => column.key).join(','));
    assert.equal(text.trim().split('\r\n').length, all.length + 1);
    const pdf = await fetch(served.url + (await page.getByRole('link', { name: 'To print (PDF)' }).getAttribute('href')));
    assert.equal(Buffer.from(await pdf.arrayBuffer()).subarray(0, 5).toString(), '%PDF-');
    await page.locator('tbody button').first().click();
    await page.getByRole('dialog').locator('dl').waitFor();
    await page.keyboard.press('Escape');
    await page.emulateMedia({ media: 'print' });
    assert.equal(await page.locator('main a:visible, main button:visible, main input:visible').count(), 0);
    assert.equal(await page.locator('thead').evaluate((head) => getComputedStyle(head).display), 'table-header-group');
    assert.equal(await page.locator('tbody tr').first().evaluate((row) => getComputedStyle(row).breakInside), 'avoid');
    const printed = await page.pdf({ path: `${screenshots}/register.pdf`, preferCSSPageSize: true });
    const [, width, height] = /MediaBox \[0 0 ([0-9.]+) ([0-9.]+)\]/.exec(printed.toString('latin1'));
    assert.ok(Number(width) > Number(height), 'across the sheet');
    await page.emulateMedia({ media: 'screen' });
    await page.getByLabel('From').fill('2031-01-01');
    await page.getByRole('button', { name: 'Show these days' }).click();
    await page.getByText('Nothing is entered for these days.').waitFor();
    assert.equal(await page.getByRole('link', { name: 'As CSV' }).getAttribute('href'), '/api/registers/feeding.csv?from=2031-01-01');
  }));

test('a rule of the keeper that stands in the way is named in plain words', { skip }, () =>
  with_page({}, async (page) => {
    const send = (kind, payload) => fetch(`${served.url}/api/entries`, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ kind, payload, date: '2026-06-01' }) });
    assert.equal((await send('keeper_rule', { rule: 'no_synthetic_strips', kept: true })).status, 200);
    await open(page, '/book/new/treatment');
    await page.getByLabel(/^Colony/).selectOption({ index: 1 });
    await page.getByLabel(/^Kind/).selectOption('amitraz');
    await page.getByRole('button', { name: 'Keep it in the book' }).click();
    await page.getByRole('alert').getByText("That breaks your own rule 'no synthetic strips'").waitFor();
    assert.doesNotMatch(await page.getByRole('alert').innerText(), /[a-z]_[a-z]/);
    refused_here(page);
  }));

test('a register of several sheets has its heading on each, and no row on two', { skip }, () =>
  with_page({}, async (page) => {
    const { names } = await api('/api/kinds');
    for (let i = 0; i < 60; ++i) {
      const number = String(i).padStart(2, '0');
      const note = `first${number} ${'a long remark that takes its room on the sheet '.repeat(3)} last${number}`;
      const body = { kind: 'feed', payload: { colony: names.colony[0].key, kg: 1, form: 'syrup', product: note }, date: '2026-03-01' };
      const answer = await fetch(`${served.url}/api/entries`, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) });
      assert.equal(answer.status, 200, await answer.text());
    }
    await open(page, '/book/registers/feeding?from=2026-03-01&to=2026-03-01');
    await page.locator('tbody tr').first().waitFor();
    const path = `${screenshots}/register-long.pdf`;
    await page.pdf({ path, preferCSSPageSize: true });
    const sheets = execFileSync('pdftotext', ['-layout', path, '-']).toString().split('\f').filter((text) => text.trim() !== '');
    assert.ok(sheets.length >= 2, `${sheets.length} sheets`);
    for (const sheet of sheets) {
      assert.match(sheet, /Date +Colony +Form/);
      const numbers = (word) => [...sheet.matchAll(new RegExp(`${word}(\\d\\d)`, 'g'))].map((found) => found[1]);
      assert.ok(numbers('first').length > 0);
      assert.deepEqual(numbers('first'), numbers('last'), 'a row is cut in two');
    }
  }));

test('the keyboard alone finds an entry and corrects it', { skip }, () =>
  with_page({}, async (page) => {
    await open(page, '/book');
    await rows(page).first().waitFor();
    const to = async (wanted, most = 60) => {
      for (let i = 0; i < most; ++i) {
        await page.keyboard.press('Tab');
        const at = await page.evaluate(() => ({ text: document.activeElement.innerText || document.activeElement.id, outline: getComputedStyle(document.activeElement).outlineStyle }));
        assert.notEqual(at.outline, 'none', `no visible focus on ${at.text}`);
        if (wanted.test(at.text)) return;
      }
      assert.fail(`${wanted} is not reached`);
    };
    await to(/^search-text$/);
    await page.keyboard.type('syrup');
    await page.locator('.count', { hasText: /^\d+ entr/ }).waitFor();
    await page.waitForFunction(() => [...document.querySelectorAll('main section li')].every((li) => /syrup/.test(li.innerText)));
    await to(/^Feed given$/);
    await page.keyboard.press('Enter');
    await page.locator('main h1', { hasText: 'Feed given' }).waitFor();
    await to(/^Correct$/);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Keep it in the book' }).waitFor();
    await to(/^field-kg$/);
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('1.25');
    await page.keyboard.press('Enter');
    await page.getByText('Written in the book. The entry before it stays, struck.').waitFor();
    assert.equal(await page.evaluate(() => document.activeElement.getAttribute('role')), 'status');
  }));

for (const scheme of ['light', 'dark']) {
  for (const [device, viewport] of [['desk', { width: 1180, height: 900 }], ['phone', { width: 360, height: 740 }]]) {
    test(`the book is readable for everyone: ${scheme}, ${device}`, { skip }, () =>
      with_page({ colorScheme: scheme, viewport, hasTouch: device === 'phone', isMobile: device === 'phone' }, async (page) => {
        const corrected = (await api('/api/entries?kind=feed&limit=200')).entries.find((entry) => entry.superseded_by) ?? (await newest('feed'));
        const places = [['book', '/book'], ['entry', `/book/entries/${corrected.id}`], ['kinds', '/book/new'], ['form', '/book/new/inspection'],
          ['correct', `/book/entries/${(await newest('treatment') ?? corrected).id}/correct`], ['registers', '/book/registers'], ['register', '/book/registers/feeding']];
        for (const [name, path] of places) {
          await open(page, path);
          await page.evaluate(axe);
          const found = await page.evaluate(() => globalThis.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
          assert.ok(found.passes.length > 10);
          assert.deepEqual(found.violations.map((v) => `${name}: ${v.id}: ${v.nodes.map((n) => n.target).join(' ')}`), []);
          const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
          assert.ok(wide <= 0, `${name} scrolls sideways by ${wide}px at ${viewport.width}`);
          if (device === 'phone')
            for (const target of await page.locator('main button:not(.quiet):visible, main form input:visible:not([type=checkbox]), main form select:visible, main form textarea:visible').all()) {
              const box = await target.boundingBox();
              assert.ok(box && box.height >= 44, `${name}: ${await target.evaluate((e) => e.id || e.innerText)} is ${box?.height}px high`);
            }
          await page.screenshot({ path: `${screenshots}/book-${name}-${scheme}-${device}.png`, fullPage: true });
        }
      }));
  }
}
