// A thousand random inspectors type values, mistakes and corrections, change sides, lose the tab and come back: what the block holds is
// what a model of the inspector typed. The page's own script in a real browser, driven from inside the page so that a thousand rounds
// take seconds; some dozens of blocks are read by the language itself. Two sizes of phone, no network.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { liftConveyor, read } from '../estate.js';
import { phoneBench } from './phone-bench.js';

const estate = liftConveyor({
  more: 'inspection DG1 2026-01-05 meter 8000 h {\n  view upstream\n  P1 thickness 8.4 mm\n  at 10.20 m clock 7:30 thickness 9 mm\n}',
});

const bench = phoneBench(estate);

/** One thing that an inspector does; `row` counts the points of the list, taken round. */
type Act =
  | { readonly kind: 'keys'; readonly row: number; readonly keys: string; readonly replacesSteel: boolean }
  | { readonly kind: 'colour'; readonly row: number; readonly name: string; readonly replacesSteel: boolean }
  | { readonly kind: 'steel'; readonly row: number }
  | { readonly kind: 'not seen'; readonly row: number; readonly why: string; readonly replacesSteel: boolean }
  | { readonly kind: 'remark'; readonly row: number; readonly text: string }
  | { readonly kind: 'place'; readonly chainage: string; readonly clock: string }
  | { readonly kind: 'field'; readonly name: string; readonly typed: Typed }
  | { readonly kind: 'side'; readonly look: 'upstream' | 'downstream' }
  | {
      readonly kind: 'wrong';
      readonly what: string;
      readonly at: Typed;
      readonly severity: string;
      readonly text: string;
    }
  | { readonly kind: 'lose the tab' };

/** What is typed into a field, and what it means; undefined where nobody but the inspector can say. */
interface Typed {
  readonly text: string;
  readonly means: string | undefined;
}

const sure = fc
  .tuple(fc.integer({ min: 1, max: 899 }), fc.constantFrom('', ' '), fc.boolean())
  .map(([tenths, blank, comma]): Typed => {
    const means = String(tenths / 10);
    return { text: `${comma ? means.replace('.', ',') : means}${blank}`, means };
  });
const slip = fc
  .constantFrom('about 5', '−2', '3 or 4', '7 kW', '5?', '1 200', '2.3.4')
  .map((text): Typed => ({ text, means: undefined }));
const remark = fc.string({ maxLength: 12 }).map((text) => text.replace(/[\u0000-\u001f\u007f]/g, ''));
const row = fc.nat({ max: 7 });
const keys = fc.string({ unit: fc.constantFrom(...'0123456789.⌫⌫'), minLength: 1, maxLength: 7 });
const steel = { replacesSteel: fc.boolean() };
const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ kind: fc.constant('keys' as const), row, keys, ...steel }) },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('colour' as const),
      row,
      name: fc.constantFrom('ivory', 'teal'),
      ...steel,
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('steel' as const), row }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('not seen' as const),
      row,
      why: fc.constantFrom('build-up', 'too dark'),
      ...steel,
    }),
  },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('remark' as const), row, text: remark }) },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('place' as const),
      chainage: fc.constantFrom('3.3', '6.4', '11'),
      clock: fc.constantFrom('4:30', '7:00'),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('field' as const),
      name: fc.constantFrom('#empty', '#loaded', '[data-gap=H4]', '[data-gap=H5]'),
      typed: fc.oneof(sure, slip),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('side' as const),
      look: fc.constantFrom('upstream' as const, 'downstream' as const),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('wrong' as const),
      what: fc.constantFrom('panel torn', 'spiral bent'),
      at: fc.oneof(
        fc.integer({ min: 1, max: 119 }).map((n): Typed => ({ text: `${n / 10} m`, means: String(n / 10) })),
        slip,
      ),
      severity: fc.constantFrom('slight', 'serious', 'urgent'),
      text: remark,
    }),
  },
  { weight: 2, arbitrary: fc.constant({ kind: 'lose the tab' as const }) },
);
const inspector = fc.array(act, { minLength: 4, maxLength: 14 });

