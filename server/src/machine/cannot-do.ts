/** Why something could not be done on this machine, as a sentence for the user. */
export class CannotDo extends Error {
  /** Further lines for the user. */
  readonly details: readonly string[];

  constructor(message: string, details: readonly string[] = []) {
    super(message);
    this.details = details;
  }
}

/** The user has stopped it. */
export class Stopped extends CannotDo {}
