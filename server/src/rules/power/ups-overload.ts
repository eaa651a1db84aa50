import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { placeOf } from '../../site/item.ts';
import type { UpsFigures } from '../../supply/ups.ts';
import { few, list, percentOver, voltAmperes, aboutWatts, asName } from '../../text/words.ts';

/** Ten-thousandths of a rating. */
const WARN = 8000;
const LIMIT = 10_000;
/** The most loads, the greatest first, that are named. */
const SHOWN = 3;

export const upsOverload: Rule = {
  id: 'ups-overload',
  severity: 'error',
  summary: 'More hangs on a UPS than it can give, in watts or in volt-amperes.',
  why: `A UPS has two limits: the volt-amperes of its label, and fewer watts. Above either it turns off, at once or when the
mains fails, and everything on it goes dark. Above 80 % there is no room for what draws more as
it starts or ages. Feed less from it, or take a larger one. What the site does not say is left out of the sum. Labels
give maxima: measure where you can. The sockets stay live when its plug is pulled; put no UPS, no strip of sockets and no
laser printer behind a UPS. What is behind the socket is for licensed practice under local codes.`,
  source: 'Apparent power is power over power factor (physics); at most 80 % of either rating is common practice',
  check({ plan, site }: RuleContext, report: Report): void {
    if (!site.devices.some(({ ups }) => ups !== undefined)) return;
    const supply = plan.supply();
    for (const figures of supply.upses) {
      const { device, ups } = figures;
      const over = ratings(figures).filter(({ load, rated }) => load > (rated / 1e4) * WARN);
      const [worst] = over.sort((a, b) => b.load / b.rated - a.load / a.rated);
      if (worst === undefined) continue;
      const isError = worst.load > worst.rated;
      const hanging = [...supply.feeding.fedBy(device)]
        .map((one) => ({ device: one, most: supply.power(one).taken.most }))
        .sort((a, b) => b.most - a.most);
      const named = hanging.map(({ device: one, most }) => `${one.name} ${aboutWatts(most)}`);
      const shares = over.map(
        ({ load, rated, words }) =>
          `${words(load)}, ${percentOver(load, rated, isError ? LIMIT : WARN)} of its ${words(rated)}`,
      );
      const most = isError ? '' : '; common practice is 80 % at most';
      report({
        at: placeOf(device.item, [
          worst.load === figures.load && ups.ratedPower !== undefined ? 'rated-power' : 'rated',
        ]),
        severity: isError ? 'error' : 'warning',
        message:
          `${asName(device.name)} must give ${list(shares)}${most}: ${few(named, SHOWN)}. Feed less from it, or take a larger ` +
          'one.',
        acceptAt: [device.name],
        // Its runtime follows from the load.
        entails: isError ? [figures] : [],
        related: hanging.slice(0, SHOWN).map(({ device: one, most: own }) => ({
          at: placeOf(one.item, ['power']),
          message: `${asName(one.name)} takes ${aboutWatts(own)}, with what it feeds`,
        })),
      });
    }
  },
};

interface Rating {
  readonly load: number;
  readonly rated: number;
  readonly words: (amount: number) => string;
}

function ratings({ ups: { rated, ratedPower }, load, apparent }: UpsFigures): Rating[] {
  return [
    ...(ratedPower === undefined ? [] : [{ load, rated: ratedPower, words: aboutWatts }]),
    ...(rated === undefined ? [] : [{ load: apparent, rated, words: voltAmperes }]),
  ];
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh}
#                                                ^^^^^ ups-1 must give 430 W, 102 % of its 420 W: recorder 400 W and router 30 W. Feed less
  recorder: {kind: server, power: {at-most: 400 W, power-factor: 0.99, from: ups-1}}
  router: {kind: router, power: {at-most: 30 W, power-factor: 0.99, from: ups-1}}
`,
    good: `
devices:
  ups-1: {kind: ups, rated: 1500 VA, rated-power: 900 W, battery: 216 Wh}
  recorder: {kind: server, power: {at-most: 400 W, power-factor: 0.99, from: ups-1}}
  router: {kind: router, power: {at-most: 30 W, power-factor: 0.99, from: ups-1}}
`,
  },
  {
    bad: `
devices:
  ups-1: {kind: ups, rated: 400 VA, rated-power: 380 W, battery: 216 Wh}
#                           ^^^^^^ ups-1 must give 333 VA, 83 % of its 400 VA; common practice is 80 % at most: recorder 200 W
  recorder: {kind: server, power: {at-most: 200 W, power-factor: 0.6, from: ups-1}}
`,
    good: `
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh}
  recorder: {kind: server, power: {at-most: 200 W, power-factor: 0.6, from: ups-1}}
`,
  },
];
