import { placeOf } from '../../site/item.ts';
import { type Cable, endName } from '../../site/model/cable.ts';
import { visible } from '../../text/visible.ts';
import { fixOf, scalarText, setValue } from '../../site/edit.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const labelTwice: Rule = {
  id: 'label-twice',
  severity: 'warning',
  showAfter: 'value',
  summary: 'Two cables have the same label.',
  why: `Whoever follows the label pulls the wrong plug, and the patch schedule has two lines for one name. Give each cable
a label of its own, here and at both its ends.`,
  source: 'ANSI/TIA-606 and ISO/IEC 14763-2, from memory: each cable has an identifier of its own',
  check({ site }: RuleContext, report: Report): void {
    const first = new Map<string, Cable>();
    for (const cable of site.cables) {
      const { label, item } = cable;
      if (label === undefined || label === '') continue;
      const other = first.get(label);
      if (other === undefined) first.set(label, cable);
      else if (!isOneRun(cable, other))
        report({
          at: placeOf(item, ['label']),
          message:
            `${visible(label, 40)} is also the label of ${endsOf(other)}: who follows it may pull the wrong plug. ` +
            'Give each cable its own.',
          acceptAt: [label],
          related: [{ at: placeOf(other.item, ['label']), message: `${endsOf(other)} has it too` }],
          fixes: () => {
            const next = nextFree(label, new Set(site.cables.map((one) => one.label)));
            return next === undefined ? [] : fixOf(`Write ${next}`, setValue(item, ['label'], scalarText(next, true)));
          },
        });
    }
  },
};

/** Whether two cables may share a label: they join the same two devices, or are joined coaxes of one run. */
function isOneRun(one: Cable, other: Cable): boolean {
  const devices = ({ from, to }: Cable): string[] => [from?.device ?? '', to?.device ?? ''];
  const shared = devices(one).filter((name) => devices(other).includes(name));
  return shared.length > 1 || (shared.length > 0 && one.type?.startsWith('coax') === true);
}

function endsOf({ from, to }: Cable): string {
  const name = (end: Cable['from']): string => (end === undefined ? '…' : endName(end));
  return `${name(from)} – ${name(to)}`;
}

/** The label with the next free number at its end. */
function nextFree(label: string, taken: ReadonlySet<string | undefined>): string | undefined {
  const digits = /[0-9]{1,6}$/.exec(label)?.[0];
  if (digits === undefined) return undefined;
  const stem = label.slice(0, -digits.length);
  for (let next = Number(digits) + 1; next < Number(digits) + 10_000; next++) {
    const written = stem + String(next).padStart(digits.length, '0');
    if (!taken.has(written)) return written;
  }
  return undefined;
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera}
  yard-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam, label: P-01}
  - {from: core/2, to: yard-cam, label: P-01}
#                                       ^^^^ P-01 is also the label of core/1 – paddock-cam: who follows it may pull the wrong plug.
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera}
  yard-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam, label: P-01}
  - {from: core/2, to: yard-cam, label: P-02}
`,
  },
];
