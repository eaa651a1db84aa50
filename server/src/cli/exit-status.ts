/** For the end of every help text. */
export const EXIT_STATUS = `Exit status:
  0  nothing at or above --fail-on (an error by default)
  1  something at or above it
  2  it could not run: wrong usage, a folder that cannot be read, no site in it`;
