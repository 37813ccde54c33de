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
}

export interface IntegerProgramme {
  readonly cost: readonly Term[];
  readonly rows: readonly Row[];
  /** Each 0 or 1. */
  readonly choices: readonly string[];
}

export type SolvedProgramme =
  | {
      readonly kind: 'solved';
      readonly chosen: ReadonlySet<string>;
      readonly cost: number;
      /** Cost over what is proven to be the least − 1; 0 where it is proven. */
      readonly gap: number;
    }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'out of time' };

export type ProgrammeSolver = (programme: IntegerProgramme) => SolvedProgramme;
