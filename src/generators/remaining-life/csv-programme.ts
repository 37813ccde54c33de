// One row a conveyor of the programme over all outages, for a spreadsheet.

import type { ProgrammeAnswer } from '../../domain/decision/programme.js';
import { csvTable } from './csv-cells.js';
import { orderDay } from './decision-words.js';
import { isPriced } from './programme-words.js';

const columns = [
  'plant',
  'conveyor',
  'choice',
  'outage',
  'outage_from',
  'scope',
  'crews',
  'hours',
  'person_hours',
  'limit_by_outage_seen',
  'steel_by_outage_seen',
  'within',
  'order_by',
  'cost',
  'expected',
  'currency',
  'reason',
] as const;

export function programmeCsv(answers: readonly ProgrammeAnswer[]): string {
  return csvTable(
    columns,
    answers.flatMap((answer) => {
      if (answer.kind === 'none') return [];
      const { plant, currency, lines, problem } = answer.programme;
      return lines.map(({ conveyor, choice, reason }) => {
        const candidate = choice.kind === 'reline' ? choice.candidate : undefined;
        const outage = candidate && problem.outages[candidate.outage];
        return [
          plant,
          conveyor,
          choice.kind,
          outage?.name,
          { day: outage?.from },
          candidate?.scope,
          candidate?.crews.join(' and '),
          round(candidate?.hours, 2),
          round(candidate?.personHours, 2),
          round(candidate?.condemn, 6),
          round(candidate?.contact, 6),
          candidate?.within ?? choice.kind === 'nothing',
          { day: orderDay(candidate?.order) },
          round(candidate?.cost, 2),
          isPriced(answer.programme)
            ? round(candidate?.expected ?? (choice.kind === 'nothing' ? choice.expected : undefined), 2)
            : undefined,
          currency,
          reason,
        ];
      });
    }),
  );
}

function round(value: number | undefined, digits: number): number | undefined {
  return value === undefined || !Number.isFinite(value) ? undefined : Number(value.toFixed(digits));
}
