import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import Ajv from 'ajv-draft-04';
import addFormats from 'ajv-formats';
import { describe, expect, test } from 'vitest';
import { folderWith, troughline } from './console.js';

const wrong = 'plant A {\n  risk 5 kg\n  risk 5 %, 100:1\n}\n';

describe('check', () => {
  test('says nothing but the count on a sound estate, and ends with 0', async () => {
    const sound = readFileSync(
      new URL('../../examples/1-first-conveyor/first.trough', import.meta.url),
      'utf8',
    );
    const ran = await troughline(['check'], { cwd: folderWith({ 'first.trough': sound }) });
    expect(ran).toEqual({ exit: 0, out: '1 file: no findings\n', err: '' });
  });

  test('writes several forms in one run', async () => {
    const cwd = folderWith({ 'a.trough': wrong });
    const ran = await troughline(
      ['check', '--format', 'text', '--format', 'json=out/check.json', '-f', 'junit=out/check.xml'],
      { cwd },
    );
    expect(ran.exit).toBe(1);
    expect(ran.out).toContain('a.trough:2:8 error TL');
    expect(JSON.parse(readFileSync(path.join(cwd, 'out/check.json'), 'utf8'))).toMatchObject({
      formatVersion: 1,
      files: 1,
    });
    expect(readFileSync(path.join(cwd, 'out/check.xml'), 'utf8')).toMatch(
      /^<\?xml version="1.0" encoding="UTF-8"\?>\n<testsuites /,
    );
  });

  test('SARIF holds to the OASIS 2.1.0 schema, with relative addresses and fingerprints that survive a shift of lines', async () => {
    // The OASIS schema as it comes with the package @microsoft/jest-sarif.
    const schema = JSON.parse(
      readFileSync(
        new URL(
          '../../node_modules/@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json',
          import.meta.url,
        ),
        'utf8',
      ),
    );
    const validate = addFormats
      .default(new Ajv.default({ strict: false, unicodeRegExp: false }))
      .compile(schema);
    const before = await troughline(['check', '--format', 'sarif'], {
      cwd: folderWith({ 'my plant/a.trough': wrong }),
    });
    const after = await troughline(['check', '--format', 'sarif'], {
      cwd: folderWith({ 'my plant/a.trough': `// a line more\n${wrong}` }),
    });
    const log = JSON.parse(before.out);
    expect(validate(log), JSON.stringify(validate.errors)).toBe(true);
    const [result] = log.runs[0].results;
    expect(result.locations[0].physicalLocation.artifactLocation.uri).toBe('my%20plant/a.trough');
    expect(result.locations[0].physicalLocation.region.startLine).toBe(2);
    expect(JSON.parse(after.out).runs[0].results[0].partialFingerprints).toEqual(result.partialFingerprints);
    expect(log.runs[0].tool.driver.rules[result.ruleIndex].id).toBe(result.ruleId);
  });

  test('annotations escape what the workflow commands reserve and stop at ten of a level', async () => {
    const cwd = folderWith({ 'a,b:c.trough': `plant A {\n${'  risk 5 kg\n'.repeat(30)}}\n` });
    const { out } = await troughline(['check', '--format', 'github'], { cwd });
    expect(out).toContain('file=a%2Cb%3Ac.trough,line=2');
    expect(out.split('\n').filter((line) => line.startsWith('::error')).length).toBe(10);
    expect(out).toContain('more findings are not shown here');
  });

  test('Markdown stays within a pull-request comment and counts first', async () => {
    const cwd = folderWith(
      Object.fromEntries(
        Array.from({ length: 40 }, (_, i) => [
          `f${i}.trough`,
          `plant A${i} {\n${'  risk 5 kg\n'.repeat(40)}}\n`,
        ]),
      ),
    );
    const { out } = await troughline(['check', '--format', 'markdown'], { cwd });
    expect(out.length).toBeLessThanOrEqual(65_536);
    expect(out).toMatch(/^### Check: \d+ errors/);
    expect(out).toMatch(/more findings are not shown here/);
  });

  test('colour only on a terminal, and never against NO_COLOR', async () => {
    const cwd = folderWith({ 'a.trough': wrong });
    expect((await troughline(['check'], { cwd })).out).not.toContain('\u001b[');
    expect((await troughline(['check'], { cwd, terminal: true })).out).toContain('\u001b[31m');
    expect((await troughline(['check'], { cwd, terminal: true, env: { NO_COLOR: '1' } })).out).not.toContain(
      '\u001b[',
    );
    expect((await troughline(['check', '--color', 'always'], { cwd })).out).toContain('\u001b[31m');
  });

  test('reads standard input under the name it is given', async () => {
    const ran = await troughline(['check', '-', '--stdin-filename', 'plant.trough'], { stdin: wrong });
    expect(ran.exit).toBe(1);
    expect(ran.out).toContain('plant.trough:2:8');
  });

  test('--fix mends what needs no question and leaves the rest', async () => {
    const cwd = folderWith({ 'a.trough': 'plant A {\n  risk 2,5 %\n}\n' });
    const ran = await troughline(['check', '--fix'], { cwd });
    expect(readFileSync(path.join(cwd, 'a.trough'), 'utf8')).toBe('plant A {\n  risk 2.5 %\n}\n');
    expect(ran.exit).toBe(0);
  });
});

describe('report', () => {
  test('ends with 1 on errors in the estate and on what it was told to fail on, its files written all the same', async () => {
    const wrong = { ...sound, 'more.trough': 'liner Broken {\n  material PE1000\n}\n' };
    const day = ['--as-of', '2025-12-31'];
    const cwd = folderWith(sound);
    expect((await troughline(['report', ...day], { cwd })).exit).toBe(0);
    const broken = await troughline(['report', ...day, '--out', 'r'], { cwd: folderWith(wrong) });
    expect([broken.exit, broken.out]).toEqual([1, expect.stringContaining('report.html')]);
    expect(
      (await troughline(['report', ...day, '--fail-on', 'never'], { cwd: folderWith(wrong) })).exit,
    ).toBe(0);
    const late = await troughline(['report', '--as-of', '2035-12-31', '--fail-on', 'overdue'], { cwd });
    expect([late.exit, late.err]).toEqual([1, expect.stringContaining('--fail-on overdue')]);
    expect((await troughline(['report', ...day, '--fail-on', 'tuesday'], { cwd })).exit).toBe(2);
  });
  const sound = {
    'first.trough': readFileSync(
      new URL('../../examples/1-first-conveyor/first.trough', import.meta.url),
      'utf8',
    ),
  };

  test('in CI asks for the day to count from; SOURCE_DATE_EPOCH will do', async () => {
    const asked = await troughline(['report'], { cwd: folderWith(sound), env: { CI: 'true' } });
    expect(asked).toMatchObject({ exit: 2, out: '' });
    expect(asked.err).toContain('--as-of YYYY-MM-DD');
    // 1767139200 s is 2025-12-31T00:00:00Z (POSIX seconds since the Epoch).
    const told = await troughline(['report'], {
      cwd: folderWith(sound),
      env: { CI: 'true', SOURCE_DATE_EPOCH: '1767139200' },
    });
    expect(told.exit).toBe(0);
    expect(told.out).toContain('# Remaining life of liners, 2025-12-31');
  });

  test('writes its files whole into the folder and lists them', async () => {
    const cwd = folderWith(sound);
    const ran = await troughline(['report', '--as-of', '2025-12-31', '--out', 'reports'], { cwd });
    expect(ran.out.trim().split('\n')).toEqual([
      'reports/report.html',
      'reports/report.md',
      'reports/report.json',
      'reports/conveyors.csv',
      'reports/points.csv',
    ]);
    expect(JSON.parse(readFileSync(path.join(cwd, 'reports/report.json'), 'utf8'))).toMatchObject({
      formatVersion: 2,
    });
  });

  test('refuses a --since after its own day, in words, and writes nothing', async () => {
    const cwd = folderWith(sound);
    const days = ['--as-of', '2025-12-31', '--since', '2026-01-01'];
    const ran = await troughline(['report', ...days, '--out', 'reports'], { cwd });
    expect(ran).toMatchObject({ exit: 2, out: '' });
    expect(ran.err).toContain(
      '--since 2026-01-01 lies after the day of the report, 2025-12-31: name an earlier day',
    );
    expect(readdirSync(cwd)).not.toContain('reports');
  });

  test('says in words what it cannot try', async () => {
    const ran = await troughline(['report', '--with', 'colour BR1 teal'], { cwd: folderWith(sound) });
    expect(ran).toMatchObject({ exit: 2, out: '' });
    expect(ran.err).toContain('--with');
  });

  test('holds a published report against what was read since, and refuses a file that is none', async () => {
    const cwd = folderWith(sound);
    await troughline(['report', '--format', 'json', '--out', 'then'], { cwd });
    const ran = await troughline(['report', '--previous', 'then/report.json'], { cwd });
    expect(ran.exit).toBe(0);
    expect(ran.out).toMatch(/The report of \d{4}-\d\d-\d\d, as it was published: /);
    for (const file of ['a.trough', 'none.json']) {
      const refused = await troughline(['report', '--previous', file], { cwd });
      expect(refused).toMatchObject({ exit: 2, out: '' });
      expect(refused.err).toContain(`--previous ${file}`);
    }
  });
});

describe('format', () => {
  test('formats files in place, lists them, and is done the second time', async () => {
    const cwd = folderWith({ 'a.trough': 'plant A{risk 5%}\n' });
    expect((await troughline(['format', '--check'], { cwd })).exit).toBe(1);
    expect(await troughline(['format'], { cwd })).toEqual({
      exit: 0,
      out: 'a.trough\n',
      err: '1 of 1 files changed\n',
    });
    expect(readFileSync(path.join(cwd, 'a.trough'), 'utf8')).toBe('plant A {\n  risk 5 %\n}\n');
    expect((await troughline(['format', '--check'], { cwd })).exit).toBe(0);
  });

  test('works as a filter', async () => {
    expect(await troughline(['format', '-'], { stdin: 'plant A{risk 5%}' })).toEqual({
      exit: 0,
      out: 'plant A {\n  risk 5 %\n}\n',
      err: '',
    });
  });
});

describe('help', () => {
  test('lists every command, and each command has an example', async () => {
    const { out, exit } = await troughline(['--help']);
    expect(exit).toBe(0);
    for (const command of [
      'check',
      'report',
      'month',
      'pack',
      'sheet',
      'format',
      'explain',
      'serve',
      'completion',
    ]) {
      expect(out).toContain(`\n  ${command}`);
      expect((await troughline([command, '--help'])).out).toMatch(/Examples?:/);
    }
  });

  test('the completion script of bash knows the commands and parses', async (context) => {
    const { out } = await troughline(['completion', 'bash']);
    expect(out).toContain(
      'check report diff month pack sheet format git import init programme tables schema explain serve completion',
    );
    const { error, status } = spawnSync('bash', ['-n'], { input: out });
    if (error) return context.skip();
    expect(status).toBe(0);
  });
});
