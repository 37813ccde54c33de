// The package as its user meets it: packed, installed from its tarball into an empty folder without a network, and run with
// the machine's own Node. It holds the bundle and its notices and nothing else, and the command line works.

import assert from 'node:assert/strict';
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import Ajv from 'ajv';
import addFormats from 'ajv-formats';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const folder = mkdtempSync(path.join(os.tmpdir(), 'troughline-package-'));
const installed = path.join(folder, 'node_modules', 'troughline');
const largest = 30 * 1024 * 1024;
const onWindows = process.platform === 'win32';

/** As outside of npm's scripts: the machine's own Node, no settings of ours. */
const env = Object.fromEntries(
  Object.entries(process.env).filter(([name]) => !/^npm_|^(NODE|INIT_CWD)$/i.test(name)),
);
env.PATH = (process.env.PATH ?? '')
  .split(path.delimiter)
  .filter((each) => !each.includes('node_modules'))
  .join(path.delimiter);

const checks = {
  'it packs what its user needs and nothing else': () => {
    const [packed] = JSON.parse(npm(root, 'pack', '--json', '--silent', '--pack-destination', folder));
    const names = packed.files.map((file) => file.path);
    const expected =
      /^(package\.json|README\.md|LICENSE|CHANGELOG\.md|dist\/cli\.js|dist\/chunks\/[\w-]+\.js|dist\/highs\.wasm|dist\/schemas\/(report|diff|tables)\.schema\.json|dist\/notices\/command-line\/(THIRD-PARTY-NOTICES\.txt|troughline\.cdx\.json))$/;
    assert.deepEqual(
      names.filter((name) => !expected.test(name)),
      [],
    );
    for (const name of [
      'dist/cli.js',
      'dist/highs.wasm',
      'dist/schemas/report.schema.json',
      'dist/schemas/diff.schema.json',
      'dist/schemas/tables.schema.json',
      'LICENSE',
      'dist/notices/command-line/THIRD-PARTY-NOTICES.txt',
    ])
      assert.ok(names.includes(name), name);
    tarball = packed.filename;
  },
  'it installs into an empty folder without a network, and brings no other package': () => {
    writeFileSync(path.join(folder, 'package.json'), '{ "private": true }\n');
    npm(folder, 'install', '--offline', '--no-audit', '--no-fund', `./${tarball}`);
    assert.deepEqual(
      readdirSync(path.join(folder, 'node_modules')).filter((name) => !name.startsWith('.')),
      ['troughline'],
    );
    assert.ok(sizeOf(installed) < largest, `${sizeOf(installed)} bytes installed`);
  },
  'check, report, pack and sheet do their work': () => {
    cpSync(path.join(root, 'examples', '1-first-conveyor'), path.join(folder, 'first'), { recursive: true });
    cpSync(path.join(root, 'examples', '4-tarnholt'), path.join(folder, 'plant'), { recursive: true });
    assert.match(troughline(1, 'check', 'plant').stdout, /^\d+ files: 2 errors/m);
    const day = ['--as-of', '2026-10-31', '--out', 'out'];
    troughline(0, 'report', 'first', ...day);
    assert.match(
      troughline(0, 'programme', 'plant', '--as-of', '2026-10-31').stdout,
      /Programme of Tarnholt.*Reline/,
    );
    troughline(
      [0, 1],
      'pack',
      'DG1_Winter27',
      'plant',
      ...day,
      ...['xlsx', 'ics', 'form', 'html'].flatMap((f) => ['-f', f]),
    );
    troughline(0, 'sheet', 'BR1', 'first', ...day, '-f', 'phone');
    troughline(0, 'tables', 'first', '--as-of', '2026-10-31', '--out', 'tables');
    assert.ok(existsSync(path.join(folder, 'tables/points/plant=Tarnholt/month=2026-10/points.parquet')));
    assert.deepEqual(
      readdirSync(path.join(folder, 'out')).sort(),
      [
        ...['report.html', 'report.md', 'report.json', 'conveyors.csv', 'points.csv'],
        ...['html', 'ics', 'xlsx'].map((ending) => `DG1_Winter27.${ending}`),
        ...['DG1_Winter27-as-fitted.html', 'BR1-phone.html'],
      ].sort(),
    );
    const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
    assert.equal(troughline(0, '--version').stdout.trim(), version);
  },
  'it is a language server': async () => {
    const server = spawn(program(), ['serve', '--stdio'], { cwd: folder, env, shell: onWindows });
    const gone = new Promise((resolve) => server.once('exit', resolve));
    let said = '';
    server.stdout.setEncoding('utf8');
    const answered = new Promise((resolve) =>
      server.stdout.on('data', (text) => /"id":1\b/.test((said += text)) && resolve()),
    );
    const tell = (more) => {
      const body = JSON.stringify({ jsonrpc: '2.0', ...more });
      server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
    };
    tell({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } });
    await answered;
    tell({ id: 2, method: 'shutdown' });
    tell({ method: 'exit' });
    assert.equal(await gone, 0);
    assert.match(said, /"hoverProvider":true/);
  },
  'what could not be written is told and is an error': () => {
    if (process.platform !== 'linux') return;
    const told = (redirect) =>
      spawnSync('sh', ['-c', `"$0" explain ${redirect}`, program()], { cwd: folder, env, encoding: 'utf8' });
    assert.equal(told('> /dev/null').status, 0);
    assert.deepEqual(
      [told('> /dev/full').status, told('> /dev/full').stderr],
      [2, 'troughline: standard output: no space left on the disk\n'],
    );
    assert.deepEqual(
      [told('>&-').status, told('>&-').stderr],
      [2, 'troughline: standard output is closed\n'],
    );
    assert.equal(told('| sh -c "exec <&-"; test "$?" -eq 0').status, 0);
  },
  'its notices name every package in the bundle, and its bill of materials is valid CycloneDX': () => {
    const notices = path.join(installed, 'dist', 'notices', 'command-line');
    const bill = JSON.parse(readFileSync(path.join(notices, 'troughline.cdx.json'), 'utf8'));
    const text = readFileSync(path.join(notices, 'THIRD-PARTY-NOTICES.txt'), 'utf8');
    for (const { group, name, version } of bill.components)
      assert.ok(text.includes(`${group ? `${group}/` : ''}${name} ${version} (`), name);
    for (const name of ['langium', 'commander', 'hucre', 'ical-generator', 'd3-scale'])
      assert.ok(
        bill.components.some((one) => one.name === name),
        name,
      );
    const problems = againstSchema(bill);
    assert.deepEqual(problems, []);
  },
};

