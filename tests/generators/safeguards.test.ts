// A guard that is off and a stop that does nothing come first wherever somebody reads: on the report's front page, on the next sheet
// before anything is looked at, and among the cautions of a pack; rated slight, a missing guard does too. Closed, they are gone.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import type { Estate } from '../../src/domain/model/estate.js';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeHtml } from '../../src/generators/remaining-life/html.js';
import { remainingLifeMarkdown } from '../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { workPackHtml } from '../../src/generators/work-pack/html.js';
import { workPack } from '../../src/generators/work-pack/work-pack.js';
import { formatDay } from '../../src/domain/units/calendar.js';
import { estateOf, look, only, works } from './remaining-life/story.js';

const job = 'job Reline1 { conveyor DG1 outage Spring26 reline all }\n';
const seen = 'P1 thickness 11 mm; panel lifted at 4 m urgent; gearbox noise serious';

type Page = 'first' | 'front' | 'markdown' | 'sheet' | 'pack';

function pages(...records: readonly string[]): Readonly<Record<Page, string>> {
  return pagesOf(estateOf(works, job, ...records));
}

function pagesOf(estate: Estate): Readonly<Record<Page, string>> {
  const report = remainingLife(estate, { depth: 'hand' });
  const [conveyor] = estate.conveyors;
  const [reline] = estate.jobs;
  if (!conveyor || !reline) throw new Error('no conveyor and job');
  return {
    first: report.conveyors.map(({ attention }) => attention.reasons[0]).join(),
    front: remainingLifeHtml(report).split('</section>')[0] ?? '',
    markdown: remainingLifeMarkdown(report),
    sheet: inspectionSheetHtml(inspectionSheet(estate, conveyor)),
    pack: workPackHtml(workPack(estate, reline)),
  };
}

describe('a safeguard that is out of order', () => {
  test.each([
    ['guard missing at drive slight', 'guard missing at drive'],
    ['emergency stop dead at tail', 'emergency stop dead at tail'],
    ['pull cord slack serious', 'pull cord slack'],
    ['interlock bypassed at 2 m', 'interlock bypassed at 2.00 m'],
    ['zero-speed sensor bypassed at tail slight', 'zero-speed sensor bypassed at tail'],
    ['finding blockage switch at head serious "paddle bent"', 'blockage switch at head: paddle bent'],
    ['finding interlock switch at 2 m serious "lever bent"', 'interlock at 2.00 m: lever bent'],
  ])('%s', (line, said) => {
    const out = `${said} (open since 2025-03-05)`;
    const now = pages(look(1500, `${seen}; ${line}`));
    expect(now.first).toBe(`safeguards out of order: ${out}`);
    expect(now.front).toContain(`<strong>Safeguards out of order. </strong>DG1: ${out}`);
    expect(now.markdown).toContain('**Safeguards out of order.** DG1: ');
    expect(now.sheet).toContain(`${out}. Count on none of them`);
    expect(now.pack).toContain(`Found and not closed: ${out}`);
    const later = pages(
      look(1500, `${seen}; ${line}`),
      look(1800, `closed ${line.replace(/ (slight|serious)/, '')}`),
    );
    for (const page of Object.values(later)) expect(page).not.toMatch(/safeguards (right|out)/i);
  });

  test.each(['guard loose at drive', 'pull cord slack slight', 'sign missing at tail serious'])(
    '%s is open and no more than that',
    (line) => {
      const { front, markdown, sheet, pack } = pages(look(1500, `${seen}; ${line}`));
      for (const page of [front, markdown, sheet, pack]) expect(page).not.toMatch(/safeguards out/i);
      expect(sheet).toContain(line.replace(/ (at|slight).*/, ''));
    },
  );
});

