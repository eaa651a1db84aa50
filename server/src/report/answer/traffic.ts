import { type TrafficRoute, trafficRates } from '../../network/traffic.ts';
import { answer, sumWords } from './words.ts';

/** `20.9 Mb/s there, 1.2 Mb/s back · gets there` */
export function trafficAnswer({ traffic, from, to, obstacle }: TrafficRoute): string {
  const { untagged, reply } = trafficRates(traffic);
  const isKnown = traffic.rate !== undefined;
  const gets = from !== undefined && to !== undefined && obstacle === undefined;
  return answer(
    `${sumWords(untagged.line.peak, isKnown)} there, ${sumWords(reply.untagged.line.peak, isKnown)} back`,
    gets ? 'gets there' : 'does not get there',
  );
}
