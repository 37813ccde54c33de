// One table of decisions behind every form: page, comment, data, tables and the editor's words say the same of each conveyor.

import { Ajv2020 } from 'ajv/dist/2020.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { remainingLifeCsv } from '../../../src/generators/remaining-life/csv.js';
import { pointSentences } from '../../../src/generators/remaining-life/wear-words.js';
import { conveyorsCsv } from '../../../src/generators/remaining-life/csv-conveyors.js';
import {
  earliestText,
  expectedBoth,
  orderDay,
  orderOfOptionsText,
  orderText,
  riskText,
  shownOutage,
} from '../../../src/generators/remaining-life/decision-words.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { reportSchema } from '../../../src/generators/remaining-life/json-schema.js';
import { markdownText, remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { remainingLife, type RemainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { percent } from '../../../src/domain/decision/option-setting.js';
import { formatDay } from '../../../src/domain/units/calendar.js';
import { tarnholt } from '../estate.js';
import { day, look, only, reportOf } from './story.js';

interface Row {
  readonly conveyor: string;
  readonly level: string;
  readonly todo: string;
  readonly points: readonly { readonly point: string; readonly leftFrom: string | null }[];
  readonly decision: {
    readonly orderBy: { readonly day: string } | null;
    readonly earliest: { readonly day: string; readonly condemn: number } | null;
    readonly governing: { readonly place: string } | null;
    readonly outages: readonly {
      readonly outage: string;
      readonly condemn: number;
      readonly contact: number;
    }[];
    readonly options: readonly { readonly what: string; readonly obstacle: string | null }[];
  };
}

describe('the demo on 2026-10-31', () => {
  let report: RemainingLife;
  let html: string;
  let markdown: string;
  let data: { readonly conveyors: readonly Row[] };
  let table: readonly (readonly string[])[];
  beforeAll(() => {
    report = remainingLife(tarnholt(), { asOf: day('2026-10-31'), track: false });
    html = textOf(remainingLifeHtml(report));
    markdown = remainingLifeMarkdown(report);
    data = JSON.parse(remainingLifeJson(report)) as typeof data;
    table = conveyorsCsv(report)
      .trim()
      .split('\r\n')
      .map((line) => cells(line));
  }, 60_000);

  const page = (): string => html.slice(0, html.indexOf('Which outage?'));

  it('says the same in every form', () => {
    const [head = [], ...rows] = table;
    report.conveyors.forEach((life, i) => {
      const row = rows[i] ?? [];
      const cell = (name: string): string => row[head.indexOf(name)] ?? '?';
      const json = data.conveyors[i];
      expect(json?.conveyor).toBe(life.conveyor.name);
      expect([json?.level, cell('level')]).toEqual([life.attention.level, life.attention.level]);
      expect([json?.todo, cell('todo')]).toEqual([life.attention.todo, life.attention.todo]);
      expect(html).toContain(`${life.attention.todo}.`);
      expect(markdown).toContain(markdownText(`${life.attention.todo}.`));
      const day = orderDay(life.order);
      const ordered = day === undefined ? '' : formatDay(day);
      expect([json?.decision.orderBy?.day ?? '', cell('order_by')]).toEqual([ordered, ordered]);
      if (orderText(life).startsWith('2')) expect(html).toContain(ordered);
      const outage = shownOutage(life);
      expect(outage).toBeDefined();
      if (!outage) return;
      const same = json?.decision.outages.find((each) => each.outage === outage.name);
      expect(percent(same?.condemn ?? NaN)).toBe(percent(outage.condemn));
      expect(percent(Number(cell('limit_by_outage')))).toBe(percent(outage.condemn));
      expect(percent(Number(cell('steel_by_outage')))).toBe(percent(outage.contact));
      expect(markdown).toContain(markdownText(riskText(life)));
      expect(html).toContain(`${percent(outage.condemn)}by ${outage.name}`);
      const soonest = life.decision?.earliest ? formatDay(life.decision.earliest.day) : '';
      expect([json?.decision.earliest?.day ?? '', cell('earliest_reline')]).toEqual([soonest, soonest]);
      expect(markdown).toContain(markdownText(earliestText(life)));
    });
  });

  it('one point governs: the likeliest of those seen to be first, on the page, in the options and for the jobs', () => {
    for (const { model, worst, decision, points, conveyor } of report.conveyors) {
      if (model?.forecast.kind !== 'dates' || !decision) continue;
      const seen = points.filter(({ state }) => state === 'thickness' || state === 'colour');
      const likeliest = model.forecast.first.find(({ name }) =>
        seen.some(({ place }) => place.name === name),
      );
      const named = worst?.pastLimit ? worst.place.name : likeliest?.name;
      expect([worst?.place.name, decision.governing?.place]).toEqual([named, named]);
      for (const { covers, words } of decision.jobs)
        if (covers !== undefined)
          expect(words).toContain(`${named ?? ''}${covers ? ', which governs' : ' at '}`);
      expect(data.conveyors.find((row) => row.conveyor === conveyor.name)?.decision.governing?.place).toBe(
        named,
      );
    }
  });

  it('says in every form from which day what is left by hand counts, and where hand and model do not agree', () => {
    const [head = [], ...rows] = remainingLifeCsv(report)
      .trim()
      .split('\r\n')
      .map((line) => cells(line));
    const points = report.conveyors.flatMap((life) => life.points.map((point) => ({ life, point })));
    let told = 0;
    points.forEach(({ life, point }, i) => {
      const cell = (name: string): string => rows[i]?.[head.indexOf(name)] ?? '?';
      expect(cell('point')).toBe(point.place.name);
      const from = point.leftFrom === undefined ? '' : formatDay(point.leftFrom);
      const json = data.conveyors
        .find(({ conveyor }) => conveyor === life.conveyor.name)
        ?.points.find(({ point: name }) => name === point.place.name);
      expect(json?.leftFrom ?? '').toBe(from);
      if (point.hand.kind === 'rate') {
        expect(cell('remaining_from')).toBe(from);
        expect(from).not.toBe('');
        expect(point.readings.map((reading) => reading.day)).toContain(point.leftFrom);
      }
      const outage = shownOutage(life);
      const limit = point.model?.condemn;
      if (outage && limit?.kind === 'life')
        expect(Number(cell('limit_by_outage'))).toBeCloseTo(limit.chanceBy?.(outage.from) ?? NaN, 6);
      const order = orderDay(life.order);
      const ordered = order === undefined ? '' : formatDay(order);
      expect(cell('conveyor_order_by')).toBe(ordered);
      expect(cell('plant')).toBe('Tarnholt');
      for (const sentence of pointSentences(life, point)) {
        told += 1;
        expect(cell('hand_against_model')).toBe(sentence);
        expect(html).toContain(sentence);
        expect(markdown).toContain(markdownText(sentence));
        expect(JSON.stringify(data)).toContain(JSON.stringify(sentence).slice(1, -1));
      }
    });
    expect(told).toBeGreaterThan(0);
  });

  it('says of DG1 that it cannot be relined before 2027-01-09, with the chances of that day and what can be done', () => {
    const [dg1] = report.conveyors;
    expect(dg1?.conveyor.name).toBe('DG1');
    // Ten weeks from 2026-10-31: the calendar says 2027-01-09.
    expect(dg1?.attention.todo).toBe(
      'No planned outage is early enough, and it cannot be relined before 2027-01-09, expedited 2026-12-05',
    );
    const options = dg1?.decision?.options ?? [];
    expect(new Set(options.map(({ kind }) => kind))).toEqual(
      new Set([
        'look first',
        'planned reline',
        'part at an outage',
        'part from stock',
        'unplanned stop',
        'expedite',
        'lower duty',
        'exchange',
        'do nothing',
      ]),
    );
    const priced = options.filter(
      ({ obstacle, condemn, contact, expected }) =>
        obstacle === undefined && [condemn, contact, expected].every((each) => each !== undefined),
    );
    expect(priced.length).toBeGreaterThanOrEqual(4);
    const page = html.slice(0, html.indexOf('Which outage?'));
    for (const { what } of options.slice(0, 3)) expect(page).toContain(what);
    expect(page).toContain('2027-01-09');
    expect(page).toContain(percent(dg1?.decision?.earliest?.condemn ?? NaN));
  });

  it('numbers the options alike on the first page, on the conveyor’s own and in the comment, without a gap', () => {
    for (const { conveyor, decision } of report.conveyors) {
      const own = (
        data.conveyors.find((row) => row.conveyor === conveyor.name)?.decision.options ?? []
      ).filter(({ obstacle }) => obstacle === null);
      own.forEach(({ what }, i) => {
        expect(markdown).toContain(`| ${i + 1} | ${markdownText(what)} |`);
        expect(html).toContain(`${i + 1}${what}`);
      });
      if (!page().includes(`What can be done about ${conveyor.name}`) || !decision) continue;
      const box = page().slice(page().indexOf(`What can be done about ${conveyor.name}`));
      for (const [i, option] of decision.options.slice(0, 4).entries()) {
        if (option.obstacle !== undefined) continue;
        expect(box).toContain(`${i + 1}${option.what}`);
        // With the same amounts, both of them where they differ.
        const { all, seen } = expectedBoth(option, decision);
        expect(box.slice(box.indexOf(option.what))).toContain(
          seen === undefined ? all : `${all} (seen ${seen})`,
        );
      }
    }
  });

  it('has every option of JSON in the comment and on the page', () => {
    for (const { decision } of data.conveyors)
      for (const { what } of decision.options) {
        expect(html).toContain(what);
        expect(markdown).toContain(markdownText(what));
      }
  });

  it('fits its published schema, and a report with a field gone does not', () => {
    const valid = new Ajv2020({ strict: false }).compile(reportSchema);
    const made = JSON.parse(remainingLifeJson(report)) as {
      conveyors: { decision: Record<string, unknown> | null }[];
    };
    expect(valid(made), JSON.stringify(valid.errors?.slice(0, 3))).toBe(true);
    delete made.conveyors[0]?.decision?.['orderBy'];
    expect(valid(made)).toBe(false);
  });

  it('keeps chances in order: later is likelier, unseen panels only add, steel comes after the limit', () => {
    for (const { decision } of report.conveyors) {
      const rows = decision?.outages ?? [];
      rows.forEach((row, i) => {
        expect(row.condemn).toBeGreaterThanOrEqual((rows[i - 1]?.condemn ?? 0) - 1e-9);
        expect(row.condemn).toBeGreaterThanOrEqual((row.condemnSeen ?? 0) - 0.002);
        expect(row.contact).toBeLessThanOrEqual(row.condemn + 1e-9);
      });
    }
  });

  it('tells what is wrong with the job for SL4', () => {
    const sl4 = report.conveyors.find(({ conveyor }) => conveyor.name === 'SL4');
    expect(sl4?.decision?.jobs.map(({ covers }) => covers)).toEqual([false]);
    expect(markdown).toMatch(/SL4\\?_Spring27 .* leaves out P3/);
  });
});

describe('where several points are as good as certain to be past their limits', () => {
  it('the one that passed first governs, not the one nearest to the tail', () => {
    const life = only(
      reportOf(
        look(2400, 'P1 thickness 9.8 mm; P2 thickness 9.3 mm') +
          look(4800, 'P1 thickness 7.6 mm; P2 thickness 6.6 mm') +
          look(7200, 'P1 thickness 5.4 mm; P2 colour teal') +
          look(12000, 'P1 colour teal; P2 colour teal'),
      ),
    );
    const { decision, worst, model } = life;
    expect(decision?.outages[0]?.condemnSeen).toBeGreaterThan(0.999);
    expect(model?.forecast.kind === 'dates' && model.forecast.first[0]?.name).toBe('P2');
    expect([worst?.place.name, decision?.governing?.place, decision?.scopes?.governing[0]?.place]).toEqual([
      'P2',
      'P2',
      'P2',
    ]);
  });
});

describe('a panel that was seen past its limit', () => {
  const early =
    look(2400, 'P1 thickness 9.8 mm; P2 thickness 9.3 mm') +
    look(4800, 'P1 thickness 7.6 mm; P2 thickness 6.6 mm');
  const job = `
job Tail {
  conveyor DG1
  window 2026-04-13 to 2026-04-17
  reline panels 1 to 2 of run 1
}
`;
  const bare: readonly (readonly [string, string])[] = [
    ['bare steel', look(7200, 'P1 thickness 4.2 mm; P2 trough showing')],
    ['far below its limit', look(7200, 'P1 thickness 4.2 mm; P2 thickness 1.2 mm')],
    [
      'worn through beside a point that is better',
      look(7200, 'P1 thickness 4.2 mm; P2 thickness 4.2 mm; at 3.9 m clock 7:00 trough showing'),
    ],
  ];
  it.each(bare)('stays in the decision, %s', (_, last) => {
    const { decision, worst, points, runs } = only(reportOf(early + last + job));
    const place = worst?.place;
    const seen = runs
      .flatMap(({ panels }) => panels)
      .filter(({ points: own }) => own.some(({ state }) => state !== 'none'));
    expect(points).toContain(worst);
    expect([decision?.panelsSeen, decision?.panels]).toEqual([
      seen.length,
      runs.flatMap(({ panels }) => panels).length,
    ]);
    expect([decision?.governing?.place, decision?.governing?.at]).toEqual([place?.name, place?.at]);
    expect(decision?.scopes?.governing[0]?.place).toBe(place?.name);
    const [panel] = decision?.scopes?.governing ?? [];
    for (const { relined } of decision?.scopes?.works ?? []) expect(relined).toContain(panel);
    expect(decision?.jobs[0]?.words).toContain(
      `leaves out ${place?.name ?? ''} at ${((place?.at ?? 0) / 1000).toFixed(2)} m, which governs`,
    );
  });
});

describe('what a report says beside the chances', () => {
  const worn =
    look(3000, 'P1 thickness 10.5 mm; P2 thickness 10.6 mm') +
    look(8000, 'P1 thickness 7.5 mm; P2 thickness 8 mm');

  it('declared costs of two currencies are refused with the reason, and chances still compare', () => {
    const life = only(reportOf(`${worn}\nplant Other { cost reline 1 USD }`));
    expect(life.decision?.money.kind).toBe('money');
    const mixed = only(reportOf(worn, {}, (text) => text.replace('24000 EUR', '24000 USD')));
    expect(mixed.decision?.money).toEqual({ kind: 'currencies', currencies: ['EUR', 'USD'] });
    expect(mixed.decision?.options.every(({ expected }) => expected === undefined)).toBe(true);
    expect(mixed.decision?.options.length).toBeGreaterThan(0);
  });

  it('with a stricter risk of contact an outage that kept the risk of the limit is no longer early enough', () => {
    const seen =
      look(3000, 'P1 thickness 10.5 mm; P2 thickness 10.6 mm') +
      look(8000, 'P1 thickness 8 mm; P2 thickness 8.3 mm');
    const loose = only(
      reportOf(seen, {}, (text) => text.replace('risk 5 %', 'risk 99.9 %\n  risk of contact 90 %')),
    );
    const strict = only(
      reportOf(seen, {}, (text) => text.replace('risk 5 %', 'risk 99.9 %\n  risk of contact 0.01 %')),
    );
    expect(loose.decision?.accepted).toEqual({ condemn: 0.999, contact: 0.9, contactAssumed: false });
    expect(strict.decision?.passed?.by).toBe('steel');
    expect(loose.decision?.chosen?.name).not.toBe(strict.decision?.chosen?.name);
  });
});

function textOf(html: string): string {
  return html
    .replace(/<style[\s\S]*?<\/style>/g, '')
    .replace(/<[^>]*>/g, '')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, '&');
}

/** RFC 4180, one line. */
function cells(line: string): readonly string[] {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
    ([, quoted, plain]) => quoted?.replace(/""/g, '"') ?? plain ?? '',
  );
}

it('an expected cost below zero is explained under the table, and no other is', () => {
  const { conveyors } = remainingLife(tarnholt(), { asOf: day('2026-10-31'), track: false });
  const decision = conveyors.find((each) => (each.decision?.options.length ?? 0) > 0)?.decision;
  if (!decision) throw new Error('no options');
  const said = (expected: number): string =>
    orderOfOptionsText({ ...decision, options: decision.options.map((each) => ({ ...each, expected })) });
  expect(said(-25_400)).toMatch(/ An expected cost below 0: a change of the screw by itself later is spared/);
  expect(said(0)).not.toContain('below 0');
});
