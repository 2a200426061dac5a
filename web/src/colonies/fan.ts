// Where the points of a fan lie, and the fan told in words. Days are numbered from 1970-01-01.
import type { CoursePoint, Fan, SeenMark } from '../api';
import { words } from '../words';

export const day_number = (iso: string): number => Math.round(Date.parse(`${iso}T00:00:00Z`) / 86_400_000);
export const day_iso = (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10);

export const main_quantities = ['bees', 'brood_cells', 'stores_kg', 'mites'] as const;

export function fan_of(fans: Fan[], quantity: string): Fan | undefined {
  const found = fans.find((fan) => fan.quantity === quantity);
  return found ?? (quantity === 'mites' ? fans.find((fan) => fan.quantity === 'mites_per_100_bees') : undefined);
}

export interface Frame {
  x: (day: number) => number;
  y: (value: number) => number;
}

export function frame(first: number, last: number, most: number, width: number, height: number, edge: { left: number; right: number; top: number; bottom: number }): Frame {
  const span = Math.max(1, last - first);
  const top = most > 0 ? most : 1;
  return {
    x: (day) => edge.left + ((day - first) / span) * (width - edge.left - edge.right),
    y: (value) => height - edge.bottom - (value / top) * (height - edge.top - edge.bottom),
  };
}

const point = (x: number, y: number) => `${x.toFixed(1)},${y.toFixed(1)}`;

export function line_path(days: number[], values: number[], { x, y }: Frame): string {
  return days.map((day, i) => `${i === 0 ? 'M' : 'L'}${point(x(day), y(values[i] ?? 0))}`).join('');
}

export function band_path(days: number[], low: number[], high: number[], at: Frame): string {
  if (days.length === 0) return '';
  const back = days.map((day, i) => `L${point(at.x(day), at.y(low[i] ?? 0))}`).reverse();
  return `${line_path(days, high, at)}${back.join('')}Z`;
}

// The part of a fan from one day to another.
export function cut(fan: Fan, first: number, last: number): Fan {
  const keep = fan.dates.map((date, i) => [day_number(date), i] as const).filter(([day]) => day >= first && day <= last).map(([, i]) => i);
  const pick = (values: number[]) => keep.map((i) => values[i] ?? 0);
  const { levels } = fan;
  return {
    ...fan,
    dates: keep.map((i) => fan.dates[i] ?? ''),
    levels: {
      '5': pick(levels['5']), '10': pick(levels['10']), '25': pick(levels['25']), '50': pick(levels['50']),
      '75': pick(levels['75']), '90': pick(levels['90']), '95': pick(levels['95']),
    },
  };
}

// Steps of 1, 2 or 5 times a power of ten: at most `most_ticks` above nought.
export function ticks(most: number, most_ticks = 4): number[] {
  if (!(most > 0)) return [0];
  const rough = most / most_ticks;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((m) => m * power).find((s) => s >= rough) ?? 10 * power;
  return Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, i) => i * step);
}

// The first of each month between two days; thinned so that labels do not touch.
export function months(first: number, last: number, most_labels: number): string[] {
  const all: string[] = [];
  const start = new Date(first * 86_400_000);
  for (let month = 1; ; ++month) {
    const iso = new Date(Date.UTC(start.getUTCFullYear(), start.getUTCMonth() + month, 1)).toISOString().slice(0, 10);
    if (day_number(iso) > last) break;
    all.push(iso);
  }
  const every = Math.max(1, Math.ceil(all.length / Math.max(1, most_labels)));
  return all.filter((_, i) => i % every === 0);
}

// The rows of the table behind a plot: every seventh day counted from today, and the days on which something was seen.
export function table_rows(fan: Fan, today: string, seen: SeenMark[]): number[] {
  const seen_days = new Set(seen.map((mark) => mark.date));
  const now = day_number(today);
  return fan.dates.map((_, i) => i).filter((i) => {
    const date = fan.dates[i] ?? '';
    return (day_number(date) - now) % 7 === 0 || seen_days.has(date);
  });
}

export function index_at(fan: Fan, date: string): number {
  return fan.dates.indexOf(date);
}

export function fan_told(fan: Fan, today: string, seen: SeenMark[]): string {
  const number = (value: number | undefined) => words.quantity_number(fan.quantity, value ?? 0);
  const { levels } = fan;
  const told: string[] = [];
  const now = index_at(fan, today);
  if (now >= 0)
    told.push(words.fan_now(number(levels['10'][now]), number(levels['90'][now]), number(levels['50'][now]), words.quantity_unit_name(fan.quantity, fan.unit)));
  const end = fan.dates.length - 1;
  if (end > now && end >= 0)
    told.push(words.fan_then(words.day_month(fan.dates[end] ?? today), number(levels['10'][end]), number(levels['90'][end])));
  const last = seen.at(-1);
  if (last) told.push(words.fan_seen(number(last.value), words.day_month(last.date)));
  return told.join(' ');
}

export function marks_of(seen: SeenMark[] | undefined, quantity: string): SeenMark[] {
  return (seen ?? []).filter((mark) => mark.quantity === quantity).sort((a, b) => a.date.localeCompare(b.date));
}

// Some dates of a course to say aloud or to write in a table: today, each seventh day, the last.
export function course_rows(course: CoursePoint[]): CoursePoint[] {
  return course.filter((_, i) => i % 7 === 0 || i === course.length - 1);
}
