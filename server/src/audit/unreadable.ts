/** The input of an audit cannot be read; the message says where and why, for the person who made it. */
export class Unreadable extends Error {}

/** The input can be read, but belongs to one of several things: the caller has to name one of `choices`. */
export class Untold extends Unreadable {
  readonly choices: readonly string[];

  constructor(message: string, choices: readonly string[]) {
    super(message);
    this.choices = choices;
  }
}
