// The row of a conveyor in the table of decisions, as data. Chances run from 0 to 1 and count unseen panels in; what was seen
// alone stands beside. Missing is null, never zero.

import type { Earliest } from '../../domain/decision/conveyor-decision.js';
import type { OutageDecision } from '../../domain/decision/outage-decision.js';
import type { TwoChances } from '../../domain/decision/two-chances.js';
import { isNow, isOrderLate } from '../../domain/decision/order-call.js';
import type { DecisionOption } from '../../domain/decision/option.js';
import type { WhatStays } from '../../domain/decision/what-stays.js';
import { day, number, type Json } from './json-values.js';
import { callText, currencyOf } from './decision-words.js';
import type { ConveyorLife } from './remaining-life.js';

export function decisionJson({ decision, attention, order }: ConveyorLife): Json {
  if (!decision) return null;
  const { accepted, passed, governing, scopes } = decision;
  return {
    panels: decision.panels,
    panelsSeen: decision.panelsSeen,
    governing: governing
      ? {
          place: governing.place,
          run: governing.run,
          panel: governing.panel,
          from: number(governing.from),
          to: number(governing.to),
        }
      : null,
    accepted: {
      condemn: number(accepted.condemn),
      contact: number(accepted.contact),
      contactAssumed: accepted.contactAssumed,
    },
    passed: passed ? { day: day(passed.day), by: passed.by } : null,
    passedSeen: day(decision.passedSeen),
    today: chancesJson(decision.today),
    outages: decision.outages.map((outage) =>
      outageJson(
        outage,
        attention.level === 'reline to plan' &&
          outage.name === attention.outage?.name &&
          outage.from === attention.outage.from,
      ),
    ),
    earliest: earliestJson(decision.earliest),
    earliestPart: earliestJson(decision.earliestPart),
    orderBy:
      order?.kind === 'order'
        ? {
            day: day(order.day),
            now: isNow(order),
            late: isOrderLate(order),
            outage: order.outage ?? null,
            latest: day(order.latest),
          }
        : null,
    orderWords: order ? callText(order) : null,
    leadTimeDays: decision.leadTime.declared ? decision.leadTime.days : null,
    currency: currencyOf(decision) ?? null,
    horizon: day(decision.horizon),
    scopes: (scopes?.works ?? []).map(({ work }) => ({
      scope: work.scope,
      whole: work.whole,
      panels: work.panels,
      metres: number(work.metres),
      buildable: work.buildable,
      obstacles: work.obstacles,
      personHours: number(work.together.personHours),
      hours: number(work.together.duration),
    })),
    lastsNot: (scopes?.governing ?? []).map(({ place }) => place),
    lastsUntil: day(scopes?.until),
    goesBy: decision.goesBy,
    plan: decision.plan.kind,
    ruledOut: decision.ruledOut ? { why: decision.ruledOut.why, remedies: decision.ruledOut.remedies } : null,
    options: decision.options.map(optionJson),
    jobs: decision.jobs.map((job) => ({
      job: job.job,
      outage: job.outage ?? null,
      from: day(job.from),
      covers: job.covers ?? null,
      arrives: day(job.arrives?.day),
      inTime: job.arrives?.inTime ?? null,
      words: job.words,
    })),
  };
}

function chancesJson({ condemn, contact, condemnSeen, contactSeen }: TwoChances): { [key: string]: Json } {
  return {
    condemn: number(condemn),
    contact: number(contact),
    condemnSeen: number(condemnSeen),
    contactSeen: number(contactSeen),
  };
}

function outageJson(outage: OutageDecision, chosen: boolean): Json {
  return {
    outage: outage.name,
    from: day(outage.from),
    to: day(outage.to),
    chosen,
    ...chancesJson(outage),
    within: outage.within,
    arrives: day(outage.arrives),
    reachable: outage.reachable,
    orderBy: day(outage.orderBy),
    orderIsLate: outage.orderIsLate,
  };
}

function earliestJson(earliest: Earliest | undefined): Json {
  return earliest
    ? { day: day(earliest.day), scope: earliest.scope, why: earliest.why, ...chancesJson(earliest) }
    : null;
}

/** Of the liner that a part leaves lying. */
export function staysJson(stays: WhatStays | undefined): Json {
  return stays
    ? {
        until: day(stays.until),
        outage: stays.outage ?? null,
        first: stays.first?.place ?? null,
        keeps: stays.keeps,
        ...chancesJson(stays),
      }
    : null;
}

function optionJson(option: DecisionOption): Json {
  return {
    kind: option.kind,
    what: option.what,
    day: day(option.day),
    outage: option.outage ?? null,
    condemn: number(option.condemn),
    contact: number(option.contact),
    condemnSeen: number(option.condemnSeen),
    contactSeen: number(option.contactSeen),
    stays: staysJson(option.stays),
    within: option.within,
    obstacle: option.obstacle ?? null,
    cost: number(option.cost),
    expected: number(option.expected),
    expectedSeen: number(option.expectedSeen),
    reassures: number(option.reassures),
    dutyShare: number(option.duty),
    needs: option.needs,
    working: option.working,
  };
}
