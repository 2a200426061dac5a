// What was just written, told once at the next place; and what to do at once where it was urgent.
import type { Checklist } from '../api';

export const just_said = $state<{ text: string; checklists: Checklist[] }>({ text: '', checklists: [] });
