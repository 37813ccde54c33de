// Was the work of the part that stands open there? `bolts tightened at 9.5 m` is of the liner's bolts, and those of the spiral stay open.

import { followUp, openConditions, type Condition } from '../../../domain/conditions/follow-up.js';
import {
  conditionAnswerText,
  conditionWords,
  isSamePlace,
  partNameOf,
  saysNoPlace,
} from '../../../domain/conditions/kinds.js';
import { isWorkThere, saidBeside, soundsOver } from '../../../domain/conditions/said-beside.js';
import { isSafeguardOut } from '../../../domain/conditions/safeguards.js';
import { putsRight, workWords } from '../../../domain/conditions/service.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { NotedFinding, PartName, Service } from '../../../domain/model/records.js';
import { listing } from '../../../domain/order/words.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';

export const workBesideAnOpenCondition: Rule = {
  code: 'TL562',
  title: 'Work that ends nothing, beside what stands open there',
  severity: 'information',
  restsOn: ['conditions', 'history'],
  why:
    'What was put right stays open from sheet to sheet, because the work is of another part or of another kind than what was seen, ' +
    'or words say that it is well and no line says that it is over.',
  todo: 'Where that was meant, say what it closes; else leave it.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  spiral bolts loose 2 at 9.5 m
}
«serviced DG1 2024-10-07 bolts tightened at 9.5 m|serviced DG1 2024-10-07 closed spiral bolts loose at 9.5 m»`,
  cases: [
    {
      name: 'a seal of the hatch where the cover leaks',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  cover leaking at 8.4 m
}
«serviced DG1 2024-10-07 hatch seal renewed at 8.4 m»`,
    },
    {
      name: 'in words, which may tell of a repair or of less',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  finding spiral at 4.6 m slight "burr on the edge"
}
«serviced DG1 2024-10-07 spiral at 4.6 m "burr ground off"»`,
    },
    {
      name: 'in words, and closed on the next day, or seen again since',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  spiral weld cracked at 9.5 m
  cover bent at 8.4 m
}
serviced DG1 2024-10-07 spiral at 9.5 m "ground out and welded"
serviced DG1 2024-10-08 closed spiral weld cracked at 9.5 m
serviced DG1 2024-10-07 cover at 8.4 m "dressed"
inspection DG1 2024-11-11 meter 4200 h {
  cover bent at 8.4 m slight
}`,
    },
    {
      name: 'work of another kind on what is urgent',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  pull cord dead left side urgent
  «serviced pull cord tightened left side»
}`,
    },
    {
      name: 'words of a look that it is well',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  interlock dead at 4 m
}
inspection DG1 2024-10-07 meter 3800 h {
  interlock dead at 4 m
}
inspection DG1 2024-11-11 meter 4000 h {
  interlock dead at 4 m
  «finding interlock at 4 m "tried, ok"»
}`,
    },
    {
      name: 'words of what is slight, or of another place',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  cover bent at 8.4 m slight
  spiral bent at 9.5 m serious
}
inspection DG1 2024-11-11 meter 4000 h {
  cover bent at 8.4 m
  finding cover at 8.4 m "painted"
  spiral bent at 9.5 m
  finding spiral "clean"
}`,
    },
    {
      name: 'bolts of the liner were loose there too',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  spiral bolts loose 2 at 9.5 m
  bolts loose 2 at 9.5 m
}
serviced DG1 2024-10-07 bolts tightened at 9.5 m`,
    },
    {
      name: 'at another place, before it was seen, and of something else',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  spiral bolts loose 2 at 9.5 m
  brace bent at 6 m
}
serviced DG1 2024-08-12 bolts tightened at 9.5 m
serviced DG1 2024-10-07 bolts tightened at 4 m
serviced DG1 2024-10-07 hold-down renewed at 6 m`,
    },
  ],
  *check({ estate }) {
    yield* wordsBeside(estate);
    for (const service of estate.services) {
      const { conditions } = followUp(estate, service.conveyor);
      if (conditions.some(({ closed }) => closed?.by === 'service' && closed.record === service)) continue;
      const meant = conditions.filter(
        (each) =>
          couldBeMeant(service, each) || isNotSaidToClose(service, each) || isOfAnotherKind(service, each),
      );
      if (meant.length === 0) continue;
      const open = meant.map(openWords);
      yield {
        origin: service.origin,
        message: `“${workWords(service)}” ends nothing, and ${listing(open)} ${meant.length === 1 ? 'stands' : 'stand'} open there.`,
        ...whatToDo(meant),
      };
    }
  },
};

function whatToDo(meant: readonly Condition[]): Pick<Found, 'todo' | 'related'> {
  return {
    todo: `Where that was meant, write ${listing(meant.map(closingLine))}; else leave it.`,
    related: meant.map(({ last }) => ({ origin: last.line.origin, message: 'Open since it was seen here.' })),
  };
}

/** Words of a look that something urgent, serious or of a safeguard may be over, where no later line speaks of it. */
function* wordsBeside(estate: Estate): Iterable<Found> {
  for (const conveyor of estate.conveyors) {
    const found = new Map<NotedFinding, Condition[]>();
    for (const condition of openConditions(estate, conveyor).filter(isGrave))
      for (const each of saidBeside(estate, condition)) {
        const { record } = condition.last;
        if (each.by !== 'look' || each.day < record.date.day) continue;
        // TL350 asks there whether it was meant.
        if (each.day === condition.unanswered?.date.day || !soundsOver(each.words)) continue;
        found.set(each.remark, [...(found.get(each.remark) ?? []), condition]);
      }
    for (const [{ origin, text }, meant] of found)
      yield {
        origin,
        message: `“${text}” is a note and ends nothing, and ${listing(meant.map(openWords))} ${meant.length === 1 ? 'stands' : 'stand'} open there.`,
        ...whatToDo(meant),
      };
  }
}

function openWords({ last }: Condition): string {
  return `${conditionWords(last.line)} (${formatDay(last.record.date.day)})`;
}

function isGrave({ last, severity }: Condition): boolean {
  return severity === 'urgent' || severity === 'serious' || isSafeguardOut(last.line, severity);
}

function closingLine({ first, last }: Condition): string {
  return `\`closed ${conditionAnswerText(first.line, last.line)}\``;
}

