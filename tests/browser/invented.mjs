// Invented colonies for the browser tests: shapes like the program's answers, from plain formulas. No number here means
// anything, and none comes from a real hive.
import { readFileSync } from 'node:fs';

const read = (name) => JSON.parse(readFileSync(new URL(`fixtures/${name}`, import.meta.url), 'utf8'));
export const plan = read('plan.json');
export const entries = read('entries.json');
export const today = plan.from;

const day_ms = 86_400_000;
const iso = (offset) => new Date(Date.parse(`${today}T00:00:00Z`) + offset * day_ms).toISOString().slice(0, 10);
const past = -100;
const horizon = 28;
const spread = { 5: -1.64, 10: -1.28, 25: -0.67, 50: 0, 75: 0.67, 90: 1.28, 95: 1.64 };

function fan(quantity, unit, middle, known) {
  const days = Array.from({ length: horizon - past + 1 }, (_, i) => past + i);
  const levels = {};
  for (const [level, z] of Object.entries(spread)) {
    levels[level] = days.map((day) => {
      const doubt = known * (0.6 + Math.abs(Math.sin(day / 9)) * 0.5) + (day > 0 ? day / 90 : 0);
      return Math.max(0, middle(day) * Math.exp(z * doubt));
    });
  }
  return { quantity, unit, dates: days.map(iso), levels };
}

const shapes = [
  ['alder-5', 'Alder 5', 'withy-meadow', 'Withy Meadow', 'upright', 1],
  ['alder-3', 'Alder 3', 'withy-meadow', 'Withy Meadow', 'upright', 0.85],
  ['sallow-1', 'Sallow 1', 'withy-meadow', 'Withy Meadow', 'horizontal', 0.7],
  ['sallow-2', 'Sallow 2', 'withy-meadow', 'Withy Meadow', 'horizontal', 0.5],
  ['chalk-1', 'Chalk 1', 'long-orchard', 'Long Orchard', 'upright', 0.9],
  ['chalk-2', 'Chalk 2', 'long-orchard', 'Long Orchard', 'upright', 0.4],
  ['nuc/1', 'Nucleus 1', 'long-orchard', 'Long Orchard', 'upright', 0.2],
];

function fans_of(size) {
  return [
    fan('bees', 'bees', (d) => size * (9000 + 19000 / (1 + Math.exp(-(d + 35) / 14))), 0.12),
    fan('brood_cells', 'cells', (d) => size * (4000 + 24000 * Math.exp(-(((d + 2) / 50) ** 2))), 0.2),
    fan('stores_kg', 'kg', (d) => size * (9 + 5 * Math.sin((d + 60) / 25)), 0.15),
    fan('mites', 'mites', (d) => size * 260 * Math.exp(d / 45), 0.45),
  ];
}

function seen_of(size, key) {
  return [
    [-72, 'bees', 9500], [-44, 'bees', 15500], [-7, 'bees', 25500], [-44, 'brood_cells', 15000], [-7, 'brood_cells', 27000],
    [-72, 'stores_kg', 8], [-30, 'stores_kg', 14.5], [-11, 'mites', 190],
  ].map(([day, quantity, value], i) => ({
    date: iso(day), quantity, value: value * size,
    entry: day === -7 && key === 'alder-5' ? '01900000-0000-7000-8000-00000000a001' : `01900000-0000-7000-8000-${key.length}0000000000${i}`,
  }));
}

function course(size, pace) {
  return Array.from({ length: horizon + 1 }, (_, day) => {
    const value = 1 - Math.exp(-(day + 3) * pace * size);
    return { by: iso(day), value, low: value * 0.62, high: Math.min(1, value * 1.35 + 0.02) };
  });
}

