// Each editor feature over a real protocol connection, on a small estate of several files.

import { afterEach, describe, expect, it, vi } from 'vitest';
import type {
  CompletionList,
  DocumentSymbol,
  Hover,
  Location,
  SelectionRange,
  WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { conveyor, files, job, later, plant } from './estate.js';
import { afterEdit, applied, at, cursor, startSession, type Session } from './session.js';

let session: Session;
afterEach(async () => session.end());

const ask = async <T>(method: string, name: string, more: object = {}): Promise<T> =>
  session.client.sendRequest(method, { textDocument: { uri: session.uri(name) }, ...more });

const hoverText = async (
  name: string,
  text: string,
  words: string,
  into = 1,
  occurrence = 1,
): Promise<string> => {
  const answer = await ask<Hover | null>('textDocument/hover', name, {
    position: at(text, words, into, occurrence),
  });
  return (answer?.contents as { value: string } | undefined)?.value ?? '';
};

describe('hover', () => {
  it('tells what follows for a conveyor: axial speed, liner mass, runs with their panels', async () => {
    session = await startSession(files);
    const text = await hoverText('DG1.trough', conveyor, 'DG1 "');
    // v = S·n/60 = 0.4 m × 18 / 60, by hand.
    expect(text).toContain('0.120 m/s');
    // W = π(226 − 6) + 2 × 260 = 1211.2 mm; × 12 mm × 930 or 935 kg/m³, by hand about 13.5 kg/m.
    expect(text).toContain('1211 mm wide unrolled');
    expect(text).toMatch(/13\.[4-6]\d kg\/m/);
    expect(text).toContain('| 2 | Gate to');
    expect(text).toContain('Lifts digestate cake');
  });

  it('tells of a reading how long its liner had run, what is worn, and what was read before', async () => {
    session = await startSession(files);
    const text = await hoverText('inspections/DG1-2025-03-12.trough', later, 'P1');
    expect(text).toContain('8120 h');
    expect(text).toContain('3.6 mm'); // 12 less 8.4
    expect(text).toContain('| 2024-03-14 | 3120 h | 10.4 mm |');
  });

  it('says that a colour is a bound and no more', async () => {
    session = await startSession(files);
    expect(await hoverText('inspections/DG1-2025-03-12.trough', later, 'teal')).toContain(
      'between 6.0 mm and 12.0 mm',
    );
  });

  it('explains keywords and shows values in other units', async () => {
    session = await startSession(files);
    expect(await hoverText('DG1.trough', conveyor, 'slide gate')).toContain('slide gate');
    expect(await hoverText('DG1.trough', conveyor, '22.4 m')).toContain(
      '22.4 m = 22400 mm = 881.89 in = 73.4908 ft',
    );
    expect(await hoverText('DG1.trough', conveyor, '7:30')).toContain(
      '45° from the bottom towards 9 o’clock',
    );
    expect(await hoverText('inspections/DG1-2025-03-12.trough', later, '2025-03-12')).toContain('2025-03-12');
  });

  it('explains the rule whose code stands in a comment', async () => {
    const text = `// allow TL101 because "just so"\n${plant}`;
    session = await startSession({ ...files, 'plant.trough': text });
    expect(await hoverText('plant.trough', text, 'TL101')).toContain('Why it matters');
  });

  it('tells of a finding that stands open what it tells of a condition, and of a note what the word means', async () => {
    const look = (row: string): string => `inspection DG1 2025-06-01 meter 9000 h {\n  ${row}\n}\n`;
    const open = look('finding gate at Gate serious "bent"');
    session = await startSession({ ...files, 'open.trough': open, 'note.trough': look('finding "swept"') });
    expect(await hoverText('open.trough', open, 'finding')).toContain('gate at Gate: bent');
    const note = await hoverText('note.trough', look('finding "swept"'), 'finding');
    expect(note).toMatch(/^\*\*finding\*\*/);
  });

  it('stays silent between words', async () => {
    session = await startSession(files);
    expect(await hoverText('DG1.trough', `${conveyor}\n\n`, '}\n\n', 3)).toBe('');
  });
});

describe('definition and references', () => {
  const definition = async (
    name: string,
    text: string,
    words: string,
    into = 1,
    occurrence = 1,
  ): Promise<string[]> => {
    const found = await ask<Location[] | null>('textDocument/definition', name, {
      position: at(text, words, into, occurrence),
    });
    return (found ?? []).map(({ uri, range }) => `${uri.split('/estate/')[1] ?? ''}:${range.start.line + 1}`);
  };

  it.each([
    ['jobs.trough', job, 'DG1', 'DG1.trough:2'],
    ['jobs.trough', job, 'Spring27', 'plant.trough:4'],
    ['jobs.trough', job, 'Gate\n', 'DG1.trough:11'],
    ['jobs.trough', job, 'Alpha', 'plant.trough:5'],
    ['jobs.trough', job, 'MP1', 'plant.trough:6'],
    ['jobs.trough', job, 'a\n    remove', 'jobs.trough:11'],
    ['DG1.trough', conveyor, 'TwoLayer12', 'plant.trough:9'],
    ['inspections/DG1-2025-03-12.trough', later, 'Tarnholt', 'plant.trough:1'],
    ['inspections/DG1-2025-03-12.trough', later, 'DG1', 'DG1.trough:2'],
    ['inspections/DG1-2025-03-12.trough', later, 'teal', 'plant.trough:12'],
    ['inspections/DG1-2025-03-12.trough', later, 'Q3', 'DG1.trough:16'],
  ])('in %s finds where a name is declared', async (name, text, words, wanted) => {
    session = await startSession(files);
    expect(await definition(name, text, words, 0)).toEqual([wanted]);
  });

  it('finds every use of a point, of a layer and of a conveyor across files', async () => {
    session = await startSession(files);
    const count = async (name: string, text: string, words: string, into = 0): Promise<number> => {
      const found = await ask<Location[]>('textDocument/references', name, {
        position: at(text, words, into),
        context: { includeDeclaration: true },
      });
      return found.length;
    };
    expect(await count('DG1.trough', conveyor, 'P1')).toBe(3);
    expect(await count('plant.trough', plant, 'teal')).toBe(2);
    expect(await count('DG1.trough', conveyor, 'DG1 "')).toBe(4);
    expect(await count('DG1.trough', conveyor, 'Gate')).toBe(2);
  });

  it('highlights the same thing in the same text', async () => {
    session = await startSession(files);
    const found = await ask<unknown[]>('textDocument/documentHighlight', 'jobs.trough', {
      position: at(job, 'Alpha'),
    });
    expect(found).toHaveLength(3);
  });
});

describe('rename', () => {
  const rename = async (
    name: string,
    text: string,
    words: string,
    newName: string,
  ): Promise<Record<string, string>> =>
    afterEdit(
      session,
      await ask<WorkspaceEdit>('textDocument/rename', name, { position: at(text, words), newName }),
    );

  it('renames a point in its conveyor and in every inspection', async () => {
    session = await startSession(files);
    const after = await rename('DG1.trough', conveyor, 'P1', 'Low-1');
    expect(Object.keys(after).sort()).toEqual([
      'DG1.trough',
      'inspections/DG1-2024-03-14.trough',
      'inspections/DG1-2025-03-12.trough',
    ]);
    expect(after['DG1.trough']).toContain('point Low-1 at 6.20 m');
    expect(after['inspections/DG1-2024-03-14.trough']).toContain('Low-1 thickness 10.4 mm');
  });

  it('renames a point, a part and a break where something was seen or done there', async () => {
    const records = [
      'inspection DG1 2025-06-01 meter 9000 h {',
      '  finding at P1 "scored"',
      '  gate stuck at Gate',
      '  not seen finding gate at Gate "full"',
      '  bolts loose 2 at panel 1 of run above Gate',
      '  serviced closed gate stuck at Gate "new cylinder"',
      '}',
      'serviced DG1 2025-06-02 gate greased at Gate',
      'serviced DG1 2025-06-03 at P1 "cleaned"',
      'screw change DG1 2025-06-04 meter 9001 h {',
      '  finding spiral at P1 "tight"',
      '}',
      '',
    ].join('\n');
    session = await startSession({ ...files, 'more.trough': records });
    const gate = await rename('DG1.trough', conveyor, 'Gate', 'Slide');
    expect(gate['more.trough']).toBe(records.replaceAll('Gate', 'Slide'));
    const point = await rename('DG1.trough', conveyor, 'P1', 'Low-1');
    expect(point['more.trough']).toBe(records.replaceAll('P1', 'Low-1'));
    const hover = await ask<Hover>('textDocument/hover', 'more.trough', {
      position: at(records, 'greased at Gate', 12),
    });
    expect(JSON.stringify(hover.contents)).not.toContain('not declared');
  });

  it('renames a row of points by its letters and keeps the numbers', async () => {
    session = await startSession(files);
    const after = await rename('DG1.trough', conveyor, 'Q every', 'High');
    expect(after['inspections/DG1-2024-03-14.trough']).toContain('High3 colour ivory');
    expect(after['inspections/DG1-2024-03-14.trough']).toContain('High4 not seen');
  });

  it('renames a conveyor inside Plant.Conveyor and leaves the plant', async () => {
    session = await startSession(files);
    const after = await rename('DG1.trough', conveyor, 'DG1 "', 'DG2');
    expect(after['inspections/DG1-2025-03-12.trough']).toContain('inspection Tarnholt.DG2 2025-03-12');
    expect(after['inspections/DG1-2024-03-14.trough']).toContain('inspection DG2 2024-03-14');
    expect(after['jobs.trough']).toContain('conveyor DG2');
  });

  it('renames a plant inside Plant.Conveyor', async () => {
    session = await startSession(files);
    const after = await rename('plant.trough', plant, 'Tarnholt', 'North');
    expect(after['inspections/DG1-2025-03-12.trough']).toContain('inspection North.DG1');
    expect(after['DG1.trough']).toContain('plant North');
  });

  it('renames a layer in the readings of conveyors that have the liner, not in those of another liner', async () => {
    const other =
      'liner Other { layer teal 8 mm\n condemn at 2 mm\n panel length 1 m ± 1 mm }\nconveyor X1 { liner Other\n point P1 at 1 m clock 6:00 }\ninspection X1 2025-01-01 meter 5 h {\n  P1 colour teal\n}\n';
    session = await startSession({ ...files, 'other.trough': other });
    const after = await rename('plant.trough', plant, 'teal', 'yellow');
    expect(after['inspections/DG1-2025-03-12.trough']).toContain('Q3 colour yellow');
    expect(after['other.trough']).toBeUndefined();
  });

  it.each([
    ['P1', 'Q3x y', 'cannot be a name'],
    ['P1', 'thickness', 'is a word of the language'],
    ['P1', 'hold-down', 'is a word of the language'],
    ['P1', '7a', 'cannot be a name'],
    ['P1', 'Q', 'already a point called'],
  ])('refuses to call %s "%s" and says why', async (words, newName, reason) => {
    session = await startSession(files);
    await expect(rename('DG1.trough', conveyor, words, newName)).rejects.toThrow(reason);
  });

  it('refuses what is not a name, and what is declared nowhere', async () => {
    session = await startSession({ ...files, 'x.trough': 'inspection Nowhere 2025-01-01 meter 1 h {\n}\n' });
    const prepare = ask('textDocument/prepareRename', 'DG1.trough', { position: at(conveyor, 'length') });
    await expect(prepare).rejects.toThrow('Only names can be renamed');
    await expect(
      ask('textDocument/prepareRename', 'x.trough', { position: at('inspection Nowhere', 'Nowhere') }),
    ).rejects.toThrow('not declared anywhere');
  });
});

describe('outline, symbols, folding, selection', () => {
  it('gives blocks with their parts', async () => {
    session = await startSession(files);
    const symbols = await ask<DocumentSymbol[]>('textDocument/documentSymbol', 'DG1.trough');
    expect(symbols.map(({ name }) => name)).toEqual(['DG1']);
    expect(symbols[0]?.children?.map(({ name }) => name)).toEqual(['Gate', 'A1', 'Q1', 'P1', 'Q']);
  });

  it('keeps the outline of a half-typed file', async () => {
    const half =
      conveyor
        .replace('length 22.4 m', 'length')
        .replace('screw Spiral400', 'scr')
        .replace(/\}\s*$/, '') + '  point P9 at';
    session = await startSession({ ...files, 'DG1.trough': half });
    const symbols = await ask<DocumentSymbol[]>('textDocument/documentSymbol', 'DG1.trough');
    expect(symbols[0]?.name).toBe('DG1');
    expect(symbols[0]?.children?.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['Gate', 'P1', 'P9']),
    );
  });

  it('finds things and records of the whole estate by name', async () => {
    session = await startSession(files);
    const found = await session.client.sendRequest<{ name: string; location: Location }[]>(
      'workspace/symbol',
      { query: 'dg1' },
    );
    expect(found.map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        'DG1',
        'P1',
        'DG1 inspection 2024-03-14',
        'Tarnholt.DG1 inspection 2025-03-12',
      ]),
    );
  });

  it('folds blocks and orders', async () => {
    session = await startSession(files);
    const folds = await ask<{ startLine: number; endLine: number }[]>(
      'textDocument/foldingRange',
      'jobs.trough',
    );
    expect(folds.map(({ startLine, endLine }) => [startLine, endLine])).toEqual([
      [0, 16],
      [7, 15],
    ]);
  });

  it('grows a selection from the value to the fact to the block', async () => {
    session = await startSession(files);
    const [found] = await ask<SelectionRange[]>('textDocument/selectionRange', 'DG1.trough', {
      positions: [at(conveyor, '22.4 m', 1)],
    });
    const sizes: number[] = [];
    for (let each = found; each; each = each.parent)
      sizes.push(
        (each.range.end.line - each.range.start.line) * 1000 +
          each.range.end.character -
          each.range.start.character,
      );
    expect(sizes.length).toBeGreaterThanOrEqual(4);
    expect([...sizes].sort((a, b) => a - b)).toEqual(sizes);
  });
});

