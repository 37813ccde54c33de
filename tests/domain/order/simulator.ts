// A second opinion on orders of work, from the physics alone and sharing nothing with the checker: solid panels with edges on a
// line, each edge known to within an error; things that lie over one another; a machine that has power or not; flames, embers
// and air; gates; platforms and what stands on them; and people, whom a thing that gets away upstream may hit. It does one step at a time and says whether that
// could be done; of deeds with their hours it says whether wet places were left alone and hooks could be where they were needed. Only for the tests' own small conveyors: whole panels of 1 m.

export interface Machine {
  readonly runs: readonly {
    readonly from: number;
    readonly to: number;
    readonly tailSlack: number;
    readonly headSlack: number;
    readonly holdsAtTail: boolean;
    readonly holdsAtHead: boolean;
  }[];
  readonly covers: readonly [number, number][];
  readonly braces: readonly number[];
  readonly holdDowns: readonly number[];
  readonly enclosed: boolean;
  /** A loose panel slides towards the tail. */
  readonly slippery: boolean;
  readonly tolerance: number;
  readonly measuring: number;
  /** Chainages that must be renewed at the end. */
  readonly scope: readonly [number, number][];
  readonly newScrew: boolean;
  /** Slide gates by name, and where they stand. */
  readonly gates?: readonly { readonly name: string; readonly at: number; readonly powered?: boolean }[];
  /** Which way up: 1 the head is higher, −1 the tail; 0 level. */
  readonly up?: -1 | 0 | 1;
  /** Where the drive is. */
  readonly drive?: number;
  /** Stops across the trough that a panel can stand on. */
  readonly rests?: readonly number[];
  /** Pieces of the new spiral are laid in and joined by deeds of their own. */
  readonly joins?: boolean;
  /** Covers go on over a trough that has been cleared up. */
  readonly clears?: boolean;
}

export interface Deed {
  readonly action: string;
  readonly from: number;
  readonly to: number;
  readonly start?: 'head' | 'tail';
  readonly gate?: string;
  /** Flame, arc or sparks; with shields and water between it and the liner; hours of watching it asks for. */
  readonly flame?: { readonly covered: boolean; readonly watch: number };
  /** How long it takes, where that matters. */
  readonly hours?: number;
  /** The last panel is sawn to the gap as it is measured. */
  readonly sawn?: boolean;
  /** Whoever does it, one by one, and whoever watches them from outside. */
  readonly hands?: readonly { readonly mass: number }[];
  readonly lookouts?: number;
  /** The platform they stand on, what it bears in kg and how many it is made for; what lies on it besides, and who only watches. */
  readonly deck?: {
    readonly bears: number;
    readonly places: number;
    readonly load: number;
    readonly watching?: number;
  };
}

interface Solid {
  from: number;
  to: number;
  /** How far the edges may be from where they are drawn. */
  fromError: number;
  toError: number;
  fresh: boolean;
}

/** True where all deeds can be done one after another and the machine is whole, renewed and proved at the end. */
export function canDo(machine: Machine, deeds: readonly Deed[]): boolean {
  const world = build(machine);
  return (
    deeds.every((deed) => perform(world, deed)) &&
    whole(world) &&
    world.proved === 2 &&
    !world.locked &&
    machine.scope.every(([from, to]) =>
      world.solids.filter((solid) => solid.from < to && solid.to > from).every((solid) => solid.fresh),
    ) &&
    (!machine.newScrew || world.spiral.every((each) => each === 'new'))
  );
}

