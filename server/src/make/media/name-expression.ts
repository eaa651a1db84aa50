/** The names of a recording's files as a regular expression for find(1): POSIX extended, IEEE Std 1003.1, XBD §9.4. */

import { type NameStep, stepsOf } from '../../recordings/name-steps.ts';

/** An expression for the whole path of each file that the steps name, and for no other. */
export function nameExpression(root: string, steps: readonly NameStep[]): string {
  return `${literal(`${root}/`)}${steps.map(stepExpression).join('')}`;
}

/** An expression for each folder on the path of a recording's files whose name has a date. */
export function datedFolders(root: string, folder: string): string[] {
  const parts = folder.split('/');
  return parts.flatMap((part, index) => {
    const pattern = parts.slice(0, index + 1).join('/');
    const steps = /%[^%]/.test(part.replaceAll('%%', '')) ? stepsOf(pattern) : [];
    return 'unreadable' in steps || steps.length === 0 ? [] : [nameExpression(root, steps)];
  });
}

function stepExpression(step: NameStep): string {
  switch (step.kind) {
    case 'text':
      return literal(step.text);
    case 'number': {
      const digit = step.fill === ' ' ? '[ 0-9]' : '[0-9]';
      return step.least === step.most ? `${digit}{${step.least}}` : `${digit}{${step.least},${step.most}}`;
    }
    case 'word':
      return `${filled(step.fill)}(${[...new Set(step.words.map(({ text }) => text))].join('|')})`;
    case 'offset':
      return `${filled(step.fill)}[+-][0-9]{4}`;
    default:
      return `${filled(step.fill)}([A-Za-z]{3,}|[+-][0-9]{2,4})`;
  }
}

function filled(fill: string): string {
  return fill === '' ? '' : `${literal(fill)}*`;
}

function literal(text: string): string {
  return text.replace(/[\\^$.[\]|()*+?{}]/g, (mark) => (mark === ']' || mark === '}' ? mark : `\\${mark}`));
}
