/** What a person asked for cannot be done. The message says why and what to do, as a sentence. */
export class Refused extends Error {
  /** What else there is to say, each on a line of its own. */
  readonly details: readonly string[];

  constructor(message: string, details: readonly string[] = []) {
    super(message);
    this.details = details;
  }
}

/** What is made does not fit on the disk. */
export class DiskFull extends Error {}