function build(machine: Machine) {
  const solids: Solid[] = machine.runs.flatMap((run) =>
    Array.from({ length: (run.to - run.from) / 1000 }, (_, k) => ({
      from: run.from + k * 1000,
      to: run.from + (k + 1) * 1000,
      fromError: 0,
      toError: 0,
      fresh: false,
    })),
  );
  return {
    machine,
    solids,
    swept: new Set<number>(),
    locked: false,
    tried: false,
    sniffed: [] as [number, number][],
    covers: new Set(machine.covers),
    braces: new Set(machine.braces),
    holdDowns: new Set(machine.holdDowns),
    /** Every 100 mm of the spiral. */
    spiral: Array.from(
      { length: Math.ceil((machine.runs.at(-1)?.to ?? 0) / 100) },
      () => 'old' as 'old' | 'out' | 'laid' | 'new',
    ),
    litter: new Set<number>(),
    tethered: false,
    coupled: true,
    proved: 0,
    emptied: false,
    gates: new Map((machine.gates ?? []).map(({ name }) => [name, 'open' as 'open' | 'shut' | 'off'])),
    /** `left` where whoever made them has turned to something else. */
    embers: [] as { at: number; watch: number; left: boolean }[],
  };
}
export type World = ReturnType<typeof build>;

/** Sparks fall where the work is and roll downhill to the next plate: plastic there catches fire unless it is covered. */
function burnsSafely(world: World, deed: Deed): boolean {
  const { machine, solids } = world;
  const up = machine.up ?? 0;
  const reached = (solid: Solid): boolean => {
    const middle = (solid.from + solid.to) / 2;
    if (middle > deed.from && middle < deed.to) return true;
    return up === 1 ? middle < deed.to : up === -1 ? middle > deed.from : false;
  };
  if (!deed.flame?.covered && solids.some(reached)) return false;
  for (let at = Math.floor(deed.from / 100) * 100; at < deed.to; at += 100)
    world.embers.push({ at, watch: deed.flame?.watch ?? 0, left: false });
  return true;
}

/** What a deed has loose or in the air. */
const loose = new Set([
  'strip',
  'fit',
  'patch',
  'covers off',
  'covers on',
  'unbolt drive',
  'remove screw',
  'insert screw',
  'gate off',
  'gate on',
]);
const away = new Set([
  'isolate',
  'prove dead',
  'empty',
  'pause',
  'remove isolation',
  'run empty',
  'run loaded',
]);

/**
 * A lump sticks above each gate. It comes down through every gate that is not shut, and whoever is in the trough where it comes
 * past is buried. Those who carry the spiral through a gate, or strip one, see it from either side.
 */
function buried(world: World, deed: Deed): boolean {
  const { machine } = world;
  const up = machine.up ?? 0;
  if (up === 0 || !inside.has(deed.action)) return false;
  const gates = machine.gates ?? [];
  const astride = /screw|gate/.test(deed.action);
  const foot = up === 1 ? 0 : (machine.runs.at(-1)?.to ?? 0);
  return gates.some(({ name: above, at: starts }) => {
    if (above === deed.gate) return false;
    if (astride && (up === 1 ? starts < deed.to : starts > deed.from)) return false;
    for (let x = starts; up === 1 ? x >= foot : x <= foot; x -= up * 50) {
      const here = gates.find(({ at, name }) => name !== deed.gate && Math.abs(at - x) <= 25);
      if (here && world.gates.get(here.name) === 'shut') return false;
      if (x > deed.from && x < deed.to && Math.abs(x - starts) > 25) return true;
    }
    return false;
  });
}

/** Two crews at once: lets go of what the first has in hand and watches whether it slides onto the second. */
export function hits(world: World, dropped: Deed, people: Deed): boolean {
  const up = world.machine.up ?? 0;
  if (up === 0 || !loose.has(dropped.action) || away.has(people.action)) return false;
  const stops = (world.machine.gates ?? []).filter(({ name }) => world.gates.get(name) === 'shut');
  for (let x = up === 1 ? dropped.to : dropped.from; ; x -= up * 50) {
    if (x < 0 || x > (world.machine.runs.at(-1)?.to ?? 0)) return false;
    if (stops.some(({ at }) => Math.abs(at - x) <= 25)) return false;
    const below = up === 1 ? x < dropped.to : x > dropped.from;
    if (below && x >= people.from && x <= people.to) return true;
  }
}

