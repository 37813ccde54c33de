// By which day is the liner to be ordered, and for which outage? One answer a conveyor: page, comment, data, order list, calendar
// and editor all print it. Where no planned outage is early enough, or the liner was seen at its limit, the day is today,
// whatever later outage an order would also reach; where the shelf has every piece, nothing is ordered.

import type { CalendarDay } from '../units/calendar.js';

export type OrderCall =
  | {
      readonly kind: 'order';
      /** Never before the day of the report. */
      readonly day: CalendarDay;
      readonly why: 'for an outage' | 'its day has passed' | 'no outage in time';
      /** The outage an order would reach; undefined where none is declared. */
      readonly outage: string | undefined;
      /** The last day on which an order reaches that outage. */
      readonly latest: CalendarDay | undefined;
    }
  | { readonly kind: 'on the shelf'; readonly outage: string | undefined }
  /** Bought already, and on its way: with what is on the shelf it is every piece. */
  | { readonly kind: 'ordered'; readonly arrives: CalendarDay; readonly outage: string | undefined }
  /** It is to be ordered, and nothing says how long it takes. */
  | { readonly kind: 'no lead time'; readonly outage: string | undefined };

/** An outage, or the day on which a risk passes where none is declared, and the last day to order for it. */
export interface OrderedFor {
  readonly name: string | undefined;
  readonly orderBy: CalendarDay;
}

export interface OrderInput {
  readonly asOf: CalendarDay;
  /** The outage to reline at; undefined where none is early enough. */
  readonly chosen: OrderedFor | undefined;
  /** Else the first that the liner can reach. */
  readonly first: OrderedFor | undefined;
  /** Seen at its limit: nobody waits for an outage. */
  readonly atLimit: boolean;
  /** Every piece lies on the shelf. */
  readonly onShelf: boolean;
  /** The day on which the shelf and what is on its way have every piece. */
  readonly promised?: CalendarDay | undefined;
  readonly leadDeclared: boolean;
}

export function orderCall(input: OrderInput): OrderCall {
  const { asOf, chosen, first, atLimit, onShelf, promised, leadDeclared } = input;
  const reached = chosen ?? first;
  if (onShelf) return { kind: 'on the shelf', outage: reached?.name };
  if (promised !== undefined) return { kind: 'ordered', arrives: promised, outage: reached?.name };
  const order = { kind: 'order', outage: reached?.name, latest: reached?.orderBy } as const;
  if (atLimit || !chosen) return { ...order, day: asOf, why: 'no outage in time' };
  if (!leadDeclared) return { kind: 'no lead time', outage: chosen.name };
  return chosen.orderBy < asOf
    ? { ...order, day: asOf, why: 'its day has passed' }
    : { ...order, day: chosen.orderBy, why: 'for an outage' };
}

/** What a programme chose, beside what the conveyor by itself asks for: never later than either, so that both can be done. */
export function orderWith(
  own: OrderCall | undefined,
  programme: OrderedFor,
  known: Pick<OrderInput, 'asOf' | 'leadDeclared'>,
): OrderCall {
  const { name, orderBy } = programme;
  const none = { first: undefined, atLimit: false, onShelf: false };
  const call = orderCall({ ...known, ...none, chosen: programme });
  if (own?.kind !== 'order' || (call.kind === 'order' && own.day > call.day)) return call;
  return { ...own, outage: name, latest: orderBy };
}

/** An order for its outage is late already. */
export function isOrderLate(call: OrderCall): boolean {
  return call.kind === 'order' && call.latest !== undefined && call.latest < call.day;
}

export function isNow(call: OrderCall): boolean {
  return call.kind === 'order' && call.why !== 'for an outage';
}
