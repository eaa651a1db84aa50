/**
 * A ready-made item with the site's own names and free addresses at its tab stops; things the site lacks are left out.
 */

import { contains, formatAddress } from '../../standards/ipv4.ts';
import { type Schema, resolved, under } from '../../site/shape.ts';
import { addressBeside, spaceInUse } from '../../site/free/address.ts';
import type { DeviceKind, Vlan } from '../../site/model.ts';
import { type Draft, draftOf } from './draft.ts';
import { nextFreeSubnet } from './addresses.ts';
import { fitting } from './fitting.ts';
import { homeVlansOf, houseVlan, videoVlan } from './home-vlans.ts';
import type { CompletionContext } from './wanted.ts';

type Body = Readonly<Record<string, unknown>>;

/** A tab stop alone; with a caret it is a number. */
const STOP = /^(\^?)\$\{(\d+):([^{}]*)\}$/;

/** `body` is the content of the section: an item by its name, or a list of one. */
export function filled(wanted: CompletionContext, schema: Schema, body: unknown): unknown {
  const item: unknown = Array.isArray(body) ? body[0] : Object.values(body as object)[0];
  return new Filling(wanted, draftOf(wanted, item as object)).fill(resolved(schema), body);
}

class Filling {
  private readonly wanted: CompletionContext;
  private readonly draft: Draft;
  /** The value of each tab stop; `null` where it is still to be typed, `undefined` where it is left out. */
  private readonly chosen = new Map<string, string | null | undefined>();
  private kind = '';

  constructor(wanted: CompletionContext, draft: Draft) {
    this.wanted = wanted;
    this.draft = draft;
  }

  fill(schema: Schema | undefined, body: unknown): unknown {
    if (Array.isArray(body)) return body.map((element) => this.walk(under(schema ?? {}, 0), element, [], []));
    const [[key, value] = ['', undefined]] = Object.entries(body as Body);
    const [, , index = '', text = ''] = STOP.exec(key) ?? [];
    this.chosen.set(index, this.ownName(text));
    return { [this.stops(key)]: this.walk(under(schema ?? {}, text), value, [], []) };
  }

  /** A name that no other item of the section has. */
  private ownName(text: string): string {
    const { section, site, name } = this.wanted;
    if (name !== '') return name;
    const wished = this.draft.name ?? text;
    const taken = new Set(site.items.filter((item) => item.section === section).map((item) => item.name));
    let free = wished;
    for (let number = 2; taken.has(free); number++) free = `${wished}-${number}`;
    return free;
  }

  /** `undefined` for what is left out. */
  private walk(
    schema: Schema | undefined,
    value: unknown,
    path: readonly string[],
    required: readonly string[],
  ): unknown {
    if (Array.isArray(value)) {
      const element = under(schema ?? {}, 0);
      const kept = value
        .map((one): unknown => this.walk(element, one, path, element?.required ?? []))
        .filter((one) => one !== undefined);
      return kept.length === 0 && value.length > 0 ? this.blankOf(value[0], required, path) : kept;
    }
    if (typeof value === 'object' && value !== null) return this.mapping(schema, value as Body, path);
    if (typeof value !== 'string') return value;
    const stop = STOP.exec(value);
    if (stop === null) return this.stops(value);
    const [, caret = '', index = '', text = ''] = stop;
    if (!this.chosen.has(index)) this.chosen.set(index, this.choose(schema, path, text));
    const own = this.chosen.get(index);
    if (own === null) return `\${${index}:}`;
    return own === undefined ? this.blankOf(value, required, path) : `${caret}\${${index}:${own}}`;
  }

  private mapping(schema: Schema | undefined, body: Body, path: readonly string[]): unknown {
    if (typeof body['kind'] === 'string') this.kind = body['kind'];
    const required = schema?.required ?? [];
    const entries: [string, unknown][] = [];
    let isWhole = true;
    for (const [key, value] of Object.entries(body)) {
      const name = this.key(schema, key);
      const below =
        name === undefined ? undefined : this.walk(under(schema ?? {}, name), value, [...path, name], required);
      if (name !== undefined && below !== undefined) entries.push([this.stops(key), below]);
      else isWhole = false;
    }
    // A route that names something the site lacks is useless.
    if (!isWhole && path[0] === 'routes') return undefined;
    if (entries.length > 0 || Object.keys(body).length === 0) return Object.fromEntries(entries);
    // An item with nothing in it begins with its first key.
    const [first] = Object.entries(body);
    if (path.length > 0 || first === undefined) return undefined;
    return { [first[0]]: Array.isArray(first[1]) ? ['${2:}'] : '${2:}' };
  }

