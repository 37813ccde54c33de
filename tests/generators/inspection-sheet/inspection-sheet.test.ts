// Where to look, from which side, what was there last time.

import { describe, expect, test } from 'vitest';
import { inspectionSheetHtml } from '../../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import type { InspectionSheet } from '../../../src/generators/inspection-sheet/sheet.js';
import { inspectionPhonePage } from '../../../src/generators/inspection-sheet/phone.js';
import type { PhoneSheetData } from '../../../src/protocol/offline-forms.js';
import { linerLyingAt } from '../../../src/views/phone-sheet/lying.js';
import { day, liftConveyor, read, theConveyor } from '../estate.js';

const records = `
inspection DG1 2025-05-05 meter 6000 h {
  view upstream
  gauge ultrasonic ± 0.1 mm
  P1 thickness 9.6 mm
  P2 colour ivory
}
inspection DG1 2026-01-05 meter 8000 h {
  view upstream
  gauge ultrasonic ± 0.1 mm
  P1 thickness 8.4 mm
  P2 not seen "build-up"
  at 10.20 m clock 7:30 thickness 9.9 mm
  hold-down at 3.5 m gap 14 mm
  current empty 4.1 A loaded 6.2 A
  finding hold-down at 3.5 m "cracked"
}`;

function sheet(
  more = records,
  options: { look?: 'downstream' | 'upstream'; asOf?: string } = {},
): InspectionSheet {
  const analysis = read(liftConveyor({ more }));
  return inspectionSheet(analysis.estate, theConveyor(analysis), {
    ...(options.look ? { look: options.look } : {}),
    ...(options.asOf ? { asOf: day(options.asOf) } : {}),
  });
}

describe('the way to look', () => {
  test('is that of the last inspection, and every clock position follows it', () => {
    const made = sheet();
    expect(made.look).toBe('upstream');
    expect(made.points.find((point) => point.name === 'P1')).toMatchObject({
      clockText: '7:00',
      writes: 'P1',
    });
  });

  test('is downstream where nobody said, or as asked for', () => {
    expect(sheet('').look).toBe('downstream');
    expect(
      sheet(records, { look: 'downstream' }).points.find((point) => point.name === 'P1')?.clockText,
    ).toBe('5:00');
  });

  test('a place read before without a name comes back as it was written that way round', () => {
    // Written 7:30 looking upstream is 4:30 in the direction of flow.
    expect(sheet().points.find((point) => point.name === undefined)?.writes).toBe('at 10.20 m clock 7:30');
    expect(
      sheet(records, { look: 'downstream' }).points.find((point) => point.name === undefined)?.writes,
    ).toBe('at 10.20 m clock 4:30');
  });
});

describe('a point', () => {
  test('says where it is from both ends, under which cover, on which panel, how it is reached', () => {
    expect(sheet().points.find((point) => point.name === 'P3')).toMatchObject({
      at: 9000,
      fromHead: 3000,
      cover: 'C6',
      panel: 3,
      access: 'South mobile platform',
    });
  });

  test('shows the last reading, and what it should be now', () => {
    const made = sheet(records, { asOf: '2026-01-05' });
    expect(made.points.find((point) => point.name === 'P1')?.last).toEqual({
      date: '2026-01-05',
      words: '8.4 mm',
      thickness: 8.4,
    });
    expect(made.points.find((point) => point.name === 'P1')?.expect).toMatchObject({
      kind: 'range',
      // On the day of a reading of 8.4 mm ± 0.1 the gauge shows the same again, give or take its error twice.
      least: expect.closeTo(8, 9) as number,
      most: expect.closeTo(8.9, 9) as number,
    });
    expect(made.points.find((point) => point.name === 'P2')?.last?.words).toBe('not seen (build-up)');
  });

  test('starts afresh on a new liner', () => {
    const made = sheet(`${records}\nreline DG1 2026-02-02 meter 8200 h {\n  scope run 1\n}`);
    expect(made.points.find((point) => point.name === 'P1')).toMatchObject({
      last: undefined,
      // 200 h after the reline, on the day of the report.
      expect: {
        kind: 'range',
        layers: ['ivory'],
        basis: 'not read since it was fitted, with 3 other places',
      },
    });
    expect(made.points.find((point) => point.name === undefined)?.last?.words).toBe('9.9 mm');
  });
});

