// What the extension asks beyond the protocol: what there is, pages to show, an inspection to fill in.

import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  draftInspection,
  listSubjects,
  makePreview,
  type DraftInspectionAnswer,
  type ListSubjectsAnswer,
  type MakePreview,
  type MakePreviewAnswer,
} from '../../src/protocol/messages.js';
import { files } from './estate.js';
import { startSession, type Session } from './session.js';

let session: Session;
afterEach(async () => session.end());

const page = async (wanted: MakePreview): Promise<MakePreviewAnswer> =>
  session.client.sendRequest(makePreview, wanted);

describe('subjects', () => {
  it('lists plants, conveyors with their newest record, and jobs', async () => {
    session = await startSession(files);
    const answer = await session.client.sendRequest<ListSubjectsAnswer>(listSubjects);
    expect(answer.conveyors).toMatchObject([
      {
        name: 'DG1',
        title: 'Digestate cake to bay 2',
        plant: 'Tarnholt',
        inspections: 2,
        newest: { date: '2025-03-12', meter: '8120 h' },
      },
    ]);
    expect(answer.jobs).toMatchObject([{ name: 'J1' }]);
    expect(answer.newestRecord).toBe('2025-03-12');
  });
});

describe('pages', () => {
  it('make the report, the work pack, the sheet and the drawing, without a script', async () => {
    session = await startSession(files);
    const wanted: MakePreview[] = [
      { kind: 'report' },
      { kind: 'work pack', subject: 'J1' },
      { kind: 'inspection sheet', subject: 'DG1' },
      { kind: 'drawing', subject: 'DG1' },
    ];
    for (const each of wanted) {
      const answer = await page(each);
      expect(answer, each.kind).toMatchObject({ ok: true });
      if (!answer.ok) continue;
      expect(answer.html).toContain('DG1');
      expect(answer.html).not.toMatch(/<script/i);
      // For a view with a document and a policy of its own: one element, and nothing that styles more than it.
      expect(answer.body).toMatch(/^<(main|div) class="sheet (portrait|landscape)" id="sheet">[^]*<\/\1>$/);
      expect(answer.body).not.toMatch(/\sstyle=/);
      expect(answer.styles).not.toMatch(/(^|[\s,{}])(html|body|:root)\s*[,{]/);
      expect(answer.html).toContain(
        answer.body.slice(answer.body.indexOf('>') + 1, answer.body.lastIndexOf('</')),
      );
    }
  });

  it('lead from a step of the pack and from a point of the sheet to their lines', async () => {
    session = await startSession(files);
    const follow = async (wanted: MakePreview, row: RegExp): Promise<string> => {
      const answer = await page(wanted);
      if (!answer.ok) throw new Error(answer.reason);
      const spot = answer.origins[row.exec(answer.html)?.[1] ?? ''];
      const name = spot?.uri.split('/').at(-1) ?? '';
      return `${name}: ${files[name as keyof typeof files]?.split('\n')[spot?.line ?? 0]?.trim() ?? ''}`;
    };
    expect(
      await follow(
        { kind: 'inspection sheet', subject: 'DG1' },
        /<tr data-origin="([^"]+)"><td class="name">P1/,
      ),
    ).toBe('DG1.trough: point P1 at 6.20 m clock 7:30');
    expect(await follow({ kind: 'inspection sheet', subject: 'DG1' }, /<h1 data-origin="([^"]+)"/)).toBe(
      'DG1.trough: conveyor DG1 "Digestate cake to bay 2" {',
    );
    expect(await follow({ kind: 'work pack', subject: 'J1' }, /<tr data-origin="([^"]+)"><td[^>]*>Q1/)).toBe(
      'DG1.trough: isolation Q1 "local isolator" electrical at 22 m',
    );
    expect(await follow({ kind: 'work pack', subject: 'J1' }, /<h1 data-origin="([^"]+)"/)).toMatch(
      /: job J1/,
    );
  });

  it('lead from a part of the drawing to its line', async () => {
    session = await startSession(files);
    const answer = await page({ kind: 'drawing', subject: 'DG1' });
    if (!answer.ok) throw new Error(answer.reason);
    const key = /<tr data-origin="([^"]+)"><td[^>]*>6\.20 m/.exec(answer.html)?.[1] ?? '';
    expect(answer.origins[key]).toMatchObject({ uri: session.uri('DG1.trough'), line: 14 });
  });

  it('say why there is nothing to show', async () => {
    session = await startSession({ 'a.trough': 'conveyor DG1 {\n}\n' });
    expect(await page({ kind: 'report' })).toMatchObject({
      ok: false,
      reason: expect.stringContaining('no complete conveyor'),
    });
    expect(await page({ kind: 'drawing', subject: 'DG1' })).toMatchObject({
      ok: false,
      reason: expect.stringContaining('not complete enough'),
    });
    expect(await page({ kind: 'report', asOf: 'yesterday' })).toMatchObject({
      ok: false,
      reason: expect.stringContaining('is not a date'),
    });
  });
});

