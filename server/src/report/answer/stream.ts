import type { Plan } from '../../plan.ts';
import type { Stream } from '../../site/model.ts';
import { isRateKnown } from '../../site/media.ts';
import { few } from '../../text/words.ts';
import { answer, rateWords } from './words.ts';

/** `6.45 Mb/s, at most 9.67 · reaches recorder` */
export function streamAnswer(plan: Plan, stream: Stream): string {
  return answer(
    rateWords(plan.network.rates(stream).untagged.line, isRateKnown(plan.site, stream)),
    reachWords(plan, stream),
  );
}

/** `reaches recorder, not kitchen-screen` */
export function reachWords({ network }: Plan, stream: Stream): string {
  const { reaches } = network.delivery(stream);
  const missed = stream.receivers.filter((name) => !reaches.includes(name));
  if (reaches.length === 0) return missed.length === 0 ? 'nobody receives it' : `does not reach ${few(missed)}`;
  return `reaches ${few(reaches)}${missed.length === 0 ? '' : `, but not ${few(missed)}`}`;
}
