// All sheets of a pack agree: fitting direction, panels, lifts, gaps, gas tests, and the banner with the exit code. The printed
// forms are read back and compared with each other, for the demo's jobs, a part of a run, a screw change and a fit from the tail.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { suppliesOf } from '../../../src/domain/decision/supply.js';
import { crewSheetHtml } from '../../../src/generators/work-pack/crew-sheet.js';
import { workPackHtml } from '../../../src/generators/work-pack/html.js';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import type { WorkPack } from '../../../src/generators/work-pack/pack.js';
import { recordTemplate } from '../../../src/generators/work-pack/parts/records.js';
import { packLists } from '../../../src/generators/work-pack/print/lists.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { troughline } from '../../cli/console.js';
import { day, liftConveyor, read, tarnholt, theJob, type EstateFacts } from '../estate.js';

function pack(facts: EstateFacts, change: (text: string) => string = (text) => text): WorkPack {
  const analysis = read(change(liftConveyor(facts)));
  return workPack(analysis.estate, theJob(analysis), { asOf: day('2026-10-31') });
}

const estate = tarnholt();
const packs: readonly (readonly [name: string, pack: WorkPack])[] = [
  ...estate.jobs.map((job) => [job.name, workPack(estate, job)] as const),
  ['run 2', pack({})],
  [
    'two panels of run 1',
    pack({}, (text) => text.replace('reline run above Gate', 'reline panels 3 to 4 of run 1')),
  ],
  ['a screw change', pack({ job: 'change screw' })],
  ['both runs', pack({}, (text) => text.replace('reline run above Gate', 'reline all'))],
  [
    'joints with a gap, sheets to cut from',
    pack({ liner: 'stock length 3000 mm' }, (text) =>
      text.replace('joint butted', 'joint gap 8 mm').replace('reline run above Gate', 'reline all'),
    ),
  ],
];

/** What the store holds of what these jobs take: too little of the panels, more than enough of the rest. */
const inStore = `lead time liner 10 week
  lead time screw 20 week
  on the shelf TwoLayer12 3 panels counted 2026-09-01
  on the shelf TwoLayer12 200 fixings counted 2026-09-01
  on the shelf Spiral300 1 spiral counted 2026-09-01`;

