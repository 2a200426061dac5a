import type { Visit } from '../api';

// Cautions of two or more jobs of a visit: said once, at its head.
export function shared_cautions(visit: Visit): string[] {
  const all = visit.jobs.flatMap((job) => [...new Set(job.cautions)]);
  return [...new Set(all.filter((caution, i) => all.indexOf(caution) !== i))];
}
