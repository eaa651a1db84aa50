import { type MountedDevice, type RackFigures, unitWords } from '../../racks/racks.ts';
import { count, kilograms } from '../../text/words.ts';
import { answer } from './words.ts';

/** `7 of 12 U free · 5 devices · 18.2 of 60 kg` */
export function rackAnswer(figures: RackFigures): string {
  const { rack, placed, elsewhere, weight, unweighed } = figures;
  return answer(
    freeUnitsWords(figures),
    count(placed.length + elsewhere.length, 'device'),
    weightWords(weight, unweighed.length > 0, rack.bears),
  );
}

/** `7 of 12 U free`; for both sides where something is at the rear. */
export function freeUnitsWords({ rack: { units }, placed, free }: RackFigures): string {
  if (units === undefined) return '? U';
  const front = `${free.front.length} of ${units} U free`;
  return placed.some(({ side }) => side === 'rear') ? `${front} at the front, ${free.rear.length} at the rear` : front;
}

/** `U 3–4, rear` */
export function placeWords(placed: MountedDevice): string {
  return `${unitWords(placed)}${placed.side === 'rear' ? ', rear' : ''}`;
}

/** `18.2 kg + ? of 60 kg`; `undefined` where no weight is declared. */
export function weightWords(weight: number, isPart: boolean, bears: number | undefined): string | undefined {
  if (weight === 0) return undefined;
  return `${kilograms(weight)}${isPart ? ' + ?' : ''}${bears === undefined ? '' : ` of ${kilograms(bears)}`}`;
}