  /** The key without its tab stop; where a key names a thing of the site, that thing's name. */
  private key(schema: Schema | undefined, key: string): string | undefined {
    const [, , index, text = ''] = STOP.exec(key) ?? [];
    if (index === undefined) return key;
    const names = schema?.propertyNames === undefined ? undefined : under({ items: schema.propertyNames }, 0);
    if (!this.chosen.has(index))
      this.chosen.set(index, names?.['x-names'] === undefined ? text : this.choose(names, [], text));
    return this.chosen.get(index) ?? undefined;
  }

  /** An empty tab stop for a required key. */
  private blankOf(value: unknown, required: readonly string[], path: readonly string[]): unknown {
    const stop = typeof value === 'string' ? STOP.exec(value) : null;
    const key = path[path.length - 1];
    if (stop === null || key === undefined) return undefined;
    return required.includes(key) ? `\${${stop[2]}:}` : undefined;
  }

  private stops(text: string): string {
    return text.replace(/\$\{(\d+):([^{}]*)\}/g, (whole, index: string) => {
      const own = this.chosen.get(index);
      return own === undefined || own === null ? whole : `\${${index}:${own}}`;
    });
  }

  private choose(schema: Schema | undefined, path: readonly string[], text: string): string | null | undefined {
    const role = path[path.length - 1] ?? '';
    const { values } = this.draft;
    if (values.has(role)) return values.get(role);
    const names = schema?.['x-names'];
    const used = [...this.chosen.values()];
    if (names === 'vlans') return this.vlan(text)?.name;
    if (names === 'own-port') return text;
    if (schema?.['x-form'] === 'address') return this.address(path);
    if (schema?.['x-form'] === 'subnet') return nextFreeSubnet(this.wanted, this.id());
    const fits = fitting(this.wanted, schema ?? {}, role, this.kind);
    const own = fits.find((candidate) => !used.includes(candidate));
    return own ?? (names === undefined && schema?.['x-form'] !== 'group' ? text : undefined);
  }

  /** The id of a VLAN, which is chosen before its subnet. */
  private id(): number {
    return Number([...this.chosen.values()][1]);
  }

  /** The house's and the cameras' VLAN have those names in the examples. */
  private vlan(text: string): Vlan | undefined {
    const { checked } = this.wanted;
    return text === 'house' ? houseVlan(checked) : videoVlan(checked);
  }

  private address(path: readonly string[]): string | undefined {
    const { site } = this.wanted;
    const role = path[path.length - 1];
    const kind = this.kind as DeviceKind;
    const space =
      this.vlanOf(path) ??
      (site.vlans.some(({ subnet }) => subnet !== undefined) ? undefined : spaceInUse(site.devices));
    if (space === undefined) return undefined;
    if (role === 'via') return this.gateway(space as Vlan);
    const free = addressBeside(site, space, kind, (address) => !this.isChosen(address));
    return free === undefined ? undefined : formatAddress(free);
  }

  private isChosen(address: number): boolean {
    return [...this.chosen.values()].includes(formatAddress(address));
  }

  private vlanOf(path: readonly string[]): Vlan | undefined {
    const { checked, site, name } = this.wanted;
    const above = path[path.length - 2];
    if (above === 'addresses') return site.vlanByName.get(path[path.length - 1] ?? '');
    const isTwo = path[0] === 'ports' || path[0] === 'routes';
    if (!isTwo) return homeVlansOf(checked, this.kind, name)[0];
    const withSubnet = (vlan: Vlan | undefined): Vlan | undefined => (vlan?.subnet === undefined ? undefined : vlan);
    return withSubnet(above === 'cams' ? videoVlan(checked) : houseVlan(checked));
  }

  /** The address of a router in that network. */
  private gateway({ subnet, gateway }: Vlan): string | undefined {
    const { site } = this.wanted;
    const routers = site.devices.filter(
      (device) => device.routing && (gateway === undefined || device.name === gateway),
    );
    const [found] = routers.flatMap(({ address, addresses, ports }) =>
      [
        address,
        ...addresses.map((own) => own.address),
        ...ports.flatMap((port) => port.addresses.map((own) => own.address)),
      ].filter((own) => own !== undefined && subnet !== undefined && contains(subnet, own)),
    );
    return found === undefined ? undefined : formatAddress(found);
  }
}