/** The world after some deeds; undefined where one of them cannot be done. */
export function after(machine: Machine, deeds: readonly Deed[]): World | undefined {
  const world = build(machine);
  return deeds.every((deed) => perform(world, deed)) ? world : undefined;
}

function perform(world: World, deed: Deed): boolean {
  const { machine } = world;
  const safe = world.locked && world.tried;
  const aired = !machine.enclosed || world.sniffed.some(([from, to]) => from <= deed.from && to >= deed.to);
  const here = (at: number): boolean => at >= deed.from && at <= deed.to;
  const lidsHere = [...machine.covers].filter(([from, to]) => from < deed.to && to > deed.from);
  const reachable = lidsHere.every((lid) => !world.covers.has(lid));
  const clear = reachable && ![...world.braces].some(here) && ![...world.holdDowns].some(here);
  const lined = (from: number, to: number): boolean =>
    cellsOf(machine, from, to).every((cell) => world.solids.some((solid) => solid.from === cell));
  const links = world.spiral.flatMap((_, k) => (k * 100 >= deed.from && k * 100 < deed.to ? [k] : []));
  const spiralIn = (from: number, to: number): boolean =>
    world.spiral.every(
      (each, k) => (k + 1) * 100 <= from || k * 100 >= to || each === 'old' || each === 'new',
    );
  const wholeSpiral = spiralIn(-1, Infinity);
  const drive = machine.drive ?? machine.runs.at(-1)?.to ?? 0;
  const airedAtDrive = !machine.enclosed || world.sniffed.some(([from, to]) => from <= drive && to >= drive);
  if (!deed.flame && deed.action !== 'fire watch') for (const ember of world.embers) ember.left = true;
  if (deed.flame && !burnsSafely(world, deed)) return false;
  if (!staysUp(deed) || !isSeen(machine, deed)) return false;
  if (buried(world, deed)) return false;
  if (dirty.has(deed.action)) for (const cell of cellsOf(machine, deed.from, deed.to)) world.litter.add(cell);

  switch (deed.action) {
    case 'isolate':
      if (world.locked) return false;
      world.locked = true;
      world.tried = false;
      world.proved = 0;
      return true;
    case 'prove dead':
      if (!world.locked || world.tried) return false;
      world.tried = true;
      return true;
    case 'empty':
      if (world.locked || world.emptied || [...world.gates.values()].includes('shut')) return false;
      world.emptied = true;
      return true;
    case 'pause':
      world.sniffed = [];
      return world.embers.length === 0;
    case 'fire watch':
      if (
        world.embers.some(
          ({ at, watch, left }) =>
            at >= deed.from && at < deed.to && (left || watch > (deed.hours ?? Infinity)),
        )
      )
        return false;
      world.embers = world.embers.filter(({ at }) => at < deed.from || at >= deed.to);
      return true;
    case 'patch':
      return safe && aired && clear;
    case 'gate shut':
    case 'gate open':
    case 'gate off':
    case 'gate on': {
      const name = deed.gate ?? '';
      const [from, to] = {
        'gate shut': [['open'], 'shut'],
        'gate open': [['shut'], 'open'],
        'gate off': [['open', 'shut'], 'off'],
        'gate on': [['off'], 'open'],
      }[deed.action] as [string[], 'open' | 'shut' | 'off'];
      const within = deed.action === 'gate off' || deed.action === 'gate on';
      const powered = machine.gates?.some((gate) => gate.name === name && gate.powered) ?? false;
      if (within ? !safe || !aired : powered && world.locked) return false;
      if (!from.includes(world.gates.get(name) ?? '')) return false;
      world.gates.set(name, to);
      return true;
    }
    case 'gas test':
      world.sniffed.push([deed.from, deed.to]);
      return safe;
    case 'covers off':
      if (!safe || !aired || !lidsHere.some((lid) => world.covers.has(lid))) return false;
      for (const lid of lidsHere) world.covers.delete(lid);
      return true;
    case 'clear up':
      if (!safe || !aired || !reachable) return false;
      for (const cell of cellsOf(machine, deed.from, deed.to)) world.litter.delete(cell);
      return true;
    case 'covers on': {
      if (!safe || !aired || !lidsHere.some((lid) => !world.covers.has(lid))) return false;
      if (world.embers.some(({ at }) => at >= deed.from && at < deed.to)) return false;
      if (
        machine.clears &&
        [...world.litter].some((cell) => lidsHere.some(([a, b]) => cell < b && cell + 1000 > a))
      )
        return false;
      for (const lid of lidsHere) {
        if (!spiralIn(lid[0], lid[1])) return false;
        if (!lined(lid[0], lid[1])) return false;
        if (machine.braces.some((at) => at > lid[0] && at < lid[1] && !world.braces.has(at))) return false;
        if (machine.holdDowns.some((at) => at > lid[0] && at < lid[1] && !world.holdDowns.has(at)))
          return false;
        world.covers.add(lid);
      }
      return true;
    }
    case 'braces off':
    case 'hold-downs off': {
      const [kept, known] =
        deed.action === 'braces off' ? [world.braces, machine.braces] : [world.holdDowns, machine.holdDowns];
      const mine = known.filter(here);
      if (!safe || !aired || !mine.some((at) => kept.has(at)) || !openAbove(world, mine)) return false;
      for (const at of mine) kept.delete(at);
      return true;
    }
    case 'braces on':
    case 'hold-downs on': {
      const [kept, known] =
        deed.action === 'braces on' ? [world.braces, machine.braces] : [world.holdDowns, machine.holdDowns];
      const mine = known.filter(here);
      if (!safe || !aired || !mine.some((at) => !kept.has(at)) || !openAbove(world, mine)) return false;
      if (!mine.every((at) => lined(at - 1, at + 1) && spiralIn(at - 1, at + 1))) return false;
      for (const at of mine) kept.add(at);
      return true;
    }
    case 'restrain screw':
      if (!safe || !airedAtDrive || world.tethered) return false;
      world.tethered = true;
      return true;
    case 'unbolt drive':
      if (!safe || !airedAtDrive || !world.tethered || !world.coupled) return false;
      world.coupled = false;
      return true;
    case 'remove screw':
      if (!safe || !aired || !clear || !world.tethered || world.coupled) return false;
      if (links.some((k) => world.spiral[k] === 'out') || heldAtBothEnds(world, links)) return false;
      for (const k of links) world.spiral[k] = 'out';
      return true;
    case 'insert screw':
      if (!safe || !aired || !clear || !lined(deed.from, deed.to)) return false;
      if (links.some((k) => world.spiral[k] !== 'out')) return false;
      for (const k of links) world.spiral[k] = machine.joins ? 'laid' : 'new';
      return true;
    case 'join screw':
      if (!safe || !aired || !clear || links.some((k) => world.spiral[k] !== 'laid')) return false;
      for (const k of links) world.spiral[k] = 'new';
      return true;
    case 'bolt drive':
      if (!safe || !airedAtDrive || world.coupled || !wholeSpiral) return false;
      world.coupled = true;
      return true;
    case 'release screw':
      if (!safe || !airedAtDrive || !world.tethered || !world.coupled) return false;
      world.tethered = false;
      return true;
    case 'strip': {
      const cells = cellsOf(machine, deed.from, deed.to);
      const off = world.solids.filter((solid) => cells.includes(solid.from));
      if (!safe || !aired || !clear || off.length !== cells.length || off.some((solid) => solid.fresh))
        return false;
      world.solids = world.solids.filter((solid) => !off.includes(solid));
      return true;
    }
    case 'clean': {
      const cells = cellsOf(machine, deed.from, deed.to);
      if (
        !safe ||
        !aired ||
        !clear ||
        cells.some((cell) => world.solids.some((solid) => solid.from === cell) || world.swept.has(cell))
      )
        return false;
      for (const cell of cells) world.swept.add(cell);
      return true;
    }
    case 'fit':
      return (
        safe &&
        aired &&
        clear &&
        machine.runs.every((run) => {
          const cells = cellsOf(machine, Math.max(run.from, deed.from), Math.min(run.to, deed.to));
          return (deed.start === 'head' ? cells.reverse() : cells).every((cell) =>
            push(world, run, cell, deed.start ?? 'head', deed.sawn ?? false),
          );
        })
      );
    case 'remove isolation':
      // A gate with a drive is opened when that has its energy again.
      if (!world.locked || !world.tried || !whole(world, true) || world.embers.length > 0) return false;
      world.locked = false;
      world.tried = false;
      world.sniffed = [];
      return true;
    case 'run empty':
      if (world.locked || !whole(world) || world.proved > 0) return false;
      world.proved = 1;
      return true;
    case 'run loaded':
      if (world.locked || !whole(world) || world.proved !== 1) return false;
      world.proved = 2;
      return true;
    default:
      throw new Error(`The simulator cannot ${deed.action}.`);
  }
}