describe('the rest of the round', () => {
  test('meter: 84 h a week from 8000 h on 2026-01-05 makes 8840 h after ten weeks', () => {
    expect(sheet(records, { asOf: '2026-03-16' }).meter).toMatchObject({
      last: { value: 8000, date: '2026-01-05' },
      about: expect.closeTo(8840, 6) as number,
    });
  });

  test('hold-down gaps, currents and findings of the last round come along', () => {
    const made = sheet();
    expect(made.holdDowns.find((block) => block.at === 3500)).toMatchObject({
      name: 'H4',
      lastGap: 14,
      lastDate: '2026-01-05',
    });
    expect(made.lastRead).toMatchObject({ empty: '4.1 A on 2026-01-05', loaded: '6.2 A on 2026-01-05' });
    expect(made.openRemarks).toEqual([{ date: '2026-01-05', part: 'hold-down', at: 3500, text: 'cracked' }]);
  });

  test('every value of a look comes along, whatever line it stands on, with the day it was read', () => {
    const { lastRead } = sheet(`${records}
inspection DG1 2026-02-09 meter 8400 h {
  view upstream
  current empty 4.3 A
  current loaded 6.9 A
  speed 17.8 rpm
  gearbox temperature 64 degC
  tail bearing noise slight
  flight at 3 m depth 58 mm
  flight at 8 m depth 55 mm
  flight at 8.05 m outside diameter 291 mm
  worn at 4 m clock 6:00 to 8:00
  plate at 6 m thickness 3.8 mm
}
inspection DG1 2026-03-09 meter 8800 h {
  view upstream
  flight at 8 m depth 54 mm
  current loaded 7.1 A
}`);
    // What the newest look left out keeps its value and its day; 6:00 to 8:00 as seen against the flow stays so.
    expect(lastRead).toEqual({
      empty: '4.3 A on 2026-02-09',
      loaded: '7.1 A on 2026-03-09',
      speed: '17.8 rpm on 2026-02-09',
      flights: [
        { at: 3000, depth: '58 mm on 2026-02-09', diameter: undefined },
        { at: 8000, depth: '54 mm on 2026-03-09', diameter: '291 mm on 2026-02-09' },
      ],
      // The noise stands open, and is asked for among what is open.
      drive: [{ what: 'gearbox temperature', words: '64 °C on 2026-02-09' }],
      wornWidths: [{ at: 4000, words: '6:00 to 8:00 on 2026-02-09' }],
      gauge: 'ultrasonic ± 0.1 mm',
      plates: [{ at: 6000, clock: '', words: '3.8 mm on 2026-02-09' }],
    });
    const downstream = sheet(
      `inspection DG1 2026-02-09 meter 8400 h {
  view upstream
  worn at 4 m clock 6:00 to 8:00
}`,
      { look: 'downstream' },
    );
    expect(downstream.lastRead.wornWidths).toEqual([{ at: 4000, words: '4:00 to 6:00 on 2026-02-09' }]);
  });

  test('what was read of a screw that went out is not asked again', () => {
    const { lastRead } = sheet(`inspection DG1 2026-01-05 meter 8000 h {
  flight at 3 m depth 50 mm
}
screw change DG1 2026-02-02 meter 8200 h {
  screw Spiral300
}`);
    expect(lastRead.flights).toEqual([]);
  });

  test('liners of two kinds along the machine are both drawn, with the stretches where they lie', () => {
    const thin = `liner TwoLayer8 {
  layer ivory 4 mm
  layer teal 4 mm
  panel length 1000 mm
  condemn at 2 mm
}`;
    const mixed = read(
      liftConveyor({ more: thin, conveyor: 'liner TwoLayer8 from 7.5 m to 12 m' }) +
        'reline DG1 2026-02-02 meter 8200 h {\n  liner TwoLayer8\n  scope panel 1 of run 1\n}\n',
    );
    const titles = (made: InspectionSheet): readonly string[] => made.drawings.map(({ title }) => title);
    const made = inspectionSheet(mixed.estate, theConveyor(mixed));
    expect(titles(sheet())).not.toContain('DG1: liners along the machine');
    const drawn = made.drawings.find(({ title }) => title === 'DG1: liners along the machine');
    expect(drawn?.description).toBe(
      'Liners of DG1: TwoLayer8 from 0.00 m to 1.00 m, 7.50 m to 12.00 m; TwoLayer12 from 1.00 m to 7.50 m.',
    );
    for (const words of ['ivory 4 mm', 'ivory 6 mm', 'condemn at 2 mm', 'condemn at 3 mm'])
      expect(drawn?.svg).toContain(words);
    // Beside the section through the middle it is said where that liner lies.
    expect(made.drawings[0]?.svg).toContain('1.00 m to 7.50 m');
  });

  test('layers stand with what is left when each shows', () => {
    expect(sheet().liners).toEqual([
      {
        name: 'TwoLayer12',
        thickness: 12,
        condemn: 3,
        layers: [
          { name: 'ivory', most: 12, least: 6 },
          { name: 'teal', most: 6, least: 0 },
        ],
      },
    ]);
  });
});