describe('safeguards that the conveyor declares', () => {
  const declared = `  hatch H1 at 2 m to 2.6 m
  cover every 1.2 m from 0 m to 4.8 m
  emergency stop at tail and head "mushroom head"
  pull cord PC from 0 m to 6 m both sides
  interlock at H1, C2
  interlock H1
  zero-speed sensor at tail
  guard at drive
  blockage switch at Discharge
}
`;
  const all = [
    'emergency stop at tail',
    'emergency stop at head',
    'pull cord PC from 0.00 m to 6.00 m both sides',
    'interlock at H1',
    'interlock at C2',
    'zero-speed sensor at tail',
    'guard at drive',
    'blockage switch at Discharge',
  ];
  const machine = works.replace(/}\n$/, declared);
  const estate = (...rows: readonly string[]): Estate =>
    estateOf(
      machine,
      `${job.replace('}', 'order { isolate; remove isolation; run empty } }').replaceAll(';', '\n')}`,
      ...rows,
    );

  test('are asked for one by one on the next sheet and before the machine is handed back', () => {
    const { sheet, pack } = pagesOf(estate());
    for (const each of all) {
      expect(sheet).toContain(`<strong>${each}</strong>`);
      expect(pack).toContain(each);
    }
    expect(sheet).toContain('mushroom head');
    expect(pack).toContain('Safeguards declared, before the machine is handed back');
    expect(pack).toContain(`looked at and tried as the site’s rules say: ${all[0] ?? ''}; ${all[1] ?? ''}`);
    expect(pages().sheet).not.toContain('Safeguards declared');
  });

  test('carry what stands open of each, and a condition without a place is of the only one', () => {
    const { sheet, front } = pagesOf(
      estate(
        look(
          1500,
          'P1 thickness 11 mm; zero-speed sensor dead; interlock bypassed at C2; emergency stop dead at head',
        ),
      ),
    );
    const row = (what: string): string =>
      /^.*?<\/tr>/s.exec(sheet.slice(sheet.indexOf(`<strong>${what}</strong>`)))?.[0] ?? '';
    expect(row('zero-speed sensor at tail')).toContain(
      'zero-speed sensor dead at tail, open since 2025-03-05',
    );
    expect(row('interlock at C2')).toContain('interlock bypassed at C2');
    expect(row('interlock at H1')).not.toContain('open since');
    expect(row('emergency stop at tail')).not.toContain('open since');
    expect(front).toContain('zero-speed sensor dead at tail');
  });

  test('a place that the machine does not have is told where it is declared', () => {
    const { findings } = analyse([{ uri: 'a.trough', text: machine.replace('at H1, C2', 'at H1, C9') }]);
    expect(findings.filter(({ severity }) => severity === 'error').map(({ message }) => message)).toEqual([
      'There is no part named C9.',
    ]);
  });

  test('say when and by whom each was tried, on sheet, pack and report; what nobody tried says so', () => {
    const told = estate(
      look(1500, 'P1 thickness 11 mm; emergency stop tried at tail "stops at once" by "electrician"'),
      'serviced DG1 2025-04-07 pull cord tried left side by "crew 2"\n',
      look(
        3000,
        'P1 thickness 10 mm; guard found good at drive; interlock tried at C2; zero-speed sensor tried',
      ),
      'serviced DG1 2025-05-12 interlock tried at H1 "did not stop"\n',
    );
    const report = remainingLife(told, { depth: 'hand' });
    const { sheet, pack, markdown } = pagesOf(told);
    const html = remainingLifeHtml(report);
    for (const page of [sheet, pack, markdown, html]) {
      expect(page).toContain('tried 2025-03-05 by electrician: stops at once');
      expect(page).toContain('tried left side 2025-04-07 by crew 2');
      expect(page).toContain('found good 2025-05-06');
      expect(page).toContain('no trial on record');
    }
    const { safeguards } = only(report).beside;
    // A cord is tried on both sides, what says no place is of the only one, and what failed is no trial.
    expect(
      Object.fromEntries(safeguards.map((each) => [each.what, each.lastTried && formatDay(each.lastTried)])),
    ).toEqual({
      'emergency stop at tail': '2025-03-05',
      'emergency stop at head': undefined,
      'pull cord PC from 0.00 m to 6.00 m both sides': undefined,
      'interlock at H1': undefined,
      'interlock at C2': '2025-05-06',
      'zero-speed sensor at tail': '2025-05-06',
      'guard at drive': '2025-05-06',
      'blockage switch at Discharge': undefined,
    });
    expect(html).toContain('Trials of safeguards');
  });

  test('a trial answers what stands open of it, and closes nothing', () => {
    const dead = look(
      1500,
      'P1 thickness 11 mm; emergency stop dead at tail urgent; emergency stop dead at head',
    );
    const open = (...rows: readonly string[]): readonly string[] =>
      only(remainingLife(estate(dead, ...rows), { depth: 'hand' })).conditions.map(
        ({ what, unanswered, notes }) =>
          `${what}: ${unanswered ? 'not answered' : 'answered'}; ${notes.join()}`,
      );
    const later = look(3000, 'P1 thickness 10 mm; emergency stop tried at tail by "electrician"');
    expect(open(later)).toEqual([
      'emergency stop dead at tail: answered; 2025-05-06, done there: emergency stop tried at tail by electrician',
      'emergency stop dead at head: not answered; ',
    ]);
    expect(open(later, look(4500, 'P1 thickness 9 mm'))[0]).toMatch(
      /at tail: not answered; 2025-05-06, done there: emergency stop tried/,
    );
    expect(open(look(3000, 'P1 thickness 10 mm; emergency stop tried at tail "did not stop"'))[0]).toMatch(
      /not answered/,
    );
    const { first } = pagesOf(estate(dead, later));
    expect(first).toContain('emergency stop dead at tail (open since 2025-03-05)');
  });
});

