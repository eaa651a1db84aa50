/** Why what an audit is given cannot be read; the message says where and what, for the person who made it. */
export class Unreadable extends Error {}