/** Own words of work at a part and place, of which nobody said that it closes anything, and nobody has looked since. */
function isNotSaidToClose(service: Service, { last, closed }: Condition): boolean {
  const { part, place, work, ended, date } = service;
  if (part === undefined || work !== undefined || ended !== undefined || closed !== undefined) return false;
  if (last.record.date.day > date.day || partNameOf(last.line) !== part) return false;
  return saysNoPlace(place)
    ? saysNoPlace(last.line)
    : !saysNoPlace(last.line) && isSamePlace(place, last.line);
}

/** Work that has its word, on the part of something urgent, serious or of a safeguard, of which that work ends nothing: a dead cord, tightened. */
function isOfAnotherKind(service: Service, condition: Condition): boolean {
  const { last, closed } = condition;
  return (
    service.work !== undefined &&
    // What is upkeep was not meant to end anything.
    service.work !== 'greased' &&
    service.work !== 'oil topped up' &&
    closed === undefined &&
    isGrave(condition) &&
    last.record.date.day <= service.date.day &&
    isWorkThere(service, last.line)
  );
}

/** Open there on that day, of another part, and put right by such work if it were of that part. */
function couldBeMeant(service: Service, { last, closed }: Condition): boolean {
  const { line, record } = last;
  const { part, place, work, date } = service;
  if (part === undefined || work === undefined || saysNoPlace(place) || saysNoPlace(line)) return false;
  if (record.date.day > date.day || (closed && closed.day <= date.day)) return false;
  const other = partNameOf(line) as PartName | undefined;
  if (other === undefined || other === part || !isSamePlace(place, line)) return false;
  // A new hold-down says nothing of the brace beside it; new bolts may be those of the spiral.
  if (work === 'renewed' && !line.kind.split(' ').includes(part)) return false;
  return putsRight({ ...service, part: other }, line);
}