interface Table {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Tables of a Markdown print, cell by cell. */
function tables(text: string): readonly Table[] {
  const found: { caption: string; head: string[]; rows: string[][] }[] = [];
  let before = '';
  let open = false;
  for (const line of text.split('\n')) {
    if (!line.startsWith('|')) {
      if (line.trim() !== '') before = line.replace(/\*\*/g, '');
      open = false;
      continue;
    }
    const cells = line
      .slice(1, -1)
      .split('|')
      .map((cell) => cell.trim().replace(/\*\*/g, ''));
    if (!open) found.push({ caption: before, head: cells, rows: [] });
    else if (!/^:?-+:?$/.test(cells[0] ?? '')) found.at(-1)?.rows.push(cells);
    open = true;
  }
  return found;
}

function column(table: Table | undefined, head: string): readonly string[] {
  const at = table?.head.indexOf(head) ?? -1;
  return at < 0 ? [] : (table?.rows ?? []).map((row) => row[at] ?? '');
}

function list(made: WorkPack, name: string): readonly Record<string, unknown>[] {
  const sheet = packLists(made).find((each) => each.name === name);
  return (sheet?.rows ?? []).map((row) =>
    Object.fromEntries(row.map((cell, at) => [sheet?.columns[at]?.head ?? '', cell])),
  );
}

describe.each(packs)('%s', (_, made) => {
  const print = tables(workPackMarkdown(made));
  const panelTables = print.filter(({ head }) => head.includes('Length as fitted'));

  test('panels go in the same order on panel list, steps, drawings, workbook and as-fitted form', () => {
    const renewed = made.runs.filter((run) => run.renewed > 0);
    expect(panelTables).toHaveLength(renewed.length);
    for (const [index, run] of renewed.entries()) {
      const listed = column(panelTables[index], 'Panel').map((cell) => Number.parseInt(cell, 10));
      expect(panelTables[index]?.caption).toContain(`fitted from the ${run.fitFrom} end`);
      const upward = [...listed].sort((a, b) => a - b);
      expect(listed).toEqual(run.fitFrom === 'tail' ? upward : upward.reverse());
      const form = made.asFitted.relines.flatMap(({ runs }) => runs).find((each) => each.run === run.number);
      expect(form?.panels.map(({ panel }) => panel)).toEqual(listed);
      const workbook = list(made, 'Panels').filter(
        (row) => row['Run'] === run.number && row['New'] === 'new',
      );
      expect(
        workbook.sort((a, b) => Number(a['Turn']) - Number(b['Turn'])).map((row) => row['Panel']),
      ).toEqual(listed);
      // A step that names an end names this one; two fronts are an obstacle, and are told as one.
      const fits = made.steps.filter(
        (step) =>
          step.action === 'fit' && step.from < run.to && step.to > run.from && made.obstacles.length === 0,
      );
      for (const step of fits) expect(step.where).toContain(`from the ${run.fitFrom} end`);
      const drawn = made.drawings.flatMap(({ svg }) => [
        ...svg.matchAll(new RegExp(`run ${run.number}\\b[^<]*fit from the (head|tail)`, 'g')),
      ]);
      for (const [, end] of drawn) expect(end).toBe(run.fitFrom);
    }
  });

  test('panels counted are panels listed, cut, taken off, put back and asked for', () => {
    const renewed = made.panels.filter((panel) => panel.renewed);
    const ids = renewed.map(({ run, panel }) => `${run}.${panel}`).sort();
    expect(panelTables.flatMap(({ rows }) => rows)).toHaveLength(ids.length);
    expect(
      made.cutLists
        .flatMap(({ sticks }) =>
          sticks.flatMap(({ cuts }) => cuts.map(({ run, panel }) => `${run}.${panel}`)),
        )
        .sort(),
    ).toEqual(ids);
    const taken = made.takings.find(({ part }) => part === 'liner panel');
    expect([taken?.off ?? 0, taken?.back ?? 0]).toEqual([ids.length, ids.length]);
    const template = recordTemplate(made.asFitted);
    const blanks = [...template.matchAll(/panels ((?:_+ mm(?:, )?)+)/g)].flatMap((match) =>
      (match[1] ?? '').split(', '),
    );
    expect(blanks).toHaveLength(ids.length);
    expect(
      made.lifts.byHand
        .filter(({ what }) => what.startsWith('panel'))
        .reduce((sum, { count }) => sum + count, 0),
    ).toBe(ids.length);
  });

  test('a panel has one length: its own, on panel list, cut list, workbook, forms and drawings', () => {
    const renewed = made.panels.filter((panel) => panel.renewed);
    const cuts = made.cutLists.flatMap(({ sticks }) => sticks.flatMap((stick) => stick.cuts));
    const listed = list(made, 'Panels');
    const carried = made.lifts.byHand.filter(({ what }) => what.startsWith('panel'));
    for (const { run, panel, length, from, to, mass, bolts } of renewed) {
      const gap = made.runs.find(({ number }) => number === run)?.gap ?? NaN;
      const own = made.panels.filter((each) => each.run === run).length;
      // By hand: half a gap is left at each end that meets another panel.
      const joints = (panel === 1 ? 0 : 1) + (panel === own ? 0 : 1);
      expect(length).toBeCloseTo(to - from - (joints * gap) / 2, 2);
      const cut = cuts.find((each) => each.run === run && each.panel === panel);
      expect(cut?.length).toBeCloseTo(length, 2);
      const row = listed.find((each) => each['Run'] === run && each['Panel'] === panel);
      const inches = made.unit === 'in';
      const said = Number(row?.[inches ? 'Length, in' : 'Length, mm']);
      expect(said * (inches ? 25.4 : 1)).toBeCloseTo(length, -0.3);
      const form = made.asFitted.relines.flatMap(({ runs }) => runs).find((each) => each.run === run);
      expect(form?.panels.find((each) => each.panel === panel)?.length).toBe(length);
      // Mass and bolts follow the same length: of two panels of one run, as the lengths.
      const first = renewed.find((each) => each.run === run);
      if (mass !== undefined && first?.mass !== undefined)
        expect(mass / first.mass).toBeCloseTo(length / first.length, 6);
      if (bolts !== undefined && first?.length === length) expect(bolts).toBe(first.bolts);
    }
    expect(Math.max(0, ...carried.map(({ mass }) => mass))).toBeCloseTo(
      Math.max(0, ...renewed.map(({ mass = 0 }) => mass)),
      6,
    );
    const bolted = made.materials.find(({ what }) => what.includes('countersunk bolt'))?.needed;
    if (renewed.every(({ bolts }) => bolts !== undefined))
      expect(bolted ?? 0).toBe(renewed.reduce((sum, { bolts = 0 }) => sum + bolts, 0));
    const gaps = made.runs.filter(({ gap, renewed: fresh }) => gap > 0 && fresh > 0);
    expect(workPackMarkdown(made).split('stays open').length - 1).toBe(gaps.length > 0 ? 1 : 0);
  });

  test('what is there is not ordered: cut list, materials, workbook, first page', () => {
    const sticks = made.cutLists.flatMap((cut) => cut.sticks);
    const sheets = made.materials.filter(({ kind, what }) => kind === 'liner' && !what.includes('at least'));
    expect(sheets.reduce((sum, { needed }) => sum + needed, 0)).toBe(
      sticks.filter(({ offcut }) => !offcut).length,
    );
    for (const cut of made.cutLists) {
      const bought = cut.toBuy.reduce((sum, { count }) => sum + count, 0);
      expect(cut.sticks.filter(({ offcut, shelf }) => !offcut && !shelf)).toHaveLength(bought);
      for (const stock of cut.shelf) expect(stock.taken).toBeLessThanOrEqual(stock.count);
      const taken = cut.shelf.reduce((sum, stock) => sum + stock.taken, 0);
      expect(cut.sticks.filter(({ shelf }) => shelf)).toHaveLength(taken);
    }
    const table = print.find(({ head }) => head.includes('There'));
    const workbook = list(made, 'Materials');
    for (const [i, row] of made.materials.entries()) {
      expect(row.toOrder).toBeCloseTo(Math.max(0, row.needed + row.spares - (row.onShelf ?? 0)), 6);
      expect(Number.parseFloat(column(table, 'To order')[i] ?? '')).toBe(row.toOrder);
      expect([workbook[i]?.['On the shelf'], workbook[i]?.['To order']]).toEqual([row.onShelf, row.toOrder]);
      if (row.toOrder === 0) expect(row.orderBy).toBeUndefined();
      const first = made.orderBy.find(({ item }) => item === row.kind);
      if (row.toOrder > 0) expect(row.orderBy).toBe(first?.date);
    }
    for (const { item } of made.orderBy)
      expect(made.materials.some(({ kind, toOrder }) => kind === item && toOrder > 0)).toBe(true);
  });

  test('the access table names where somebody goes in or reaches in, as the steps do', () => {
    const table = print.find(({ head }) => head.includes('Somebody goes in or reaches in for'));
    for (const [i, zone] of made.access.entries()) {
      const here = made.steps.filter(({ from, to }) => from < zone.to && to > zone.from);
      const opened = here.filter(({ action }) =>
        /^(covers|braces|hold-downs|strip|clean|fit|patch|clear|join|remove screw|insert)/.test(action),
      );
      expect(zone.inside.length > 0).toBe(opened.length > 0);
      expect(new Set(zone.inside)).toEqual(new Set([...zone.inside, ...opened.map(({ action }) => action)]));
      for (const action of ['isolate', 'prove dead', 'gas test', 'run loaded'])
        expect(zone.inside).not.toContain(action);
      const cell = column(table, 'Somebody goes in or reaches in for')[i] ?? '';
      if (opened.length > 0) expect(cell).toBe(zone.inside.join(', '));
      else expect(cell).toMatch(/^nothing/);
    }
  });

  test('lifts and gaps are of what comes off, on every sheet', () => {
    const off = (part: string): number => made.takings.find((taking) => taking.part === part)?.off ?? 0;
    for (const lift of made.lifts.byHand.filter(({ what }) => what === 'cover'))
      expect(lift.count).toBe(off('cover'));
    const places = made.holdDowns.length;
    const gaps = print.find(({ caption }) => caption.startsWith('Hold-down gaps'));
    expect(gaps?.rows.length ?? 0).toBe(off('hold-down') > 0 ? places : 0);
    const crew = crewSheetHtml(made);
    for (const taking of made.takings) expect(crew).toContain(taking.which);
    expect(list(made, 'Off and back').map((row) => row['Which'])).toEqual(
      made.takings.map(({ which }) => which),
    );
  });

  test('hold-downs are counted once: so many blocks at so many places, on every sheet', () => {
    const taken = made.takings.find(({ part }) => part === 'hold-down');
    const blocks = made.holdDowns.reduce((sum, place) => sum + place.blocks, 0);
    const places = made.holdDowns.length;
    if (!taken) return expect(places).toBe(0);
    const words = `${blocks} blocks at ${places} places`;
    const here = { taking: taken.off, back: taken.back, at: taken.places };
    expect(here).toEqual({ taking: blocks, back: blocks, at: { off: places, back: places } });
    // The hours, at their fullest (runs opened one after another are never all open at once), and when it is handed back.
    const hours = made.hours.map(({ off }) => off.holdDowns ?? { places: -1, blocks: -1 });
    const most = hours.reduce((fullest, each) => (each.places > fullest.places ? each : fullest));
    const offs = made.steps.filter(({ action }) => action === 'hold-downs off').length;
    if (offs === 1) expect(most).toEqual({ places, blocks });
    for (const hour of hours) expect(hour.blocks * places).toBe(blocks * hour.places);
    expect(most.places).toBeGreaterThan(0);
    expect(hours.at(-1)).toEqual({ places: 0, blocks: 0 });
    const byHour = column(
      print.find(({ caption }) => caption.startsWith('Hour by hour')),
      'Off',
    );
    expect(byHour.some((cell) => cell.endsWith(`${most.blocks} at ${most.places}`))).toBe(true);
    // The steps that take them off, together.
    const counts = made.steps.flatMap(({ action, basis, measures }) =>
      action === 'hold-downs off'
        ? [
            ...`${measures.join(' ')} ${basis}`.matchAll(
              /(\d+) blocks? at (\d+) places?\..*\b\2 places? at /g,
            ),
          ]
        : [],
    );
    expect([1, 2].map((n) => counts.reduce((sum, match) => sum + Number(match[n]), 0))).toEqual([
      blocks,
      places,
    ]);
    const material = made.materials.find(({ what }) => what === 'hold-down block');
    // They go back as they came off, but for those that the cover says are renewed.
    const renewed = made.conditions.filter(
      ({ what, again }) => what.includes('hold-down') && again?.includes('a new one goes back'),
    );
    expect(material !== undefined).toBe(renewed.length > 0);
    for (const { what } of renewed) expect(material?.basis).toContain(what);
    expect(material?.needed ?? 0).toBeLessThanOrEqual(blocks);
    expect(crewSheetHtml(made)).toContain(words);
    expect(list(made, 'Off and back').find((row) => row['Part'] === 'hold-down')).toMatchObject({
      Off: blocks,
      Back: blocks,
      Note: words,
    });
    expect(print.find(({ caption }) => caption.startsWith('Hold-down gaps'))?.caption).toContain(words);
  });

  test('the air is tested as often as the permit table says', () => {
    const permit = made.permits.find(({ name }) => name === 'Gas test');
    const told = permit?.why ?? '';
    const tests = made.steps.filter(({ action }) => action === 'gas test');
    // What the table calls needed some step does, or the pack is stamped.
    if (permit?.need === 'needed') expect(tests.length + made.obstacles.length).toBeGreaterThan(0);
    else expect(tests).toEqual([]);
    const repeats = made.schedule.repeatGasTests;
    if (!repeats) return;
    expect(told).toContain(`every ${repeats.every} h`);
    // Repeats are steps of their own, or the one test says how often.
    const said = tests.some(({ measures }) =>
      measures.some((words) => words.includes(`every ${repeats.every} h`)),
    );
    expect(said || tests.length > repeats.times || made.obstacles.length > 0).toBe(true);
    const form = print.find(({ head }) => head.includes('% LFL'));
    expect(form?.rows.length).toBeGreaterThanOrEqual(Math.min(14, repeats.times + 1));
  });

  test('the banner stands on all sheets or on none', () => {
    const stamped = made.obstacles.length > 0;
    expect(workPackHtml(made).includes('class="stamp"')).toBe(stamped);
    expect(crewSheetHtml(made).includes('class="stamp"')).toBe(stamped);
    expect(workPackMarkdown(made).includes('NOT BUILDABLE')).toBe(stamped);
    expect(list(made, 'Job').some((row) => row['What'] === 'NOT BUILDABLE')).toBe(stamped);
  });
});

describe('with something in the store', () => {
  const change = (text: string): string =>
    text.replace('reline run above Gate', 'reline all').replace('lead time liner 10 week', inStore);
  const analysis = read(change(liftConveyor({ job: 'change screw' })));
  const made = workPack(analysis.estate, theJob(analysis), { asOf: day('2026-10-31') });

  test('panels come from the shelf first, the rest is ordered, and the page of decisions says as many', () => {
    const [cut] = made.cutLists;
    expect(cut?.shelf).toEqual([{ item: 'panels', length: 1000, count: 3, taken: 3, counted: '2026-09-01' }]);
    const renewed = made.panels.filter((panel) => panel.renewed);
    const fresh = cut?.sticks.filter(({ shelf }) => !shelf).flatMap(({ cuts }) => cuts) ?? [];
    const liner = theJob(analysis).conveyor.liner;
    const pieces = [{ liner, lengths: renewed.map(({ length }) => length), fixings: 0 }];
    const { shelf } = suppliesOf(theJob(analysis).conveyor.plant, pieces, day('2026-10-31'), []);
    expect(shelf).toContain(`${renewed.length} panels needed, ${fresh.length} short`);
    const sheet = made.materials.find(({ what }) => what.startsWith('TwoLayer12 sheet'));
    expect(sheet).toMatchObject({ needed: 12, spares: 1, onShelf: 3, toOrder: 10, orderBy: '2027-02-01' });
  });

  test('a spiral and bolts that lie there are not ordered', () => {
    const row = (word: string) => made.materials.find(({ what }) => what.includes(word));
    expect(row('screw Spiral300')).toMatchObject({ needed: 12, onShelf: 12, toOrder: 0, orderBy: undefined });
    expect(row('countersunk')).toMatchObject({ onShelf: 200, toOrder: 0 });
    expect(made.orderBy.map(({ item }) => item)).toEqual(['liner']);
    expect(workPackMarkdown(made)).toContain('screw on the shelf');
  });

  test('what was counted after the day of the pack is not known yet', () => {
    const before = workPack(analysis.estate, theJob(analysis), { asOf: day('2026-08-31') });
    expect(before.cutLists.flatMap(({ shelf }) => shelf)).toEqual([]);
    expect(before.orderBy.map(({ item }) => item)).toEqual(['liner', 'screw']);
  });

  test('a job that lists its own stock is cut from that', () => {
    const own = read(change(liftConveyor({ job: 'stock 1003 mm' })));
    const cuts = workPack(own.estate, theJob(own), { asOf: day('2026-10-31') }).cutLists;
    expect(cuts.flatMap(({ shelf, sticks }) => [...shelf, ...sticks.filter((each) => each.shelf)])).toEqual(
      [],
    );
  });
});

describe('a job that counts its stock', () => {
  const sheetsOf = (line: string) => {
    const own = read(
      liftConveyor({ job: line })
        .replace('reline run above Gate', 'reline all')
        .replace('lead time liner 10 week', inStore),
    );
    return workPack(own.estate, theJob(own), { asOf: day('2026-10-31') }).materials.filter(({ what }) =>
      /^TwoLayer12 (sheet|panel)/.test(what),
    );
  };
  test('has it there or on order: only the rest is ordered', () => {
    const [sheet] = sheetsOf('stock 1003 mm 20 pieces');
    expect(sheet).toMatchObject({ onShelf: 20, toOrder: 0 });
    expect(sheet?.basis).toContain('the job lists 20 pieces as there or on order');
  });
  test('in another length than the shelf has it stands beside the shelf', () => {
    const alone = sheetsOf('lift limit 400 kg');
    const beside = sheetsOf('stock 1003 mm 2 pieces');
    const there = (rows: typeof alone): number => rows.reduce((sum, { onShelf = 0 }) => sum + onShelf, 0);
    const missing = (rows: typeof alone): number => rows.reduce((sum, { toOrder }) => sum + toOrder, 0);
    expect([there(alone), there(beside)]).toEqual([3, 5]);
    expect(missing(beside)).toBeLessThan(missing(alone));
  });
  test('may mean what lies on the shelf: of one length the shelf counts', () => {
    const there = sheetsOf('stock 1000 mm 2 pieces').map(({ onShelf }) => onShelf);
    expect(there).toContain(3);
  });
});

describe('on the command line', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'trough-agree-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const sound = `isolate
    prove dead
    gas test all every 2 h
    covers off run 2
    braces off run 2
    hold-downs off run 2
    strip run 2
    clean run 2
    fit run 2 starting at head
    hold-downs on run 2
    braces on run 2
    covers on run 2
    remove isolation
    run empty
    run loaded`;
  test.each([
    ['a step done twice', sound.replace('strip run 2', 'strip run 2\n    strip run 2')],
    [
      'a panel fitted twice',
      sound.replace('starting at head', 'starting at head\n    fit run 2 starting at head'),
    ],
    ['a step of another run', sound.replace('strip run 2', 'strip run 2\n    fit run 1 starting at head')],
  ])('%s gets banner and exit code', async (_, order) => {
    const file = path.join(folder, 'estate.trough');
    writeFileSync(file, liftConveyor({ job: `order {\n    ${order}\n  }` }));
    const out = path.join(folder, 'out');
    const ran = await troughline(['pack', 'J1', file, '--out', out, '--format', 'markdown']);
    expect(ran.exit).toBe(1);
    expect(ran.err).toContain('cannot be built as it stands');
  });
});
