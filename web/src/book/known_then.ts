// A register as it was known then beside the same as it is known now, row by row.
import type { Register } from '../api';

type Row = Register['rows'][number];
export interface KnownRow extends Row {
  known: 'both' | 'then' | 'now';
}
export interface Compared {
  rows: KnownRow[];
  only_then: number;
  only_now: number;
}

const told = (row: Row) => JSON.stringify(Object.entries(row.cells).sort());

// Rows that say the same are one. Of the others, those known then stand before the first of now that comes after them.
export function compared(then: Register, now: Register): Compared {
  const left = now.rows.map((row) => ({ row, told: told(row) }));
  const rows: KnownRow[] = [];
  for (const row of then.rows) {
    const at = left.findIndex((one) => one.told === told(row));
    if (at < 0) {
      rows.push({ ...row, known: 'then' });
      continue;
    }
    for (const passed of left.splice(0, at)) rows.push({ ...passed.row, known: 'now' });
    rows.push({ ...(left.shift()?.row ?? row), known: 'both' });
  }
  for (const { row } of left) rows.push({ ...row, known: 'now' });
  return { rows, only_then: rows.filter((row) => row.known === 'then').length, only_now: rows.filter((row) => row.known === 'now').length };
}
