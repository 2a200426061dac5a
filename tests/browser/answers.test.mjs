// Every answer keeps to openapi.json; with BEEGARTH_URL these are the program's own answers.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { after, before, test } from 'node:test';
import { start_fake } from './fake_api.mjs';

const require = createRequire(new URL('../../web/package.json', import.meta.url));
const Ajv = require('ajv/dist/2020').default;
const formats = require('ajv-formats').default;

const description = JSON.parse(readFileSync(new URL('../../src/http/openapi.json', import.meta.url), 'utf8'));
const ajv = new Ajv({ strict: false, allErrors: true });
formats(ajv);
ajv.addSchema({ $id: 'openapi', ...description });
const pointer = (...parts) => parts.map((p) => encodeURIComponent(p.replaceAll('~', '~0').replaceAll('/', '~1'))).join('/');

let fake;
let url;
before(async () => {
  fake = process.env.BEEGARTH_URL ? null : await start_fake();
  url = process.env.BEEGARTH_URL?.replace(/\/$/, '') ?? fake.url;
});
after(async () => { await fake?.close(); });

function check(body, path, method) {
  const validate = ajv.getSchema(`openapi#/${pointer('paths', path, method, 'responses', '200', 'content', 'application/json', 'schema')}`);
  assert.ok(validate, `${path} has a schema`);
  assert.ok(validate(body), ajv.errorsText(validate.errors));
}
async function get(path, described = path.split('?')[0]) {
  const response = await fetch(url + path);
  assert.equal(response.status, 200, path);
  const body = await response.json();
  check(body, described, 'get');
  return body;
}
async function refuse(path, status, kind, init) {
  const response = await fetch(url + path, init);
  assert.equal(response.status, status, path);
  assert.equal(response.headers.get('content-type'), 'application/problem+json');
  const body = await response.json();
  const validate = ajv.getSchema('openapi#/components/schemas/Problem');
  assert.ok(validate(body), ajv.errorsText(validate.errors));
  assert.equal(body.kind, kind);
}
const send = (body) => ({ method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) });

