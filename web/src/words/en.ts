// Every word of the page in English, with its units. Another language is another file of this shape.
import { checklist_words, export_words, known_words, lines_words, photo_words, sheet_words, week_words } from './en_book';
import { check_words, import_words, standing_words, suppose_words, transfer_words } from './en_import';
import { choice_words, field_words, kind_words, unit_words } from './en_entries';

const locale = 'en-GB';
const day_of = (iso: string) => new Date(`${iso}T00:00:00Z`);
const dates = (options: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat(locale, { timeZone: 'UTC', ...options });
const whole = new Intl.NumberFormat(locale, { maximumFractionDigits: 0 });
const three = new Intl.NumberFormat(locale, { maximumSignificantDigits: 3 });
const tenth = new Intl.NumberFormat(locale, { maximumFractionDigits: 1 });
const exact_tenth = new Intl.NumberFormat(locale, { minimumFractionDigits: 1, maximumFractionDigits: 1 });
const any_number = new Intl.NumberFormat(locale, { maximumFractionDigits: 6, useGrouping: false });
const compact = new Intl.NumberFormat(locale, { maximumSignificantDigits: 3 });

const weekday = dates({ weekday: 'long' });
const day_month = dates({ day: 'numeric', month: 'long' });
const short_day = dates({ day: 'numeric', month: 'short' });
const full_day = dates({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' });
const month_name = dates({ month: 'short' });
const instant = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', year: 'numeric', hour: '2-digit', minute: '2-digit' });

const odds_number = (share: number) => (share > 0 && share < 0.01 ? '<1' : share < 1 && share > 0.99 ? '>99' : whole.format(share * 100));
const percent = (share: number) => `${odds_number(share)} %`;
const count = (n: number, one: string, many: string) => `${whole.format(n)} ${n === 1 ? one : many}`;
const plain = (word: string) => word.replaceAll('_', ' ');
const stopped = (text: string) => (/[.!?]$/.test(text) ? text : `${text}.`);
const sentence = (text: string) => text.charAt(0).toLocaleUpperCase(locale) + text.slice(1);

function duration(minutes: number): string {
  const rounded = Math.round(minutes);
  if (rounded < 90) return `${rounded} min`;
  const hours = Math.floor(rounded / 60);
  const rest = rounded % 60;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

export const words = {
  language: 'en',
  name: 'beegarth',
  skip: 'Skip to the page',
  places: 'Places',
  place: { today: 'Today', colonies: 'Colonies', book: 'Book' },

  // numbers, dates, odds
  percent,
  hour: (hour: number) => `${Math.floor(hour)}:${String(Math.round((hour % 1) * 60)).padStart(2, '0')}`,
  number: (value: number) => any_number.format(value),
  amount: (value: number, unit: string) => `${any_number.format(value)}${unit === '°' ? '' : '\u00a0'}${unit}`,
  odds: (value: number, low: number, high: number) => `${percent(value)} (${odds_number(low)} to ${odds_number(high)} %)`,
  odds_aloud: (value: number, low: number, high: number) =>
    `${percent(value)}, between ${percent(low)} and ${percent(high)}`,
  odds_note: 'Odds stand with their 80 % interval in brackets.',
  sentence,
  minutes: duration,
  // A text of the program with the words of its lists and kinds as one says them.
  plainly: (text: string) => text.replace(/\b[a-z]+(_[a-z]+)+\b/g, plain),
  // A text of the program with its dates as one says them.
  with_dates: (text: string | undefined) =>
    (text ?? '').replace(/\b\d{4}-\d\d-\d\d\b/g, (iso) => `${day_month.format(day_of(iso))} ${iso.slice(0, 4)}`),
  weekday: (iso: string) => weekday.format(day_of(iso)),
  day_month: (iso: string) => day_month.format(day_of(iso)),
  short_day: (iso: string) => short_day.format(day_of(iso)),
  full_day: (iso: string) => full_day.format(day_of(iso)),
  weekday_day: (iso: string) => `${weekday.format(day_of(iso))} ${day_month.format(day_of(iso))}`,
  month: (iso: string) => month_name.format(day_of(iso)),
  quantity_number: (quantity: string, value: number) => (quantity === 'stores_kg' ? exact_tenth : value < 10 ? tenth : three).format(value),
  tick: (value: number) => compact.format(value),

  // states of the page
  waiting: 'Reckoning …',
  no_answer: 'The program does not answer',
  no_answer_detail: 'Is it still running? Start it again with “beegarth serve”, then load this page anew.',
  again: 'Try again',
  nothing_here: 'There is no such place here.',

  today: {
    title: (iso: string) => full_day.format(day_of(iso)),
    rest: 'Rest, and let them be: nothing is worth a visit in these days.',
    lead: (weekday_day: string, site: string, start: string, end: string) => `Next: ${site} on ${weekday_day}, ${start}–${end}.`,
    lead_now: (site: string, start: string, end: string) => `Go to ${site} today, ${start}–${end}.`,
    sum: (visits: number, jobs: number, minutes: number) =>
      `${count(visits, 'visit', 'visits')} and ${count(jobs, 'job', 'jobs')} by the end of the plan; ${duration(minutes)} of work, travel apart.`,
    first_from_home: 'First of all, from home',
    at_home: 'At home, when it suits',
    write_down: 'What was done or seen is still to be written: complete the line below, read it back and keep it.',
    visits: 'Where to go',
    travel: (minutes: number) => `${duration(minutes)} to get there`,
    fit: 'Fit for opening',
    take: 'Take',
    caution: 'Caution',
    people: (n: number) => `takes ${n} people`,
    last_in_round: 'after every other colony',
    why: 'Why',
    rests_on: 'Rests on',
    sources: 'Sources',
    by: (iso: string) => `by ${short_day.format(day_of(iso))}`,
    window: (earliest: string, latest: string) =>
      `Worth doing from ${day_month.format(day_of(earliest))} to ${day_month.format(day_of(latest))}.`,
    if_lost: (day: string, then: string) => `If ${day} is lost: ${stopped(then)}`,
    sheet: 'Sheet to print (PDF)',
    sheet_for: (site: string, day: string) => `for ${site}, ${day}`,
    access: 'Getting in',
    grid: 'Grid reference for an emergency call',
    answers: (job: string) => `What became of it: ${job}`,
    done: 'Done',
    skipped: 'Not done',
    rained_off: 'Rained off',
    kept: (job: string, answer: string) => `Written in the book: ${job}: ${answer}. The plan was made anew.`,
    because: (reason: string | undefined) => `Left because: ${(reason ?? '').replace(/[.]$/, '')}.`,
    undone: 'Left undone',
    undone_none: 'Nothing is left undone.',
    remarks: 'Said about this plan',
  },

  own_week: {
    title: 'A week of your own, held beside the plan',
    lead: 'Put each job on the day that you mean, or leave it. The same reckoning says what your week costs more than the plan. Nothing is written.',
    not_at_all: 'not at all',
    as_planned: 'as planned',
    hold: 'Hold it beside the plan',
    costs: (kg: number) => (kg < 0.05 ? 'It costs no more than the plan.' : `It costs ${kg.toFixed(1)} kg of honey more than the plan.`),
    does_not_fit: 'Does not fit on its day',
    left_out: 'The plan does besides',
  },

  forms: { title: 'To take along', calendar: 'Visits for a calendar (iCalendar)', gpx: 'The way, for a map (GPX)', packing: 'What to pack' },

  note: {
    title: 'Write in the book',
    label: 'One line, as you would write it in a notebook',
    read: 'Read it back',
    understood: 'This is what would be written. Nothing is kept yet.',
    keep: 'Keep it',
    change: 'Change the line',
    kept: (n: number) => `${count(n, 'entry', 'entries')} written in the book. The plan was made anew.`,
  },

  entry: {
    title: 'Entry',
    close: 'Close',
    happened: 'Happened',
    written: 'Written',
    who: 'By',
    superseded: 'A later entry corrects this one.',
    removed: 'This entry was taken back.',
    in_book: 'Show it in the book',
    open: (id: string) => `entry ${id.length > 13 ? `…${id.slice(-6)}` : id}`,
    field: (name: string): string => field_words[name] ?? sentence(plain(name.replace(/_(kg|mm|cm|m|g|km|h|pct|C|deg|m2|m_s|W_K)$/, ''))),
    kind: (name: string): string => kind_words[name] ?? sentence(plain(name)),
    unit: (unit: string): string => unit_words[unit] ?? unit,
    choice: (word: string): string => choice_words[word] ?? plain(word),
    yes: 'yes',
    no: 'no',
  },

  book: {
    title: 'Book',
    search: 'Search the book',
    text: 'Words',
    text_hint: 'in what was said, a name or a remark',
    kind: 'Kind',
    every_kind: 'All but the weather',
    really_every_kind: 'Everything, the weather too',
    all_of: (group: string) => `${group}: all`,
    about: 'Colony or site',
    all_about: 'All of them',
    sites: 'Sites',
    colonies: 'Colonies',
    ended: (name: string) => `${name} (ended)`,
    from: 'From',
    to: 'To',
    found: (n: number) => (n === 0 ? 'No entry fits.' : `${count(n, 'entry', 'entries')}, newest first.`),
    more: 'Show older entries',
    write: 'Write an entry',
    registers: 'Registers',
    back: 'All entries',
    all_registers: 'All registers',
    corrected: 'Corrected:',
    see_correction: 'see what stands in its place',
    taken_back: 'Taken back:',
    see_removal: 'see when and why',
    corrects: 'Corrects an earlier entry',
    struck: 'does not count',

    // one entry
    as_entered: (written: string) => `As entered on ${instant.format(new Date(written))}`,
    as_corrected: (written: string) => `As corrected on ${instant.format(new Date(written))}`,
    known_now: 'What is known now',
    known_until: (written: string) => `Known so until ${instant.format(new Date(written))}`,
    line: 'As it was known, then and now',
    said: 'What was said',
    day: 'Day',
    changed: 'changed',
    back_on: (written: string, reason: string) => `Taken back on ${instant.format(new Date(written))}${reason ? `: ${stopped(reason)}` : '.'}`,
    back_undone: 'That was itself undone.',
    nothing_counts: 'Nothing of it counts now. It stays in the book.',
    one_of_two: 'Two corrections count side by side: correct or take back one of them.',
    correct: 'Correct',
    take_back: 'Take back',
    reason: 'Why is it taken back?',
    leave: 'Leave it',
    kept: 'Written in the book.',
    kept_correction: 'Written in the book. The entry before it stays, struck.',
    kept_removal: 'Taken back. The entry stays in the book, struck.',

    // the form
    new_title: 'Write an entry',
    new_lead: 'What is it about?',
    other_kind: 'Another kind of entry',
    correct_title: (kind: string) => `Correct: ${kind}`,
    correct_lead: 'What you write here stands in its place from now on. What was written before stays in the book, struck.',
    happened: 'Day',
    hour: 'Hour, if it matters',
    hour_hint: 'like 13:30',
    needed: 'needed',
    not_said: 'not said',
    keep: 'Keep it in the book',
    no_names: 'There is none in the book yet.',
    new_key: 'a short key of your own, like alder-5; it never changes',
    range: (low: number, high: number) => `${compact.format(low)} to ${compact.format(high)}`,
    fault_needed: 'This is needed.',
    fault_number: 'This is not a number.',
    fault_whole: 'This is not a whole number.',
    fault_range: (low: number, high: number) => `Give ${compact.format(low)} to ${compact.format(high)}.`,
    fault_hour: 'Write an hour like 13:30.',
    faults: (n: number) => `${count(n, 'field wants', 'fields want')} another look. Nothing was written.`,
    refused: 'Nothing was written:',

    // registers
    registers_lead: 'Each from the entries that count today, to show, to print or to hand on.',
    span_days: 'Days',
    show: 'Show these days',
    csv: 'As CSV',
    pdf: 'To print (PDF)',
    rows: (n: number) => count(n, 'row', 'rows'),
    nothing: 'Nothing is entered for these days.',
    rests_on: 'Entries',
    remarks: 'What to mind',
    whole_book: 'The whole book',
    between: (from: string, to: string) =>
      [from && `from ${day_month.format(day_of(from))} ${from.slice(0, 4)}`, to && `to ${day_month.format(day_of(to))} ${to.slice(0, 4)}`].filter(Boolean).join(' '),
    as_of: (iso: string) => `As the book stood on ${day_month.format(day_of(iso))} ${iso.slice(0, 4)}`,
  },

  doubts: {
    title: 'Written down right?',
    lead: 'Each of these looks fits its colony or its day badly, and another one well. Nothing is changed unless you correct the entry.',
    none: 'No look is likelier written under a wrong day or colony than as it stands.',
    asking: 'Asking whether every look fits its day and its colony …',
  },
  sheet: sheet_words,
  week: week_words,
  lines: lines_words,
  photo: photo_words,
  checklist: checklist_words,
  exports: export_words,
  known: known_words,
  imports: import_words,
  check: check_words,
  standing: standing_words,
  transfer: transfer_words,
  suppose: suppose_words,

  colonies: {
    suspect: 'Suspect: nothing to or from it until the inspector has cleared it',
    title: 'Colonies',
    none: 'No colony is in the book yet.',
    lead: (n: number) =>
      `${count(n, 'colony', 'colonies')}. Each column has one scale, so heights can be compared down the page. Below each, the two likeliest events of those by which something would be lost; the others stand on the colony’s own page.`,
    span: (from: string, to: string) => `From ${day_month.format(day_of(from))} to ${day_month.format(day_of(to))}.`,
    scale: (most: string, quantity: string) => `0–${most}${quantity === 'stores_kg' ? ' kg' : ''}`,
    key: 'Dark band: as likely as not (50 %). Light band: four times in five (80 %). Line: the middle. Ring: what was written down, before what was learnt of how this keeper’s figures run. Dotted: today.',
    table: 'Show as a table',
    plots: 'Show as plots',
    plot: 'Show as a plot',
    all_table: 'All colonies today: the middle, with the 80 % interval',
    colony: 'Colony',
    at: (hive: string, site: string) => `${hive}, ${site}`,
    alive: (share: number) => `alive ${percent(share)}`,
    events: 'To come',
    form: { upright: 'upright hive', horizontal: 'horizontal hive' },
    back: 'All colonies',
    unknown: '–',
  },

  colony: {
    past_and_outlook: 'Past and outlook',
    events: 'What may happen',
    seen: 'Seen',
    date: 'Date',
    middle: 'Middle',
    half: '50 %',
    most: '80 %',
    by: 'By',
    value: 'Odds',
    interval: '80 % interval',
    table_note: 'Every seventh day, today, and the days on which something was seen.',
    definition: 'An inspection would find:',
    today: 'today',
    learnt: 'What the entries taught',
    learnt_none: 'Nothing yet: this colony is taken for a usual one.',
    parameter: 'Trait',
    known_better: 'Known better than before, by (80 % interval for all together)',
    learnt_together:
      'How well mites breed, how many are carried in and how many are found on the board are learnt together: counts tell the product of the three, not the parts.',
    remarks: 'Remarks',
    members: (members: number, effective: number) =>
      `${whole.format(members)} possible courses are followed; the entries leave the weight of about ${three.format(effective)} of them.`,
  },

  quantity: {
    bees: 'Bees',
    brood_cells: 'Brood',
    stores_kg: 'Stores',
    mites: 'Mites',
    mites_per_100_bees: 'Mites per 100 bees',
  } as Record<string, string>,
  quantity_unit: {
    bees: 'bees',
    brood_cells: 'cells of brood',
    stores_kg: 'kg of stores',
    mites: 'mites',
    mites_per_100_bees: 'mites per 100 bees',
  } as Record<string, string>,
  quantity_measure: {
    bees: 'adults',
    brood_cells: 'cells',
    stores_kg: 'kg',
    mites: 'number',
    mites_per_100_bees: '',
  } as Record<string, string>,
  quantity_name: (quantity: string): string => words.quantity[quantity] ?? plain(quantity),
  quantity_measure_name: (quantity: string, unit: string): string => words.quantity_measure[quantity] ?? unit,
  quantity_unit_name: (quantity: string, unit: string): string => words.quantity_unit[quantity] ?? unit,
  event: {
    out_of_room: 'out of room',
    swarm_preparation: 'charged or sealed queen cells',
    stores_short: 'short of stores',
    queen_trouble: 'trouble with the queen',
    supers_full: 'supers full',
    honey_to_take: 'honey to take',
    death_of_the_colony: 'death of the colony',
    too_small_for_the_winter: 'too few bees for winter',
    winter_mites: 'too many mites for winter',
  } as Record<string, string>,
  event_name: (event: string): string => words.event[event.replaceAll(' ', '_')] ?? plain(event),

  // a plot, told
  fan_now: (low: string, high: string, middle: string, unit: string) =>
    `Today between ${low} and ${high} ${unit} four times in five, the middle ${middle}.`,
  fan_then: (day: string, low: string, high: string) => `On ${day} between ${low} and ${high}.`,
  fan_seen: (value: string, day: string) => `Last seen: ${value} on ${day}.`,
  course_told: (event: string, parts: string[]) => `Odds of ${event}: ${parts.join('; ')}.`,
  course_part: (iso: string, odds: string) => `by ${short_day.format(day_of(iso))} ${odds}`,
};
export type Words = typeof words;
