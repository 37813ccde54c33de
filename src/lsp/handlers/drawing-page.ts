// The conveyor as drawings: from the side, along its axis, in section, and its liner unrolled, each with what lies in it
// today by the records; and beside them the parts as a table that leads back to the text.

import { chainageOn } from '../../domain/model/unit-of-machine.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { formatDay } from '../../domain/units/calendar.js';
import { formatClock } from '../../domain/units/clock.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import { presentDay } from '../../domain/model/newest.js';
import type { Origin } from '../../domain/model/origin.js';
import { installedPanels } from '../../domain/model/panels.js';
import { runsOf } from '../../domain/model/runs.js';
import { alongTheTrough } from '../../generators/drawing/along.js';
import { crossSection } from '../../generators/drawing/cross-section.js';
import { elevation } from '../../generators/drawing/elevation.js';
import { panelMap } from '../../generators/drawing/panel-map.js';
import { issueDrawings, type Pictured } from '../../generators/drawing/picture.js';
import { element, group, trusted, type Markup } from '../../generators/page/markup.js';
import type { PageOptions } from '../../generators/page/page.js';

export function drawingPage(estate: Estate, conveyor: Conveyor, asOf: CalendarDay | undefined): PageOptions {
  const pictured: Pictured = {
    conveyor,
    scope: [],
    runs: runsOf(conveyor).map((run) => ({
      run,
      panels: installedPanels(estate, run, asOf).layout.panels.map(
        ({ number, from, to, length, closing }) => ({
          number,
          from,
          to,
          length,
          closing,
          renewed: false,
        }),
      ),
    })),
  };
  const day = presentDay(estate, asOf);
  const drawings = issueDrawings(
    [
      elevation(pictured),
      ...alongTheTrough(pictured),
      crossSection(conveyor, { look: 'downstream', liner: conveyor.liner, screw: conveyor.screw }),
      ...panelMap(pictured, conveyor.liner),
    ],
    {
      owner: conveyor.plant.title ?? conveyor.plant.name,
      number: conveyor.name,
      issued: day === undefined ? '' : formatDay(day),
      drawnFrom: `conveyor ${conveyor.name}`,
    },
  );
  return {
    title: `${conveyor.name}: drawings`,
    orientation: 'landscape',
    styles:
      '.drawings { max-width: 277mm; } .drawings svg { display: block; width: 100%; height: auto; margin: 0 0 6mm; }',
    body: element(
      'div',
      { class: 'drawings' },
      element(
        'h1',
        { 'data-origin': key(conveyor.nameOrigin) },
        conveyor.title ? `${conveyor.name}: ${conveyor.title}` : conveyor.name,
      ),
      drawings.map((drawing) => trusted(drawing.svg)),
      element('h2', {}, 'Parts by chainage'),
      partsTable(conveyor),
    ),
  };
}

interface Part {
  readonly what: string;
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly note: string;
  readonly origin: Origin;
}

function partsTable(conveyor: Conveyor): Markup {
  const part = (what: string, origin: Origin, from: number, to: number, name = '', note = ''): Part => ({
    what,
    origin,
    from,
    to,
    name,
    note,
  });
  const parts: Part[] = [
    ...conveyor.sections.map((each) =>
      part('section', each.origin, each.start, each.start + each.length.value, each.name),
    ),
    ...conveyor.breaks
      .filter((each) => !each.implied)
      .map((each) =>
        part(
          each.kind,
          each.origin,
          each.from.value,
          each.to.value,
          each.name,
          `allowance ${each.allowance.text}${each.drive ? `, driven by ${each.drive}` : ''}`,
        ),
      ),
    ...conveyor.access.map((each) =>
      part(`access: ${each.kind}`, each.origin, each.from.value, each.to.value, each.name),
    ),
    ...conveyor.isolations.flatMap((each) =>
      each.at
        ? [part(`isolation: ${each.kind}`, each.origin, each.at.value, each.at.value, each.name, each.title)]
        : [],
    ),
    ...conveyor.liftingPoints.map((each) =>
      part('lifting point', each.origin, each.at.value, each.at.value, each.name, `limit ${each.limit.text}`),
    ),
    ...conveyor.hoppers.map((each) =>
      part('hopper', each.origin, each.from.value, each.to.value, each.name, each.volume?.text),
    ),
    ...conveyor.drains.map((each) =>
      part('drain', each.origin, each.from.value, each.to.value, each.name, each.note),
    ),
    ...conveyor.hatches.map((each) => part('hatch', each.origin, each.from.value, each.to.value, each.name)),
    ...conveyor.points.map((each) =>
      part(
        'point',
        each.origin,
        each.at.value,
        each.at.value,
        each.name,
        `${formatClock(each.clock.hours)} o’clock`,
      ),
    ),
  ].sort((a, b) => a.from - b.from || a.to - b.to || (a.name < b.name ? -1 : 1));
  return element(
    'table',
    {},
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        ['Chainage', 'What', 'Name', ''].map((head) => element('th', { scope: 'col' }, head)),
      ),
    ),
    element(
      'tbody',
      {},
      parts.map((each) =>
        element(
          'tr',
          { 'data-origin': key(each.origin) },
          element(
            'td',
            { class: 'nowrap' },
            each.from === each.to
              ? chainageOn(conveyor, each.from)
              : group(`${chainageOn(conveyor, each.from)} to ${chainageOn(conveyor, each.to)}`),
          ),
          element('td', {}, each.what),
          element('td', {}, each.name),
          element('td', {}, each.note),
        ),
      ),
    ),
  );
}

function key({ source, start, end }: Origin): string {
  return `${source}:${start}:${end}`;
}
