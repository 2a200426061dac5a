// What can be entered, read once and again after the book has changed; and what follows from it for one entry.
import { read_kinds, type Kind, type Kinds } from './api';
import { words } from './words';

export const catalogue = $state<{ kinds: Kinds | null }>({ kinds: null });
export async function load_kinds(): Promise<void> {
  catalogue.kinds = await read_kinds();
}

export interface Field {
  name: string;
  label: string;
  unit: string; // in words; empty where the label says it
  needed: boolean;
  control: 'choice' | 'signs' | 'key' | 'keys' | 'flag' | 'number' | 'whole' | 'date' | 'text' | 'long_text';
  choices: string[];
  key_of: string; // what a key names: colony, site, ...
  brings_in: boolean; // the key is new with the entry
  low: number;
  high: number;
}

interface Property {
  type?: string;
  enum?: string[];
  format?: string;
  description?: string;
  minimum?: number;
  maximum?: number;
  items?: Property;
  'x-key-of'?: string;
}
const long_texts = new Set(['remark', 'text', 'question', 'access', 'reason', 'description']);

function control_of(name: string, property: Property): Field['control'] {
  if (property.enum) return 'choice';
  if (property.type === 'array') return property.items?.enum ? 'signs' : 'keys';
  if (property.type === 'boolean') return 'flag';
  if (property.type === 'integer') return 'whole';
  if (property.type === 'number') return 'number';
  if (property.format === 'date') return 'date';
  if (property['x-key-of']) return 'key';
  return long_texts.has(name) ? 'long_text' : 'text';
}

export const kind_named = (name: string): Kind | undefined =>
  catalogue.kinds?.groups.flatMap((group) => group.kinds).find((kind) => kind.kind === name);

export function fields_of(kind: Kind): Field[] {
  const schema = kind.schema as { properties?: Record<string, Property>; required?: string[]; 'x-order'?: string[] };
  const properties = schema.properties ?? {};
  const order = schema['x-order'] ?? Object.keys(properties);
  return order.flatMap((name) => {
    const property = properties[name];
    if (!property) return [];
    const label = words.entry.field(name);
    const unit = words.entry.unit(property.description ?? '');
    return {
      name,
      label,
      unit: label.toLowerCase().includes(unit.toLowerCase()) ? '' : unit,
      needed: schema.required?.includes(name) ?? false,
      control: control_of(name, property),
      choices: property.enum ?? property.items?.enum ?? [],
      key_of: property['x-key-of'] ?? property.items?.['x-key-of'] ?? '',
      brings_in: kind.brings_in === name,
      low: property.minimum ?? -Infinity,
      high: property.maximum ?? Infinity,
    };
  });
}

export function name_of_key(key_of: string, key: string): string {
  return catalogue.kinds?.names[key_of]?.find((one) => one.key === key)?.name ?? key;
}

// What was said in one field, in plain words.
export function said(field: Field | undefined, value: unknown): string {
  if (value === undefined || value === null) return '';
  if (Array.isArray(value)) return value.map((one) => said(field, one)).join(', ');
  if (typeof value === 'boolean') return value ? words.entry.yes : words.entry.no;
  if (typeof value === 'number') return field?.unit ? words.amount(value, field.unit) : words.number(value);
  const text = typeof value === 'object' ? JSON.stringify(value) : String(value);
  if (field?.control === 'choice' || field?.control === 'signs') return words.entry.choice(text);
  if (field?.control === 'key' || field?.control === 'keys') return name_of_key(field.key_of, text);
  if (field?.control === 'date') return words.with_dates(text);
  // Without the catalogue: a word of a list is small letters and underscores, and nothing that a keeper writes is.
  return field === undefined && /^[a-z]+(_[a-z]+)+$/.test(text) ? words.entry.choice(text) : text;
}

// The fields of an entry in the order of its kind, each with its label and what was said.
export function told(kind: string, fields: Record<string, unknown>): { name: string; label: string; text: string }[] {
  const known = kind_named(kind);
  const listed = known ? fields_of(known) : [];
  const rest = Object.keys(fields).filter((name) => !listed.some((field) => field.name === name));
  return [
    ...listed.filter((field) => field.name in fields).map((field) => ({ name: field.name, label: field.label, text: said(field, fields[field.name]) })),
    ...rest.map((name) => ({ name, label: words.entry.field(name), text: said(undefined, fields[name]) })),
  ];
}
