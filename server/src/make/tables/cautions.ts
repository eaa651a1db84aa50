/** Cautions for the person who cables a site, printed on the sheet for the work. */

import { carriesPower } from '../../network/poe.ts';
import { portTypes } from '../../standards/poe.ts';
import { isCoax } from '../../standards/television/coax.ts';
import { type Cable, type Device, type Port, type Site, connectorAt, portAt } from '../../site/model.ts';
import { watts } from '../../text/words.ts';
import type { Caution } from './sheet.ts';

/** Cautions for work at these cables and ports. Common practice; local codes are the source. */
export function cautionsOf(site: Site, cables: readonly Cable[], ports: readonly Port[]): Caution[] {
  const ends = cables.map(
    ({ from, to, ...cable }) =>
      [
        cable,
        (portAt(site, from) ?? connectorAt(site, from))?.device,
        (portAt(site, to) ?? connectorAt(site, to))?.device,
      ] as const,
  );
  const highest = Math.max(0, ...ports.flatMap(({ pse }) => (pse === undefined ? [] : portTypes[pse].pseMilliwatts)));
  const isAloft = (device: Device | undefined): boolean =>
    device !== undefined && ['camera', 'access-point', 'aerial', 'lnb'].includes(device.kind ?? '');
  const found: Caution[] = [
    {
      about: 'Mains',
      text:
        'sockets, supplies and whatever is behind a cover are for a licensed electrician. Keep data cables apart ' +
        'from mains cables.',
    },
  ];
  if (highest > 0)
    found.push({
      about: 'Power over Ethernet',
      text:
        `the ports so marked put up to ${watts(highest)} on the cable. Unplug it at the switch before you cut, ` +
        'crimp or splice it.',
    });
  if (cables.some(({ type }) => type !== undefined && /^o[ms]\d/.test(type))) {
    found.push({
      about: 'Fibre',
      text:
        'look into no end, lit or not: the light cannot be seen and can harm the eye. Cap what is not plugged in, ' +
        'and gather every splinter.',
    });
  }
  if (
    ends.some(
      ([{ type }, a, b]) =>
        (carriesPower(type) || isCoax(type)) &&
        (isAloft(a) || isAloft(b) || leavesBuilding(a, b) || (a?.bridging === true && b?.bridging === true)),
    )
  ) {
    found.push({
      about: 'Lightning and earth',
      text:
        'copper that leaves a building, or goes to a roof, a gable or a mast, brings lightning in and joins two ' +
        'earths. Lay fibre, or protect and bond it as the code asks.',
    });
  }
  if (ends.some(([, a, b]) => isAloft(a) || isAloft(b))) {
    found.push({
      about: 'Heights',
      text: 'ladders, roofs and masts not alone, not in wind, wet or frost, and nowhere near overhead lines.',
    });
  }
  if (ends.some(([, a, b]) => a?.kind === 'camera' || b?.kind === 'camera')) {
    found.push({
      about: 'Cameras',
      text: 'aim none at a public way or a neighbour before it is settled what privacy law allows.',
    });
  }
  return found;
}

function leavesBuilding(a: Device | undefined, b: Device | undefined): boolean {
  return a?.building !== undefined && b?.building !== undefined && a.building !== b.building;
}
