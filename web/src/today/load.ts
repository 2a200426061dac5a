import type { Visit } from '../api';

// The car's load: what the jobs ask for, each thing once, in the order in which it is first wanted.
export function load_of(visit: Visit): string[] {
  return [...new Set(visit.jobs.flatMap((job) => job.take))];
}

// Cautions of two or more jobs of a visit: said once, at its head.
export function shared_cautions(visit: Visit): string[] {
  const all = visit.jobs.flatMap((job) => [...new Set(job.cautions)]);
  return [...new Set(all.filter((caution, i) => all.indexOf(caution) !== i))];
}