describe('formatting and colours', () => {
  it('formats in one edit that leaves a tidy text alone', async () => {
    const untidy = 'plant   Tarnholt{\nduty 110 h/week\n      risk 5 %\n}\n';
    session = await startSession({ 'a.trough': untidy });
    const options = { options: { tabSize: 2, insertSpaces: true } };
    const edits = await ask<{ range: never; newText: string }[]>(
      'textDocument/formatting',
      'a.trough',
      options,
    );
    const tidy = applied(untidy, edits);
    expect(tidy).toBe('plant Tarnholt {\n  duty 110 h/week\n  risk 5 %\n}\n');
    session.open('a.trough', tidy);
    expect(await ask('textDocument/formatting', 'a.trough', options)).toEqual([]);
  });

  it('colours declarations, uses, numbers and keywords', async () => {
    session = await startSession(files);
    const { data } = await ask<{ data: number[] }>(
      'textDocument/semanticTokens/full',
      'inspections/DG1-2024-03-14.trough',
    );
    const types = session.initialized.capabilities.semanticTokensProvider?.legend.tokenTypes ?? [];
    const first = Array.from({ length: 4 }, (_, index) => types[data[index * 5 + 3] ?? -1]);
    expect(first).toEqual(['keyword', 'type', 'number', 'keyword']);
  });
});

