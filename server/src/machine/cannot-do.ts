/** Why something could not be done on this machine, as a sentence for whoever asked for it. */
export class CannotDo extends Error {}
