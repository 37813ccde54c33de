// Two tabs with one form open, over one storage that tells each of what the other wrote, later and in its own time: nothing that
// either typed is lost, and they come to rest.

import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { storeFor, type Store } from '../../src/views/forms/store.js';

interface Typed {
  lengths: Record<string, string>;
}
interface Tab {
  readonly state: Typed;
  readonly store: Store<Typed>;
  type(name: string, value: string): void;
}

type Told = (event: { readonly key: string; readonly newValue: string }) => void;
const kept = new Map<string, string>();
const tabs: Told[] = [];
let writing = 0;
/** Events under way, each to one tab. */
let under: (() => void)[] = [];
let writings = 0;
/** A form that shows what it took in keeps it, and must not meet it again. */
let endless = false;

beforeEach(() => {
  kept.clear();
  tabs.length = 0;
  under = [];
  writings = 0;
  endless = false;
  Object.assign(globalThis, {
    localStorage: {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem(key: string, newValue: string) {
        if (kept.get(key) === newValue) return;
        kept.set(key, newValue);
        writings += 1;
        const writer = writing;
        tabs.forEach((tell, tab) => {
          if (tab !== writer) under.push(() => as(tab, () => tell({ key, newValue })));
        });
      },
    },
    addEventListener: (_: string, tell: Told) => tabs.push(tell),
  });
});
afterEach(() => {
  expect(endless).toBe(false);
  for (const name of ['localStorage', 'addEventListener']) Reflect.deleteProperty(globalThis, name);
});

function as<T>(tab: number, work: () => T): T {
  const before = writing;
  writing = tab;
  const made = work();
  writing = before;
  return made;
}

/** A form that keeps whatever it shows, as the as-fitted form does. */
function open(): Tab {
  const own = tabs.length;
  let deep = 0;
  const store = storeFor<Typed>({
    key: 'form',
    adopt(_, { value }) {
      deep += 1;
      if (deep > 20) {
        endless = true;
        throw new Error('without end');
      }
      Object.assign(state, value);
      store.keep(state);
      deep -= 1;
    },
    mine: () => state,
  });
  const state: Typed = as(own, () => ({ lengths: {}, ...store.load() }));
  as(own, () => store.keep(state));
  return {
    state,
    store,
    type: (name, value) =>
      as(own, () => {
        state.lengths = { ...state.lengths, [name]: value };
        store.keep(state);
      }),
  };
}

/** Tells what is under way, oldest first, until nothing is. */
function settle(): void {
  for (let n = 0; under.length > 0; n++) {
    if (n > 100) throw new Error('they never come to rest');
    under.shift()?.();
  }
}

describe('two tabs of one form', () => {
  test('one that only listens writes nothing', () => {
    const [one, two] = [open(), open()];
    one.type('1', '497');
    const before = writings;
    settle();
    expect([two.state.lengths, writings]).toEqual([{ 1: '497' }, before]);
    expect(two.store.works()).toBe(true);
  });

  test('one that types on before the other has heard loses nothing', () => {
    const [one, two] = [open(), open()];
    one.type('1', '497');
    one.type('2', '1000');
    under.shift()?.(); // of the first writing
    one.type('3', '1001');
    settle();
    const all = { 1: '497', 2: '1000', 3: '1001' };
    expect([one.state.lengths, two.state.lengths]).toEqual([all, all]);
    expect(open().state.lengths).toEqual(all);
  });

  test('that type in turn, in whatever order they hear of it, keep what both typed and come to rest', () => {
    const [one, two] = [open(), open()];
    two.type('2', '1000');
    one.type('1', '497');
    two.type('3', '1001');
    under.reverse();
    settle();
    const all = { 1: '497', 2: '1000', 3: '1001' };
    expect([one.state.lengths, two.state.lengths]).toEqual([all, all]);
    expect(JSON.parse(kept.get('form') ?? '')).toEqual({ lengths: all });
  });

  test('a value taken out is taken out in both', () => {
    const [one, two] = [open(), open()];
    one.type('1', '497');
    settle();
    two.type('1', '');
    settle();
    expect(one.state.lengths).toEqual({ 1: '' });
  });
});