describe('of two safeguards of one kind whose parts lie a hand apart', () => {
  const machine = works.replace(
    /}\n$/,
    `  hatch H1 at 1.05 m to 1.6 m
  cover every 1.2 m from 0 m to 4.8 m
  interlock at C2
  interlock at H1
  interlock IL3 at 3.6 m
}
`,
  );
  const seenAt = (...lines: readonly string[]): string =>
    look(1500, ['P1 thickness 11 mm', ...lines].join('; '));
  const lifeOf = (...records: readonly string[]): ReturnType<typeof only> =>
    only(remainingLife(estateOf(machine, ...records), { depth: 'hand' }));
  const openIn = (...records: readonly string[]): readonly string[] =>
    lifeOf(...records).conditions.map(({ what }) => what);
  const told = (...records: readonly string[]): readonly string[] =>
    analyse([{ uri: 'a.trough', text: [machine, ...records].join('') }]).findings.flatMap(
      ({ code, message }) => (code === 'TL351' || code === 'TL568' ? [message] : []),
    );

  test('a trial is of the one that it names', () => {
    const triedAt = (where: string): Readonly<Record<string, boolean>> =>
      Object.fromEntries(
        lifeOf(seenAt(`interlock tried at ${where}`)).beside.safeguards.map((each) => [
          each.what,
          each.lastTried !== undefined,
        ]),
      );
    const [c2, h1, il3] = ['interlock at C2', 'interlock at H1', 'interlock IL3 at 3.60 m'];
    expect(triedAt('C2')).toEqual({ [c2]: true, [h1]: false, [il3]: false });
    expect(triedAt('H1')).toEqual({ [c2]: false, [h1]: true, [il3]: false });
    for (const where of ['IL3', '3.6 m', '3.7 m', 'C4'])
      expect(triedAt(where), where).toEqual({ [c2]: false, [h1]: false, [il3]: true });
    const now = look(10_000, 'P1 thickness 10 mm; interlock tried at C2; interlock tried at IL3');
    expect(told(now)).toEqual([
      expect.stringMatching(/^DG1: interlock at H1 is not on record as tried, and/),
    ]);
  });

  test.each(['interlock renewed at H1', 'closed interlock dead at H1', 'interlock tried at H1'])(
    '%s leaves open what is dead at the cover',
    (work) => {
      const dead = seenAt('interlock dead at C2 serious');
      expect(openIn(dead, `serviced DG1 2025-04-07 ${work}\n`)).toEqual(['interlock dead at C2']);
      const [row] = lifeOf(dead, `serviced DG1 2025-04-07 ${work}\n`).conditions;
      expect(row?.notes).toEqual([]);
      expect(openIn(dead, `serviced DG1 2025-04-07 ${work.replace('H1', 'C2')}\n`)).toHaveLength(
        work.includes('tried') ? 1 : 0,
      );
    },
  );

  test('two that are dead are two, each with its own end', () => {
    const dead = seenAt(
      'interlock dead at C2',
      'interlock dead at H1',
      'finding interlock at H1 slight "loose lid"',
    );
    expect(openIn(dead)).toHaveLength(3);
    expect(openIn(dead, look(3000, 'P1 thickness 10 mm; closed interlock dead at H1'))).toEqual(
      expect.arrayContaining(['interlock dead at C2', 'interlock at H1: loose lid']),
    );
    expect(openIn(dead, 'serviced DG1 2025-04-07 interlock renewed at H1\n')).toEqual([
      'interlock dead at C2',
    ]);
  });

  test('who closes what is not open there is told', () => {
    const dead = seenAt('interlock dead at C2 serious');
    for (const closing of [
      'serviced DG1 2025-04-07 closed interlock dead at H1\n',
      look(3000, 'P1 thickness 10 mm; closed interlock dead at H1'),
    ])
      expect(told(dead, closing)).toEqual([
        expect.stringMatching(/^No interlock dead at H1 (had been seen by 2025-04-07|stood open here), so/),
      ]);
  });

  test('where the machine declares none a part is that part all the same', () => {
    const bare = machine.replaceAll(/ {2}interlock.*\n/g, '');
    const open = (where: string): number =>
      only(
        remainingLife(
          estateOf(
            bare,
            seenAt('interlock dead at C2'),
            `serviced DG1 2025-04-07 interlock renewed at ${where}\n`,
          ),
          { depth: 'hand' },
        ),
      ).conditions.length;
    expect([open('H1'), open('C2'), open('1.2 m')]).toEqual([1, 0, 0]);
  });
});
