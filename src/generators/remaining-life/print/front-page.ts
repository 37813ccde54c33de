// The manager's page: which conveyor, when, why, and how much of this was really seen.

import { formatDay } from '../../../domain/units/calendar.js';
import { element, type Markup } from '../../page/markup.js';
import { table } from '../../page/page.js';
import type { Counts, ConveyorLife, RemainingLife } from '../remaining-life.js';
import { counted, date, listed } from './wording.js';

export function frontPage(report: RemainingLife): Markup {
  const { estate, asOf } = report;
  const plants = estate.plants.map((p) => p.title ?? p.name);
  return element(
    'header', {},
    element('div', { class: 'masthead' },
      element('div', {}, element('h1', {}, 'Remaining life of liners'), element('p', {}, listed(plants))),
      element('p', { class: 'asof' }, 'as of ', element('strong', {}, asOf === undefined ? 'no dated record' : formatDay(asOf)))),
    element('p', { class: 'lead' }, leadSentence(report.conveyors)),
    report.conveyors.length > 0 && table({
      columns: [{ head: '' }, { head: 'Conveyor' }, { head: 'Needs attention because' }, { head: 'Limit by hand', class: 'day' }],
      rows: report.conveyors.map((life, i) => [
        element('span', { class: 'rank' }, String(i + 1)),
        element('span', { class: 'name' }, life.conveyor.name, element('span', { class: 'sub' }, life.conveyor.title ?? '')),
        element('span', {}, element('span', { class: 'verdict' }, verdict(life)), element('span', { class: 'sub' }, life.attention.reasons.join('; '))),
        life.attention.level === 'worn through' || life.attention.level === 'past the limit' ? element('strong', {}, 'reached') : date(life.attention.limitDay),
      ]),
    }),
    element('h2', {}, 'What this rests on'),
    element('p', {}, countsSentence(report.counts)),
    leftOutList(report.counts),
    caution(),
  );
}

function leadSentence(conveyors: readonly ConveyorLife[]): string {
  if (conveyors.length === 0) return 'No conveyor is described.';
  const urgent = conveyors.filter((c) => c.attention.level === 'worn through' || c.attention.level === 'past the limit');
  const due = conveyors.filter((c) => c.attention.level === 'limit before the last outage');
  const parts: string[] = [];
  if (urgent.length > 0) parts.push(`${listed(urgent.map((c) => c.conveyor.name))} ${urgent.length === 1 ? 'has' : 'have'} reached the limit`);
  if (due.length > 0) parts.push(`${listed(due.map((c) => c.conveyor.name))} will reach it before the last planned outage`);
  return parts.length === 0 ? 'No conveyor reaches its limit before the last planned outage, as far as it was seen.' : `${parts.join('; ')}.`;
}

function verdict(life: ConveyorLife): string {
  switch (life.attention.level) {
    case 'worn through':
      return 'Worn through: inspect the trough, patch and reline';
    case 'past the limit':
      return 'At its limit: reline';
    case 'limit before the last outage':
      return 'Reline at a planned outage';
    case 'look overdue':
      return 'Look again: overdue';
    case 'not enough seen':
      return 'Not enough seen to say';
    case 'in order':
      return 'Nothing due before the last planned outage';
  }
}

export function countsSentence(counts: Counts): string {
  return `${counted(counts.conveyors, 'conveyor')}, ${counted(counts.points, 'point')}, ${counted(counts.inspections, 'inspection')} with ${counted(counts.readings, 'reading')}: `
    + `${counts.thicknesses} thicknesses, ${counts.colours} colours, ${counts.troughShowing} with steel showing, ${counts.notSeen} not seen. `
    + `${counted(counts.used, 'reading')} of the liners that lie there now took part; ${counts.ofFormerSets} were of liners replaced since. `
    + `${counts.panelsNotSeen} of ${counted(counts.panels, 'panel')} have no reading, ${counts.pointsNeverSeen} of ${counted(counts.points, 'point')} were never seen on the present liner.`
    + (counts.laterInspections > 0 ? ` ${counted(counts.laterInspections, 'inspection')} dated after the day of this report ${counts.laterInspections === 1 ? 'was' : 'were'} not looked at.` : '');
}

function leftOutList(counts: Counts): Markup | undefined {
  if (counts.leftOut.length === 0) return undefined;
  return element('ul', {}, counts.leftOut.map(({ reason, count }) => element('li', {}, `${counted(count, 'reading')} left out: ${reason}.`)));
}

function caution(): Markup {
  return element('div', { class: 'caution' },
    element('strong', {}, 'This report advises; a competent person decides. '),
    'It does not clear a machine for work or for further running. Before anyone opens a cover: isolate and prove dead, follow the site permits and local codes, '
    + 'test for gas where the trough is enclosed, and mind stored energy in the spiral and the head of material. What was not seen may be worse than what was.');
}
