// Seven days from today on, and what was typed of each.
import { Failure, type WeekTyped } from '../api';
import { words } from '../words';

export const fields = [
  { name: 'max_C', unit: '°C' },
  { name: 'min_C', unit: '°C' },
  { name: 'rain_mm', unit: 'mm' },
  { name: 'wind_m_s', unit: 'm/s' },
  { name: 'gust_m_s', unit: 'm/s' },
] as const;
export type FieldName = (typeof fields)[number]['name'];
export type TypedDay = { date: string; typed: Record<FieldName, string> };

export function days_from(first: string, count = 7): TypedDay[] {
  return Array.from({ length: count }, (_, i) => {
    const day = new Date(`${first}T12:00:00Z`);
    day.setUTCDate(day.getUTCDate() + i);
    return { date: day.toISOString().slice(0, 10), typed: { max_C: '', min_C: '', rain_mm: '', wind_m_s: '', gust_m_s: '' } };
  });
}

// Only what was typed; a comma may stand for the point. Throws a Failure that names the day and the column.
export function typed_days(days: TypedDay[]): WeekTyped['days'] {
  return days.flatMap((day) => {
    const row: WeekTyped['days'][number] = { date: day.date };
    for (const { name } of fields) {
      const text = day.typed[name].trim();
      if (text === '') continue;
      const value = Number(text.replace(',', '.'));
      if (!Number.isFinite(value)) throw new Failure(words.week.no_number(text), words.week.cell(words.day_month(day.date), words.week.column[name]), 400);
      row[name] = value;
    }
    return Object.keys(row).length > 1 ? [row] : [];
  });
}
