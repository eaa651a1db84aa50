/** A number for each name, for what Linux wants to have short names. Two plans of a site have the same. */

const numbers = new Map<string, number>();

export function numberOf(name: string): number {
  const number = numbers.get(name) ?? numbers.size;
  numbers.set(name, number);
  return number;
}
