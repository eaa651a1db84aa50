/** Why a stream does not get to a receiver, and what to do, in words. */

import type { Stream } from '../site/model.ts';
import { formatAddress } from '../standards/ipv4.ts';
import { list, asName } from '../text/words.ts';
import { MOST_COPIES, type Obstacle } from './delivery.ts';

export interface ObstacleWords {
  /** What stands in the way: a clause without a capital or a full stop. */
  readonly what: string;
  /** What to do: an imperative, likewise without. */
  readonly remedy: string;
}

function querierRemedy(network: string, source: string): string {
  if (!isVlan(network)) return 'declare the network as a VLAN with its subnet and a querier';
  return `set a \`querier\` for ${network}, best the switch nearest ${asName(source)}`;
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
        what: `${asName(why.device)}, which sends it, has no cable that carries a network`,
        remedy: `cable ${asName(why.device)} to a switch`,
      };
    case 'receiver-not-cabled':
      return {
        what: `${asName(receiver)} has no cable that carries a network`,
        remedy: `cable ${asName(receiver)} to a switch`,
      };
    case 'not-a-host':
      return {
        what: `${asName(receiver)} only passes frames or plugs on, and receives no streams itself`,
        remedy: 'name the device that shows or records the stream',
      };
    case 'apart':
      return {
        what: `nothing joins ${asName(source)} and ${asName(receiver)} within ${asName(why.network)}`,
        remedy: `cable their switches together, and let every port between them carry ${asName(why.network)}`,
      };
    case 'other-network':
      return {
        what: `${group} is sent into ${asName(why.from)} and ${asName(receiver)} is in ${asName(why.to)}, ${routersWords(why.routers)}`,
        remedy: routersRemedy(why, receiver),
      };
    case 'leaves-elsewhere':
      return {
        what: `${group} leaves ${asName(source)} by its port ${why.port}, into ${asName(why.from)}, and ${asName(receiver)} is in ${asName(why.to)}`,
        remedy: `give ${asName(source)} the route \`{to: 224.0.0.0/4, port: ${why.own}}\``,
      };
    case 'joins-elsewhere':
      return {
        what: `${asName(receiver)} joins ${group} by its port ${why.port}, in ${asName(why.network)}, as its routes say, and the group is sent into ${asName(why.from)}`,
        remedy: `let the route of ${asName(receiver)} for ${group} lead to its port in ${asName(why.from)}`,
      };
    case 'ttl':
      return {
        what: `it is sent with a TTL of ${why.ttl}, and the way to ${asName(receiver)} needs ${why.needed}`,
        remedy: `set \`ttl: ${why.needed}\` on the stream`,
      };
    case 'report-stays':
      return {
        what: `${asName(why.network)} has no querier, so that the report of ${asName(receiver)} never gets to ${asName(why.bridge)}, which drops ${group}`,
        remedy: querierRemedy(why.network, source),
      };
    case 'known-nearer':
      return {
        what:
          `${asName(why.network)} has no querier, so that the report of ${asName(receiver)} never gets to ${asName(why.bridge)}, ` +
          `which sends ${group} out of ${why.at} alone, where it was joined`,
        remedy: querierRemedy(why.network, source),
      };
    case 'report-astray':
      return {
        what:
          `${asName(why.router)} forwards groups into ${asName(why.network)}, and the report of ${asName(why.member)} never gets there: it ` +
          `goes to ${asName(why.querier)}, which asks in ${asName(why.network)}`,
        remedy: `let ${asName(why.router)} ask there: name it as \`querier\`, or give it the lowest address`,
      };
    case 'not-allowed':
      return why.isInternet
        ? {
            what: `${asName(why.from)} is kept from the Internet`,
            remedy: `take \`internet: false\` out of ${asName(why.from)}`,
          }
        : {
            what: `${asName(why.from)} may not ask ${asName(why.to)}, as its \`reaches\` says`,
            remedy: `let it reach ${asName(why.to)}, or give ${asName(receiver)} and ${asName(source)} one network`,
          };
    case 'link-local':
      return {
        what: `${group} is in 224.0.0.0/24, which no router forwards, and ${asName(receiver)} is in ${asName(why.to)}, not in ${asName(why.from)}`,
        remedy: 'take a group of 239.255.0.0/16',
      };
    case 'no-gateway':
      if (!isVlan(why.network)) {
        return {
          what: `${asName(receiver)} is in ${asName(why.to)}, ${asName(source)} in ${asName(why.network)}, and nothing joins the two`,
          remedy: `cable ${asName(receiver)} and ${asName(source)} to one network, or a router to both`,
        };
      }
      return {
        what: why.back
          ? `${asName(receiver)} is in ${asName(why.network)}, which has no gateway, and so cannot ask ${asName(source)} in ${asName(why.to)}`
          : `${asName(receiver)} is in ${asName(why.to)}, ${asName(source)} in ${asName(why.network)}, and ${asName(why.network)} has no gateway`,
        remedy: `set a \`gateway\` for ${asName(why.network)}`,
      };
    case 'no-route':
      return {
        what: why.back
          ? `${asName(receiver)} is in ${asName(why.from)}, and ${asName(why.gateway)}, the gateway there, does not lead to ${asName(source)} in ${asName(why.to)}`
          : `${asName(receiver)} is in ${asName(why.to)}, and ${asName(why.gateway)}, the gateway of ${asName(why.from)}, does not lead there`,
        remedy: `cable ${asName(why.gateway)} to both and give it an address in each, or a route`,
      };
    case 'into-nothing':
      return {
        what: `${asName(why.device)} sends it by its port ${why.port}, which has no cable that carries a network`,
        remedy:
          why.route === undefined
            ? `cable the port, or take its address out`
            : `let the route lead to a port with a cable`,
      };
    case 'not-on-link':
      return {
        what: `${asName(why.device)} looks for it at its port ${why.port}, in ${asName(why.network)}, and it is in ${asName(why.to)}`,
        remedy:
          why.route === undefined
            ? `give ${asName(why.device)} a port in ${asName(why.to)}, or a gateway`
            : `let the route of ${asName(why.device)} lead to its port in ${asName(why.to)}, or \`via\` a router`,
      };
    case 'no-such-gateway':
      return {
        what: `${asName(why.device)} hands it to ${formatAddress(why.via)}, and nobody has that address there`,
        remedy: `give the address of the router in \`via\``,
      };
    case 'no-router':
      return {
        what: `${asName(why.device)} hands it to ${asName(why.gateway)}, which forwards nothing`,
        remedy: `name a router as gateway`,
      };
    case 'circle':
      return {
        what: `${list(why.devices.map(asName))} hand it to each other`,
        remedy: 'correct their routes',
      };
    case 'no-group-route':
      return {
        what: `${asName(why.device)} has several cards and no route for ${group}`,
        remedy: `give it one: \`{to: 224.0.0.0/4, port: …}\``,
      };
    case 'not-followed':
      return {
        what:
          `the streams of this site cross links more than ${MOST_COPIES.toLocaleString('en')} times, ` +
          'and those that come after that are not followed',
        remedy: 'divide the site into several folders, each with the streams of one part',
      };
  }
}

function routersWords(routers: readonly string[]): string {
  if (routers.length === 0) return 'and no router is in both';
  return `and ${list(routers.map(asName))} between them ${routers.length === 1 ? 'does' : 'do'} not route multicast`;
}

function routersRemedy(why: Extract<Obstacle, { obstacle: 'other-network' }>, receiver: string): string {
  const move = `give ${asName(receiver)} a port in ${asName(why.from)}`;
  const [router] = why.routers;
  return router === undefined
    ? move
    : `${move}, or set \`multicast-routing: true\` on ${router} and a \`ttl\` of 2 or more`;
}
