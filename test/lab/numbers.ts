/** A number for each name, for things that need short names in Linux; the same in two plans of a site. */

const numbers = new Map<string, number>();

export function numberOf(name: string): number {
  const number = numbers.get(name) ?? numbers.size;
  numbers.set(name, number);
  return number;
}