/** Pushes a panel along the trough against the edge on its starting side; it fits where the far side leaves room for its error. */
function push(
  world: World,
  run: Machine['runs'][number],
  cell: number,
  start: 'head' | 'tail',
  sawn: boolean,
): boolean {
  const { machine } = world;
  const seat = [cell, cell + 1000] as const;
  if (!world.swept.has(cell) || world.solids.some((solid) => solid.from < seat[1] && solid.to > seat[0]))
    return false;
  const near = start === 'tail' ? seat[0] : seat[1];
  const far = start === 'tail' ? seat[1] : seat[0];
  const solidAt = (x: number, side: 'from' | 'to'): Solid | undefined =>
    world.solids.find((solid) => solid[side] === x);
  const leaning = start === 'tail' ? solidAt(near, 'to') : solidAt(near, 'from');
  const atEnd = near === (start === 'tail' ? run.from : run.to);
  if (!leaning && !atEnd) return false;
  const stands = (machine.rests ?? []).some((at) => Math.abs(at - near) <= 50);
  if (!leaning && machine.slippery && start === 'tail' && !run.holdsAtTail && !stands) return false;
  const error = (leaning ? (start === 'tail' ? leaning.toError : leaning.fromError) : 0) + machine.tolerance;
  const blocked = start === 'tail' ? solidAt(far, 'from') : solidAt(far, 'to');
  if (blocked) return false;
  if (
    // One that is sawn to the gap it has fits whatever the others add up to.
    !sawn &&
    far === (start === 'tail' ? run.to : run.from) &&
    error + machine.measuring > (start === 'tail' ? run.headSlack : run.tailSlack)
  )
    return false;
  const nearError = error - machine.tolerance;
  world.solids.push({
    from: seat[0],
    to: seat[1],
    fromError: start === 'tail' ? nearError : error,
    toError: start === 'tail' ? error : nearError,
    fresh: true,
  });
  return true;
}