function events_of(size) {
  const why = plan.visits[0].jobs[0].why;
  return [
    { event: 'swarm_preparation', definition: 'queen cells with a larva and royal jelly in them', course: course(size, 0.035), why },
    { event: 'out_of_room', definition: 'no empty worker cell in the brood space, and supers nine parts full', course: course(size, 0.06), why: why.slice(0, 1) },
    { event: 'stores_short', definition: 'less than 2 kg of stores', course: course(1 - size, 0.02), why: [] },
    { event: 'queen_trouble', definition: 'no eggs and no open brood in two looks', course: course(1, 0.004), why: [] },
    { event: 'winter_mites', definition: 'more than 3 mites per 100 bees in September', course: course(size, 0.012), why: [] },
  ];
}

export const doubts = {
  doubts: [
    {
      colony: 'alder-5',
      name: 'Alder 5',
      reason: { text: 'inspection of 2026-05-04 (8 seams) fits this colony badly and would fit 2026-04-05: was the date meant so?', entries: ['look'], sources: ['wrong_date: invented'] },
    },
  ],
};

export const colonies = {
  today,
  colonies: shapes.map(([key, name, site, site_name, form, size]) => ({
    key, name, site, site_name, hive: `hive-${key}`, hive_name: `hive ${name}`, form, alive: size < 0.3 ? 0.93 : 1,
    odds: events_of(size).slice(0, 2).map((e) => ({ event: e.event, ...e.course[14] })),
    fans: fans_of(size), seen: seen_of(size, key),
  })),
};

export function outlook(key) {
  const shape = shapes.find(([k]) => k === key);
  if (!shape) return undefined;
  const [, name, site, site_name, form, size] = shape;
  return {
    colony: key, name, site, site_name, hive: `hive-${key}`, hive_name: `hive ${name}`, form, today, alive: size < 0.3 ? 0.93 : 1,
    fans: fans_of(size), seen: seen_of(size, key), events: events_of(size), members: 512, effective_sample_size: 143.7,
    learnt: [
      { parameter: 'swarm_inclination', prior_sd: 0.4, posterior_sd: 0.31, contraction: 0.4, contraction_low: 0.2, contraction_high: 0.5 },
      { parameter: 'mite_growth', prior_sd: 0.2, posterior_sd: 0.19, contraction: 0.1, contraction_low: 0, contraction_high: 0.3 },
    ],
    remarks: [{ text: 'The look of 28 May found more bees than was thought likely.', entries: ['01900000-0000-7000-8000-00000000a001'], sources: [] }],
  };
}

