// Which entry of the book is laid open over the page.
export const opened = $state<{ id: string | null }>({ id: null });
