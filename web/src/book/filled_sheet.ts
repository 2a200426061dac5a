// What was written in the boxes of a sheet: by row, then by box.
import type { SheetBoxes, SheetBoxSet, SheetFrame } from '../api';

export type Filled = Record<string, Record<string, string>>;

const safe = (text: string) => text.replace(/[^A-Za-z0-9]+/g, (odd) => `-${[...odd].map((c) => c.codePointAt(0)?.toString(36)).join('')}-`);
export const box_id = (row: string, box: string) => `box${safe(row)}--${safe(box)}`;

export const all_sets = (frame: SheetFrame): SheetBoxSet[] => [...frame.printed, ...frame.others];

// In the order of the sheet; an empty box is left out.
export function written_in(sheet: SheetBoxes, filled: Filled): { row: string; box: string; value: string }[] {
  return sheet.frames.flatMap((frame) =>
    all_sets(frame)
      .flatMap((set) => set.rows.flat())
      .map((box) => ({ row: frame.row, box: box.name, value: (filled[frame.row]?.[box.name] ?? '').trim() }))
      .filter((one) => one.value !== ''),
  );
}
