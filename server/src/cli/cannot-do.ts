/** Why a command could not do what was asked; ends it with exit status 2. */
export { CannotDo } from '../machine/cannot-do.ts';
