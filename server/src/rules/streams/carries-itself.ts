import { placeOf } from '../../site/item.ts';
import type { Site, Stream } from '../../site/model.ts';
import { few, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const carriesItself: Rule = {
  id: 'carries-itself',
  severity: 'error',
  showAfter: 'value',
  summary: 'A stream carries itself, directly or through others.',
  why: `A stream takes its video and audio from the stream that it carries. In a circle they come from nowhere, so none of
them has a rate. One of them is what the camera or tuner sends: leave \`carries\` out
there.`,
  check({ site }: RuleContext, report: Report): void {
    const reported = new Set<Stream>();
    for (const start of site.carriedInCircle) {
      if (reported.has(start)) continue;
      const circle = circleFrom(site, start);
      for (const [index, stream] of circle.entries()) {
        reported.add(stream);
        // Only a few are listed: a circle may be as long as the site.
        const others = [
          ...circle.slice(index + 1, index + 1 + SHOWN),
          ...circle.slice(0, Math.min(index, SHOWN)),
        ].slice(0, SHOWN);
        const shown = others.map(({ name }) => name);
        const more = circle.length - 1 - shown.length;
        const way =
          shown.length === 0 ? '' : `, by way of ${more > 0 ? `${shown.join(', ')} and ${more} others` : few(shown)}`;
        report({
          at: placeOf(stream.item, ['carries']),
          message: `${asName(stream.name)} carries itself${way}. Remove carries from the one that the camera or tuner sends.`,
          acceptAt: [stream.name],
          related: others.map((other) => ({
            at: placeOf(other.item, ['carries']),
            message: `${asName(other.name)} carries ${other.carries ?? ''}`,
          })),
        });
      }
    }
  },
};

const SHOWN = 3;

function circleFrom(site: Site, start: Stream): Stream[] {
  const circle: Stream[] = [];
  const seen = new Set<Stream>();
  for (let at: Stream | undefined = start; at !== undefined && !seen.has(at);) {
    seen.add(at);
    circle.push(at);
    at = at.carries === undefined ? undefined : site.streamByName.get(at.carries);
  }
  return circle;
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, carries: paddock-wall}
#                                         ^^^^^^^^^^^^ paddock carries itself, by way of paddock-wall and paddock-live
  paddock-live: {source: recorder, carries: paddock}
#                                           ^^^^^^^ paddock-live carries itself, by way of paddock and paddock-wall
  paddock-wall: {source: recorder, carries: paddock-live}
#                                           ^^^^^^^^^^^^ paddock-wall carries itself, by way of paddock-live and paddock
  yard: {source: yard-cam, carries: yard}
#                                   ^^^^ yard carries itself
  yard-live: {source: recorder, carries: yard}
`,
    good: `
streams:
  paddock: {source: paddock-cam}
  paddock-live: {source: recorder, carries: paddock}
  paddock-wall: {source: recorder, carries: paddock-live}
`,
  },
];