describe('completion', () => {
  const complete = async (
    name: string,
    marked: string,
    others: Readonly<Record<string, string>> = files,
  ): Promise<CompletionList> => {
    session = await startSession({ ...others, [name]: marked });
    return ask<CompletionList>('textDocument/completion', name, { position: cursor(marked) });
  };
  const labels = (list: CompletionList): string[] => list.items.map(({ label }) => label);

  it('offers blocks at the start of a text, with a snippet and their meaning', async () => {
    const list = await complete('new.trough', 'insp‸');
    const item = list.items.find(({ label }) => label === 'inspection');
    expect(item?.documentation).toMatchObject({ value: expect.stringContaining('What was seen on one day') });
    expect(item?.textEdit).toMatchObject({ newText: expect.stringContaining('meter ${3:8120} h') });
    expect(labels(list)).toContain('conveyor');
    expect(labels(list)).not.toContain('thickness');
  });

  it('offers the facts of a conveyor that it does not have yet, and parts again and again', async () => {
    const list = labels(await complete('DG1.trough', conveyor.replace('  point P1', '  ‸\n  point P1')));
    expect(list).toEqual(expect.arrayContaining(['point', 'hold-down', 'bulk density', 'conveys']));
    expect(list).not.toContain('length');
    expect(list).not.toContain('layer');
  });

  it('offers facts though a line above is broken', async () => {
    const list = labels(
      await complete(
        'DG1.trough',
        conveyor.replace('incline 24 deg', 'inclin !').replace('  point P1', '  ‸\n  point P1'),
      ),
    );
    expect(list).toEqual(expect.arrayContaining(['point', 'incline']));
  });

  it('offers the rest of a keyword of several words', async () => {
    const list = await complete('DG1.trough', conveyor.replace('slide gate allowance', 'slide g‸'));
    expect(labels(list)).toContain('slide gate');
    const item = list.items.find(({ label }) => label === 'slide gate');
    expect(item?.textEdit).toMatchObject({ newText: 'slide gate' });
  });

  it('offers in an inspection the points of its conveyor, numbered ones too', async () => {
    const list = labels(await complete('new.trough', 'inspection DG1 2025-06-01 meter 9000 h {\n  ‸\n}\n'));
    expect(list).toEqual(expect.arrayContaining(['P1', 'Q1', 'Q2', 'Q3', 'Q4', 'at', 'finding']));
    expect(list).not.toContain('Q5');
  });

  it('offers after a point what can be seen there', async () => {
    expect(
      labels(await complete('new.trough', 'inspection DG1 2025-06-01 meter 9000 h {\n  P1 ‸\n}\n')),
    ).toEqual(['thickness', 'colour', 'second colour showing', 'trough showing', 'not seen']);
  });

  it('offers the colours of the liner fitted on that day', async () => {
    const relined = `${files['jobs.trough'] ?? ''}\nliner Three { layer black 4 mm\n layer blue 4 mm\n condemn at 2 mm }\nreline DG1 2025-05-01 meter 8500 h { liner Three }\n`;
    const others = { ...files, 'jobs.trough': relined };
    expect(
      labels(
        await complete('new.trough', 'inspection DG1 2025-06-01 meter 9000 h {\n  P1 colour ‸\n}\n', others),
      ),
    ).toEqual(['black', 'blue']);
    await session.end();
    expect(
      labels(
        await complete('new.trough', 'inspection DG1 2025-04-01 meter 8400 h {\n  P1 colour ‸\n}\n', others),
      ),
    ).toEqual(['ivory', 'teal']);
  });

  it.each([
    ['  P1 thickness 8.4 ‸', 'mm', 'rpm'],
    ['  P1 thickness 8.4‸', 'mm', 'rpm'],
    ['  current empty 5 ‸', 'A', 'mm'],
    ['  hold-down at 9.5 m‸', 'mm', 'h'],
    ['  bolts missing 2 at 9 m to 10.5 ‸', 'mm', 'h'],
    ['  from 9 m to 10.5 ‸', 'mm', 'h'],
    ['  finding brace from 9 m to 10.5 ‸', 'mm', 'h'],
    ['  serviced brace renewed at 9 ‸', 'mm', 'h'],
    ['  serviced closed brace bent at 9 ‸', 'mm', 'h'],
  ])('offers units of the right dimension after "%s"', async (line, right, wrong) => {
    const list = labels(
      await complete('new.trough', `inspection DG1 2025-06-01 meter 9000 h {\n${line}\n}\n`),
    );
    expect(list).toContain(right);
    expect(list).not.toContain(wrong);
  });

  it.each([
    ['job J2 {\n  conveyor DG1\n  crews ‸\n}', ['Alpha']],
    ['job J2 {\n  conveyor DG1\n  outage ‸\n}', ['Spring27']],
    ['job J2 {\n  conveyor DG1\n  reline run above ‸\n}', ['Gate']],
    ['job J2 {\n  conveyor ‸\n}', ['DG1']],
    ['conveyor X {\n  liner ‸\n}', ['TwoLayer12', 'liner side height']],
    ['conveyor X {\n  screw ‸\n}', ['Spiral400']],
  ])('offers names across files: %s', async (text, wanted) => {
    expect(labels(await complete('new.trough', text))).toEqual(wanted);
  });

  it('offers the dates of the newest records, never today', async () => {
    const list = await complete('new.trough', 'inspection DG1 ‸');
    expect(labels(list)).toEqual(['2025-03-12']);
    expect(list.items[0]?.detail).toContain('meter 8120 h');
  });

  it('offers codes in an allow comment, and nothing in other comments or in quotes', async () => {
    expect(
      labels(await complete('new.trough', '// allow TL1‸')).every((label) => label.startsWith('TL1')),
    ).toBe(true);
    await session.end();
    expect(labels(await complete('new.trough', '// some words‸'))).toEqual([]);
    await session.end();
    expect(labels(await complete('new.trough', 'conveyor X {\n  conveys "di‸"\n}'))).toEqual([]);
  });
});

