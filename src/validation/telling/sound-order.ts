// Orders of work that can be built on the sound estate of example.ts, and the ways in which examples spoil them.

export type TextSwap = readonly [from: string, to: string];

/** Reline of the run above the gate. */
export const soundOrder = `
order {
  isolate
  prove dead
  gas test run above Gate
  covers off run above Gate
  hold-downs off run above Gate
  strip run above Gate by Alpha attended by Bravo
  clean run above Gate by Alpha attended by Bravo
  fit run above Gate starting at head by Alpha attended by Bravo
  hold-downs on run above Gate
  covers on run above Gate
  remove isolation
  run empty
  run loaded
}`;

/** The same with a new screw. */
export const soundScrewChange = `
change screw bolted joints cut cold
lift limit 500 kg
order {
  isolate
  prove dead
  gas test all
  covers off all
  hold-downs off all
  restrain screw
  unbolt drive
  remove screw by Alpha attended by Bravo
  strip run above Gate by Alpha attended by Bravo
  clean run above Gate by Alpha attended by Bravo
  fit run above Gate starting at head by Alpha attended by Bravo
  insert screw by Alpha attended by Bravo
  bolt drive
  release screw
  hold-downs on all
  covers on all
  remove isolation
  run empty
  run loaded
}`;

/** Reline of both runs above the inlet, the two stripped side by side by two crews. */
export const soundSideBySide = `
reline run above Inlet
reline run above Gate
order {
  isolate
  prove dead
  gas test
  covers off
  gate shut Gate
  open: hold-downs off
  low: strip run above Inlet by Alpha with 3 people after open
  high: strip run above Gate by Bravo with 2 people after open
  clean by Alpha attended by Bravo
  fit run above Gate starting at head by Bravo attended by Alpha
  fit run above Inlet starting at head by Alpha attended by Bravo
  hold-downs on
  covers on
  gate open Gate
  remove isolation
  run empty
  run loaded
}`;

/** Reline of the run below the gate, which is shut meanwhile. */
export const soundRunBelow = `
reline run below Gate
order {
  gate shut Gate
  isolate
  prove dead
  gas test run below Gate
  covers off run below Gate
  hold-downs off run below Gate
  strip run below Gate by Alpha attended by Bravo
  clean run below Gate by Alpha attended by Bravo
  fit run below Gate starting at head by Alpha attended by Bravo
  hold-downs on run below Gate
  covers on run below Gate
  gate open Gate
  remove isolation
  run empty
  run loaded
}`;

/** An order with pieces of its text changed; throws where one is not there, so that no example rots unseen. */
export function but(order: string, ...changes: readonly TextSwap[]): string {
  return changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new RangeError(`The sound order has no "${from}".`);
    return text.replace(from, to);
  }, order);
}