test('the schema itself refuses what it should', () => {
  const validate = ajv.getSchema('openapi#/components/schemas/EventOdds');
  const odds = { event: 'out_of_room', by: '2026-06-05', value: 0.5, low: 0.4, high: 0.6 };
  assert.ok(validate(odds));
  for (const wrong of [{ ...odds, value: 1.01 }, { ...odds, by: '2026-06-31' }, { ...odds, low: null }, { event: 'x' }, { ...odds, more: 1 }])
    assert.ok(!validate(wrong), JSON.stringify(wrong));
});
test('the book', async () => { await get('/api/book'); });
test('the plan as its own week costs no more than itself', async () => {
  const plan = await get('/api/plan?days=14');
  const jobs = plan.visits.flatMap((visit) => visit.jobs.filter((job) => job.minutes > 0).map((job) => ({ date: visit.date, need: job.key })));
  const reply = await fetch(`${url}/api/own-week`, send({ days: 14, jobs }));
  assert.equal(reply.status, 200);
  const week = await reply.json();
  check(week, '/api/own-week', 'post');
  assert.ok(week.costs_more < 1e-6, `${week.costs_more}`);
  await refuse('/api/own-week', 400, 'bad_input', send({ days: 14, jobs: [{ date: '2026-06-31', need: 'x' }] }));
});
test('the plan for a calendar, for a map and to pack', async () => {
  for (const [path, type, begin] of [['/api/plan.ics', 'text/calendar', 'BEGIN:VCALENDAR'], ['/api/plan.gpx', 'application/gpx+xml', '<?xml'], ['/api/packing.txt', 'text/plain', '']]) {
    const reply = await fetch(url + path);
    assert.equal(reply.status, 200);
    assert.ok(reply.headers.get('content-type').startsWith(type), path);
    assert.ok((await reply.text()).startsWith(begin), path);
  }
});
test('looks that may be written wrongly', async () => { await get('/api/doubts'); });
test('the plan, with visits in order and odds inside their interval', async () => {
  const plan = await get('/api/plan?days=14');
  const starts = plan.visits.map((v) => `${v.date} ${v.start}`);
  assert.deepEqual(starts, [...starts].sort());
  for (const visit of plan.visits) {
    assert.ok(visit.date >= plan.from && visit.date <= plan.to && visit.start <= visit.end && visit.jobs.length > 0);
    for (const { odds } of visit.jobs) for (const o of odds) assert.ok(o.low <= o.value && o.value <= o.high, JSON.stringify(o));
  }
});
test('the colonies and the outlook of each: fans in step with their dates, levels in order, odds that never fall', async () => {
  const { colonies, today } = await get('/api/colonies');
  assert.ok(colonies.length > 0);
  for (const { key } of colonies) {
    const outlook = await get(`/api/colonies/${encodeURIComponent(key)}`, '/api/colonies/{colony}');
    assert.equal(outlook.today, today);
    for (const fan of outlook.fans) {
      const order = ['5', '10', '25', '50', '75', '90', '95'].map((level) => fan.levels[level]);
      for (const values of order) assert.equal(values.length, fan.dates.length);
      for (let i = 1; i < order.length; ++i) order[i].forEach((v, day) => assert.ok(v >= order[i - 1][day], `${key} ${fan.quantity} day ${day}`));
    }
    for (const { course } of outlook.events) {
      assert.equal(course[0].by, today);
      course.forEach((p, i) => assert.ok(p.low <= p.value && p.value <= p.high && (i === 0 || p.value >= course[i - 1].value)));
    }
  }
});
test('the entries that the plan rests on are there', async (t) => {
  const plan = await get('/api/plan');
  const ids = new Set(plan.visits.flatMap((v) => v.jobs).flatMap((j) => j.why).flatMap((w) => w.entries));
  if (ids.size === 0) return t.skip('the plan names no entry');
  const first = await get(`/api/entries/${[...ids][0]}`, '/api/entries/{id}');
  assert.equal(first.id, [...ids][0]);
});
test('the entries, page by page, each once and the newest first', async () => {
  const whole = await get('/api/entries?limit=200', '/api/entries');
  const days = whole.entries.map((entry) => entry.happened);
  assert.deepEqual(days, [...days].sort().reverse());
  assert.equal(new Set(whole.entries.map((entry) => entry.id)).size, whole.entries.length);
  const told = await get(`/api/entries/${whole.entries[0].id}`, '/api/entries/{id}');
  assert.ok(told.line.some((entry) => entry.id === whole.entries[0].id));
});
test('the kinds, each with a schema that can be read and compiled', async () => {
  const { groups } = await get('/api/kinds');
  for (const { kinds } of groups) for (const { schema } of kinds) assert.ok(ajv.compile(schema));
});
test('every register, and nothing in it that is not a column', async () => {
  const { registers } = await get('/api/registers');
  assert.ok(registers.length > 0);
  for (const { name } of registers) {
    const register = await get(`/api/registers/${name}`, '/api/registers/{name}');
    const keys = register.columns.map((column) => column.key).sort();
    for (const row of register.rows) assert.deepEqual(Object.keys(row.cells).sort(), keys);
  }
});
test('the queens, the checklists, and the boxes of a sheet', async () => {
  const { queens } = await get('/api/lines');
  assert.ok(queens.length > 0);
  const { checklists } = await get('/api/checklists');
  for (const { steps, cautions } of checklists) assert.ok(steps.length > 0 && cautions.length > 0);
  const { today } = await get('/api/colonies');
  const [site] = (await get('/api/kinds')).names.site;
  const { frames } = await get(`/api/sheet-boxes?site=${encodeURIComponent(site.key)}&date=${today}`, '/api/sheet-boxes');
  for (const frame of frames) {
    const names = [...frame.printed, ...frame.others].flatMap((set) => set.rows.flat()).map((box) => box.name);
    assert.equal(new Set(names).size, names.length, `${frame.row}: a box is named by its name alone`);
  }
});
test('what was written in a sheet is shown without being kept', { skip: process.env.BEEGARTH_URL ? false : 'the invented face keys in nothing' }, async () => {
  const { today } = await get('/api/colonies');
  const [site] = (await get('/api/kinds')).names.site;
  const { frames } = await get(`/api/sheet-boxes?site=${encodeURIComponent(site.key)}&date=${today}`, '/api/sheet-boxes');
  const before = (await get('/api/book')).head;
  const { row } = frames.find((frame) => frame.colony);
  const response = await fetch(`${url}/api/sheet-boxes`, send({ site: site.key, date: today, boxes: [{ row, box: 'notes', value: 'roof leaks' }], keep: false }));
  assert.equal(response.status, 200);
  const body = await response.json();
  check(body, '/api/sheet-boxes', 'post');
  assert.deepEqual([body.kept, body.entries.length], [false, 1]);
  assert.equal((await get('/api/book')).head, before);
});
test('the mappings that are there, the book checked, and what stands where', async () => {
  const { maps } = await get('/api/import-maps');
  assert.ok(maps.length > 0);
  assert.equal((await get('/api/verify')).sound, true);
  const { sites, hives, colonies } = await get('/api/standing');
  for (const hive of hives) assert.ok(sites.some((site) => site.site === hive.site), hive.name);
  assert.ok(colonies.length > 0);
});
test('the ways into another hive, with what is against each that is not possible', async () => {
  const { colonies } = await get('/api/standing');
  const { key } = process.env.BEEGARTH_URL ? { key: 'snipe' } : { key: colonies[0].colony };
  const into = process.env.BEEGARTH_URL ? 'Meadow stand 3' : 'Long hive';
  const { ways } = await get(`/api/colonies/${key}/transfer-ways?into=${encodeURIComponent(into)}`, '/api/colonies/{colony}/transfer-ways');
  assert.ok(ways.length > 0);
  for (const way of ways) assert.equal(way.possible, way.against.length === 0, way.way);
});
test('ways of acting are held side by side, the cheapest first, and nothing is written', async () => {
  const { colonies, as_of } = await get('/api/standing');
  const before = (await get('/api/book')).head;
  const day = process.env.BEEGARTH_URL ? as_of : '2026-08-10';
  const path = `/api/colonies/${colonies[0].colony}/suppositions`;
  const response = await fetch(url + path, send({ ways: [`${day}: fed 4 kg syrup`] }));
  assert.equal(response.status, 200);
  const told = await response.json();
  check(told, '/api/colonies/{colony}/suppositions', 'post');
  assert.ok(told.ways.some((way) => way.name === 'nothing'));
  for (let i = 1; i < told.ways.length; ++i) assert.ok(told.ways[i].cost_kg >= told.ways[i - 1].cost_kg);
  assert.equal((await get('/api/book')).head, before);
  if (!process.env.BEEGARTH_URL) return;
  await refuse(path, 400, 'bad_input', send({ ways: ['some day: fed'] }));
  await refuse(path, 400, 'bad_input', send({ ways: [] }));
  await refuse('/api/colonies/none/suppositions', 404, 'bad_input', send({ ways: [`${day}: fed 4 kg syrup`] }));
});
test('a table is drafted and tried without being kept, and every row in the way is told', { skip: process.env.BEEGARTH_URL ? false : 'the invented face brings in nothing' }, async () => {
  const before = (await get('/api/book')).head;
  const ask = async (path, body) => {
    const response = await fetch(url + path, send(body));
    assert.equal(response.status, 200, path);
    const answer = await response.json();
    check(answer, path, 'post');
    return answer;
  };
  const text = 'date,colony,seams\n2026-05-12,Cobble,7\n2026-05-13,Cobble,many\n';
  await ask('/api/import-map', { file: 'own.csv', text, kind: 'inspection' });
  const map = '[date]\ncolumn = "date"\n[[entry]]\nkind = "inspection"\n[entry.fields]\ncolony = { column = "colony", as_key = true }\nlook = "full"\nseams = { column = "seams" }\n';
  const refused = await ask('/api/import', { file: 'own.csv', form: 'csv', text, map, keep: false });
  assert.deepEqual([refused.kept, refused.added, refused.refused.length], [false, 0, 1]);
  const tried = await ask('/api/import', { file: 'own.csv', form: 'csv', text: text.replace('many', '8'), map, keep: false });
  assert.deepEqual([tried.kept, tried.added, tried.refused.length], [false, 2, 0]);
  await refuse('/api/import', 400, 'bad_input', send({ file: 'own.csv', form: 'csv', text, map, keep: true }));
  assert.equal((await get('/api/book')).head, before);
});
test('a note is shown without being kept', async () => {
  const before = (await get('/api/book')).head;
  const { name } = (await get('/api/colonies')).colonies[0];
  const response = await fetch(`${url}/api/notes`, send({ line: `${name} 6 seams, eggs`, keep: false }));
  assert.equal(response.status, 200);
  const body = await response.json();
  check(body, '/api/notes', 'post');
  assert.equal(body.kept, false);
  assert.equal((await get('/api/book')).head, before);
});
test('what is not there is refused as a problem', async () => {
  await refuse('/api/colonies/no-such-colony', 404, 'bad_input');
  await refuse('/api/entries/no-such-entry', 404, 'bad_input');
  await refuse('/api/registers/no-such-register', 404, 'bad_input');
  await refuse('/api/honey', 404, 'wrong_use');
  await refuse('/api/plan', 405, 'wrong_use', send({}));
});
test('it describes itself with the file that these checks use', async () => {
  assert.deepEqual(await (await fetch(`${url}/openapi.json`)).json(), description);
});
