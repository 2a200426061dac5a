// What the page asks of the program: typed from its own description, and nothing else.
import type { components } from './generated/api';

type Schemas = components['schemas'];
export type Book = Schemas['Book'];
export type Plan = Schemas['Plan'];
export type Visit = Schemas['Visit'];
export type Job = Schemas['Job'];
export type OwnWeek = Schemas['OwnWeek'];
export type Undone = Schemas['Undone'];
export type Reason = Schemas['Reason'];
export type EventOdds = Schemas['EventOdds'];
export type Colonies = Schemas['Colonies'];
export type DoubtedLook = Schemas['DoubtedLook'];
export type ColonySummary = Schemas['ColonySummary'];
export type Outlook = Schemas['Outlook'];
export type EventOutlook = Schemas['EventOutlook'];
export type CoursePoint = Schemas['CoursePoint'];
export type Fan = Schemas['Fan'];
export type SeenMark = Schemas['SeenMark'];
export type Entry = Schemas['Entry'];
export type NoteReply = Schemas['NoteReply'];
export type AnswerReply = Schemas['AnswerReply'];
export type Entries = Schemas['Entries'];
export type EntryTold = Schemas['EntryTold'];
export type EntryAsk = Schemas['EntryAsk'];
export type Kinds = Schemas['Kinds'];
export type Kind = Schemas['Kind'];
export type NamedKey = Schemas['NamedKey'];
export type RegisterKind = Schemas['RegisterKind'];
export type Register = Schemas['Register'];
export type SheetBoxes = Schemas['SheetBoxes'];
export type SheetFrame = Schemas['SheetFrame'];
export type SheetBoxSet = Schemas['SheetBoxSet'];
export type SheetBox = Schemas['SheetBox'];
export type SheetFilledIn = Schemas['SheetFilledIn'];
export type WeekTyped = Schemas['WeekTyped'];
export type ImportMaps = Schemas['ImportMaps'];
export type ImportAsk = Schemas['ImportAsk'];
export type ImportReply = Schemas['ImportReply'];
export type BookCheck = Schemas['BookCheck'];
export type Standing = Schemas['Standing'];
export type TransferWays = Schemas['TransferWays'];
export type Suppositions = Schemas['Suppositions'];
export type TransferWay = Schemas['TransferWay'];
export type Checklist = Schemas['Checklist'];
export type Checklists = Schemas['Checklists'];
export type Lines = Schemas['Lines'];
export type Answer = Schemas['AnswerAsk']['answer'];

// A problem as the program tells it; `title` says what, `detail` where and what to do.
export class Failure extends Error {
  constructor(
    readonly title: string,
    readonly detail: string,
    readonly status: number,
    readonly where = '',
  ) {
    super(title);
  }
}

async function ask<T>(path: string, init: RequestInit = {}): Promise<T> {
  let response: Response;
  try {
    response = await fetch(path, init);
  } catch {
    throw new Failure('', '', 0); // the program does not answer: the words are the page's own
  }
  if (response.ok) return (await response.json()) as T;
  const problem = (await response.json().catch(() => ({}))) as Partial<Schemas['Problem']>;
  throw new Failure(problem.title ?? response.statusText, problem.detail ?? '', response.status, problem.where ?? '');
}

const send = (body: unknown): RequestInit => ({
  method: 'POST',
  headers: { 'Content-Type': 'application/json' },
  body: JSON.stringify(body),
});
const key = encodeURIComponent;

export const read_book = () => ask<Book>('/api/book');
export const read_plan = (days = 14) => ask<Plan>(`/api/plan?days=${days}`);
export const read_colonies = () => ask<Colonies>('/api/colonies');
export const send_own_week = (jobs: { date: string; need: string }[], days: number) => ask<OwnWeek>('/api/own-week', send({ days, jobs }));
export const read_doubts = () => ask<Schemas['Doubts']>('/api/doubts');
export const read_outlook = (colony: string) => ask<Outlook>(`/api/colonies/${key(colony)}`);
export const read_entry = (id: string) => ask<EntryTold>(`/api/entries/${key(id)}`);
// What is asked of the list of entries; an empty part asks for nothing.
export interface EntrySearch {
  text: string;
  kind: string;
  about: string;
  from: string;
  to: string;
  known: string;
}
export function query_of(parts: object): string {
  const said = Object.entries(parts).filter((pair): pair is [string, string] => typeof pair[1] === 'string' && pair[1] !== '');
  return said.length === 0 ? '' : `?${new URLSearchParams(said)}`;
}
export const find_entries = (search: EntrySearch, after = '') => ask<Entries>(`/api/entries${query_of({ ...search, after })}`);
export const send_entry = (entry: EntryAsk) => ask<AnswerReply>('/api/entries', send(entry));
export const send_removal = (id: string, reason: string) => ask<AnswerReply>(`/api/entries/${key(id)}/removal`, send({ reason }));
export const read_kinds = () => ask<Kinds>('/api/kinds');
export const read_registers = () => ask<{ registers: RegisterKind[] }>('/api/registers');
export type Days = { from: string; to: string; known: string };
export const read_register = (name: string, days: Days) => ask<Register>(`/api/registers/${key(name)}${query_of(days)}`);
export const register_file = (name: string, ending: 'csv' | 'pdf', days: Days) => `/api/registers/${key(name)}.${ending}${query_of(days)}`;
export const read_sheet_boxes = (wish: { site: string; date: string; printed: string }) => ask<SheetBoxes>(`/api/sheet-boxes${query_of(wish)}`);
export const send_week = (week: WeekTyped) => ask<AnswerReply>('/api/week-ahead', send(week));
export const send_sheet = (filled: SheetFilledIn) => ask<AnswerReply>('/api/sheet-boxes', send(filled));
export const read_maps = () => ask<ImportMaps>('/api/import-maps');
export const send_draft = (draft: Schemas['DraftAsk']) => ask<Schemas['DraftReply']>('/api/import-map', send(draft));
export const send_import = (file: ImportAsk) => ask<ImportReply>('/api/import', send(file));
export const largest_file = 16 * 1024 * 1024; // quoted as JSON it must stay below 24 MiB
export const read_check = () => ask<BookCheck>('/api/verify', { cache: 'no-store' });
export const read_standing = (date: string) => ask<Standing>(`/api/standing${query_of({ date })}`);
export const read_ways = (colony: string, into: string) => ask<TransferWays>(`/api/colonies/${key(colony)}/transfer-ways${query_of({ into })}`);
export const send_ways = (colony: string, supposing: Schemas['SupposeAsk']) => ask<Suppositions>(`/api/colonies/${key(colony)}/suppositions`, send(supposing));
export const read_checklists = () => ask<Checklists>('/api/checklists');
export const read_lines = () => ask<Lines>('/api/lines');
export const pedigree_address = '/api/pedigree.svg';
export const photo_address = (id: string) => `/api/photos/${key(id)}`;
export const largest_picture = 24 * 1024 * 1024;
// Whether it is a picture the program sees by its bytes.
export const send_photo = (file: File, about: { entry: string; date: string; caption: string }) =>
  ask<AnswerReply>(`/api/photos${query_of({ ...about, name: file.name })}`, { method: 'POST', headers: { 'Content-Type': 'application/octet-stream' }, body: file });
export const send_note = (line: string, keep: boolean) => ask<NoteReply>('/api/notes', send({ line, keep }));
export const send_answer = (need: string, answer: Answer) =>
  ask<AnswerReply>(`/api/needs/${key(need)}`, send({ answer }));
export const sheet_address = (visit: Visit) => `/api/sheet?date=${visit.date}&site=${key(visit.site)}`;
