// Where the reader is: /, /colonies, /colonies/KEY, /book and what lies below it.
const places = ['/colonies', '/book'];
const is_ours = (path: string) => path === '/' || places.some((place) => path === place || path.startsWith(`${place}/`));

class Route {
  path = $state(location.pathname);
  query = $state(location.search);

  constructor() {
    window.addEventListener('popstate', () => this.#look());
  }

  #look(): void {
    this.path = location.pathname;
    this.query = location.search;
  }

  go(address: string): void {
    if (address === location.pathname + location.search) return;
    history.pushState(null, '', address);
    this.#look();
    window.scrollTo(0, 0);
  }

  // The same place, asked anew: so that going back finds what was asked last.
  ask_anew(query: string): void {
    history.replaceState(null, '', location.pathname + query);
    this.query = query;
  }

  // Follows a link inside the page without loading it anew; leaves every other click to the browser.
  follow = (event: MouseEvent): void => {
    if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    const link = (event.target as Element | null)?.closest?.('a[href]');
    const address = link?.getAttribute('href') ?? '';
    if (!link || link.hasAttribute('target') || link.hasAttribute('download') || !is_ours(address.split('?')[0] ?? '')) return;
    event.preventDefault();
    this.go(address);
  };
}
export const route = new Route();
export const colony_address = (key: string) => `/colonies/${encodeURIComponent(key)}`;
export const entry_address = (id: string) => `/book/entries/${encodeURIComponent(id)}`;
export const new_address = (kind: string) => `/book/new/${encodeURIComponent(kind)}`;
export const register_address = (name: string) => `/book/registers/${encodeURIComponent(name)}`;
export const checklist_address = (what: string) => `/book/checklists/${encodeURIComponent(what)}`;
export const sheet_key_in_address = (site: string, date: string) => `/book/sheet?${new URLSearchParams({ site, date })}`;
