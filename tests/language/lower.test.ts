// What a text is understood as: values in base units, defaults that say so, parts spelled out, readings in columns.

import { describe, expect, it } from 'vitest';
import { formatDay } from '../../src/domain/units/calendar.js';
import { conveyor, inspect, liner, machine, read, sheetOf, specifications } from './read.js';
import { ReadingKind } from '../../src/domain/units/reading-kind.js';

const conveyorOf = (facts: string) => {
  const [one] = read(specifications + conveyor('DG1', facts)).estate.conveyors;
  if (!one) throw new Error('no conveyor');
  return one;
};

describe('quantities', () => {
  it('are held in base units with the text as written', () => {
    expect(conveyorOf('').length).toMatchObject({ value: 22_400, text: '22.4 m', dimension: 'length' });
  });
  it('take inches and fractions of an inch: 1 in = 25.4 mm exactly (ISO 80000-3)', () => {
    const [screw] = read('screw S { outside diameter 16 in pitch 13 3/4 in flight 3" by 3/8 in }').estate
      .screws;
    expect([
      screw?.outsideDiameter.value,
      screw?.pitch.value,
      screw?.flight?.width.value,
      screw?.flight?.thickness.value,
    ]).toEqual([406.4, 349.25, 76.2, 9.525]);
  });
  it('read hours a week as hours a day: 110 h/week is 110/7 h/d', () => {
    const { duty } = read(specifications).estate.plants[0] ?? {};
    expect(duty?.nominal.value).toBeCloseTo(110 / 7, 12);
    expect(duty?.tolerance).toMatchObject({ dimension: 'ratio', value: 0.15 });
  });
  it('allow keywords of several words any blanks between', () => {
    expect(read(liner.replace('condemn at', 'condemn \t at')).estate.liners[0]?.condemn.value).toBe(3);
  });
});

describe('defaults', () => {
  it('say that nobody stated them, and why', () => {
    const [spec] = read(liner).estate.liners;
    expect(spec?.density).toMatchObject({ value: 930, assumed: expect.stringContaining('ISO 1183') });
    expect(spec?.expansion).toMatchObject({ value: 200e-6, assumed: expect.any(String) });
    expect(spec?.layerTolerance).toMatchObject({ value: 0.05, text: '5 %', assumed: expect.any(String) });
    expect(spec?.thickness).toMatchObject({ value: 12, text: '12 mm', assumed: 'The sum of the layers.' });
    expect(spec?.joint).toMatchObject({ policy: 'butted', assumed: expect.any(String) });
  });
  it('give way to what is stated', () => {
    const [spec] = read(liner.replace('condemn', 'density 0.94 g/cm3\n  joint gap 2 mm\n  condemn')).estate
      .liners;
    expect(spec?.density).toEqual(expect.not.objectContaining({ assumed: expect.anything() }));
    expect(spec?.joint).toMatchObject({ policy: 'gap', gap: { value: 2 } });
  });
  it('put a firm end plate where no break is stated at an end', () => {
    const { breaks } = conveyorOf('break Gate at 12.4 m to 12.9 m slide gate allowance 12 mm');
    expect(
      breaks.map((one) => [one.name, one.from.value, one.to.value, one.allowance.value, one.implied]),
    ).toEqual([
      ['Tail', 0, 0, 0, true],
      ['Gate', 12_400, 12_900, 12, false],
      ['Head', 22_400, 22_400, 0, true],
    ]);
  });
  it('put none where one is stated', () => {
    expect(
      conveyorOf('break In at 0 m to 1 m inlet break Out at 22 m to 22.4 m discharge').breaks.map(
        (one) => one.name,
      ),
    ).toEqual(['In', 'Out']);
  });
  it('take the pitch of the inner flight from the screw', () => {
    const [screw] = read(
      'screw S { outside diameter 400 mm pitch 350 mm inner flight outside diameter 160 mm inside diameter 80 mm thickness 12 mm }',
    ).estate.screws;
    expect(screw?.innerFlight?.pitch).toMatchObject({ value: 350, assumed: expect.any(String) });
  });
});

