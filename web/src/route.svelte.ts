// Where the reader is: /, /colonies, /colonies/KEY.
class Route {
  path = $state(location.pathname);

  constructor() {
    window.addEventListener('popstate', () => (this.path = location.pathname));
  }

  go(path: string): void {
    if (path === this.path) return;
    history.pushState(null, '', path);
    this.path = path;
    window.scrollTo(0, 0);
  }

  // Follows a link inside the page without loading it anew; leaves every other click to the browser.
  follow = (event: MouseEvent): void => {
    if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    const link = (event.target as Element | null)?.closest?.('a[href]');
    const path = link?.getAttribute('href') ?? '';
    if (!link || link.hasAttribute('target') || !(path === '/' || path === '/colonies' || path.startsWith('/colonies/'))) return;
    event.preventDefault();
    this.go(path);
  };
}
export const route = new Route();
export const colony_address = (key: string) => `/colonies/${encodeURIComponent(key)}`;
