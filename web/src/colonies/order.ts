// In which order events are told: what would be lost stands before what could be taken or put on.
const may_wait = new Set(['supers_full', 'honey_to_take']);

export function in_order<T>(events: T[], name: (event: T) => string, odds: (event: T) => number): T[] {
  const waits = (event: T) => Number(may_wait.has(name(event).replaceAll(' ', '_')));
  return [...events].sort((a, b) => waits(a) - waits(b) || odds(b) - odds(a));
}
