// Findings over the protocol: for the whole folder, open or not, following every change; and the mends that come with them.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import {
  DiagnosticTag,
  FileChangeType,
  type CodeAction,
  type Diagnostic,
} from 'vscode-languageserver-protocol';
import { exampleOf } from '../../src/validation/example.js';
import { rules } from '../../src/validation/catalogue.js';
import { conveyor, files, inspection, job } from './estate.js';
import { applied, at, startSession, type Session } from './session.js';

let session: Session;
afterEach(async () => session.end());

const words = (message: Diagnostic['message']): string =>
  typeof message === 'string' ? message : message.value;
const codes = (found: readonly Diagnostic[]): (string | number | undefined)[] =>
  found.map(({ code }) => code);
const broken = inspection.replace('10.4 mm', '10,4 mm');

const actions = async (name: string, text: string, words: string, only?: string[]): Promise<CodeAction[]> => {
  await session.settled();
  const start = at(text, words);
  return session.client.sendRequest('textDocument/codeAction', {
    textDocument: { uri: session.uri(name) },
    range: { start, end: start },
    context: { diagnostics: [], ...(only ? { only } : {}) },
  });
};

const mended = (name: string, text: string, action: CodeAction | undefined): string =>
  applied(text, action?.edit?.changes?.[session.uri(name)] ?? []);

describe('findings', () => {
  it('come for files that nobody opened, with code, place and what to do', async () => {
    session = await startSession({ ...files, 'inspections/DG1-2024-03-14.trough': broken });
    const [found] = (await session.findings('inspections/DG1-2024-03-14.trough')).filter(
      ({ severity }) => severity === 1,
    );
    expect(found).toMatchObject({
      code: 'TL105',
      source: 'troughline',
      range: { start: { line: 3, character: 15 }, end: { line: 3, character: 22 } },
    });
    expect(words(found?.message ?? '').split('\n')).toHaveLength(2);
  });

  it('lead by their code to the page of their rule, where the editor follows such links', async () => {
    const follows = { textDocument: { publishDiagnostics: { codeDescriptionSupport: true } } };
    const start = { rulePages: 'file:///extension/dist/rules' };
    session = await startSession({ 'a.trough': broken }, { start, capabilities: follows });
    const found = await session.findings('a.trough');
    expect(found.find(({ code }) => code === 'TL105')?.codeDescription).toEqual({
      href: 'file:///extension/dist/rules/TL105.md',
    });
    await session.end();
    session = await startSession({ 'a.trough': broken }, { start });
    expect((await session.findings('a.trough')).filter((one) => one.codeDescription)).toEqual([]);
  });

  it('fade the text that could go, by the tag of their rule', async () => {
    const unused = rules.filter(({ tags }) => tags?.includes('unused'));
    expect(unused.map(({ code }) => code)).toEqual(expect.arrayContaining(['TL120', 'TL260']));
    for (const rule of unused) {
      session = await startSession({ 'a.trough': exampleOf(rule, 'bad').text });
      const found = await session.findings('a.trough');
      expect(found.find(({ code }) => code === rule.code)?.tags).toEqual([DiagnosticTag.Unnecessary]);
      await session.end();
    }
    session = await startSession({ 'a.trough': broken });
    expect((await session.findings('a.trough')).find(({ code }) => code === 'TL105')?.tags).toBeUndefined();
  });

  it('go when the text is mended, and come back with the file on disk when an edit is thrown away', async () => {
    session = await startSession({ ...files, 'a.trough': broken });
    session.open('a.trough');
    expect(codes(await session.findings('a.trough'))).toContain('TL105');
    session.change('a.trough', inspection);
    expect(codes(await session.findings('a.trough'))).not.toContain('TL105');
    session.close('a.trough');
    expect(codes(await session.findings('a.trough'))).toContain('TL105');
  });

  it('follow files that appear, change and go on disk, and move to the files that feel it', async () => {
    session = await startSession(files);
    const isUnknown = ({ message }: Diagnostic): boolean =>
      /no conveyor|not declared|unknown/i.test(words(message));
    expect((await session.findings('jobs.trough')).some(isUnknown)).toBe(false);
    session.write('DG1.trough', undefined, FileChangeType.Deleted);
    const without = await session.findings('jobs.trough');
    expect(without.some(isUnknown), JSON.stringify(without)).toBe(true);
    session.write('DG1.trough', conveyor, FileChangeType.Created);
    expect((await session.findings('jobs.trough')).some((found) => isUnknown(found))).toBe(false);
  });

  it('of a file that is deleted are taken back, whether it was open or not', async () => {
    session = await startSession({ ...files, 'a.trough': broken, 'b.trough': broken });
    session.open('b.trough');
    for (const name of ['a.trough', 'b.trough'])
      expect(codes(await session.findings(name))).toContain('TL105');
    session.write('a.trough', undefined, FileChangeType.Deleted);
    expect(await session.findings('a.trough')).toEqual([]);
    expect(codes(await session.findings('b.trough'))).toContain('TL105');
    session.write('b.trough', undefined, FileChangeType.Deleted);
    session.close('b.trough');
    expect(await session.findings('b.trough')).toEqual([]);
  });

  it('point at the other place that is part of it', async () => {
    const twice = conveyor.replace('  point Q', '  point P1 at 7.20 m clock 7:30\n  point Q');
    session = await startSession({ ...files, 'DG1.trough': twice });
    const found = (await session.findings('DG1.trough')).find(
      ({ relatedInformation }) => relatedInformation !== undefined,
    );
    expect(found?.relatedInformation?.[0]?.location.uri).toBe(session.uri('DG1.trough'));
  });

  it('are cut off at a number an editor can show, and say so', async () => {
    const many = `inspection DG1 2024-03-14 meter 3120 h {\n${'  P1 thickness 10,4 mm\n'.repeat(1500)}}\n`;
    session = await startSession({ ...files, 'many.trough': many });
    const found = await session.findings('many.trough');
    expect(found.length).toBeLessThanOrEqual(1001);
    expect(found.some(({ message }) => /more findings in this file/.test(words(message)))).toBe(true);
  });

  it('leave out what is only for information where the settings say so', async () => {
    session = await startSession(files, { settings: { diagnostics: { information: false } } });
    await session.settled();
    for (const name of Object.keys(files))
      expect((await session.findings(name)).every(({ severity }) => severity !== 3)).toBe(true);
  });

  it('keep two estates in one window apart', async () => {
    const both = Object.fromEntries(
      ['north', 'south'].flatMap((plant) =>
        Object.entries(files).map(([name, text]) => [`plants/${plant}/${name}`, text]),
      ),
    );
    session = await startSession(both, { settings: { estates: ['plants/*'] } });
    const apart = await session.settled();
    await session.end();
    session = await startSession(both);
    const together = await session.settled();
    expect(together.errors).toBeGreaterThan(apart.errors);
    expect(apart.conveyors).toBe(2);
  });
});

