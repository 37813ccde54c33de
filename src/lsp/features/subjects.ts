// What there is to show: plants, conveyors and jobs, for pickers, the status bar and the walkthrough.

import type {
  ConveyorSubject,
  ListSubjectsAnswer,
  SourcePosition,
  Subject,
} from '../../protocol/messages.js';
import type { Desk } from '../desk.js';
import type { Declaration } from '../declared.js';
import { newestRecord } from '../newest-record.js';
import { shortestName } from '../shortest-name.js';

export function subjects(desk: Desk): ListSubjectsAnswer {
  const names = desk.names();
  const newest = newestRecord(desk);
  return {
    plants: names.declared('plant').map((plant) => subjectOf(plant, plant.name)),
    conveyors: names.declared('conveyor').map((conveyor): ConveyorSubject => {
      const plant = names.plantOf(conveyor);
      const record = newestRecord(desk, { name: conveyor.name, ...(plant ? { plant: plant.name } : {}) });
      const inspections = desk
        .estate()
        .inspections.filter(
          (each) =>
            each.conveyor.nameOrigin.start === conveyor.start &&
            desk.uriOf(each.conveyor.nameOrigin) === conveyor.text.uri,
        );
      return {
        ...subjectOf(conveyor, shortestName(desk, conveyor)),
        ...(plant ? { plant: plant.name } : {}),
        ...(record ? { newest: { date: record.date, meter: record.meter } } : {}),
        inspections: inspections.length,
      };
    }),
    jobs: names.declared('job').map((job) => subjectOf(job, job.name)),
    ...(newest ? { newestRecord: newest.date } : {}),
  };
}

function subjectOf(declaration: Declaration, name: string): Subject {
  const title =
    'title' in declaration.node && typeof declaration.node.title === 'string'
      ? declaration.node.title.replace(/^"|"$/g, '')
      : '';
  return { name, ...(title === '' ? {} : { title }), spot: spotOf(declaration) };
}

export function spotOf({ text, start }: Declaration): SourcePosition {
  const { line, character } = text.positionAt(start);
  return { uri: text.uri, line, column: character };
}
