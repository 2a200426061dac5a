// A filled sheet keyed in at the page, against the program itself: in the sheet's order, shown back, all or none.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { open_browser, require, screenshots } from './browser.mjs';
import { is_built, program, serve_demo } from './program.mjs';

const axe = require('axe-core').source;
const skip = process.env.BEEGARTH_URL ? 'it serves a book of its own, once' : is_built ? false : `there is no ${program}`;
let served, browser, site, date;
before(async () => {
  if (skip) return;
  served = await serve_demo();
  browser = await open_browser(served.url);
  // The site of the first visit of the demo's own day: what is printed for it is what is keyed in here.
  const plan = await api('/api/plan?days=14');
  const visit = plan.visits.find((one) => one.date === plan.from && one.jobs.some((job) => job.colony));
  [site, date] = [visit.site, visit.date];
});
after(async () => {
  await browser?.close();
  await served?.close();
});

const api = async (path) => (await fetch(served.url + path)).json();
const boxes_of = (frame) => [...frame.printed, ...frame.others].flatMap((set) => set.rows.flat());
const address = () => `/book/sheet?site=${encodeURIComponent(site)}&date=${date}`;
const with_page = (options, run) => browser.with_page(options, run);
async function open(page, path = address()) {
  await page.goto(served.url + path);
  await page.locator('fieldset').first().waitFor();
  await page.waitForFunction(() => document.fonts.status === 'loaded');
}
const refused_here = (page) => (page.wrong = page.wrong.filter((text) => !/status of 400/.test(text))); // Chromium logs each refusal
const frame_at = (page, name) => page.locator('fieldset', { has: page.locator('legend', { hasText: name }) }).first();

test('the boxes stand on the screen in the order of the printed sheet, its numbers beside the jobs', { skip }, () =>
  with_page({}, async (page) => {
    await page.goto(served.url + '/book');
    await page.getByRole('link', { name: 'Key in a sheet' }).click();
    await page.getByLabel('Site').selectOption(site);
    assert.equal(await page.getByLabel('Day of the visit').inputValue(), date, "the book's own day stands there");
    await page.getByRole('button', { name: 'Show its boxes' }).click();
    await page.locator('fieldset').first().waitFor();
    const sheet = await api(`/api/sheet-boxes?site=${site}&date=${date}`);
    assert.ok(sheet.planned);
    const visit = (await api('/api/plan?days=14')).visits.find((one) => one.site === site && one.date === date);
    assert.deepEqual(sheet.frames.flatMap((frame) => frame.jobs.map((job) => job.need)), visit.jobs.map((job) => job.key));
    assert.deepEqual(await page.locator('fieldset .number').allInnerTexts(), visit.jobs.map((_, i) => String(i + 1)));
    for (const [i, frame] of sheet.frames.entries()) {
      const labels = await page.locator('fieldset').nth(i).locator(':scope > .row label, :scope > .row summary').allInnerTexts();
      const printed = frame.printed.flatMap((set) => set.rows.flat()).map((box) => box.printed.replace(/\s+/g, ' '));
      assert.deepEqual(labels.filter((label) => label !== '').map((label) => label.replace(/: nothing said$/, '')), printed, frame.row); // what is folded has no text
    }
    assert.equal(await page.evaluate(() => document.activeElement.className.includes('site')), true, 'the focus goes to the sheet');
  }));

test('a wrong value is said at its box, and nothing is written', { skip }, () =>
  with_page({}, async (page) => {
    const before = (await api('/api/book')).head;
    await open(page);
    const { frames } = await api(`/api/sheet-boxes?site=${site}&date=${date}`);
    const frame = frames.find((one) => one.colony);
    const fieldset = page.locator('fieldset').nth(frames.indexOf(frame));
    await fieldset.locator('details', { hasText: 'More was written' }).last().locator('summary').first().click();
    await fieldset.getByLabel('left, kg', { exact: true }).fill('16');
    await fieldset.getByLabel('right, kg', { exact: true }).fill('seventeen');
    await page.getByRole('button', { name: 'Read it back' }).click();
    await page.getByRole('alert').getByText("'seventeen' is no number", { exact: false }).waitFor();
    assert.match(await page.getByRole('alert').innerText(), new RegExp(`${frame.row}, right`));
    const right = fieldset.getByLabel('right, kg', { exact: true });
    assert.equal(await right.getAttribute('aria-invalid'), 'true');
    assert.equal(await right.evaluate((input) => input === document.activeElement), true, 'the focus is at the box');
    assert.match(await fieldset.locator('.fault').innerText(), /is no number/);
    assert.equal(await page.getByRole('button', { name: 'Keep them all' }).count(), 0);
    assert.equal((await api('/api/book')).head, before);
    refused_here(page);
  }));

