// The words of what lies beside the entries in the place Book: a filled sheet, queens, photos, checklists, other forms, and
// what was known then.
const count = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;
const signed = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 2, minimumFractionDigits: 2, signDisplay: 'exceptZero' });
const two = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 2, minimumFractionDigits: 2 });
const three = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 3 });

export const sheet_words = {
  title: 'Key in a filled sheet',
  lead: 'The boxes stand in the order of the printed sheet. An empty box makes no entry; everything is shown back before it is kept, all of it or none.',
  way: 'Key in a sheet',
  site: 'Site',
  date: 'Day of the visit',
  printed: 'Printed on, if on another day',
  show: 'Show its boxes',
  choose: 'Choose a site',
  not_planned: (day: string) => `The plan of ${day} has no such visit: here are the colonies of the site, with every box that can be filled in.`,
  planned: (day: string) => `In the order of the plan of ${day}.`,
  off_sheet: 'Not on the sheet',
  more: 'More was written for this colony',
  nothing_to_write: 'There is nothing to write down for this.',
  nobody: 'No colony stands at this site.',
  signs_none: 'none seen',
  signs_some: (n: number) => count(n, 'sign', 'signs'),
  signs_unsaid: 'nothing said',
  put_off_until: 'put off until',
  until_day: 'the day',
  answers: ['done', 'not done', 'rained off'],
  read: 'Read it back',
  understood: (n: number) => `${count(n, 'entry', 'entries')} would be written. Nothing is kept yet.`,
  keep: 'Keep them all',
  change: 'Change the sheet',
  kept: (n: number) => `${count(n, 'entry', 'entries')} written in the book. The plan was made anew.`,
  plan: 'The new plan',
  another: 'Key in another sheet',
  refused: 'Nothing was written:',
  in_box: (row: string, box: string) => `${row}, ${box}`,
  empty: 'Nothing is filled in.',
};

export const week_words = {
  title: 'The week ahead',
  way: 'Weather of the week ahead',
  lead: 'Copy the forecast, one row a day; leave empty what you do not know. Without it the plan reckons with usual weather, and its odds are wider.',
  site: 'For',
  all_sites: 'all sites',
  day: 'Day',
  column: { max_C: 'highest', min_C: 'lowest', rain_mm: 'rain', wind_m_s: 'wind', gust_m_s: 'gusts' },
  cell: (day: string, column: string) => `${day}, ${column}`,
  keep: 'Keep the forecast',
  kept: (n: number) => `${count(n, 'day', 'days')} of forecast written in the book. The plan was made anew.`,
  empty: 'Nothing is filled in.',
  no_number: (text: string) => `“${text}” is no number`,
};

export const lines_words = {
  title: 'Lines',
  way: 'Lines of queens',
  lead: 'The queens of the book, who descends from whom, and whom to mate with whose drones. Descent, kinship and inbreeding are worked out from what is written of queens and their matings.',
  none: 'No queen is in the book yet.',
  how: 'Write “New queen” and “Queen mated”; scores name the queen that they are of.',
  first: 'Write the first one',
  queens: 'Queens',
  queen: 'Queen',
  line: 'Line',
  mother: 'Mother',
  unknown: 'not known',
  inbreeding: 'Inbreeding',
  living: 'Lives',
  yes: 'yes',
  no: 'no',
  share: (value: number) => three.format(value),
  score: (value: number) => signed.format(value),
  estimate: (value: number, error: number | undefined) => `${signed.format(value)}${error === undefined ? '' : ` ± ${two.format(error)}`}`,
  reliability: (value: number, scores: number) => `reliability ${two.format(value)}, ${count(scores, 'score', 'scores')} of her own`,
  scores_note: 'Each score is cleared of site and year, in its own unit, better above 0; ± is one standard error.',
  drawn: 'Drawn',
  drawing: (n: number) => `The pedigree of ${count(n, 'queen', 'queens')}; the table above says the same in words.`,
  alone: 'Open the drawing by itself',
  matings: 'Suggested matings',
  no_matings: 'There is no unmated queen, or no drones of a mated one, to advise on.',
  chosen: 'Taken together the best:',
  none_chosen: 'None of them is advised.',
  cross: 'Mating',
  daughters: 'Inbreeding of the daughters',
  expected: 'Expected score',
  fits: 'Within the limit',
  limit: (value: number) => `Daughters may be inbred by ${three.format(value)} at most.`,
  why: 'Why',
};

export const photo_words = {
  title: 'Photos',
  none: 'No photo belongs to this entry yet.',
  file: 'A photo (JPEG, PNG or WebP)',
  caption: 'What is to be seen',
  add: 'Add the photo',
  adding: 'Adding the photo …',
  kept: 'The photo is kept beside the book.',
  choose: 'Choose a photo first.',
  too_large: 'The picture is too large',
  too_large_detail: 'Send one of at most 24 MB.',
  alt: (what: string, day: string) => `${what || 'Photo'}, ${day}`,
};

export const checklist_words = {
  title: 'What to do at once',
  way: 'Checklists',
  lead: (number: string) => `Read before it is needed. In danger of life telephone ${number} first. Nothing here is kept: write what has happened as “Something urgent”, and the plan is made anew.`,
  caution: 'Caution',
  now: 'At once:',
  plan: 'Then see the new plan',
  write: 'Write that it has happened',
  all: 'All checklists',
  sources: 'Sources',
  see: 'What to do at once',
};

export const export_words = {
  title: 'The book in other forms',
  way: 'Hand on or keep safe',
  lead: 'Everything leaves as a file that can be read without this program. A file on another disk is a copy that survives this one.',
  download: 'Download',
  forms: [
    { address: '/api/export.zip', name: 'Everything, in one zip', says: 'The journal, every register as CSV, places, dates and photos, with a read-me. The one to keep safe.' },
    { address: '/api/export.jsonl', name: 'The journal (JSON Lines)', says: 'Every entry, one a line, corrected ones too, each with its fingerprint. Can be imported into another book.' },
    { address: '/api/export.geojson', name: 'Places (GeoJSON)', says: 'Sites and what stands on them, for any map.' },
    { address: '/api/export.ics', name: 'Dates (iCalendar)', says: 'Ends of treatments, withdrawals, quarantines and agreements, for any calendar.' },
  ],
};

export const known_words = {
  field: 'As it was known on',
  hint: 'leave empty for now',
  then: (day: string) => `As it was known on ${day}: what was written later is left out.`,
  not_now: 'Does not count any more:',
  see: 'see what is known now',
  column: 'Known',
  both: 'then and now',
  only_then: 'then only',
  only_now: 'now only',
  compared: (day: string, then: number, now: number) =>
    then + now === 0 ? `On ${day} the same was known as now.` : `${count(then, 'row was', 'rows were')} known so on ${day} only, ${count(now, 'row is', 'rows are')} known so now only.`,
  nothing_then: 'Nothing was known of this then, and nothing is now.',
  files_then: 'as it was known then',
};