describe('every … from … to …', () => {
  it('spells points out and numbers them from the tail, both ends included', () => {
    expect(
      conveyorOf('point P every 1.5 m from 2 m to 6.5 m clock 7:30').points.map((point) => [
        point.name,
        point.at.value,
        point.at.text,
      ]),
    ).toEqual([
      ['P1', 2000, '2 m'],
      ['P2', 3500, '3.50 m'],
      ['P3', 5000, '5.00 m'],
      ['P4', 6500, '6.50 m'],
    ]);
  });
  it('lays covers end to end, the last one cut at the end: 22.4 m holds eighteen of 1.2 m and one of 0.8 m', () => {
    const { covers } = conveyorOf('cover every 1.2 m from 0 m to 22.4 m mass 18 kg');
    expect(covers).toHaveLength(19);
    expect([covers[18]?.from.value, covers[18]?.to.value]).toEqual([21_600, 22_400]);
  });
  it('counts in steps of a third of a metre without losing one to rounding', () => {
    expect(conveyorOf('hold-down every 0.1 m from 0.1 m to 0.7 m').holdDowns).toHaveLength(7);
  });
});

describe('coordinates', () => {
  const rows = (view: string) =>
    read(
      machine,
      inspect(
        `${view}P1 thickness 9 mm\n  at 14.2 m clock 4:30 thickness 9 mm\n  worn at 5 m clock 3:00 to 5:30`,
      ),
    ).estate;

  it('are kept when the inspector looks in the direction of flow', () => {
    const { places, readings } = rows('');
    expect([...readings.place].map((place) => places[place]?.clock)).toEqual([7.5, 4.5]);
  });
  it('are mirrored once for a view upstream: 4:30 seen from the head is 7:30 in the direction of flow', () => {
    const { places, readings } = rows('view upstream\n  ');
    expect([...readings.place].map((place) => places[place]?.clock)).toEqual([7.5, 7.5]); // the point's own clock is not mirrored
    expect(places.find((place) => !place.declared)?.name).toBe('14.20 m 7:30');
  });
  it('turn a sector seen from the other side round: 3:00 to 5:30 becomes 6:30 to 9:00', () => {
    const [worn] = rows('view upstream\n  ').inspections[0]?.wornWidths ?? [];
    expect([worn?.from.text, worn?.to.text]).toEqual(['6:30', '9:00']);
  });
  it('take a view that stands last in the block for the whole block', () => {
    const { estate } = read(machine, inspect('at 14.2 m clock 4:30 thickness 9 mm\n  view upstream'));
    expect(estate.places.find((place) => !place.declared)?.clock).toBe(7.5);
  });
});

describe('readings', () => {
  it('lie in columns, a row each, in the order written', () => {
    const { estate } = read(
      machine,
      inspect(`gauge ultrasonic ± 0.2 mm
  P1 thickness 8.4 mm
  P2 thickness 9 mm ± 0.5 mm "wet"
  P1 colour teal
  P2 trough showing
  P1 not seen "build-up"`),
    );
    const { readings } = estate;
    expect([...readings.kind]).toEqual([
      ReadingKind.thickness,
      ReadingKind.thickness,
      ReadingKind.colour,
      ReadingKind.trough,
      ReadingKind.notSeen,
    ]);
    expect([...readings.value]).toEqual([8.4, 9, 1, NaN, NaN]);
    expect([...readings.error]).toEqual([0.2, 0.5, 0.2, 0.2, 0.2]);
    expect(Object.fromEntries(readings.notes)).toEqual({ 1: 'wet', 4: 'build-up' });
    expect(estate.inspections[0]).toMatchObject({ firstRow: 0, endRow: 5 });
  });
  it('keep the row of a value that cannot be read, and mark it', () => {
    const { readings } = read(machine, inspect('P1 thickness 8.4')).estate;
    expect([readings.count, readings.kind[0], readings.value[0]]).toEqual([1, ReadingKind.unreadable, NaN]);
  });
  it('point at their text', () => {
    const text = inspect('P1 thickness 8.4 mm "worn"');
    const { readings } = read(text + machine).estate;
    expect(text.slice(readings.start[0], readings.end[0])).toBe('P1 thickness 8.4 mm "worn"');
  });
  it('of a chainage and clock where a point is are readings of that point', () => {
    const { places, readings } = read(machine, inspect('at 6200 mm clock 7:30 thickness 9 mm')).estate;
    expect(places[readings.place[0] ?? -1]?.name).toBe('P1');
  });
});

