/** Small sites whose hosts and routers have routes of all kinds, right and wrong, made from a number. */

import { Dice } from './random-site.ts';

const VLANS = ['house', 'video', 'yard'] as const;
type Vlan = (typeof VLANS)[number];
const SUBNETS: Readonly<Record<Vlan, string>> = { house: '192.168.10', video: '192.168.20', yard: '192.168.30' };

interface Card {
  readonly name: string;
  readonly vlan: Vlan;
  readonly address: string;
}

/** The text of a site file. */
export function randomRoutes(number: number): string {
  const dice = new Dice(number * 7919 + 17);
  const devices: string[] = [];
  const cables: string[] = [];
  const ports: string[] = [];
  const plug = (setting: string, end: string): void => {
    ports.push(`${ports.length + 1}: {speed: 1 Gb/s, ${setting}}`);
    cables.push(`{from: core/${ports.length}, to: ${end}}`);
  };

  const routers = dice.chance(80) ? (dice.chance(40) ? ['near', 'far'] : ['near']) : [];
  const legs: Readonly<Record<string, readonly Vlan[]>> =
    routers.length === 2
      ? { near: ['house', 'yard'], far: ['yard', 'video'] }
      : { near: dice.chance(50) ? ['house', 'video', 'yard'] : ['house', 'video'] };
  const gateways = new Map<Vlan, string>();
  for (const router of routers)
    for (const vlan of legs[router] ?? []) if (!gateways.has(vlan)) gateways.set(vlan, router);
  const addressOf = (router: string, vlan: Vlan): string => `${SUBNETS[vlan]}.${router === 'near' ? 1 : 2}`;
  const address = (vlan: Vlan): string => `${SUBNETS[vlan]}.${dice.of([1, 2, 9, 31, 51])}`;

  const hosts: { readonly name: string; readonly cards: readonly Card[] }[] = [];
  for (let index = 1; index <= 3; index++) {
    const vlan = dice.of(VLANS);
    hosts.push({ name: `h${index}`, cards: [{ name: 'eth', vlan, address: `${SUBNETS[vlan]}.${30 + index}` }] });
  }
  for (const name of ['nas', 'pc']) {
    const [a, b] = dice.of([
      ['house', 'video'],
      ['video', 'yard'],
      ['house', 'yard'],
    ] as const);
    const host = name === 'nas' ? 51 : 52;
    hosts.push({
      name,
      cards: [
        { name: 'a', vlan: a, address: `${SUBNETS[a]}.${host}` },
        { name: 'b', vlan: b, address: `${SUBNETS[b]}.${host}` },
      ],
    });
  }

  const route = (cards: readonly Card[]): string => {
    const port = dice.chance(15) && cards.length > 1 ? 'spare' : dice.of(cards).name;
    const card = cards.find(({ name }) => name === port);
    const there = dice.of(VLANS);
    const to = dice.of([
      '224.0.0.0/4',
      `239.255.1.${dice.below(4)}/32`,
      'default',
      `${SUBNETS[there]}.${dice.of([31, 32, 33, 51, 52])}/32`,
      `${SUBNETS[there]}.0/24`,
      `${SUBNETS[there]}.0/26`,
    ]);
    const via = to.startsWith('2') || dice.chance(25) ? '' : `, via: ${address(card?.vlan ?? there)}`;
    return `{to: ${to}, port: ${port}${via}}`;
  };
  for (const { name, cards } of hosts) {
    const routes = Array.from({ length: dice.below(cards.length === 1 ? 2 : 4) }, () => route(cards)).join(', ');
    const written = routes === '' ? '' : `, routes: [${routes}]`;
    const [only] = cards;
    if (cards.length === 1 && only !== undefined) {
      devices.push(`${name}: {kind: computer, address: ${only.address}${written}}`);
      plug(`vlan: ${only.vlan}`, name);
    } else {
      const own = cards.map((card) => `${card.name}: {address: ${card.address}}`);
      devices.push(`${name}: {kind: server, ports: {${own.join(', ')}, spare: {}}${written}}`);
      for (const card of cards) plug(`vlan: ${card.vlan}`, `${name}/${card.name}`);
    }
  }
  for (const router of routers) {
    const own = legs[router] ?? [];
    const addresses = own.map((vlan) => `${vlan}: ${addressOf(router, vlan)}`).join(', ');
    const out = dice.of(own);
    const written = dice.chance(60)
      ? `, routes: [{to: ${dice.of(['default', `${SUBNETS[dice.of(VLANS)]}.0/24`, `${SUBNETS[dice.of(VLANS)]}.32/27`])}, port: lan, vlan: ${out}, via: ${address(out)}}]`
      : '';
    devices.push(
      `${router}: {kind: router, ports: {lan: {trunk: [${own.join(', ')}], addresses: {${addresses}}}}${written}}`,
    );
    plug(`trunk: [${own.join(', ')}]`, router);
  }
  devices.push(
    `core: {kind: switch, igmp-snooping: true, unregistered-multicast: ${dice.of(['drop', 'flood'])}, address: 192.168.20.9, ports: {${ports.join(', ')}}}`,
  );

  const names = hosts.map(({ name }) => name);
  const streams = Array.from({ length: 5 }, (_, index) => {
    const source = dice.of(names);
    const receivers = dice.some(names, 40).filter((name) => name !== source);
    const rate = dice.of([1, 1.5, 2]);
    const how = dice.of([
      `transport: rtp, group: 239.255.1.${index % 4}, ttl: 2, video: {codec: h264, bitrate: ${rate} Mb/s}`,
      `transport: rtsp, video: {codec: h264, bitrate: ${rate} Mb/s}`,
      `transport: ts-udp, mux-rate: ${rate} Mb/s`,
    ]);
    return `t${index + 1}: {source: ${source}, ${how}, port: ${5004 + 2 * index}, receivers: [${receivers.join(', ')}]}`;
  });
  const vlans = VLANS.map((name, index) => {
    const gateway = gateways.get(name);
    const querier = name === 'video' ? ', querier: core' : '';
    const written = gateway === undefined || dice.chance(20) ? '' : `, gateway: ${gateway}`;
    return `${name}: {id: ${10 * (index + 1)}, subnet: ${SUBNETS[name]}.0/24${written}${querier}}`;
  });
  const section = (name: string, lines: readonly string[], mark = ''): string =>
    `${name}:\n${lines.map((line) => `  ${mark}${line}\n`).join('')}\n`;
  return [
    section('vlans', vlans),
    section('devices', devices),
    section('cables', cables, '- '),
    section('streams', streams),
  ].join('');
}
