import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { few, asName } from '../../text/words.ts';
import { firstOthers, grouped } from '../../grouped.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

/** A tag can hold 4095 too, which is reserved (IEEE 802.1Q, as in RFC 4363). */
const HIGHEST = 4094;

export const vlanId: Rule = {
  id: 'vlan-id',
  severity: 'error',
  showAfter: 'value',
  summary: 'Two VLANs have the same id.',
  why: `On a trunk only the id in the tag keeps VLANs apart. Two with one id are one network on every cable that carries
both, with two subnets in it. Give each its own, 1 to 4094, and set the same on all switches.`,
  source: 'IEEE 802.1Q by way of RFC 4363 (VlanId), read',
  check({ site }: RuleContext, report: Report): void {
    const byId = grouped(site.vlans, ({ id }) => id);
    const free = (id: number): number | undefined => {
      for (let step = 1; step < HIGHEST; step++) {
        const candidate = ((id - 1 + step) % HIGHEST) + 1;
        if (!byId.has(candidate)) return candidate;
      }
      return undefined;
    };
    for (const [id, vlans] of byId) {
      if (vlans.length < 2) continue;
      for (const vlan of vlans) {
        const others = firstOthers(vlans, vlan, 5);
        const names = others.map(({ name }) => name);
        report({
          at: placeOf(vlan.item, ['id']),
          message:
            `${id} is also the id of ${few(names, 2, vlans.length - 1)}: on a trunk their frames cannot be told ` +
            'apart. Give each VLAN its own id.',
          acceptAt: [vlan.name],
          related: others.map((other) => ({
            at: placeOf(other.item, ['id']),
            message: `${asName(other.name)} has it here`,
          })),
          fixes: () => {
            const next = free(id);
            return next === undefined
              ? []
              : fixOf(`Use ${next}, the next free id`, setValue(vlan.item, ['id'], String(next)));
          },
        });
      }
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10}
  video: {id: 20}
#             ^^ 20 is also the id of guests
  guests: {id: 20}
#              ^^ 20 is also the id of video
`,
    good: `
vlans:
  house: {id: 10}
  video: {id: 20}
  guests: {id: 30}
`,
    fixed: `
vlans:
  house: {id: 10}
  video: {id: 21}
  guests: {id: 20}
`,
  },
];
