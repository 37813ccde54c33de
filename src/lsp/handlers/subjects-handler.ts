// What there is to show: plants, conveyors and jobs, for pickers, the status bar and the walkthrough.

import type {
  ConveyorSubject,
  ListSubjectsAnswer,
  SourcePosition,
  Subject,
} from '../../protocol/messages.js';
import type { Session } from '../session.js';
import type { Declaration } from '../document-symbols.js';
import { newestRecord, type NewestRecord } from '../newest-record.js';
import { formatDay } from '../../domain/units/calendar.js';
import { parseQuantity } from '../../domain/units/parse.js';
import { compareNames } from '../../language/compare-names.js';
import type { ConveyorWords } from '../forecast-words.js';
import { keyOf } from '../forecasts.js';
import { conveyorOf } from '../model-at.js';
import { shortestName } from '../shortest-name.js';

export function subjects(session: Session): ListSubjectsAnswer {
  const names = session.symbols();
  const newest = newestRecord(session);
  return {
    plants: names.declared('plant').map((plant) => subjectOf(plant, plant.name)),
    conveyors: byUrgency(session, names.declared('conveyor')).map((conveyor): ConveyorSubject => {
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
        ...(record ? { newest: newestOf(session, conveyor, record) } : {}),
        inspections: inspections.length,
        ...todoOf(session, conveyor),
      };
    }),
    jobs: names.declared('job').map((job) => subjectOf(job, job.name)),
    ...(newest ? { newestRecord: newest.date } : {}),
  };
}

function todoOf(session: Session, conveyor: Declaration): Pick<ConveyorSubject, 'todo'> {
  const words = wordsOf(session, conveyor);
  return words ? { todo: words.todo } : {};
}

/** The nearest limit first; where nothing is forecast, by name behind the others. */
function byUrgency(session: Session, conveyors: readonly Declaration[]): readonly Declaration[] {
  const urgency = (conveyor: Declaration): number => wordsOf(session, conveyor)?.urgency ?? Infinity;
  return [...conveyors].sort((a, b) => {
    const [one, other] = [urgency(a), urgency(b)];
    return one === other ? compareNames(a.name, b.name) : one < other ? -1 : 1;
  });
}

function wordsOf(session: Session, { document, start }: Declaration): ConveyorWords | undefined {
  return session.forecasts?.conveyors[keyOf(document.uri, start)];
}

function newestOf(
  session: Session,
  declaration: Declaration,
  { date, meter }: NewestRecord,
): NonNullable<ConveyorSubject['newest']> {
  const conveyor = conveyorOf(session, declaration);
  const changed = session
    .estate()
    .meterChanges.some((change) => change.conveyor === conveyor && formatDay(change.date.day) >= date);
  const hours = parseQuantity(meter, 'duration');
  return { date, meter, ...(hours.ok && !changed ? { hours: hours.quantity.value } : {}) };
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