describe('links, hints and lenses', () => {
  it('links photos beside the text and leaves paths that lead elsewhere alone', async () => {
    const text =
      'inspection DG1 2025-06-01 meter 9000 h {\n  photo "photos/a b.jpg"\n  photo "../../secret.jpg"\n  photo "/etc/passwd"\n}\n';
    session = await startSession({ ...files, 'new.trough': text });
    const links = await ask<{ target: string }[]>('textDocument/documentLink', 'new.trough');
    expect(links.map(({ target }) => target)).toEqual(['file:///estate/photos/a%20b.jpg']);
  });

  const whole = { range: { start: { line: 0, character: 0 }, end: { line: 100, character: 0 } } };

  it('shows the hours on the liner beside an inspection, and more where it is asked for', async () => {
    session = await startSession(files);
    const hints = await ask<{ label: string }[]>(
      'textDocument/inlayHint',
      'inspections/DG1-2025-03-12.trough',
      whole,
    );
    expect(hints.map(({ label }) => label)).toEqual(['8120 h on the liner']);
    expect(await ask<unknown[]>('textDocument/inlayHint', 'DG1.trough', whole)).toEqual([]);
    await session.end();
    session = await startSession(files, {
      settings: { inlayHints: { defaults: true, chainage: true, exposure: false, wear: false } },
    });
    await session.settled();
    const runs = await ask<{ label: string }[]>('textDocument/inlayHint', 'DG1.trough', whole);
    expect(runs.map(({ label }) => label)).toEqual(
      expect.arrayContaining([expect.stringContaining('12.90 m to 22.40 m, 8 panels')]),
    );
    const defaults = await ask<{ label: string; tooltip: string }[]>(
      'textDocument/inlayHint',
      'plant.trough',
      whole,
    );
    expect(defaults.map(({ label }) => label).join()).toContain('density');
    // The editor cuts at 43 characters (`editor.inlayHints.maximumLength`); what does not fit stands in the tooltip.
    const longest = Math.max(...[...runs, ...defaults].map(({ label }) => label.length));
    expect(longest).toBeLessThanOrEqual(43);
    expect(defaults.map(({ tooltip }) => tooltip).join()).toContain('maximum temperature');
  });

  it('shows beside a point how fast it wears, with the interval of its date, once the model has spoken', async () => {
    session = await startSession(files);
    await vi.waitFor(
      async () => {
        const hints = await ask<{ label: string }[]>('textDocument/inlayHint', 'DG1.trough', whole);
        // Long-term rate by hand: (12 − 8.4) mm / 8120 h = 0.44 mm per 1000 h; the model is near it.
        expect(hints.map(({ label }) => label)).toEqual([
          expect.stringMatching(/^0\.4\d mm\/1000 h, limit \d{4}-\d{2} to \d{4}-\d{2}$/),
        ]);
      },
      { timeout: 50_000, interval: 500 },
    );
    expect(await hoverText('DG1.trough', conveyor, 'P1')).toContain('80 % interval');
  });

  it('puts newest inspection and life left above a conveyor, also once it is open', async () => {
    session = await startSession(files);
    session.open('DG1.trough');
    const lenses = await ask<{ command: { title: string; command: string; arguments?: string[] } }[]>(
      'textDocument/codeLens',
      'DG1.trough',
    );
    expect(lenses.map(({ command }) => command.title)[0]).toContain('inspected 2025-03-12');
    expect(lenses.map(({ command }) => command.command)).toContain('troughline.showDrawing');
  });
});