test('an empty sheet makes no entry and says so', { skip }, () =>
  with_page({}, async (page) => {
    await open(page);
    await page.getByRole('button', { name: 'Read it back' }).click();
    await page.getByRole('alert').getByText('Nothing is filled in.').waitFor();
  }));

test('a change after reading back has to be read back again', { skip }, () =>
  with_page({}, async (page) => {
    await open(page);
    await page.getByLabel('notes', { exact: true }).first().fill('roof leaks');
    await page.getByRole('button', { name: 'Read it back' }).click();
    await page.getByRole('button', { name: 'Keep them all' }).waitFor();
    await page.getByLabel('notes', { exact: true }).first().fill('roof leaks badly');
    assert.equal(await page.getByRole('button', { name: 'Keep them all' }).count(), 0);
  }));

test('the keyboard alone keys in a sheet: boxes in order, read back, kept all together', { skip }, () =>
  with_page({}, async (page) => {
    await open(page);
    const { frames } = await api(`/api/sheet-boxes?site=${site}&date=${date}`);
    const count = (await api('/api/entries?kind=notebook&limit=1')).count;
    const frame = frames.find((one) => one.colony && one.jobs.length > 0);
    const fieldset = page.locator('fieldset').nth(frames.indexOf(frame));
    await fieldset.locator('input, select').first().focus();
    const order = [];
    for (let i = 0; i < 60; ++i) {
      const at = await page.evaluate(() => ({ label: document.activeElement.labels?.[0]?.innerText ?? document.activeElement.innerText, outline: getComputedStyle(document.activeElement).outlineStyle, date: document.activeElement.type === 'date' }));
      assert.notEqual(at.outline, 'none', `no visible focus on ${at.label}`);
      if (order.at(-1) !== at.label) order.push(at.label);
      if (at.label === 'notes') break;
      await page.keyboard.press('Tab');
    }
    const printed = frame.printed.flatMap((set) => set.rows.flat()).map((box) => box.printed.replace(/\s+/g, ' '));
    const plain = order.map((label) => label.replace(/: nothing said$/, ''));
    assert.deepEqual(plain.filter((label) => printed.includes(label)), printed, 'Tab goes through the boxes as they are printed');
    await page.keyboard.type('a note from paper');
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.type('done');
    await page.keyboard.press('Enter');
    if ((await page.getByRole('button', { name: 'Keep them all' }).count()) === 0) await page.getByRole('button', { name: 'Read it back' }).press('Enter');
    await page.getByText(/entries would be written. Nothing is kept yet/).waitFor();
    assert.equal((await api('/api/entries?kind=notebook&limit=1')).count, count, 'only shown');
    await page.getByRole('button', { name: 'Keep them all' }).press('Enter');
    await page.getByText(/entries written in the book. The plan was made anew/).waitFor();
    assert.equal(await page.evaluate(() => document.activeElement.getAttribute('role')), 'status');
    const kept = (await api(`/api/entries?kind=notebook&from=${date}&to=${date}&limit=50`)).entries;
    assert.equal((await api('/api/entries?kind=notebook&limit=1')).count, count + frame.jobs.length + 1);
    assert.deepEqual(kept.filter((entry) => entry.kind === 'need_answered').map((entry) => entry.fields.need).sort(), frame.jobs.map((job) => job.need).sort());
    assert.ok(kept.some((entry) => entry.kind === 'note' && entry.fields.text === 'a note from paper' && entry.fields.colony === frame.colony));
    await page.getByRole('link', { name: 'The new plan' }).click();
    await page.locator('#undone-title').waitFor();
  }));