describe('the order of conveyors', () => {
  it('is by name, numbers by their value, until the model has spoken, and then the most urgent first', async () => {
    const worn = files['DG1.trough']!.replace('DG1 "', 'DG10 "');
    session = await startSession({
      ...files,
      'DG10.trough': worn,
      'DG2.trough': files['DG1.trough']!.replace('DG1 "', 'DG2 "'),
      'seen.trough':
        'inspection DG10 2025-03-12 meter 8120 h {\n  view downstream\n  P1 thickness 4.1 mm\n}\n',
    });
    const order = async (): Promise<string[]> =>
      (await session.client.sendRequest<ListSubjectsAnswer>(listSubjects)).conveyors.map(({ name }) => name);
    expect(await order()).toEqual(['DG1', 'DG2', 'DG10']);
    await vi.waitFor(async () => expect((await order())[0]).toBe('DG10'), { timeout: 50_000, interval: 500 });
  });
});

describe('a new inspection', () => {
  it('is named as its neighbour is: with the day where the other has its day', async () => {
    const named = { ...files };
    session = await startSession(
      Object.fromEntries(
        Object.entries(named).map(([name, text]) => [
          name.replace(/inspections\/DG1-/, 'inspections/DG1/'),
          text,
        ]),
      ),
    );
    const answer = await session.client.sendRequest<DraftInspectionAnswer>(draftInspection, {
      conveyor: 'DG1',
      date: '2025-09-01',
      meter: '9900 h',
    });
    expect(answer).toMatchObject({ fileName: '2025-09-01.trough', folder: 'file:///estate/inspections/DG1' });
  });

  it('has the points in order along the conveyor, with what was seen last', async () => {
    session = await startSession(files);
    const answer = await session.client.sendRequest<DraftInspectionAnswer>(draftInspection, {
      conveyor: 'DG1',
      date: '2025-09-01',
      meter: '9900 h',
    });
    expect(answer).toMatchObject({ fileName: 'DG1-2025-09-01.trough', folder: 'file:///estate/inspections' });
    const rows = answer.text.split('\n').filter((line) => /^ {2}\/\/ [PQ]\d/.test(line));
    expect(rows.map((row) => row.trim())).toEqual([
      '// P1  (last time: 8.4 mm)',
      '// Q1',
      '// Q2',
      '// Q3  (last time: teal)',
      '// Q4  (last time: not seen)',
    ]);
  });

  it('is a text without errors as it stands', async () => {
    session = await startSession(files);
    const { text } = await session.client.sendRequest<DraftInspectionAnswer>(draftInspection, {
      conveyor: 'DG1',
      date: '2025-09-01',
      meter: '9900 h',
    });
    session.open('new.trough', text);
    expect((await session.findings('new.trough')).filter(({ severity }) => severity === 1)).toEqual([]);
  });

  it('works for a conveyor that was never inspected', async () => {
    const {
      'inspections/DG1-2024-03-14.trough': _first,
      'inspections/DG1-2025-03-12.trough': _second,
      ...fresh
    } = files;
    session = await startSession(fresh);
    const { folder, text } = await session.client.sendRequest<DraftInspectionAnswer>(draftInspection, {
      conveyor: 'DG1',
      date: '2025-09-01',
      meter: '9900 h',
    });
    expect(folder).toBe('file:///estate');
    expect(text).toContain('// P1\n');
  });
});
