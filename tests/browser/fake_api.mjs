// The program's HTTP face with invented answers, for the browser tests. The headers are those of src/http/respond.cpp.
import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { book_check, checklists, colonies, doubts, entries, found, import_maps, kinds, lines, outlook, plan, register, registers, sheet_boxes, standing, suppositions, today, told, transfer_ways } from './invented.mjs';

const dist = new URL('../../web/dist/', import.meta.url);
const types = { html: 'text/html; charset=utf-8', js: 'text/javascript; charset=utf-8', css: 'text/css; charset=utf-8', woff2: 'font/woff2' };
const policy =
  "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data:; " +
  "connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

const problem = (status, kind, title, detail) => ({ status, type: 'application/problem+json', body: JSON.stringify({ type: 'about:blank', title, detail, status, kind }) });
const json = (body) => ({ status: 200, type: 'application/json', body: JSON.stringify(body) });

function file(path) {
  const name = path === '/' || /^\/(colonies|book)(\/|$)/.test(path) ? 'index.html' : path.slice(1);
  const place = new URL(name, dist);
  if (!place.href.startsWith(dist.href) || !existsSync(place)) return problem(404, 'wrong_use', 'there is nothing at this address', path);
  return { status: 200, type: types[name.split('.').pop()] ?? 'application/octet-stream', body: readFileSync(place) };
}

// One page of fake answers; `state` remembers what was posted so that a test can ask.
export async function start_fake() {
  const state = { answered: [], kept: [] };
  const note = (ask) => {
    if (ask.line.includes('nonsense')) return problem(400, 'bad_input', 'this line cannot be read', 'word 1: begin with a colony');
    const entry = { kind: 'note', happened: today, fields: { text: ask.line } };
    if (ask.keep) state.kept.push(ask.line);
    return json({ kept: ask.keep, entries: [ask.keep ? { ...entry, id: '01900000-0000-7000-8000-00000000b001' } : entry] });
  };
  const answer = (key, ask) => {
    state.answered.push([key, ask.answer]);
    return json({ kept: true, entries: [{ kind: 'need_answered', happened: today, fields: { need: key, answer: ask.answer } }] });
  };
  const left = () => ({
    ...plan,
    at_home: plan.at_home.filter((job) => !state.answered.some(([key]) => key === job.key)),
    visits: plan.visits
      .map((visit) => ({ ...visit, jobs: visit.jobs.filter((job) => !state.answered.some(([key]) => key === job.key)) }))
      .filter((visit) => visit.jobs.length > 0),
  });
  const get = (path) => {
    if (path === '/api/book') return json({ name: 'invented.garth', today, seed: 1, head: `head-${state.answered.length}`, counts: { entries: 2, colonies: 7 } });
    if (path === '/api/plan') return json(left());
    if (path === '/api/colonies') return json(colonies);
    if (path === '/api/doubts') return json(doubts);
    if (path === '/api/plan.ics') return { status: 200, type: 'text/calendar', body: 'BEGIN:VCALENDAR' };
    if (path === '/api/plan.gpx') return { status: 200, type: 'application/gpx+xml', body: '<?xml' };
    if (path === '/api/packing.txt') return { status: 200, type: 'text/plain', body: 'nothing' };
    if (/^\/api\/colonies\/.+\/transfer-ways$/.test(path)) return json(transfer_ways);
    if (path.startsWith('/api/colonies/')) {
      const found = outlook(path.slice('/api/colonies/'.length));
      return found ? json(found) : problem(404, 'bad_input', 'there is no such colony', path);
    }
    if (path.startsWith('/api/entries/')) {
      const one = entries[path.slice('/api/entries/'.length)];
      return one ? json(told(one)) : problem(404, 'bad_input', 'there is no such entry', path);
    }
    if (path === '/api/entries') return json(found());
    if (path === '/api/kinds') return json(kinds);
    if (path === '/api/registers') return json(registers);
    if (path.startsWith('/api/registers/')) return path.endsWith('/feeding') ? json(register) : problem(404, 'bad_input', 'there is no such register', path);
    if (path === '/api/lines') return json(lines);
    if (path === '/api/checklists') return json(checklists);
    if (path === '/api/import-maps') return json(import_maps);
    if (path === '/api/verify') return json(book_check);
    if (path === '/api/standing') return json(standing);
    if (path === '/api/sheet-boxes') return json(sheet_boxes);
    if (path === '/api/sheet') return { status: 200, type: 'application/pdf', body: '%PDF-1.4 invented' };
    if (path === '/openapi.json') return { status: 200, type: 'application/json', body: readFileSync(new URL('../../src/http/openapi.json', import.meta.url)) };
    return path.startsWith('/api/') ? problem(404, 'wrong_use', 'there is nothing at this address', path) : file(path);
  };
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url, 'http://localhost').pathname);
    let body = '';
    for await (const part of request) body += part;
    let reply;
    if (request.method === 'GET') reply = get(path);
    else if (path === '/api/notes') reply = note(JSON.parse(body));
    else if (/^\/api\/colonies\/.+\/suppositions$/.test(path)) reply = json(suppositions);
    else if (path === '/api/own-week') {
      const own = JSON.parse(body).jobs;
      const meant = (job) => own.some((one) => one.need === job.key);
      const bad = own.find((one) => one.date === '2026-06-31');
      const left_out = plan.visits.flatMap((visit) => visit.jobs.filter((job) => job.minutes > 0 && !meant(job)).map((job) => `${job.colony_name ?? visit.site_name}: ${job.what}`));
      reply = bad ? problem(400, 'bad_input', 'that is no day', 'jobs[0].date') : json({ plan, costs_more: 2.5 * left_out.length, left_out });
    }
    else if (path.startsWith('/api/needs/')) reply = answer(path.slice('/api/needs/'.length), JSON.parse(body));
    else reply = problem(405, 'wrong_use', 'this address does not take that method', path);
    response.writeHead(reply.status, { 'Content-Type': reply.type, 'Content-Security-Policy': policy, 'X-Content-Type-Options': 'nosniff' });
    response.end(reply.body);
  });
  await new Promise((done) => server.listen(0, '127.0.0.1', done));
  return { url: `http://127.0.0.1:${server.address().port}`, state, close: () => new Promise((done) => { server.closeAllConnections(); server.close(done); }) };
}
