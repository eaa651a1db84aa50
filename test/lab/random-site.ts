/** Small sites made at random from a number; the same number makes the same site again. */

/** Whole numbers below a bound, from a starting number: a linear congruential generator. */
export class Dice {
  private state: number;

  constructor(start: number) {
    this.state = start >>> 0;
    for (let i = 0; i < 8; i++) this.below(2);
  }

  below(bound: number): number {
    this.state = (Math.imul(this.state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((this.state / 2 ** 32) * bound);
  }

  chance(percent: number): boolean {
    return this.below(100) < percent;
  }

  of<T>(list: readonly T[]): T {
    const found = list[this.below(list.length)];
    if (found === undefined) throw new Error('nothing to choose from');
    return found;
  }

  some<T>(list: readonly T[], percent: number): T[] {
    return list.filter(() => this.chance(percent));
  }
}

const VLANS = ['video', 'house'];

interface Host {
  readonly name: string;
  readonly vlan: string;
}

/** The text of a site file. */
export function randomSite(number: number): string {
  const dice = new Dice(number);
  const switches = Array.from({ length: 1 + dice.below(4) }, (_, i) => `s${i + 1}`);
  const isRing = switches.length > 2 && dice.chance(50);
  const hasRouter = dice.chance(60);
  const hasMulticastRouter = hasRouter && dice.chance(30);
  const cables: string[] = [];
  const ports = new Map(switches.map((name) => [name, [] as string[]]));
  const addPort = (at: string, setting: string): string => {
    const own = ports.get(at) ?? [];
    own.push(setting);
    return `${at}/${own.length}`;
  };
  const trunk = (): string => `speed: 1 Gb/s, trunk: [${VLANS.join(', ')}]${dice.chance(15) ? ', native: house' : ''}`;
  const join = (a: string, b: string): void => {
    const setting = trunk();
    const settings = [a, b].map(
      () => setting + (dice.chance(12) ? ', forward-reports: true' : dice.chance(8) ? ', router-port: true' : ''),
    );
    cables.push(`{from: ${addPort(a, settings[0] ?? setting)}, to: ${addPort(b, settings[1] ?? setting)}}`);
  };
  switches
    .slice(1)
    .forEach((name, i) => join(name, isRing ? (switches[i] ?? 's1') : dice.of(switches.slice(0, i + 1))));
  if (isRing) join(switches[0] ?? 's1', switches[switches.length - 1] ?? 's1');

  const devices: string[] = [];
  const hosts: Host[] = Array.from({ length: 4 + dice.below(4) }, (_, i) => ({
    name: `h${i + 1}`,
    vlan: dice.chance(75) ? 'video' : 'house',
  }));
  hosts.forEach(({ name, vlan }, i) => {
    devices.push(`${name}: {kind: computer, address: 192.168.${vlan === 'video' ? 20 : 10}.${31 + i}}`);
    cables.push(`{from: ${addPort(dice.of(switches), `speed: 1 Gb/s, vlan: ${vlan}`)}, to: ${name}}`);
  });
  const route = dice.chance(50) ? `, routes: [{to: 224.0.0.0/4, port: ${dice.of(VLANS)}}]` : '';
  devices.push(
    `server: {kind: server, ports: {video: {address: 192.168.20.5}, house: {address: 192.168.10.5}}${route}}`,
  );
  for (const vlan of VLANS)
    cables.push(`{from: ${addPort(dice.of(switches), `speed: 1 Gb/s, vlan: ${vlan}`)}, to: server/${vlan}}`);
  if (hasRouter) {
    const addresses = '{video: 192.168.20.1, house: 192.168.10.1}';
    devices.push(
      `router: {kind: router, multicast-routing: ${hasMulticastRouter}, ports: {lan: {trunk: [video, house], addresses: ${addresses}}}}`,
    );
    cables.push(`{from: ${addPort(dice.of(switches), `speed: 1 Gb/s, trunk: [${VLANS.join(', ')}]`)}, to: router}`);
  }
  for (const name of switches) {
    const snooping = dice.chance(80);
    const own = (ports.get(name) ?? []).map((setting, i) => `${i + 1}: {${setting}}`);
    const tree = isRing ? `, spanning-tree: true, spanning-tree-priority: ${4096 * (1 + dice.below(8))}` : '';
    devices.push(
      `${name}: {kind: switch, igmp-snooping: ${snooping}, unregistered-multicast: ${dice.of(['drop', 'drop', 'flood'])}${tree}, ports: {${own.join(', ')}}}`,
    );
  }

  const askers = [...switches, ...(hasRouter ? ['router'] : [])];
  const vlan = (name: string, id: number): string => {
    const querier = dice.chance(70) ? `, querier: ${dice.of(askers)}` : '';
    return `${name}: {id: ${id}, subnet: 192.168.${id}.0/24${hasRouter ? ', gateway: router' : ''}${querier}}`;
  };
  const all = ['server', ...hosts.map(({ name }) => name)];
  const streams = Array.from({ length: 3 + dice.below(4) }, (_, i) => {
    const source = dice.chance(50) ? 'server' : dice.of(all);
    const receivers = dice.some(all, 30).filter((name) => name !== source || dice.chance(20));
    const rate = [0.5, 1, 1.5, 2][dice.below(4)] ?? 1;
    const multicast = dice.chance(70);
    const transport = multicast ? dice.of(['rtp', 'ts-udp', 'ts-rtp']) : dice.of(['rtsp', 'rtp', 'ts-udp']);
    const media = transport.startsWith('ts') ? `mux-rate: ${rate} Mb/s` : `video: {codec: h264, bitrate: ${rate} Mb/s}`;
    const group = multicast
      ? `group: ${dice.chance(8) ? '224.0.0' : `239.192.${dice.of([1, 2])}`}.${100 + i}, ttl: ${1 + dice.below(3)}, `
      : '';
    return `t${i + 1}: {source: ${source}, transport: ${transport}, ${group}port: 5004, ${media}, receivers: [${receivers.join(', ')}]}`;
  });
  const section = (name: string, lines: readonly string[], mark = ''): string =>
    `${name}:\n${lines.map((line) => `  ${mark}${line}\n`).join('')}\n`;
  return [
    `site: {name: Random site ${number}}\n\n`,
    section('vlans', [vlan('video', 20), vlan('house', 10)]),
    section('devices', devices),
    section('cables', cables, '- '),
    section('streams', streams),
  ].join('');
}