test('what a gate refuses is said at its box', { skip }, () =>
  with_page({}, async (page) => {
    await fetch(`${served.url}/api/entries`, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ kind: 'keeper_rule', payload: { rule: 'no_synthetic_strips', kept: true }, date: '2026-06-01' }) });
    await open(page);
    const { frames } = await api(`/api/sheet-boxes?site=${site}&date=${date}`);
    const frame = frames.find((one) => one.others.some((set) => set.set === 'treatment'));
    const fieldset = page.locator('fieldset').nth(frames.indexOf(frame));
    await fieldset.locator('summary', { hasText: 'More was written' }).click();
    await fieldset.getByLabel(/^kind: oxalic/).selectOption('amitraz');
    const before = (await api('/api/book')).head;
    await page.getByRole('button', { name: 'Read it back' }).click();
    await page.getByRole('alert').getByText("That breaks your own rule 'no synthetic strips'").waitFor();
    assert.equal(await fieldset.getByLabel(/^kind: oxalic/).getAttribute('aria-invalid'), 'true');
    assert.equal((await api('/api/book')).head, before);
    refused_here(page);
  }));

test('signs are ticked, and a job is put off until a day', { skip }, () =>
  with_page({}, async (page) => {
    await open(page);
    const { frames } = await api(`/api/sheet-boxes?site=${site}&date=${date}`);
    const frame = frames.find((one) => boxes_of(one).some((box) => box.reads === 'signs'));
    const fieldset = page.locator('fieldset').nth(frames.indexOf(frame));
    const more = fieldset.locator('summary', { hasText: 'More was written' });
    if (await more.count()) await more.click();
    await fieldset.locator('summary', { hasText: 'health signs' }).click();
    await fieldset.getByLabel('none seen').check();
    assert.match(await fieldset.locator('summary', { hasText: 'health signs' }).innerText(), /none seen/);
    await fieldset.getByLabel('chalk brood').check();
    assert.equal(await fieldset.getByLabel('none seen').isChecked(), false, 'one is not both');
    const answers = page.getByLabel('done / not done / put off until');
    if (await answers.count()) {
      await answers.first().selectOption({ label: 'put off until' });
      await page.getByLabel('put off until the day').fill('2026-06-12');
    }
    await page.getByRole('button', { name: 'Read it back' }).click();
    await page.getByRole('button', { name: 'Keep them all' }).waitFor();
    const back = await page.getByRole('group').last().innerText();
    assert.match(back, /chalk brood/);
    if (await answers.count()) assert.match(back, /12 June 2026/);
    await page.getByRole('button', { name: 'Change the sheet' }).click();
    assert.equal(await page.getByRole('button', { name: 'Keep them all' }).count(), 0);
    assert.equal(await fieldset.getByLabel('chalk brood').isChecked(), true, 'what was filled in stays');
  }));

test('a day to come, and a site that is none, are refused in one line', { skip }, () =>
  with_page({}, async (page) => {
    await page.goto(`${served.url}/book/sheet?site=${site}&date=2027-01-01`);
    await page.getByRole('alert').getByText(/is still to come/).waitFor();
    await page.goto(`${served.url}/book/sheet?site=elsewhere&date=${date}`);
    await page.getByRole('alert').getByText(/There is no site/).waitFor();
    refused_here(page);
  }));

for (const scheme of ['light', 'dark']) {
  for (const [device, viewport] of [['laptop', { width: 1280, height: 850 }], ['phone', { width: 390, height: 844 }]]) {
    test(`the sheet is readable for everyone: ${scheme}, ${device}`, { skip }, () =>
      with_page({ colorScheme: scheme, viewport, hasTouch: device === 'phone', isMobile: device === 'phone' }, async (page) => {
        await open(page);
        for (const closed of await page.locator('details:not([open]) > summary').all()) if (await closed.isVisible()) await closed.click();
        await page.getByLabel('notes', { exact: true }).first().fill('roof leaks');
        await page.getByRole('button', { name: 'Read it back' }).click();
        await page.getByRole('button', { name: 'Keep them all' }).waitFor();
        await page.evaluate(axe);
        const found = await page.evaluate(() => globalThis.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
        assert.ok(found.passes.length > 10);
        assert.deepEqual(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target).join(' ')}`), []);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
        assert.ok(wide <= 0, `it scrolls sideways by ${wide}px`);
        if (device === 'phone')
          for (const target of await page.locator('main form button:visible, main form input:visible:not([type=checkbox]), main form select:visible, main summary:visible').all()) {
            const box = await target.boundingBox();
            assert.ok(box && box.height >= 44, `${await target.evaluate((e) => e.id || e.innerText)} is ${box?.height}px high`);
          }
        await page.screenshot({ path: `${screenshots}/sheet-key-in-${scheme}-${device}.png`, fullPage: true });
      }));
  }
}
