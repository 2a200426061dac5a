// What was just written, told once at the next place; what the usual rules say to it; and what to do at once where it
// was urgent.
import type { Checklist } from '../api';

export const just_said = $state<{ text: string; remarks: string[]; checklists: Checklist[] }>({ text: '', remarks: [], checklists: [] });