/** Whether the people of one deed are alive and seen at the end of it, whatever else may stop it. */
export function survives(machine: Machine, deed: Deed): boolean {
  return staysUp(deed) && isSeen(machine, deed);
}

/** A deed with its hours by the clock, nights counted in. */
export interface TimedDeed extends Deed {
  readonly begins: number;
  readonly ends: number;
  /** Hours that the place is wet or hot after it. */
  readonly rests?: number;
  /** What the load hangs from, and where that stands. */
  readonly hook?: { readonly name: string; readonly stand: string };
}

/**
 * Whether nobody lays hands on a place that is wet or hot, and every hook is in one place at a time: one load on it, and packed
 * up and set up again between two stands, which takes so many hours.
 */
export function keepsTime(deeds: readonly TimedDeed[], settingUp: number): boolean {
  const moment = 1e-6;
  return deeds.every((deed, k) =>
    deeds.every((other, j) => {
      if (j === k) return true;
      const there = Math.min(deed.to, other.to) - Math.max(deed.from, other.from) > 1;
      const wet =
        there &&
        deed.rests !== undefined &&
        handsOn(other.action) &&
        other.ends > deed.ends + moment &&
        other.begins < deed.ends + deed.rests - moment;
      const hung = deed.hook && other.hook?.name === deed.hook.name ? other.hook : undefined;
      const wait = hung && hung.stand !== deed.hook?.stand ? settingUp : 0;
      const pulled =
        hung !== undefined &&
        other.begins < deed.ends + wait - moment &&
        other.ends > deed.begins - wait + moment;
      return !wet && !pulled;
    }),
  );
}

