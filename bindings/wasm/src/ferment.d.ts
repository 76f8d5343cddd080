/** Numbers of an error's status, those of ferment.h; only ever added to. */
export declare const Status: Readonly<{
  /** a value no dough can have, or of a wrong form */
  invalidInput: 1;
  /** a possible dough, outside what the model describes */
  outsideModel: 2;
  /** a question without an answer; the message says what is reachable */
  noSolution: 3;
  /** a defect of the library, please report it */
  notConverged: 4;
  /** anything else, such as no memory */
  internal: 99;
}>;

/** What every function throws: a status and a message with value, unit, range and what to do. */
export declare class FermentError extends Error {
  constructor(status: number, message: string);
  readonly status: number;
}

export type Yeast =
  | "instant"
  /** wetted in warm water first */
  | "active_dry"
  | "active_dry_unwetted"
  /** fresh yeast */
  | "compressed";

export interface FactorRule {
  /** desired dough temperature, °C */
  desiredC: number;
  /** °C */
  flourC: number;
  /** °C */
  roomC: number;
  /** warming by mixing, a difference of temperatures, K */
  frictionK: number;
  /** °C; leave it out if there is no preferment */
  prefermentC?: number | null;
}

/** A dough at a constant temperature; percent of flour weight. */
export interface Dough {
  /** the dough's own temperature, not the room's, °C */
  doughC: number;
  /** as weighed */
  yeastPercent: number;
  /** default "instant" */
  yeast?: Yeast;
  /** default 2 */
  saltPercent?: number;
  /** all water of the formula, default 65 */
  waterPercent?: number;
  /** default 0 */
  sugarPercent?: number;
  /** default 0 */
  altitudeM?: number;
}

/** Version as "major.minor.patch". */
export declare function version(): string;

/**
 * Water temperature by the trade's factor rule, °C.
 * @throws FermentError with Status.invalidInput
 */
export declare function waterByFactorRule(inputs: FactorRule): number;

/**
 * Hours from the end of mixing until the dough has gained `risePercent` of its volume, with the parameter set 2026-2.
 * @throws FermentError with Status.invalidInput, Status.outsideModel where the yeast stands still, Status.noSolution
 *         for a rise the dough cannot hold or make
 */
export declare function hoursToRise(risePercent: number, dough: Dough): number;

/** A document: what JSON can hold. */
export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/**
 * All of the library: a question in, its answer out, as documents. What can be asked: water, mixing, simulate,
 * forecast, choose, rise, explain, cautions, keys; `{ask: "keys", of: "ForecastQuestion"}` answers with its schema.
 * @throws FermentError with any status; the message names the way to what is wrong, such as day.stage[1].until_h
 */
export declare function ask(question: string): string;
export declare function ask(question: { ask: string; [key: string]: Json }): { [key: string]: Json };
