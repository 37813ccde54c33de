// Says whose work a bundle holds: a bill of materials (CycloneDX) of the packages that really are in it, made from what the
// bundler says it took, and their licenses in one text, made from that bill.

import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const program = 'node_modules/@cyclonedx/cyclonedx-esbuild/bin/cyclonedx-esbuild-cli.js';

/** Writes `troughline.cdx.json` and `THIRD-PARTY-NOTICES.txt` into `folder`, from the metafiles of one or more bundles. */
export function writeNotices(root, folder, metafiles) {
  mkdirSync(folder, { recursive: true });
  const metafile = path.join(folder, 'metafile.json');
  const taken = (what) => Object.assign({}, ...metafiles.map((one) => one[what]));
  writeFileSync(metafile, JSON.stringify({ inputs: taken('inputs'), outputs: taken('outputs') }));
  const bill = billOf(root, metafile);
  rmSync(metafile);
  writeFileSync(path.join(folder, 'THIRD-PARTY-NOTICES.txt'), noticesOf(bill.components));
  writeFileSync(
    path.join(folder, 'troughline.cdx.json'),
    `${JSON.stringify(withoutTexts(bill), undefined, 1)}\n`,
  );
}

function billOf(root, metafile) {
  const options = ['--output-reproducible', '--gather-license-texts', '--build-working-dir', root];
  const made = spawnSync(process.execPath, [path.join(root, program), ...options, metafile], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  if (made.status !== 0) throw new Error(`no bill of materials was made: ${made.stderr}`);
  return JSON.parse(made.stdout);
}

/** Each license text once, above it the packages that come under it. */
function noticesOf(components) {
  const byText = new Map();
  for (const component of components) {
    const name = [component.group, component.name].filter(Boolean).join('/');
    const texts = (component.evidence?.licenses ?? []).map(({ license }) => textOf(license.text));
    if (texts.length === 0)
      throw new Error(`${name} comes without a license text: its notice cannot be given.`);
    const text = texts.map((one) => one.trim()).join('\n\n');
    byText.set(text, [...(byText.get(text) ?? []), `${name} ${component.version} (${declared(component)})`]);
  }
  const blocks = [...byText].map(([text, names]) => `${names.sort().join('\n')}\n\n${text}\n`);
  return [
    'Troughline is built with the packages below, each under its own license.\n',
    ...blocks.sort(),
  ].join(`\n${'-'.repeat(78)}\n\n`);
}

function textOf({ content, encoding }) {
  return encoding === 'base64' ? Buffer.from(content, 'base64').toString('utf8') : content;
}

function declared({ licenses = [] }) {
  return licenses.map(({ license, expression }) => expression ?? license.id ?? license.name).join(', ');
}

/** The texts stand in the notices; the bill names the licenses. */
function withoutTexts({ components, ...bill }) {
  return { ...bill, components: components.map(({ evidence: _, ...component }) => component) };
}
