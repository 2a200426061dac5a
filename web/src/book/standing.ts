// What stands at each site, hive by hive in the order of their names.
import type { Standing } from '../api';

export interface Row {
  key: string;
  hive: string;
  about: { type: string; form: string } | null; // of the hive, where it is known
  colony: string; // empty: no living one is in it
  colony_key: string;
  since: string;
  mind: string[];
}
export interface Ended {
  key: string;
  name: string;
  how: string;
  on: string;
}
export interface SiteStanding {
  key: string; // empty: in no hive at an open site
  name: string;
  suspect: string;
  rows: Row[];
  ended: Ended[];
  colonies: number;
  empty: number;
}

const by_name = new Intl.Collator('en', { numeric: true });

export function by_site(standing: Standing): SiteStanding[] {
  const hives = new Map(standing.hives.map((hive) => [hive.hive, hive]));
  const rows_at = (site: string): Row[] => {
    const lived_in = standing.colonies
      .filter((colony) => !colony.ended && (colony.site ?? '') === site)
      .map((colony): Row => {
        const hive = hives.get(colony.hive);
        return {
          key: `colony ${colony.colony}`,
          hive: colony.hive_name ?? colony.hive,
          about: hive ? { type: hive.type, form: hive.form } : null,
          colony: colony.name,
          colony_key: colony.colony,
          since: colony.began,
          mind: [colony.suspect, colony.quarantine].filter((one) => one !== undefined),
        };
      });
    const empty = standing.hives
      .filter((hive) => hive.empty && hive.site === site)
      .map((hive): Row => ({
        key: `hive ${hive.hive}`,
        hive: hive.name,
        about: { type: hive.type, form: hive.form },
        colony: '',
        colony_key: '',
        since: '',
        mind: hive.suspect ? [hive.suspect] : [],
      }));
    return [...lived_in, ...empty].sort((a, b) => by_name.compare(a.hive, b.hive));
  };
  const ended_at = (site: string): Ended[] =>
    standing.colonies
      .filter((colony) => colony.ended && (colony.site ?? '') === site)
      .map((colony) => ({ key: colony.colony, name: colony.name, how: colony.how ?? '', on: colony.ended ?? '' }));
  const sites = [...standing.sites.map((site) => ({ key: site.site, name: site.name, suspect: site.suspect ?? '' })), { key: '', name: '', suspect: '' }];
  return sites
    .map((site) => {
      const rows = rows_at(site.key);
      return { ...site, rows, ended: ended_at(site.key), colonies: rows.filter((row) => row.colony).length, empty: rows.filter((row) => !row.colony).length };
    })
    .filter((site) => site.key !== '' || site.rows.length > 0 || site.ended.length > 0);
}
