/** The list of nothing, one for all: a large site has hundreds of thousands, and each of its own would take room. */
export const NONE: readonly never[] = [];