// The book of the invented face: enough for every answer to have its shape. What the book really does is tried
// against the program itself, in book.test.mjs.
export const kinds = {
  groups: [
    {
      group: 'seen',
      words: 'What was seen',
      kinds: [{ kind: 'inspection', by_hand: true, schema: { type: 'object', properties: { look: { enum: ['full', 'quick', 'outside'] }, cups_with_egg: { type: 'integer', minimum: 0, maximum: 300, description: 'cells' } }, required: ['look'], 'x-order': ['look', 'cups_with_egg'] } }],
    },
  ],
  names: { colony: [{ key: 'alder-5', name: 'Alder 5' }], site: [{ key: 'withy-meadow', name: 'Withy Meadow' }] },
};
export const told = (entry) => ({ ...entry, counts: true, line: [{ ...entry, counts: true }], known_then: [entry.id], known_now: [entry.id], photos: [] });
export const found = () => ({ entries: Object.values(entries).map((entry) => ({ ...entry, counts: true })), count: Object.keys(entries).length, more: false });
export const registers = { registers: [{ name: 'feeding', title: 'Feeding', says: 'What each colony was fed, and from what source' }] };
export const register = {
  ...registers.registers[0],
  columns: [{ key: 'date', words: 'date' }, { key: 'colony', words: 'colony' }],
  rows: [{ cells: { date: '2026-05-20', colony: 'Alder 5' }, entries: ['01900000-0000-7000-8000-00000000a002'] }],
  remarks: [],
};
export const lines = {
  queens: [{ queen: 'dora', name: 'Dora', line: 'Dora', living: true, inbreeding: 0, scores: { calm: { estimate: 0.2, standard_error: 0.1, reliability: 0.4, scores: 3 } } }],
  traits: [{ trait: 'calm', scores: 3, plainly: 'few scores: read them as an order' }],
};
export const checklists = {
  checklists: [{ what: 'stings', title: 'A stinging accident', steps: [{ words: 'Away from the bees first.', source: 'invented' }], cautions: [{ words: 'Telephone first.', source: 'invented' }] }],
  emergency_number: '112',
};
export const import_maps = { maps: [{ name: 'maps/example.toml', form: 'csv', about: 'one note for each row', map: '[date]\ncolumn = "day"\n' }] };
export const book_check = { entries: 2, sound: true, faults: [], head: 'invented' };
export const standing = {
  as_of: today,
  sites: [{ site: 'withy-meadow', name: 'Withy Meadow', latitude_deg: 52, longitude_deg: -1.5 }],
  hives: [{ hive: 'hive-alder-5', name: 'hive Alder 5', site: 'withy-meadow', type: 'eleven-comb', form: 'upright', empty: false }],
  colonies: [{ colony: 'alder-5', name: 'Alder 5', hive: 'hive-alder-5', hive_name: 'hive Alder 5', site: 'withy-meadow', began: '2025-06-01' }],
};
const range = { low: 0.4, value: 0.6, high: 0.8 };
export const transfer_ways = {
  colony: 'Alder 5', from: 'hive Alder 5', into: 'Long hive', lives_there: '',
  ways: [{ way: 'shaken', possible: true, against: [], brood_kept: range, setback_days: range, days: 1, minutes: 40, needs: ['a sheet'], cautions: ['in warm weather'], sources: ['invented'] }],
};
const two_mornings = (most) => ({ '5': [0, 0], '10': [0, 0], '25': [0, 0], '50': [most / 2, most / 3], '75': [most, most], '90': [most, most], '95': [most, most] });
const some_odds = { value: 0.2, low: 0.1, high: 0.3 };
const supposed = (name, cost) => ({
  name, deeds: name === 'nothing' ? [] : [{ date: today, what: 'treatment, Alder 5: kind thymol' }], deeds_kg: 1, cost_kg: cost, cost_low_kg: cost - 5, cost_high_kg: cost + 5,
  died: some_odds, swarmed: some_odds, surplus_kg: 4, least_stores_kg: 6, bees: 9000, mites: 80, dearer_kg: 3, dearer_low_kg: -1, dearer_high_kg: 9, dearer_in: 0.8, first_better: 0.97,
  why: [{ text: 'inspection of 2031-05-20 (9 seams): dies 12 % with it, 30 % without', entries: [], sources: [] }],
  fans: ['bees', 'brood_cells', 'stores_kg', 'mites'].map((quantity) => ({ quantity, unit: quantity, dates: [today, '2027-04-01'], levels: two_mornings(20) })),
});
export const suppositions = {
  colony: 'alder-5', today, until: '2027-04-01', members: 512, effective_sample_size: 300, ways: [supposed('2026-08-10: treated with thymol for 28 days', -2), supposed('nothing', 1)],
  refused: [{ name: '2026-07-01: split', why: 'it is suspect', remedy: 'ask the inspector' }], remarks: ['short of food: invented'], rests_on: 'Prices: invented.',
};
export const sheet_boxes = {
  site: 'withy-meadow', site_name: 'Withy Meadow', date: today, printed: today, planned: true,
  frames: [{ row: '#1 Alder 5', name: 'Alder 5', colony: 'alder-5', jobs: [{ number: 1, need: 'look-cells/alder-5', what: 'look for queen cells' }],
    printed: [{ set: 'closing', words: '', rows: [[{ name: 'notes', printed: 'notes', share: 2.2, reads: 'text' }]] }], others: [] }],
};
