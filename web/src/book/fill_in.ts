// From what stands in a form to the payload of an entry and back; and what is wrong with it before it is sent.
import type { Field } from '../kinds.svelte';
import { words } from '../words';

export type Values = Record<string, string | string[]>;

const is_list = (field: Field) => field.control === 'signs' || field.control === 'keys';
const number_of = (text: string) => Number(text.trim().replace(',', '.').replace('−', '-'));

export function values_of(fields: Field[], payload: Record<string, unknown> = {}): Values {
  const shown = (value: unknown) => (typeof value === 'boolean' ? (value ? 'yes' : 'no') : value === undefined || value === null ? '' : String(value));
  return Object.fromEntries(
    fields.map((field) => {
      const value = payload[field.name];
      return [field.name, is_list(field) ? (Array.isArray(value) ? value.map(String) : []) : shown(value)];
    }),
  );
}

function fault_of(field: Field, value: string | string[]): string {
  if (typeof value !== 'string') return '';
  if (value.trim() === '') return field.needed ? words.book.fault_needed : '';
  if (field.control !== 'number' && field.control !== 'whole') return '';
  const number = number_of(value);
  if (!Number.isFinite(number)) return words.book.fault_number;
  if (field.control === 'whole' && !Number.isInteger(number)) return words.book.fault_whole;
  return number < field.low || number > field.high ? words.book.fault_range(field.low, field.high) : '';
}

export function faults_of(fields: Field[], values: Values): Record<string, string> {
  return Object.fromEntries(fields.map((field) => [field.name, fault_of(field, values[field.name] ?? '')] as const).filter(([, fault]) => fault !== ''));
}

// An empty field was not said and is left out.
export function payload_of(fields: Field[], values: Values): Record<string, unknown> {
  const said: Record<string, unknown> = {};
  for (const field of fields) {
    const value = values[field.name] ?? '';
    if (typeof value !== 'string') {
      if (value.length > 0) said[field.name] = value;
    } else if (value.trim() !== '') {
      if (field.control === 'flag') said[field.name] = value === 'yes';
      else if (field.control === 'number' || field.control === 'whole') said[field.name] = number_of(value);
      else said[field.name] = value; // as it stands: a correction changes nothing that was left alone
    }
  }
  return said;
}

// "13:30" or "13" as 13.5; nothing where it is no hour.
export function hour_of(text: string): number | undefined {
  const parts = /^(\d{1,2})(?:[:.](\d\d))?$/.exec(text.trim());
  const hour = Number(parts?.[1] ?? NaN) + Number(parts?.[2] ?? 0) / 60;
  return hour <= 24 && Number(parts?.[2] ?? 0) < 60 ? hour : undefined;
}
