import { fixOf, nameText, setValue } from '../../site/edit.ts';
import { type Item, isName, placeOf } from '../../site/item.ts';
import { hasShapeProblem } from '../../site/shape-problems.ts';
import { nearest } from '../../text/nearest.ts';
import type { KeyPath } from '../../text/syntax.ts';
import { visible } from '../../text/visible.ts';
import { list, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const tunerPluggedNowhere: Rule = {
  id: 'tuner-plugged-nowhere',
  severity: 'error',
  showAfter: 'value',
  summary: 'A tuner names an input or a USB controller that is not declared.',
  why: `What the tuner listens at, or what its streams load, is not known, so nothing is computed of it. Inputs are
declared under \`inputs\` of the tuner's device, USB controllers under \`buses\` of its host.`,
  source: 'follows from the site language',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, kind, tuners, connectorByName, host, bus } of site.devices) {
      if (kind !== 'tuner') continue;
      const reported = new Set<unknown>();
      for (const { input, keyPath } of isSound(item, 'inputs') ? tuners : []) {
        if (input === undefined || connectorByName.has(input) || reported.has(keyPath[1])) continue;
        reported.add(keyPath[1]);
        const has = [...connectorByName.keys()];
        reportMissing(
          { item, keyPath: [...keyPath, 'input'], text: input, what: `${asName(name)} has no input`, has },
          report,
        );
      }
      const into = host === undefined ? undefined : site.deviceByName.get(host);
      if (into === undefined || bus === undefined || !isSound(into.item, 'buses')) continue;
      if (into.buses.some((each) => each.name === bus)) continue;
      const has = into.buses.map((each) => each.name);
      reportMissing(
        {
          item,
          keyPath: ['bus'],
          text: bus,
          what: `${asName(into.name)} has no USB controller`,
          has,
          // Plugged into the wrong device, its streams do not reach their recorder.
          entails: site.recordings.filter(({ stream }) => site.streamByName.get(stream ?? '')?.source === name),
        },
        report,
      );
    }
  },
};

/** Whether the whole value of a key can be read. */
function isSound({ problems }: Item, key: string): boolean {
  return problems.every(({ keyPath }) => keyPath[0] !== key);
}

interface Missing {
  readonly item: Item;
  readonly keyPath: KeyPath;
  readonly text: string;
  /** The beginning of the message. */
  readonly what: string;
  /** The declared names. */
  readonly has: readonly string[];
  readonly entails?: readonly object[];
}

function reportMissing({ item, keyPath, text, what, has, entails = [] }: Missing, report: Report): void {
  if (hasShapeProblem(item, keyPath)) return;
  report({
    at: placeOf(item, keyPath),
    message:
      `${what} ${visible(text, 40)}; ${has.length === 0 ? 'none is declared' : `it has ${list(has)}`}. ` +
      'Correct the name, or declare it.',
    acceptAt: [item.name],
    entails,
    fixes: () =>
      nearest(text, has.filter(isName)).flatMap(({ name }) =>
        fixOf(`Change it to ${asName(name)}`, setValue(item, keyPath, nameText(name))),
      ),
  });
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf-1: {}, rf-2: {}}, tuners: {1-2: {systems: [dvb-t], input: rf-q}}}
#                                                                                                                      ^^^^ tv-tuner has no input rf-q; it has rf-1 and rf-2
`,
    good: `
devices:
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {rf-1: {}, rf-2: {}}, tuners: {1-2: {systems: [dvb-t], input: rf-1}}}
`,
  },
  {
    bad: `
devices:
  recorder: {kind: server, address: 192.168.20.5, buses: {usb-a: {kind: usb-2}}}
  stick: {kind: tuner, host: recorder, bus: usb-z, tuners: {1: {systems: [dvb-t]}}}
#                                           ^^^^^ recorder has no USB controller usb-z; it has usb-a
`,
    good: `
devices:
  recorder: {kind: server, address: 192.168.20.5, buses: {usb-a: {kind: usb-2}}}
  stick: {kind: tuner, host: recorder, bus: usb-a, tuners: {1: {systems: [dvb-t]}}}
`,
  },
];
