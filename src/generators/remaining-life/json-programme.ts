// The programme over all outages as data: a line a conveyor, the load of each outage, what more would save.

import type { ProgrammeAnswer, ProgrammeLine } from '../../domain/decision/programme.js';
import { orderDay } from './decision-words.js';
import { staysJson } from './json-decision.js';
import { isPriced } from './programme-words.js';
import { day, number, type Json } from './json-values.js';

export function programmeJson(answer: ProgrammeAnswer): Json {
  if (answer.kind === 'none') return { kind: 'none', why: answer.why };
  const { programme } = answer;
  const priced = isPriced(programme);
  return {
    kind: 'programme',
    plant: programme.plant,
    currency: programme.currency ?? null,
    missingCosts: programme.problem.missingCosts ?? [],
    expected: priced ? number(programme.expected) : null,
    expectedAlone: priced ? number(programme.expectedAlone) : null,
    aloneFits: programme.aloneFits,
    gap: number(programme.gap),
    breachesOverLeast: number(programme.breachesOverLeast),
    lines: programme.lines.map((line) => lineJson(line, programme.problem.outages, priced)),
    outages: programme.loads.map(({ outage, used, unitsUsed, jobs, alone }) => ({
      outage: outage.name,
      from: day(outage.from),
      to: day(outage.to),
      hours: number(outage.hours),
      crews: [...used].map(([crew, hours]) => ({
        crew,
        used: number(hours),
        free: number(outage.hours - hours),
      })),
      platforms: programme.problem.units,
      platformHoursUsed: number(unitsUsed),
      aloneLoad: number(alone),
      jobs: jobs.map((job) => ({
        conveyor: job.conveyor,
        crews: job.crews,
        fromHour: number(job.from),
        toHour: number(job.to),
      })),
    })),
    months: programme.months.map((each) => ({
      month: each.month,
      money: number(each.money),
      relines: each.relines,
      orders: each.orders,
    })),
    savings: programme.savings.map(({ what, saves, helps, about }) => ({
      what,
      saves: priced ? number(saves) : null,
      helps,
      about,
    })),
  };
}

function lineJson(
  { conveyor, choice, reason }: ProgrammeLine,
  outages: readonly { readonly name: string }[],
  priced: boolean,
): Json {
  const candidate = choice.kind === 'reline' ? choice.candidate : undefined;
  return {
    conveyor,
    choice: choice.kind,
    outage: candidate ? (outages[candidate.outage]?.name ?? null) : null,
    scope: candidate?.scope ?? null,
    crews: candidate?.crews ?? [],
    hours: number(candidate?.hours),
    personHours: number(candidate?.personHours),
    condemnSeen: number(candidate?.condemn),
    contactSeen: number(candidate?.contact),
    stays: staysJson(candidate?.stays),
    within: candidate?.within ?? choice.kind === 'nothing',
    orderBy: day(orderDay(candidate?.order)),
    cost: number(candidate?.cost),
    expected: priced
      ? number(candidate?.expected ?? (choice.kind === 'nothing' ? choice.expected : undefined))
      : null,
    reason: reason ?? null,
  };
}
