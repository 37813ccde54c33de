// HiGHS (MIT licence, WebAssembly build on npm) behind the solver that decisions ask for: the programme goes in as text in the
// LP format, what is chosen comes out. Where the binary lies is handed in, so that every bundle finds it its own way.

import * as highsPackage from 'highs';
import type {
  IntegerProgramme,
  ProgrammeSolver,
  SolvedProgramme,
  Term,
} from '../domain/decision/integer-programme.js';

/** What is used of the package: it is typed as CommonJS and loaded as a module, where its loader is the default export. */
interface HighsModel {
  readModel(source: { readonly format: 'lp'; readonly data: string }): unknown;
  readonly options: { set(options: Readonly<Record<string, number | boolean>>): void };
  readonly info: { get(name: string): unknown };
  run(): unknown;
  getModelStatus(): unknown;
  getObjectiveValue(): number;
  getSolution(): { readonly colValue: ArrayLike<number>; readonly rowDual: ArrayLike<number> };
  dispose(): void;
}
interface Highs {
  createModel(): HighsModel;
}
const load = highsPackage.default as unknown as (
  options:
    | { readonly locateFile: () => string }
    | { readonly instantiateWasm: (imports: WebAssembly.Imports, done: (made: unknown) => void) => void },
) => Promise<Highs>;

/** Counted and not timed, so that every machine gives the same answer; what was found by then counts, with its gap. */
const mostNodes = 300;
/** Good enough: costs are known no better. */
const enoughGap = 1e-4;

/** `binary`: path of highs.wasm, or its bytes where nothing can be read. */
export async function highsSolver(binary: string | Uint8Array<ArrayBuffer>): Promise<ProgrammeSolver> {
  const highs = await (typeof binary === 'string'
    ? load({ locateFile: () => binary })
    : fromBytes(await WebAssembly.compile(binary)));
  return (programme) => solveWith(highs, programme);
}

/** The loader takes no bytes, whatever its types say (1.15.3); it lets others make the instance. */
function fromBytes(module: WebAssembly.Module): Promise<Highs> {
  return new Promise((resolve, reject) => {
    load({
      instantiateWasm: (imports, done) => {
        WebAssembly.instantiate(module, imports).then(done, reject);
      },
    }).then(resolve, reject);
  });
}

function solveWith(highs: Highs, programme: IntegerProgramme): SolvedProgramme {
  const model = highs.createModel();
  try {
    model.options.set({
      mip_max_nodes: mostNodes,
      mip_rel_gap: enoughGap,
      output_flag: false,
      random_seed: 0,
    });
    model.readModel({ format: 'lp', data: lpText(programme) });
    model.run();
    const { colValue, rowDual } = model.getSolution();
    const gap = programme.relaxed ? relaxedGap(model) : model.info.get('mip_gap');
    const chosen = new Set(programme.choices.filter((_, i) => (colValue[i] ?? 0) > 0.5));
    if (typeof gap !== 'number' || !Number.isFinite(gap))
      return model.getModelStatus() === infeasible ? { kind: 'infeasible' } : { kind: 'out of time' };
    return {
      kind: 'solved',
      chosen,
      cost: model.getObjectiveValue(),
      gap: Math.max(0, gap),
      ...(programme.relaxed ? { prices: Array.from(rowDual, Math.abs) } : {}),
    };
  } finally {
    model.dispose();
  }
}

/** Optimal, or nothing. */
function relaxedGap(model: HighsModel): number | undefined {
  return model.getModelStatus() === optimal ? 0 : undefined;
}
/** HighsModelStatus::kOptimal. */
const optimal = 7;
/** HighsModelStatus::kInfeasible. */
const infeasible = 8;

/** CPLEX LP format, a line each term so that no line grows beyond what readers take. */
export function lpText({ cost, rows, choices, relaxed }: IntegerProgramme): string {
  // Columns are numbered as they first appear, so every choice stands in the sum of costs, in its order.
  const price = new Map(cost.map(({ by, of }) => [of, by]));
  return [
    'Minimize',
    ` obj: ${sumText(choices.map((of) => ({ by: price.get(of) ?? 0, of })))}`,
    'Subject To',
    ...rows.map((row, i) => ` r${i}: ${sumText(row.sum)} ${row.is} ${numberText(row.value)}`),
    ...(relaxed
      ? ['Bounds', ...choices.map((name) => ` 0 <= ${name} <= 1`)]
      : ['Binary', ...choices.map((name) => ` ${name}`)]),
    'End',
    '',
  ].join('\n');
}

function sumText(terms: readonly Term[]): string {
  return terms.map(({ by, of }) => `${by < 0 ? '-' : '+'} ${numberText(Math.abs(by))} ${of}`).join('\n  ');
}

/** Six decimals, never with an exponent that a reader could take for a name. */
function numberText(value: number): string {
  return Number(value.toFixed(6)).toString();
}