describe('where liners of other colours lie side by side', () => {
  const mixed = `${records}
liner Beside { material PE1000 layer amber 5 mm layer slate 7 mm panel length 1200 mm condemn at 3 mm }
reline DG1 2026-02-02 meter 8400 h { scope run 2 liner Beside }`;

  test('a point is offered the colours of the liner that lies there, and no other', () => {
    const page = sheet(mixed, { asOf: '2026-03-02' });
    const rows = inspectionSheetHtml(page)
      .split('<tr')
      .filter((row) => row.includes('class="clock"'));
    const offered = rows.map((row) => [...row.matchAll(/☐ ([a-z]+)/g)].map(([, name]) => name));
    const [below, above] = [page.points[0], page.points.at(-1)];
    expect([below?.liner, above?.liner]).toEqual(['TwoLayer12', 'Beside']);
    expect([offered[0], offered.at(-1)]).toEqual([
      ['ivory', 'teal'],
      ['amber', 'slate'],
    ]);
  });

  test('so is a place that is added on the phone, by its chainage', () => {
    const page = sheet(mixed, { asOf: '2026-03-02' });
    const data = JSON.parse(
      /<script[^>]*id="data"[^>]*>(.*?)<\/script>/s.exec(inspectionPhonePage(page))?.[1] ?? '{}',
    ) as PhoneSheetData; // what the generator wrote a line above
    const colours = (at: number) => linerLyingAt(data, at)?.layers.map(({ name }) => name);
    expect(colours(2000)).toEqual(['ivory', 'teal']);
    expect(colours(10_000)).toEqual(['amber', 'slate']);
    expect(colours(NaN)).toEqual(['ivory', 'teal']);
  });
});

describe('on paper', () => {
  test('says in large letters which way to look, and that it is no permit', () => {
    const html = inspectionSheetHtml(sheet());
    expect(html).toContain('<strong>LOOK UPSTREAM</strong>');
    expect(html).toContain('This sheet is no permit.');
    expect(html).toContain('  at 10.20 m clock 7:30 thickness ____ mm');
  });

  test('takes nothing an author typed for markup, loads nothing', () => {
    const html = inspectionSheetHtml(
      sheet(
        records
          .replace('cracked', '<script>alert(1)</script>')
          .replace('build-up', '<img src=x onerror=alert(1)>'),
      ),
    );
    expect(html).not.toMatch(/<(script|img|link|iframe)/i);
    expect(html).not.toMatch(/NaN|undefined|Infinity/);
  });

  test('a conveyor without points and records still has a sheet that asks for places', () => {
    const analysis = read(
      liftConveyor()
        .replace(/^ {2}point .*$/gm, '')
        .replace(/^ {2}isolation .*$/m, ''),
    );
    const html = inspectionSheetHtml(inspectionSheet(analysis.estate, theConveyor(analysis)));
    expect(html).toContain('No inspection point is declared');
    expect(html).toContain('No isolation point is declared');
  });
});
