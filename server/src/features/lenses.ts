/** Lines above a stream: who gets it; above a camera: how many more like it fit; above an outlet the weakest multiplex. */

import { upsLasts } from '../report/answer/supply.ts';
import { switchOf } from '../headroom/family.ts';
import { headroomOf } from '../headroom/headroom.ts';
import { headroomWords } from '../headroom/words.ts';
import { count, few, asName } from '../text/words.ts';
import type { Checked } from '../lint/check.ts';
import type { SiteText } from '../site/folder.ts';
import { type Item, type Place, contentOf, namePlace } from '../site/item.ts';
import { decibels, level } from '../text/radio-words.ts';
import type { Stream } from '../site/model.ts';

export interface Lens {
  readonly at: Place;
  /** `undefined` where `lensTitle` computes it from the item once the lens is in sight. */
  readonly title: string | undefined;
}

export function lenses(checked: Checked, file: SiteText): Lens[] {
  const { site } = checked.plan;
  return file.read
    .flatMap((piece) => contentOf(piece).items)
    .flatMap((item) => {
      if (item.section === 'devices')
        return [...camera(checked, item), ...outlet(checked, item), ...ups(checked, item)];
      if (item.section !== 'streams') return [];
      const stream = site.streamByName.get(item.name);
      if (stream?.item !== item) return [];
      return [{ at: namePlace(item), title: receivers(checked, stream) }];
    });
}

/** The title of a lens that has none yet; `undefined` where there is nothing to show any more. */
export function lensTitle({ plan }: Checked, item: Item): string | undefined {
  const device = item.section === 'devices' ? plan.site.deviceByName.get(item.name) : undefined;
  const to = device?.kind === 'camera' ? switchOf(plan, device) : undefined;
  return device === undefined || to === undefined ? undefined : headroomWords(headroomOf(plan, device, to));
}

/** The title waits until the lens is in sight, as it takes a while to compute how many more fit. */
function camera({ plan }: Checked, item: Item): Lens[] {
  const device = plan.site.deviceByName.get(item.name);
  if (device?.kind !== 'camera' || device.item !== item || switchOf(plan, device) === undefined) return [];
  return [{ at: namePlace(item), title: undefined }];
}

/** Above an outlet its weakest multiplex. */
function outlet({ plan: { television, site } }: Checked, item: Item): Lens[] {
  const device = site.deviceByName.get(item.name);
  if (device?.kind !== 'outlet' || device.item !== item) return [];
  const points = television.reception.outlets.find(({ at }) => at.device === device)?.points ?? [];
  const [weakest] = [...points].sort((a, b) => (a.margin ?? Infinity) - (b.margin ?? Infinity));
  if (weakest?.margin === undefined) return [];
  const { multiplex, level: here } = weakest.signal;
  return [
    {
      at: namePlace(item),
      title: `weakest ${asName(multiplex.name)} ${level(here)}, margin ${decibels(weakest.margin)}`,
    },
  ];
}

/** Above a UPS how long its battery lasts, and for how many cameras. */
function ups({ plan }: Checked, item: Item): Lens[] {
  const device = plan.site.deviceByName.get(item.name);
  if (device?.ups === undefined || device.item !== item) return [];
  return [{ at: namePlace(item), title: upsLasts(plan, device) }];
}

function receivers({ plan }: Checked, stream: Stream): string {
  const { reaches, unreached } = plan.network.delivery(stream);
  const without =
    unreached.length === 0
      ? ''
      : `; ${few(unreached.map(({ receiver }) => receiver))} ${unreached.length === 1 ? 'gets' : 'get'} nothing`;
  return reaches.length === 0
    ? `reaches nobody${without}`
    : `${count(reaches.length, 'receiver')}: ${few(reaches)}${without}`;
}
