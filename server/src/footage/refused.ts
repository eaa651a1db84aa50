/** What a person asked for cannot be done. The message says why and what to do, as a sentence. */
export class Refused extends Error {}

/** What is made does not fit on the disk. */
export class DiskFull extends Error {}