/** What the inspector has in mind, apart from any code of the page. */
function meant(acts: readonly Act[]): { readonly rows: readonly string[]; readonly kept: readonly string[] } {
  interface Spot {
    readonly writes: (look: string) => string;
    value: string;
    typing: string;
    reason: string;
    remark: string;
  }
  const spot = (writes: Spot['writes']): Spot => ({ writes, value: '', typing: '', reason: '', remark: '' });
  const mirror = (clock: string): string => {
    const [hour = 0, minute = 0] = clock.split(':').map(Number);
    const left = 720 - hour * 60 - minute;
    return `${Math.floor(left / 60)}:${String(left % 60).padStart(2, '0')}`;
  };
  const at = (chainage: string, clock: string, seenFrom: string) => (look: string) =>
    `at ${chainage} m clock ${look === seenFrom ? clock : mirror(clock)}`;
  const spots: Spot[] = [
    ...['P1', 'P2', 'P3'].map((name) => spot(() => name)),
    spot(at('10.20', '7:30', 'upstream')),
  ];
  const fields = new Map<string, Typed>();
  const wrong: Extract<Act, { kind: 'wrong' }>[] = [];
  let look = 'upstream';
  const answer = (where: Spot, value: string, reason: string, typing: string): void =>
    void Object.assign(where, { value, reason, typing });
  for (const each of acts) {
    const where = 'row' in each ? spots[each.row % spots.length] : undefined;
    switch (each.kind) {
      case 'keys':
        if (!where) break;
        // A lone point on the display is no reading, and does not come back.
        if (where.value === '') where.typing = '';
        for (const key of each.keys) {
          const isSteel = where.value === 'trough showing';
          // A key beside steel begins a number of its own.
          const before = isSteel ? '' : where.typing;
          const typing =
            key === '⌫'
              ? before.slice(0, -1)
              : (key === '.' && before.includes('.')) || before.length >= 6
                ? before
                : before + key;
          if (key === '.' && before.includes('.')) continue;
          if (isSteel && !each.replacesSteel) continue;
          const isNumber = /\d/.test(typing);
          const tidy = typing
            .replace(/^\./, '0.')
            .replace(/^0+(?=\d)/, '')
            .replace(/\.$/, '');
          const readable = Number(tidy) <= 1000;
          answer(where, isNumber ? (readable ? `thickness ${tidy} mm` : `?${typing} mm`) : '', '', typing);
        }
        break;
      case 'colour':
        if (where && (where.value !== 'trough showing' || each.replacesSteel))
          answer(where, `colour ${each.name}`, '', '');
        break;
      case 'steel':
        if (where) answer(where, 'trough showing', '', '');
        break;
      case 'not seen':
        if (where && (where.value !== 'trough showing' || each.replacesSteel))
          answer(where, 'not seen', each.why, '');
        break;
      case 'remark':
        // Beside a place not seen the field holds the reason too, so the inspector leaves it; without a reading there is none.
        if (where && where.reason === '' && (where.value !== '' || where.remark !== ''))
          where.remark = each.text;
        break;
      case 'place': {
        const writes = at(each.chainage, each.clock, look);
        if (
          !spots.some(
            (known) =>
              Number(known.writes('upstream').split(' ')[1]) === Number(each.chainage) &&
              known.writes(look) === writes(look),
          )
        )
          spots.push(spot(writes));
        break;
      }
      case 'field':
        fields.set(each.name, each.typed);
        break;
      case 'wrong':
        wrong.push(each);
        break;
      case 'side':
        look = each.look;
        break;
      case 'lose the tab':
        break;
    }
  }
  return { rows: rowsOf(), kept: keptOf() };

  function rowsOf(): readonly string[] {
    const value = (name: string): string | undefined => fields.get(name)?.means;
    const [empty, loaded] = [value('#empty'), value('#loaded')];
    return [
      `  view ${look}`,
      ...spots.flatMap(({ writes, value: seen, reason, remark: said }) => {
        if (seen === '' || seen.startsWith('?')) return [];
        const note = [reason, said].filter(Boolean).join(', ').trim().replace(/"/g, "'");
        return [`  ${writes(look)} ${seen}${note === '' ? '' : ` "${note}"`}`];
      }),
      ...wrong.map(({ what, at: place, severity, text }) => {
        const note = text.trim().replace(/"/g, "'");
        const where = place.means === undefined ? '' : ` at ${place.means} m`;
        return `  ${what}${where} ${severity}${note === '' ? '' : ` "${note}"`}`;
      }),
      ...(['H4', 'H5'] as const).flatMap((name) => {
        const gap = value(`[data-gap=${name}]`);
        return gap === undefined ? [] : [`  hold-down at ${name === 'H4' ? '3.5' : '4.5'} m gap ${gap} mm`];
      }),
      ...(empty === undefined && loaded === undefined
        ? []
        : [
            `  current${empty === undefined ? '' : ` empty ${empty} A`}${loaded === undefined ? '' : ` loaded ${loaded} A`}`,
          ]),
    ];
  }

  function keptOf(): readonly string[] {
    return [
      ...spots.flatMap(({ value: seen, remark: said }) =>
        seen.startsWith('?') ? [seen.slice(1), said.trim()] : seen === '' ? [said.trim()] : [],
      ),
      ...[...fields.values(), ...wrong.map(({ at: place }) => place)].flatMap(({ text, means }) =>
        means === undefined ? [text] : [],
      ),
    ].filter((text) => text !== '');
  }
}

/** The inspector's hands: runs inside the page, taps its buttons, types into its fields, gives back the block. */
function inThePage(acts: readonly Act[]): string {
  const all = <T extends Element>(selector: string): T[] => [...document.querySelectorAll<T>(selector)];
  const view = (): string => document.getElementById('view')?.dataset['view'] ?? '';
  const tap = (words: string, within = 'button'): void => {
    const found = all<HTMLElement>(within).find(
      (node) => (node.getAttribute('aria-label') ?? node.textContent).replace(/^✓ /, '') === words,
    );
    if (!found) throw new Error(`nothing to tap: ${words} on ${view()}`);
    found.click();
  };
  const press = (id: string): void => {
    const found = document.getElementById(id);
    if (!found) throw new Error(`no ${id} on ${view()}`);
    found.click();
  };
  const type = (selector: string, text: string): void => {
    const [field] = all<HTMLInputElement>(selector);
    if (!field) throw new Error(`no field ${selector}`);
    field.value = text;
    field.dispatchEvent(new Event('input', { bubbles: true }));
  };
  const script = all<HTMLScriptElement>('script:not([type])')[0]?.textContent ?? '';
  /** The page as it comes up again: its script from the beginning, with what the browser kept. */
  const again = (): void => {
    document.getElementById('app')?.replaceChildren();
    const node = document.createElement('script');
    node.textContent = script;
    document.body.append(node);
    node.remove();
  };
  const toList = (): void => {
    const way: Readonly<Record<string, () => void>> = {
      start: () => press('to-list'),
      point: () => press('list'),
      more: () => press('more-back'),
      place: () => tap('Back'),
      finish: () => tap('Back to the list'),
    };
    way[view()]?.();
  };
  const open = (row: number): void => {
    toList();
    const rows = all<HTMLElement>('.row');
    rows[row % rows.length]?.click();
  };
  const settle = (replaces: boolean): void => {
    if (document.getElementById('steel-question')) press(replaces ? 'steel-replace' : 'steel-keep');
  };
  localStorage.clear();
  again();
  type('#date', '2026-03-16');
  type('#meter', '8850');
  for (const act of acts) {
    switch (act.kind) {
      case 'keys':
        open(act.row);
        for (const key of act.keys) {
          tap(key === '⌫' ? 'delete' : key === '.' ? 'point' : key, '.pad button');
          settle(act.replacesSteel);
        }
        break;
      case 'colour':
        open(act.row);
        tap(act.name);
        settle(act.replacesSteel);
        break;
      case 'steel':
        open(act.row);
        tap('TROUGH SHOWING (steel)');
        break;
      case 'not seen':
        open(act.row);
        tap(act.why);
        settle(act.replacesSteel);
        break;
      case 'remark': {
        open(act.row);
        const [note] = all<HTMLInputElement>('#note');
        const isReason = all('.chosen').some((node) => /build-up|too dark/.test(node.textContent));
        if (note && !isReason) type('#note', act.text);
        break;
      }
      case 'place':
        toList();
        press('add-place');
        type('#chainage', act.chainage);
        type('#clock', act.clock);
        press('place-add');
        break;
      case 'field':
        toList();
        press('to-more');
        type(act.name, 'first a mistake');
        type(act.name, act.typed.text);
        break;
      case 'wrong': {
        toList();
        press('to-wrong');
        document.querySelector<HTMLElement>(`[data-kind="${act.what}"]`)?.click();
        type('#wrong-at', 'first a mistake');
        type('#wrong-at', act.at.text);
        document.querySelector<HTMLElement>(`[data-of="wrong: ${act.severity}"]`)?.click();
        type('#wrong-note', act.text);
        press('wrong-done');
        break;
      }
      case 'side':
        toList();
        tap('Back to date, meter and side');
        tap(act.look === 'upstream' ? 'towards me (upstream)' : 'away from me (downstream)');
        break;
      case 'lose the tab':
        again();
        break;
    }
  }
  toList();
  press('to-finish');
  return all<HTMLTextAreaElement>('#block')[0]?.value ?? '';
}

function judge(acts: readonly Act[], block: string): void {
  const lines = block.trimEnd().split('\n');
  const { rows, kept } = meant(acts);
  const comments = lines.filter((line) => line.startsWith('  //')).join('\n');
  expect(lines.filter((line) => !line.startsWith('  //'))).toEqual([
    'inspection Tarnholt.DG1 2026-03-16 meter 8850 h {',
    ...rows,
    '}',
  ]);
  for (const typed of kept) expect(comments).toContain(typed);
}

// A thousand with TROUGHLINE_ROUNDS=500; a run of the tests is content with fewer.
const rounds = Number(process.env['TROUGHLINE_ROUNDS'] ?? 120);

test.each([
  [360, 640],
  [412, 915],
])(
  'at %i × %i',
  async (width, height) => {
    const page = await bench.open({ viewport: { width, height } });
    page.on('pageerror', (problem) => {
      throw problem;
    });
    let readByLanguage = 0;
    await fc.assert(
      fc.asyncProperty(inspector, async (acts) => {
        const block = await page.evaluate(inThePage, acts);
        judge(acts, block);
        if (readByLanguage++ >= 12) return;
        const { estate: after, findings } = read(estate, block);
        expect(findings.filter(({ code }) => code.startsWith('TL0'))).toEqual([]);
        expect(after.readings.count).toBe(
          2 + block.split('\n').filter((line) => /^ {2}(P\d|at) /.test(line)).length,
        );
      }),
      { numRuns: rounds },
    );
    await page.context().close();
  },
  120_000,
);
