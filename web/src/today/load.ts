import type { Visit } from '../api';

// The car's load: what the jobs ask for, each thing once, in the order in which it is first wanted.
export function load_of(visit: Visit): string[] {
  return [...new Set(visit.jobs.flatMap((job) => job.take))];
}
