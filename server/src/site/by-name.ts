/** What a section declares, by name. Lists whose names are the same share the table of names: most edits change none. */

export interface Named {
  readonly name: string;
}

export class ByName<T extends Named> {
  /** Of no two with the same name. */
  readonly list: readonly T[];
  private readonly table: ReadonlyMap<string, number>;

  private constructor(list: readonly T[], table: ReadonlyMap<string, number>) {
    this.list = list;
    this.table = table;
  }

  /** Of two with the same name the first counts. */
  static of<T extends Named>(all: readonly T[], before?: ByName<T>): ByName<T> {
    if (before !== undefined && isNamedAs(before.list, all)) return new ByName(all, before.table);
    const table = new Map<string, number>();
    const list: T[] = [];
    for (const one of all) {
      if (table.has(one.name)) continue;
      table.set(one.name, list.length);
      list.push(one);
    }
    return new ByName(list, before !== undefined && isNamedAs(before.list, list) ? before.table : table);
  }

  get(name: string): T | undefined {
    const index = this.table.get(name);
    return index === undefined ? undefined : this.list[index];
  }

  has(name: string): boolean {
    return this.table.has(name);
  }

  keys(): Iterable<string> {
    return this.table.keys();
  }

  /** Whether the names, and their order, are known to be those of `other`. */
  isNamedAs(other: ByName<T>): boolean {
    return this.table === other.table;
  }
}

function isNamedAs(before: readonly Named[], all: readonly Named[]): boolean {
  if (before.length !== all.length) return false;
  for (let index = 0; index < all.length; index++) if (before[index]?.name !== all[index]?.name) return false;
  return true;
}
