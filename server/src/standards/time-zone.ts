/**
 * Civil time in a zone: its offset, and the hours that happen twice.
 *
 * Source: the IANA time-zone database, as the JavaScript engine has it (ECMA-402). Instants are milliseconds since
 * 1970-01-01T00:00Z, offsets minutes east of UTC.
 */

/** The clock on the wall; month and day from 1, hour 0 to 23. */
export interface LocalFields {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
}

/** At `instant` the clock goes back from offset `before` to `after`, and repeats the time between. */
export interface RepeatedHour {
  readonly instant: number;
  readonly before: number;
  readonly after: number;
}

const SECOND = 1000;
const MINUTE = 60 * SECOND;
/** Shorter than any two changes of one zone lie apart since 1970: 6 days 23 h, in Brazil in 2000 (zoneinfo, zdump). */
const STEP = 6 * 24 * 60 * MINUTE;

const formats = new Map<string, Intl.DateTimeFormat>();

/** Whether the name is a zone of the database, such as `Europe/London` or `UTC`, in any case; a bare offset is none. */
export function isTimeZone(name: string): boolean {
  try {
    return /^[A-Za-z]/.test(name) && formatFor(name) !== undefined;
  } catch (error) {
    if (error instanceof RangeError) {
      return false;
    }
    throw error;
  }
}

/**
 * What clocks in the zone show at the instant.
 * @throws RangeError if there is no such zone
 */
export function localFields(zone: string, instant: number): LocalFields {
  const parts = formatFor(zone).formatToParts(instant);
  const field = (type: Intl.DateTimeFormatPartTypes): number => Number(parts.find((part) => part.type === type)?.value);
  return {
    year: field('year'),
    month: field('month'),
    day: field('day'),
    hour: field('hour'),
    minute: field('minute'),
    second: field('second'),
  };
}

/**
 * How many minutes clocks in the zone are ahead of UTC at the instant; a fraction where the zone kept local mean time.
 * @throws RangeError if there is no such zone
 */
export function offsetMinutes(zone: string, instant: number): number {
  const { year, month, day, hour, minute, second } = localFields(zone, instant);
  return (Date.UTC(year, month - 1, day, hour, minute, second) - Math.floor(instant / SECOND) * SECOND) / MINUTE;
}

/**
 * Every time the clock goes back in the zone, from `from` up to but not including `to`, in order.
 * @throws RangeError if there is no such zone
 */
export function repeatedHours(zone: string, from: number, to: number): RepeatedHour[] {
  const found: RepeatedHour[] = [];
  let earlier = Math.ceil(from / SECOND) * SECOND - SECOND;
  while (earlier < to) {
    const later = earlier + STEP;
    const before = offsetMinutes(zone, earlier);
    const after = offsetMinutes(zone, later);
    const instant = after < before ? changeWithin(zone, earlier, later, before) : to;
    if (instant < to) {
      found.push({ instant, before, after });
    }
    earlier = later;
  }
  return found;
}

/** The first whole second in (earlier, later] at which the offset is no longer `before`. */
function changeWithin(zone: string, earlier: number, later: number, before: number): number {
  let [low, high] = [earlier / SECOND, later / SECOND];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (offsetMinutes(zone, middle * SECOND) === before) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return high * SECOND;
}

/** Making a format is slow, so each zone's is kept. */
function formatFor(zone: string): Intl.DateTimeFormat {
  const kept = formats.get(zone);
  if (kept !== undefined) {
    return kept;
  }
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    calendar: 'iso8601',
    numberingSystem: 'latn',
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  formats.set(zone, format);
  return format;
}
