/** The network once something has failed: what carries nothing struck out, and on all other links what they carry then. */

import { elementNamed, elementWords, elementsOf } from '../failure/element.ts';
import { type Failure, failureOf } from '../failure/failure.ts';
import { failureWords } from '../failure/words.ts';
import type { Device } from '../site/model.ts';
import { SECOND } from '../standards/time-units.ts';
import { duration } from '../text/words.ts';
import { type Drawing, type DrawingKind, type Mark, type Row, type Table, type Thing, deviceNamed } from './drawing.ts';
import { networkPicture } from './network.ts';

export const failurePicture: DrawingKind = {
  kind: 'failure',
  title: 'What fails',
  summary: 'the network without what fails: what is lost struck out, and what the other links carry then',
  subjects: (plan) => [...new Set(elementsOf(plan).map(({ name }) => name))],
  means: (plan, name) => elementNamed(plan, name) !== undefined,
  draw(plan, subject, wanted): Drawing {
    const element = elementNamed(plan, subject);
    if (element === undefined) throw new Error(`${subject} is nothing of this site that may fail`);
    const failure = failureOf(plan, element);
    const drawing = networkPicture.draw({ ...plan, network: failure.network }, '', wanted);
    const dark = new Set([...element.devices, ...failure.devices]);
    return {
      ...drawing,
      title: `If ${elementWords(element)} fails`,
      description: `${failureWords(failure)} ✕ carries nothing then. ${drawing.description}`,
      marks: drawing.marks.map((mark) => struck(mark, dark)),
      tables: [...lostTables(failure), ...drawing.tables],
    };
  },
};

/** A device that is dark: its box is broken up, and its name struck through, with a sign. */
function struck(mark: Mark, dark: ReadonlySet<Device>): Mark {
  if (mark.mark !== 'thing') return mark;
  if (!isOf(mark, dark)) return { ...mark, marks: mark.marks.map((inner) => struck(inner, dark)) };
  const { name } = mark.at;
  const marks = mark.marks.map((inner): Mark => {
    if (inner.mark === 'box') return { ...inner, look: 'lost' };
    if (inner.mark !== 'words' || inner.text !== name) return inner;
    return { ...inner, text: `✕ ${name}`, look: 'lost' };
  });
  return { ...mark, label: `${mark.label}, ✕ fails`, marks };
}

function isOf({ at }: Thing, dark: ReadonlySet<Device>): boolean {
  return at.names === 'devices' && [...dark].some(({ name }) => at.name === name);
}

function lostTables({ pictures, recordings, cameras }: Failure): Table[] {
  const rows: Row[] = [
    ...recordings.map(({ name }) => ({ things: [], cells: ['recording', name, ''] })),
    ...cameras.map(({ name }) => ({
      things: [deviceNamed(name)],
      cells: ['camera', { names: [deviceNamed(name)] }, ''],
    })),
    ...pictures.map(({ stream, receiver, after }) => ({
      things: [deviceNamed(receiver)],
      cells: [
        'picture',
        `${stream.name} on ${receiver}`,
        after === 0 ? 'at once' : `after ${duration(after * SECOND)}`,
      ],
    })),
  ];
  return rows.length === 0 ? [] : [{ title: 'Lost', head: ['What', 'Name', 'When'], rows }];
}
