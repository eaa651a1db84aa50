/** Why a stream does not get to a receiver, and what to do, in words. */

import type { Stream } from '../site/model.ts';
import { formatAddress } from '../standards/ipv4.ts';
import { list } from '../text/words.ts';
import type { Obstacle } from './delivery.ts';

export interface ObstacleWords {
  /** What stands in the way: a clause without a capital and without a full stop. */
  readonly what: string;
  /** What to do: an imperative likewise. */
  readonly remedy: string;
}

function querierRemedy(network: string, source: string): string {
  if (!isVlan(network)) return 'declare the network as a VLAN with its subnet and a querier';
  return `set a \`querier\` for ${network}, best the switch nearest ${source}`;
}

/** Networks without a VLAN are called by what they consist of: `the link paddock-cam – recorder`. */
function isVlan(network: string): boolean {
  return !network.includes(' ');
}

/** `receiver` is the device that gets nothing of `stream`, by name. */
export function obstacleWords(why: Obstacle, receiver: string, stream: Stream): ObstacleWords {
  const group = stream.group === undefined ? 'the stream' : formatAddress(stream.group);
  const source = stream.source ?? 'the source';
  switch (why.obstacle) {
    case 'source-not-cabled':
      return {
        what: `${why.device}, which sends it, has no cable that carries a network`,
        remedy: `cable ${why.device} to a switch`,
      };
    case 'receiver-not-cabled':
      return { what: `${receiver} has no cable that carries a network`, remedy: `cable ${receiver} to a switch` };
    case 'not-a-host':
      return {
        what: `${receiver} only passes frames or plugs on, and receives no streams itself`,
        remedy: 'name the device that shows or records the stream',
      };
    case 'apart':
      return {
        what: `nothing joins ${source} and ${receiver} within ${why.network}`,
        remedy: `cable their switches together, and let every port between them carry ${why.network}`,
      };
    case 'other-network':
      return {
        what: `${group} is sent into ${why.from} and ${receiver} is in ${why.to}, ${routersWords(why.routers)}`,
        remedy: routersRemedy(why, receiver),
      };
    case 'leaves-elsewhere':
      return {
        what: `${group} leaves ${source} by its port ${why.port}, into ${why.from}, and ${receiver} is in ${why.to}`,
        remedy: `give ${source} the route \`{to: 224.0.0.0/4, port: ${why.own}}\``,
      };
    case 'joins-elsewhere':
      return {
        what: `${receiver} joins ${group} by its port ${why.port}, in ${why.network}, as its routes say, and the group is sent into ${why.from}`,
        remedy: `let the route of ${receiver} for ${group} lead to its port in ${why.from}`,
      };
    case 'ttl':
      return {
        what: `it is sent with a TTL of ${why.ttl}, and the way to ${receiver} needs ${why.needed}`,
        remedy: `set \`ttl: ${why.needed}\` on the stream`,
      };
    case 'report-stays':
      return {
        what: `${why.network} has no querier, so that the report of ${receiver} never gets to ${why.bridge}, which drops ${group}`,
        remedy: querierRemedy(why.network, source),
      };
    case 'known-nearer':
      return {
        what:
          `${why.network} has no querier, so that the report of ${receiver} never gets to ${why.bridge}, ` +
          `which sends ${group} out of ${why.at} alone, where it was joined`,
        remedy: querierRemedy(why.network, source),
      };
    case 'report-astray':
      return {
        what:
          `${why.router} forwards groups into ${why.network}, and the report of ${why.member} never gets there: it ` +
          `goes to ${why.querier}, which asks in ${why.network}`,
        remedy: `let ${why.router} ask there: name it as \`querier\`, or give it the lowest address`,
      };
    case 'not-allowed':
      return why.isInternet
        ? { what: `${why.from} is kept from the Internet`, remedy: `take \`internet: false\` out of ${why.from}` }
        : {
            what: `${why.from} may not ask ${why.to}, as its \`reaches\` says`,
            remedy: `let it reach ${why.to}, or give ${receiver} and ${source} one network`,
          };
    case 'link-local':
      return {
        what: `${group} is in 224.0.0.0/24, which no router forwards, and ${receiver} is in ${why.to}, not in ${why.from}`,
        remedy: 'take a group of 239.255.0.0/16',
      };
    case 'no-gateway':
      if (!isVlan(why.network)) {
        return {
          what: `${receiver} is in ${why.to}, ${source} in ${why.network}, and nothing joins the two`,
          remedy: `cable ${receiver} and ${source} to one network, or a router to both`,
        };
      }
      return {
        what: why.back
          ? `${receiver} is in ${why.network}, which has no gateway, and so cannot ask ${source} in ${why.to}`
          : `${receiver} is in ${why.to}, ${source} in ${why.network}, and ${why.network} has no gateway`,
        remedy: `set a \`gateway\` for ${why.network}`,
      };
    case 'no-route':
      return {
        what: why.back
          ? `${receiver} is in ${why.from}, and ${why.gateway}, the gateway there, does not lead to ${source} in ${why.to}`
          : `${receiver} is in ${why.to}, and ${why.gateway}, the gateway of ${why.from}, does not lead there`,
        remedy: `cable ${why.gateway} to both and give it an address in each, or a route`,
      };
    case 'into-nothing':
      return {
        what: `${why.device} sends it by its port ${why.port}, which has no cable that carries a network`,
        remedy:
          why.route === undefined
            ? `cable the port, or take its address out`
            : `let the route lead to a port with a cable`,
      };
    case 'not-on-link':
      return {
        what: `${why.device} looks for it at its port ${why.port}, in ${why.network}, and it is in ${why.to}`,
        remedy:
          why.route === undefined
            ? `give ${why.device} a port in ${why.to}, or a gateway`
            : `let the route of ${why.device} lead to its port in ${why.to}, or \`via\` a router`,
      };
    case 'no-such-gateway':
      return {
        what: `${why.device} hands it to ${formatAddress(why.via)}, and nobody has that address there`,
        remedy: `say the address of the router in \`via\``,
      };
    case 'no-router':
      return {
        what: `${why.device} hands it to ${why.gateway}, which forwards nothing`,
        remedy: `name a router as gateway`,
      };
    case 'circle':
      return {
        what: `${list(why.devices)} hand it to each other`,
        remedy: 'correct their routes',
      };
    case 'no-group-route':
      return {
        what: `${why.device} has several cards and no route for ${group}`,
        remedy: `give it one: \`{to: 224.0.0.0/4, port: …}\``,
      };
  }
}

function routersWords(routers: readonly string[]): string {
  if (routers.length === 0) return 'and no router is in both';
  return `and ${list(routers)} between them ${routers.length === 1 ? 'does' : 'do'} not route multicast`;
}

function routersRemedy(why: Extract<Obstacle, { obstacle: 'other-network' }>, receiver: string): string {
  const move = `give ${receiver} a port in ${why.from}`;
  const [router] = why.routers;
  return router === undefined
    ? move
    : `${move}, or set \`multicast-routing: true\` on ${router} and a \`ttl\` of 2 or more`;
}