describe('records', () => {
  it('carry what was fitted', () => {
    const [reline] = read(
      machine,
      `reline DG1 2024-05-06 meter 2100 h tonnes 5000 t {
  liner TwoLayer12
  scope run above Gate
  scope run below Gate
  scope panels 2 to 4 of run 1
  fitting temperature 14 degC
  P1 thickness 12.2 mm ± 0.1 mm
  fitted run 2 panels 1200 mm, 900 mm
  offcut 300 mm 2
}`,
    ).estate.relines;
    expect(reline).toMatchObject({
      meter: { hours: { value: 2100 }, tonnes: { value: 5_000_000 } },
      liner: { name: 'TwoLayer12' },
      scope: [
        { kind: 'run', run: { by: 'break', side: 'above', break: { name: 'Gate' } } },
        { kind: 'run', run: { by: 'break', side: 'below', break: { name: 'Gate' } } },
        { kind: 'panels', first: { count: 2 }, last: { count: 4 } },
      ],
      fittingTemperature: { from: { value: 14 }, to: { value: 14 } },
      asFitted: [{ point: { name: 'P1' }, thickness: { value: 12.2 }, error: { value: 0.1 } }],
      panelsFitted: [{ lengths: [{ value: 1200 }, { value: 900 }] }],
      offcuts: [{ length: { value: 300 }, count: 2 }],
    });
  });
  it('of meters, duty and screws', () => {
    const { estate } = read(
      machine,
      `meter change DG1 2024-11-02 from 9120 h to 0 h "panel replaced"
duty DG1 from 2025-01-01 140 h/week ± 20 % speed 18 rpm "second shift"
screw change DG1 2025-06-02 meter 12000 h { screw Spiral400 }`,
    );
    expect(estate.meterChanges[0]).toMatchObject({
      old: { value: 9120 },
      new: { value: 0 },
      note: 'panel replaced',
    });
    expect(estate.dutyChanges[0]).toMatchObject({
      duty: { nominal: { value: 20 }, tolerance: { value: 0.2 } },
      speed: { value: 18 },
    });
    expect(estate.screwChanges[0]).toMatchObject({ screw: { name: 'Spiral400' } });
  });
});

describe('a job', () => {
  it('knows its window, its crews and its steps', () => {
    const [job] = read(
      machine,
      `job J1 "Reline above the gate" {
  conveyor DG1
  outage Spring27
  reline run above Gate
  reline panels 2 to 4 of run 1 with TwoLayer12
  change screw to Spiral400
  crews Alpha
  stock 3000 mm 20 pieces
  order {
    isolate
    covers off all
    a: strip run 2 by Alpha using MP1
    fit run 2 starting at head by Alpha after a takes 6 h "from the top"
  }
}`,
    ).estate.jobs;
    expect(job && formatDay(job.window?.from.day ?? job.window!.to.day)).toBe('2027-04-12');
    expect(job).toMatchObject({
      title: 'Reline above the gate',
      relines: [{ stretch: { kind: 'run' } }, { stretch: { kind: 'panels' } }],
      screwChange: { screw: { name: 'Spiral400' } },
      crews: [{ crew: { name: 'Alpha' } }],
      stock: [{ length: { value: 3000 }, count: { count: 20 }, offcut: false }],
      sawKerf: { value: 3, assumed: expect.any(String) },
    });
    expect(job?.order?.steps.map((step) => [step.name, step.action, step.start, step.takes?.value])).toEqual([
      [undefined, 'isolate', undefined, undefined],
      [undefined, 'covers off', undefined, undefined],
      ['a', 'strip', undefined, undefined],
      [undefined, 'fit', 'head', 6],
    ]);
  });
});

describe('descriptions', () => {
  it('stand before their block', () => {
    expect(
      read('/** The works.\n * On the hill. */\nplant A { }\n/* not one */ plant B { }').estate.plants.map(
        (one) => one.doc,
      ),
    ).toEqual(['The works.\nOn the hill.', undefined]);
  });
});

it('takes a backslash in a quoted text as it stands', () => {
  const { estate } = read(machine, inspect(String.raw`photo "photos\north.jpg"`));
  expect(estate.inspections[0]?.photos[0]?.path).toBe(String.raw`photos\north.jpg`);
});

it('gives every block an origin inside its text', () => {
  const sheet = sheetOf(machine, 7);
  for (const { origin, name } of [...sheet.plants, ...sheet.liners, ...sheet.screws, ...sheet.conveyors]) {
    expect(origin.source).toBe(7);
    expect(machine.slice(origin.start, origin.end)).toBe(name);
  }
});
