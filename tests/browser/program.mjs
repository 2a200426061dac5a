// The program itself, serving a book of its own in a folder of its own.
import { execFileSync, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const program = process.env.BEEGARTH ?? fileURLToPath(new URL('../../build/release/beegarth', import.meta.url));
export const is_built = existsSync(program);

// The demo book with `more` entered: [kind, payload, date].
export async function serve_demo(more = []) {
  const folder = mkdtempSync(join(tmpdir(), 'beegarth-book-'));
  const book = join(folder, 'demo.garth');
  execFileSync(program, ['demo', book], { stdio: 'ignore' });
  for (const [kind, payload, date] of more) execFileSync(program, ['enter', book, kind, JSON.stringify(payload), '--date', date], { stdio: ['ignore', 'ignore', 'inherit'] });
  const server = spawn(program, ['serve', book, '--members', '32', '--port', '0', '--json'], { stdio: ['ignore', 'pipe', 'inherit'] });
  const url = await new Promise((done, failed) => {
    let said = '';
    server.stdout.on('data', (part) => {
      said += part;
      if (said.includes('\n')) done(JSON.parse(said).address.replace(/\/$/, ''));
    });
    server.on('exit', (code) => failed(new Error(`the program ended with ${code}`)));
  });
  return {
    url,
    book,
    close: async () => {
      const ended = new Promise((done) => server.on('exit', done));
      server.kill('SIGTERM');
      await ended;
      rmSync(folder, { recursive: true });
    },
  };
}
