// Makes wanakana.csv: the kana of every name and word in Latin letters, as another program writes them. Nothing here is needed to build or
// test; it is run by hand when names or words are added:
//
//   npm install --no-save --prefix FOLDER wanakana@5.3.1
//   NODE_PATH=FOLDER/node_modules node tests/Keikocho.Core.Tests/Names/Data/make-wanakana.mjs
import { createRequire } from 'node:module';
import { readFileSync, writeFileSync } from 'node:fs';

const require = createRequire((process.env.NODE_PATH ?? '.') + '/');
const wanakana = require('wanakana');
const { version } = require('wanakana/package.json');
const here = new URL('.', import.meta.url);
const cells = line => [...line.matchAll(/("([^"]|"")*"|[^,]*)(,|$)/g)].map(m => m[1]);
const kana = (url, column) => {
  const [head, ...rows] = readFileSync(url, 'utf8').trim().split('\n').map(cells);
  return rows.map(row => row[head.indexOf(column)]).filter(k => k);
};
const all = [...kana(new URL('../../../../starter/names.csv', here), 'kana'), ...kana(new URL('vocabulary.csv', here), 'kana')];
const lines = [...new Set(all)].map(k => `${k},${wanakana.toRomaji(k)}`);
writeFileSync(new URL('wanakana.csv', here), `kana,wanakana ${version} toRomaji\n${lines.join('\n')}\n`);
