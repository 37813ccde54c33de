// What there is to show: plants, conveyors and jobs, for pickers, the status bar and the walkthrough.

import type {
  ConveyorSubject,
  ListSubjectsAnswer,
  SourcePosition,
  Subject,
} from '../../protocol/messages.js';
import type { Session } from '../session.js';
import type { Declaration } from '../document-symbols.js';
import { keyOf } from '../forecasts.js';
import { newestRecord } from '../newest-record.js';
import { shortestName } from '../shortest-name.js';

export function subjects(session: Session): ListSubjectsAnswer {
  const names = session.symbols();
  const newest = newestRecord(session);
  return {
    plants: names.declared('plant').map((plant) => subjectOf(plant, plant.name)),
    conveyors: names.declared('conveyor').map((conveyor): ConveyorSubject => {
      const plant = names.plantOf(conveyor);
      const record = newestRecord(session, { name: conveyor.name, ...(plant ? { plant: plant.name } : {}) });
      const inspections = session
        .estate()
        .inspections.filter(
          (each) =>
            each.conveyor.nameOrigin.start === conveyor.start &&
            session.uriOf(each.conveyor.nameOrigin) === conveyor.document.uri,
        );
      return {
        ...subjectOf(conveyor, shortestName(session, conveyor)),
        ...(plant ? { plant: plant.name } : {}),
        ...(record ? { newest: { date: record.date, meter: record.meter } } : {}),
        inspections: inspections.length,
        ...todoOf(session, conveyor),
      };
    }),
    jobs: names.declared('job').map((job) => subjectOf(job, job.name)),
    ...(newest ? { newestRecord: newest.date } : {}),
  };
}

function todoOf(session: Session, { document, start }: Declaration): Pick<ConveyorSubject, 'todo'> {
  const words = session.forecasts?.conveyors[keyOf(document.uri, start)];
  return words ? { todo: words.todo } : {};
}

function subjectOf(declaration: Declaration, name: string): Subject {
  const title =
    'title' in declaration.node && typeof declaration.node.title === 'string'
      ? declaration.node.title.replace(/^"|"$/g, '')
      : '';
  return { name, ...(title === '' ? {} : { title }), spot: spotOf(declaration) };
}

export function spotOf({ document, start }: Declaration): SourcePosition {
  const { line, character } = document.positionAt(start);
  return { uri: document.uri, line, column: character };
}
