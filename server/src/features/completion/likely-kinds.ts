/** The likeliest kind of a device: by its keys, by its uses in the site, by its name. */

import { type Data, isMapping } from '../../text/syntax.ts';
import { type Schema, deviceKinds, itemSchema, kindsWith, under } from '../../site/shape.ts';
import { type CompletionContext, dataAtCursor } from './wanted.ts';

/** Kinds that have all the keys of the device, the likeliest first. */
export function likelyKinds(wanted: CompletionContext): readonly string[] {
  return [...new Set([...suggestedKinds(wanted), ...possibleKinds(wanted)])];
}

/** Possible kinds for which the name or the rest of the site gives a reason. */
export function suggestedKinds(wanted: CompletionContext): readonly string[] {
  const possible = possibleKinds(wanted);
  return [...byUse(wanted), ...byName(wanted.name)].filter((kind) => possible.includes(kind));
}

function possibleKinds(wanted: CompletionContext): readonly string[] {
  const data = dataAtCursor(wanted, []);
  const schema = itemSchema('devices', wanted.name);
  const having = schema === undefined || data === undefined ? [] : schemasOf(schema, data);
  return deviceKinds().filter((kind) => having.every((own) => kindsWith(own).includes(kind)));
}

/** The schemas of all keys but the kind, and of those of its ports. */
function schemasOf(schema: Schema, data: Data): Schema[] {
  if (!isMapping(data)) return [];
  return Object.entries(data).flatMap(([key, value]): Schema[] => {
    const own = key === 'kind' ? undefined : under(schema, key);
    if (own === undefined) return [];
    const ports = key === 'ports' && isMapping(value) ? Object.entries(value) : [];
    return [own, ...ports.flatMap(([name, port]) => schemasOf(under(own, name) ?? {}, port))];
  });
}

/** Kinds suggested by the places where the rest of the site names the device. */
function byUse({ site, name }: CompletionContext): string[] {
  if (name === '') return [];
  const found: string[] = [];
  for (const { querier, gateway } of site.vlans) {
    if (gateway === name) found.push('router');
    if (querier === name) found.push('switch');
  }
  for (const { source, carries, service, multiplex, receivers } of site.streams) {
    if (source === name)
      found.push(
        carries !== undefined ? 'server' : service !== undefined || multiplex !== undefined ? 'tuner' : 'camera',
      );
    if (receivers.includes(name)) found.push(...byName(name), carries === undefined ? 'server' : 'display');
  }
  if (site.devices.some(({ ownPower }) => ownPower?.from === name)) found.push('ups');
  for (const { host } of site.volumes) if (host === name) found.unshift('server');
  for (const { from, to, through } of site.cables) {
    if (through.some(({ device }) => device === name)) found.push('patch-panel');
    if ([from, to].some((end) => end?.device === name && /^\d+$/.test(end.port ?? ''))) found.push('switch');
  }
  return found;
}

/** Words that names of devices end in; common practice, no source. */
const ENDINGS: readonly (readonly [RegExp, string])[] = [
  [/cam(?:era)?$/, 'camera'],
  [/(?:screen|display|tv|panel-pc)$/, 'display'],
  [/(?:server|recorder|nas)$/, 'server'],
  [/(?:switch|sw)$/, 'switch'],
  [/(?:router|gateway|firewall)$/, 'router'],
  [/(?:ap|wifi|access-point)$/, 'access-point'],
  [/(?:pc|desk|laptop|computer)$/, 'computer'],
  [/panel(?:-[a-z])?$/, 'patch-panel'],
  [/tuner$/, 'tuner'],
  [/(?:internet|provider)$/, 'internet'],
  [/(?:^|[-_])ups$/, 'ups'],
  [/(?:circuit|breaker|mains)$/, 'circuit'],
  [/aerial$/, 'aerial'],
  [/(?:dish|lnb)$/, 'lnb'],
  [/amp(?:lifier)?$/, 'amplifier'],
  [/splitter$/, 'splitter'],
  [/outlet$/, 'outlet'],
  [/filter$/, 'filter'],
  [/(?:earth|earth-block)$/, 'earth-block'],
];

function byName(name: string): string[] {
  const bare = name.toLowerCase().replace(/[-_]?\d+$/, '');
  const found = ENDINGS.find(([ending]) => ending.test(bare));
  return found === undefined ? [] : [found[1]];
}
