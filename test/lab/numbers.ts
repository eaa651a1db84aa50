/** A number for each thing of a site, for names that are as short as Linux asks. */

const numbers = new WeakMap<object, number>();
let next = 0;

export function numberOf(thing: object): number {
  let number = numbers.get(thing);
  if (number === undefined) numbers.set(thing, (number = next++));
  return number;
}
