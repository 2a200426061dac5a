// A file of the keeper's own, read in the browser: its text, what it is, and beside which step a problem stands.
import { Failure, largest_file, type ImportAsk } from '../api';
import { words } from '../words';

export type Form = ImportAsk['form'];
export type Step = 'file' | 'map' | 'try';
export type Deed = 'draft' | 'try' | 'keep';
export interface OwnFile {
  name: string;
  text: string;
}

// Throws a Failure. A byte order mark stays: the program knows it.
export async function read_own(file: File): Promise<OwnFile> {
  if (file.size > largest_file) throw new Failure(words.imports.too_large, words.imports.too_large_detail(file.name), 413);
  let bytes: ArrayBuffer;
  try {
    bytes = await file.arrayBuffer();
  } catch {
    throw new Failure(words.imports.unreadable, file.name, 400);
  }
  if (bytes.byteLength === 0) throw new Failure(words.imports.empty, file.name, 400);
  try {
    return { name: file.name, text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    throw new Failure(words.imports.not_utf8, words.imports.not_utf8_detail(file.name), 400);
  }
}

export function form_of(name: string): Form {
  if (/\.(geojson|json)$/i.test(name)) return 'geojson';
  if (/\.ics$/i.test(name)) return 'calendar';
  return /\.(jsonl|ndjson)$/i.test(name) ? 'jsonl' : 'csv';
}

export function step_of(failure: Failure, file: string, deed: Deed): Step {
  const { where } = failure;
  if (where === 'map' || where === 'kind' || /^mapping(:\d+)?$/.test(where)) return 'map';
  if (deed !== 'keep' && (where === 'file' || where === 'form' || where === file || where.startsWith(`${file}:`))) return 'file';
  return deed === 'draft' ? 'map' : 'try';
}

// The place said as a keeper says it.
export function placed(failure: Failure): Failure {
  if (!failure.where) return failure;
  const rest = failure.detail.startsWith(failure.where) ? failure.detail.slice(failure.where.length) : '';
  const in_form = ['file', 'form', 'map', 'kind', 'text'].includes(failure.where); // it stands beside that very part
  const detail = in_form ? words.sentence(rest.replace(/^: /, '')) : words.imports.place(failure.where) + rest;
  return new Failure(failure.title, detail, failure.status, failure.where);
}
