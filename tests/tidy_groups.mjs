// Writes groups of our sources to be read together by clang-tidy, so that what they all include is read once.
// usage: node tests/tidy_groups.mjs build/release/compile_commands.json build/tidy SIZE
// Prints one line a group: a file with the compiler's flags, one a line, and then the sources. Sources that are compiled
// alike come together.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';

const [, , database, folder, size] = process.argv;
const root = process.cwd() + '/';
const ours = JSON.parse(readFileSync(database, 'utf8')).filter((entry) => entry.file.startsWith(root + 'src/'));

const alike = new Map(); // flags -> sources
for (const { command, file } of ours) {
  const words = command.split(' ').filter((word) => word !== '');
  const from = words.findIndex((word) => word.startsWith('-'));
  const to = words.indexOf('-o');
  const flags = words.slice(from, to).join('\n');
  alike.set(flags, [...(alike.get(flags) ?? []), file.slice(root.length)].sort());
}

mkdirSync(folder, { recursive: true });
let number = 0;
for (const [flags, files] of alike) {
  // The calculations name their parts alike, so each is read by itself.
  const alone = files.filter((file) => file.includes('/calc/')).map((file) => [file]);
  const rest = files.filter((file) => !file.includes('/calc/'));
  const groups = [...alone];
  for (let at = 0; at < rest.length; at += Number(size)) groups.push(rest.slice(at, at + Number(size)));
  for (const members of groups) {
    const name = `${folder}/flags_${number++}`;
    writeFileSync(name, flags + '\n');
    console.log([name, ...members].join(' '));
  }
}