let tarball = '';
try {
  for (const [name, check] of Object.entries(checks)) {
    const from = performance.now();
    await check();
    console.log(`✓ ${name} (${((performance.now() - from) / 1000).toFixed(1)} s)`);
  }
  const kilobytes = (bytes) => `${(bytes / 1024).toFixed(0)} kB`;
  console.log(
    `${kilobytes(statSync(path.join(folder, tarball)).size)} packed, ${kilobytes(sizeOf(installed))} installed`,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function npm(cwd, ...args) {
  return execFileSync('npm', args, {
    cwd,
    env,
    encoding: 'utf8',
    shell: onWindows,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
}

function program() {
  return path.join(folder, 'node_modules', '.bin', 'troughline');
}

function start(args, more = {}) {
  return spawnSync(program(), args, {
    cwd: folder,
    env,
    encoding: 'utf8',
    shell: onWindows,
    maxBuffer: 1 << 26,
    ...more,
  });
}

function troughline(expected, ...args) {
  const ran = start(args);
  assert.ok(
    [expected].flat().includes(ran.status),
    `troughline ${args.join(' ')} ended with ${ran.status}: ${ran.stderr}`,
  );
  return ran;
}

function sizeOf(place) {
  return readdirSync(place, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .reduce((sum, entry) => sum + statSync(path.join(entry.parentPath, entry.name)).size, 0);
}

/** The schema of CycloneDX 1.6 as its own library carries it. */
function againstSchema(bill) {
  const schemas = path.join(root, 'node_modules', '@cyclonedx', 'cyclonedx-library', 'res', 'schema');
  assert.ok(existsSync(schemas));
  const read = (name) => JSON.parse(readFileSync(path.join(schemas, name), 'utf8'));
  const ajv = addFormats.default(new Ajv.default({ strict: false, validateFormats: false, allErrors: true }));
  for (const name of ['spdx.SNAPSHOT.schema.json', 'jsf-0.82.SNAPSHOT.schema.json'])
    ajv.addSchema(read(name), `http://cyclonedx.org/schema/${name}`);
  const validate = ajv.compile(read('bom-1.6.SNAPSHOT.schema.json'));
  return validate(bill)
    ? []
    : validate.errors.slice(0, 5).map(({ instancePath, message }) => `${instancePath} ${message}`);
}
