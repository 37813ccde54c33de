// An integer programme as plain data, and what a solver of it is: minimise a sum of costs over choices that are made or not,
// under rows that bound sums. The solver comes as an argument, so that nothing here loads one.

export interface Term {
  readonly by: number;
  /** Name of a choice: letters and digits. */
  readonly of: string;
}

export interface Row {
  readonly sum: readonly Term[];
  readonly is: '<=' | '>=' | '=';
  readonly value: number;
  /** The outage whose hours it bounds, where it does. */
  readonly outage?: number;
}

export interface IntegerProgramme {
  readonly cost: readonly Term[];
  readonly rows: readonly Row[];
  /** Each 0 or 1. */
  readonly choices: readonly string[];
  /** Choices may be made in part: quick, and a bound for what is asked for. */
  readonly relaxed?: boolean;
}

export type SolvedProgramme =
  | {
      readonly kind: 'solved';
      readonly chosen: ReadonlySet<string>;
      readonly cost: number;
      /** Cost over what is proven to be the least − 1; 0 where it is proven. */
      readonly gap: number;
      /** Of the relaxed programme: what a unit more of each row would save, ≥ 0. */
      readonly prices?: readonly number[];
    }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'out of time' };

export type ProgrammeSolver = (programme: IntegerProgramme) => SolvedProgramme;