function handsOn(action: string): boolean {
  return !away.has(action) && action !== 'gas test' && action !== 'fire watch';
}

/** Cut free between two ends that stay in, a piece springs. */
function heldAtBothEnds(world: World, links: readonly number[]): boolean {
  const [first, last] = [links[0], links.at(-1)];
  if (first === undefined || last === undefined) return false;
  return world.spiral[first - 1] === 'old' && world.spiral[last + 1] === 'old';
}

/** The platform bears everybody, their tools and what they have up there. */
function staysUp({ deck, hands = [] }: Deed): boolean {
  if (!deck) return true;
  const watching = deck.watching ?? 0;
  const weight = hands.reduce((sum, { mass }) => sum + mass, 0) + watching * onlooker + tools + deck.load;
  return weight <= deck.bears && hands.length + watching <= deck.places;
}

/** kg */
const tools = 40;
/** kg */
const onlooker = 80;

/** Somebody notices if whoever is inside an enclosed trough falls. */
function isSeen({ enclosed }: Machine, { action, hands, lookouts = 0 }: Deed): boolean {
  if (!enclosed || hands === undefined || away.has(action)) return true;
  if (['gas test', 'fire watch', 'gate shut', 'gate open'].includes(action)) return true;
  // Who has only the arms inside still sees the others; who is all inside sees nothing once the gas has come.
  return (inside.has(action) ? 0 : hands.length - 1) + lookouts > 0;
}

/** Done by people who are in the trough with more than their arms. */
const inside = new Set([
  'strip',
  'clean',
  'patch',
  'fit',
  'remove screw',
  'insert screw',
  'join screw',
  'gate off',
  'gate on',
]);

/** What leaves tools, liner or swarf in the trough. */
const dirty = new Set([
  'strip',
  'clean',
  'fit',
  'patch',
  'remove screw',
  'insert screw',
  'join screw',
  'hold-downs on',
  'braces on',
]);

function openAbove(world: World, places: readonly number[]): boolean {
  return places.every((at) => [...world.covers].every(([from, to]) => at <= from || at >= to));
}

function whole(world: World, locked = false): boolean {
  const { machine } = world;
  const mayBeShut = (name: string): boolean =>
    locked && (machine.gates?.some((gate) => gate.name === name && gate.powered) ?? false);
  return (
    world.covers.size === machine.covers.length &&
    world.braces.size === machine.braces.length &&
    world.holdDowns.size === machine.holdDowns.length &&
    world.spiral.every((each) => each === 'old' || each === 'new') &&
    world.coupled &&
    !world.tethered &&
    [...world.gates].every(([name, gate]) => gate === 'open' || (gate === 'shut' && mayBeShut(name))) &&
    machine.runs.every(
      (run) =>
        world.solids.filter((solid) => solid.from >= run.from && solid.to <= run.to).length ===
        (run.to - run.from) / 1000,
    )
  );
}

function cellsOf(machine: Machine, from: number, to: number): number[] {
  return machine.runs
    .flatMap((run) => Array.from({ length: (run.to - run.from) / 1000 }, (_, k) => run.from + k * 1000))
    .filter((cell) => cell + 1000 > from && cell < to);
}
