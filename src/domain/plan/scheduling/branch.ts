// The shortest schedule, proven: a depth-first search that looks for anything shorter than the best known. At each point the
// earliest times that precedence allows are worked out; where these overload nothing they are a schedule; where they do, one
// of the activities in the first overload must wait for another, and each such wait is tried (conflict sets, after
// Demeulemeester and Herroelen 1992). Pairs that cannot overlap are put in order as soon as only one order is left.
// Counted in nodes, not in time, so the same problem always gives the same answer.

import { oneMachine } from './bounds.js';
import { overloads, type Model } from './model.js';
import type { Timing } from './serial.js';

export interface Searched {
  readonly best: Timing;
  /** True where the search ran to its end: nothing shorter exists. */
  readonly complete: boolean;
  readonly nodes: number;
}

interface Node {
  /** n × n, 1 where row is before column. */
  readonly before: Uint8Array;
  /** Ways still open, as bits, and the way in use once one is left. */
  readonly modes: Int32Array;
}

export function branch(
  model: Model,
  known: Timing,
  stopAt: number,
  mostNodes: number,
  machines: readonly (readonly number[])[],
): Searched {
  const { n, activities, resources } = model;
  let best = known;
  let nodes = 0;
  const openModes = Int32Array.from(activities, ({ modes }) => (1 << modes.length) - 1);
  const stack: Node[] = [{ before: model.before.slice(), modes: openModes }];
  const durations = new Int32Array(n);
  const es = new Int32Array(n);
  const tails = new Int32Array(n);

  while (stack.length > 0 && best.makespan > stopAt) {
    if (nodes >= mostNodes) return { best, complete: false, nodes };
    nodes++;
    const node = stack.pop();
    if (!node) break;
    if (!propagate(node, best.makespan - 1)) continue;
    const conflict = firstConflict(node);
    if (conflict.length === 0) {
      const open = firstOpen(node);
      if (open < 0) {
        const mode = Int32Array.from(node.modes, (bits) => Math.log2(bits));
        best = {
          start: es.slice(),
          mode,
          makespan: n === 0 ? 0 : Math.max(...es.map((start, i) => start + (durations[i] ?? 0))),
        };
        continue;
      }
      const ways = (activities[open]?.modes ?? [])
        .map((mode, m) => ({ m, duration: mode.duration }))
        .filter(({ m }) => ((node.modes[open] ?? 0) >> m) & 1)
        .sort((a, b) => b.duration - a.duration || b.m - a.m);
      for (const { m } of ways) {
        const modes = node.modes.slice();
        modes[open] = 1 << m;
        stack.push({ before: node.before.slice(), modes });
      }
      continue;
    }
    const waits: { readonly i: number; readonly j: number; readonly price: number }[] = [];
    for (const i of conflict) {
      for (const j of conflict) {
        if (i === j || node.before[j * n + i]) continue;
        waits.push({
          i,
          j,
          price: (es[i] ?? 0) + (durations[i] ?? 0) + (durations[j] ?? 0) + (tails[j] ?? 0),
        });
      }
    }
    // The wait that costs least is tried first, so it goes on the stack last.
    waits.sort((a, b) => b.price - a.price || b.i - a.i || b.j - a.j);
    for (const { i, j, price } of waits)
      if (price < best.makespan) stack.push({ before: addWait(node.before, i, j), modes: node.modes });
  }
  return { best, complete: true, nodes };

  /** Earliest starts and tails; puts forced pairs in order; false where nothing shorter than the limit is left. */
  function propagate(node: Node, limit: number): boolean {
    for (let i = 0; i < n; i++) durations[i] = shortestOpen(node, i);
    for (;;) {
      if (!times(node.before, limit)) return false;
      let changed = false;
      for (let i = 0; i < n; i++) {
        for (let j = i + 1; j < n; j++) {
          if (node.before[i * n + j] || node.before[j * n + i] || !apartNow(node, i, j)) continue;
          const ij = (es[i] ?? 0) + (durations[i] ?? 0) + (durations[j] ?? 0) + (tails[j] ?? 0) <= limit;
          const ji = (es[j] ?? 0) + (durations[j] ?? 0) + (durations[i] ?? 0) + (tails[i] ?? 0) <= limit;
          if (!ij && !ji) return false;
          if (ij && ji) continue;
          const [a, b] = ij ? [i, j] : [j, i];
          node.before.set(addWait(node.before, a, b));
          changed = true;
        }
      }
      if (changed) continue;
      for (const machine of machines) if (oneMachine(machine, es, durations, tails) > limit) return false;
      return true;
    }
  }

  function times(before: Uint8Array, limit: number): boolean {
    // Longest chains over the closed precedence: activities by the number of predecessors are in topological order.
    const count = new Int32Array(n);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) if (before[i * n + j]) count[j] = (count[j] ?? 0) + 1;
    const order = Array.from({ length: n }, (_, i) => i).sort((a, b) => (count[a] ?? 0) - (count[b] ?? 0));
    es.fill(0);
    tails.fill(0);
    for (const i of order) {
      if (before[i * n + i]) return false;
      const end = (es[i] ?? 0) + (durations[i] ?? 0);
      for (let j = 0; j < n; j++) if (before[i * n + j] && (es[j] ?? 0) < end) es[j] = end;
    }
    for (let k = n - 1; k >= 0; k--) {
      const j = order[k] ?? 0;
      const rest = (tails[j] ?? 0) + (durations[j] ?? 0);
      if ((es[j] ?? 0) + rest > limit) return false;
      for (let i = 0; i < n; i++) if (before[i * n + j] && (tails[i] ?? 0) < rest) tails[i] = rest;
    }
    return true;
  }

  function shortestOpen(node: Node, i: number): number {
    let shortest = Infinity;
    (activities[i]?.modes ?? []).forEach((mode, m) => {
      if (((node.modes[i] ?? 0) >> m) & 1) shortest = Math.min(shortest, mode.duration);
    });
    return shortest;
  }

  function chosen(node: Node, i: number): number {
    const bits = node.modes[i] ?? 0;
    return (bits & (bits - 1)) === 0 ? Math.log2(bits) : -1;
  }

  function apartNow(node: Node, i: number, j: number): boolean {
    if (model.apart[i * n + j]) return true;
    const a = chosen(node, i);
    const b = chosen(node, j);
    if (a < 0 || b < 0) return false;
    const x = activities[i]?.modes[a];
    const y = activities[j]?.modes[b];
    return x !== undefined && y !== undefined && overloads(resources, x, y);
  }

  /** The fewest activities that together overload something at the first time anything is overloaded; empty for none. */
  function firstConflict(node: Node): number[] {
    const at = [...new Set(es)].sort((a, b) => a - b);
    for (const time of at) {
      const running: number[] = [];
      for (let i = 0; i < n; i++)
        if ((es[i] ?? 0) <= time && (es[i] ?? 0) + (durations[i] ?? 0) > time) running.push(i);
      let pair: number[] | undefined;
      let price = Infinity;
      for (const [k, i] of running.entries()) {
        for (const j of running.slice(k + 1)) {
          if (!apartNow(node, i, j)) continue;
          const slack = Math.max(tails[i] ?? 0, tails[j] ?? 0);
          if (-slack < price) {
            price = -slack;
            pair = [i, j];
          }
        }
      }
      if (pair) return pair;
      for (let r = 0; r < resources.length; r++) {
        const capacity = resources[r]?.capacity ?? 0;
        const users = running.flatMap((i) => {
          const m = chosen(node, i);
          const amount =
            m < 0 ? 0 : (activities[i]?.modes[m]?.uses.find((use) => use.resource === r)?.amount ?? 0);
          return amount > 0 ? [{ i, amount }] : [];
        });
        if (users.reduce((sum, { amount }) => sum + amount, 0) <= capacity) continue;
        users.sort((a, b) => b.amount - a.amount || a.i - b.i);
        const subset: number[] = [];
        let load = 0;
        for (const { i, amount } of users) {
          subset.push(i);
          load += amount;
          if (load > capacity) return minimal(subset, users, capacity);
        }
      }
    }
    return [];
  }

  function minimal(
    subset: readonly number[],
    users: readonly { readonly i: number; readonly amount: number }[],
    capacity: number,
  ): number[] {
    const amount = new Map(users.map((user) => [user.i, user.amount]));
    let kept = [...subset];
    for (const i of subset) {
      const without = kept.filter((j) => j !== i);
      if (without.reduce((sum, j) => sum + (amount.get(j) ?? 0), 0) > capacity) kept = without;
    }
    return kept;
  }

  function firstOpen(node: Node): number {
    let open = -1;
    for (let i = 0; i < n; i++)
      if (chosen(node, i) < 0 && (open < 0 || (es[i] ?? 0) < (es[open] ?? 0))) open = i;
    return open;
  }

  function addWait(before: Uint8Array, i: number, j: number): Uint8Array {
    const next = before.slice();
    for (let a = 0; a < n; a++) {
      if (a !== i && !before[a * n + i]) continue;
      for (let b = 0; b < n; b++) if (b === j || before[j * n + b]) next[a * n + b] = 1;
    }
    return next;
  }
}