describe('mends', () => {
  it('mend one finding, all of its kind, or everything that is certain', async () => {
    const text = inspection.replace('10.4 mm', '10,4 mm').replace('colour ivory', 'thickness 9,1 mm');
    session = await startSession({ ...files, 'a.trough': text });
    const found = await actions('a.trough', text, '10,4', ['quickfix']);
    expect(mended('a.trough', text, found[0])).toContain('thickness 10.4 mm');
    const all = found.find(({ title }) => title.startsWith('Mend all'));
    expect(mended('a.trough', text, all)).toContain('thickness 9.1 mm');
    const [fixAll] = await actions('a.trough', text, '10,4', ['source.fixAll']);
    expect(fixAll?.kind).toBe('source.fixAll.troughline');
    expect(mended('a.trough', text, fixAll)).not.toContain(',');
  });

  it('write all lines that cannot be read as they are offered, only where that is asked for', async () => {
    const text = inspection.replace('{\n', '{\n  brace rattles slight\n  nothing else seen\n');
    session = await startSession({ ...files, 'a.trough': text });
    const found = await actions('a.trough', text, 'brace', ['quickfix']);
    const offers = found.find(({ title }) => title.startsWith('Write all 2 lines of this file'));
    expect(mended('a.trough', text, offers)).toBe(
      text
        .replace('brace rattles slight', 'finding brace slight "rattles"')
        .replace('nothing else seen', 'finding "nothing else seen"'),
    );
    expect(await actions('a.trough', text, 'brace', ['source.fixAll'])).toEqual([]);
  });

  it('allow a finding with a reason that a person has still to write', async () => {
    session = await startSession(files);
    const found = await actions('inspections/DG1-2024-03-14.trough', inspection, '2024-03-14', ['quickfix']);
    const allow = found.find(({ title }) => title.startsWith('Allow'));
    const after = mended('inspections/DG1-2024-03-14.trough', inspection, allow);
    expect(after.split('\n')[0]).toMatch(/^\/\/ allow TL\d+ because "write the reason here"$/);
    const code = /TL\d+/.exec(after)?.[0];
    session.open('inspections/DG1-2024-03-14.trough', after);
    expect(codes(await session.findings('inspections/DG1-2024-03-14.trough'))).not.toContain(code);
  });

  it('leave a placeholder for the reason where the editor has them', async () => {
    session = await startSession(files, {
      capabilities: { workspace: { workspaceEdit: { documentChanges: true, snippetEditSupport: true } } },
    });
    const found = await actions('inspections/DG1-2024-03-14.trough', inspection, '2024-03-14', ['quickfix']);
    const allow = found.find(({ title }) => title.startsWith('Allow'));
    expect(JSON.stringify(allow?.edit?.documentChanges)).toContain('because \\"${1:reason}\\"');
  });

  it('make an order that cannot be built buildable, one finding after the other', async () => {
    session = await startSession({ ...files, 'jobs.trough': job });
    session.open('jobs.trough');
    let text = job;
    for (let round = 0; round < 8; round += 1) {
      const errors = (await session.findings('jobs.trough')).filter(({ severity }) => severity === 1);
      const [first] = errors;
      if (!first) break;
      const found = await session.client.sendRequest<CodeAction[]>('textDocument/codeAction', {
        textDocument: { uri: session.uri('jobs.trough') },
        range: first.range,
        context: { diagnostics: [], only: ['quickfix'] },
      });
      const fix = found.find((action) => action.diagnostics?.some(({ code }) => code === first.code));
      expect(fix, `${String(first.code)} has no mend: ${first.message}`).toBeDefined();
      text = mended('jobs.trough', text, fix);
      session.change('jobs.trough', text);
    }
    expect((await session.findings('jobs.trough')).filter(({ severity }) => severity === 1)).toEqual([]);
  });

  it('are many: at least ten rules offer one for their own bad example', async () => {
    session = await startSession({});
    const withFix = new Set<string>();
    for (const rule of rules) {
      session.open('example.trough', exampleOf(rule, 'bad').text);
      await session.settled();
      const end = { line: 10_000, character: 0 };
      const found = await session.client.sendRequest<CodeAction[]>('textDocument/codeAction', {
        textDocument: { uri: session.uri('example.trough') },
        range: { start: { line: 0, character: 0 }, end },
        context: { diagnostics: [], only: ['quickfix'] },
      });
      for (const action of found)
        if (!action.title.startsWith('Allow'))
          for (const { code } of action.diagnostics ?? []) withFix.add(String(code));
      if (withFix.size >= 10) break;
    }
    expect(withFix.size).toBeGreaterThanOrEqual(10);
  });
});

describe('the demo estate', () => {
  it('has an order with two fronts in one run, and one mend makes it buildable', async () => {
    const folder = path.resolve('examples/4-tarnholt');
    const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.trough'),
    );
    session = await startSession(
      Object.fromEntries(names.map((name) => [name, readFileSync(path.join(folder, name), 'utf8')])),
    );
    const name = 'jobs/SL4-spring.trough';
    const text = session.text(name);
    session.open(name);
    const fronts = (await session.findings(name)).find(({ code }) => code === 'TL402');
    expect(fronts?.relatedInformation).toHaveLength(1);
    const found = await session.client.sendRequest<CodeAction[]>('textDocument/codeAction', {
      textDocument: { uri: session.uri(name) },
      range: fronts?.range,
      context: { diagnostics: [], only: ['quickfix'] },
    });
    session.change(name, mended(name, text, found[0]));
    expect((await session.findings(name)).filter(({ severity }) => severity === 1)).toEqual([]);
  });
});
