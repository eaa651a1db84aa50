/** Why something could not be done on this machine, as a sentence for whoever asked for it. */
export class CannotDo extends Error {
  /** What else there is to say, each on a line of its own. */
  readonly details: readonly string[];

  constructor(message: string, details: readonly string[] = []) {
    super(message);
    this.details = details;
  }
}

/** Whoever asked for it has ended it. */
export class Stopped extends CannotDo {}
