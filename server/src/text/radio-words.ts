/** Figures of radio as words, rounded for display. */

/** `46.6 dBµV` */
export function level(value: number): string {
  return `${oneDigit(value)} dBµV`;
}

/** `15.3 dB` */
export function decibels(value: number): string {
  return `${oneDigit(value)} dB`;
}

/** `674 MHz`, `557.143 MHz` */
export function megahertz(hertz: number): string {
  return `${Number((hertz / 1e6).toFixed(3))} MHz`;
}

/** With a true minus, and without one before zero. */
function oneDigit(value: number): string {
  const text = Math.abs(value).toFixed(1);
  return value < 0 && text !== '0.0' ? `−${text}` : text;
}

/** `vertical, high band`; a circular polarization counts as the one of the same voltage. */
export function planeWords({ volts, tone }: { readonly volts: 13 | 18; readonly tone: boolean }): string {
  return `${volts === 13 ? 'vertical' : 'horizontal'}, ${tone ? 'high' : 'low'} band`;
}
