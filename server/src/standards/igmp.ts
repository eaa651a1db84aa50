/**
 * IGMP timers: how long a membership lasts without a report.
 *
 * Sources, both read: RFC 3376 §8 (IGMPv3) and RFC 2236 §8 (IGMPv2), which agree in everything here.
 * Times are in seconds.
 */

/** A membership survives one lost packet less than this; not 0, and should not be 1 (RFC 3376 §8.1). */
export const ROBUSTNESS = 2;
export const QUERY_INTERVAL = 125;
/** The time that hosts have to answer a query; less than the query interval (RFC 3376 §8.3). */
export const QUERY_RESPONSE_INTERVAL = 10;
export const LAST_MEMBER_QUERY_INTERVAL = 1;

/** Where general queries go, and IGMPv3 reports (RFC 3376 §4.1.12, §4.2.14). */
export const ALL_SYSTEMS_GROUP = 0xe0000001;
export const REPORTS_GROUP = 0xe0000016;

/**
 * How long a group is forwarded to a port after the last report there (RFC 3376 §8.4). Hosts report only when they join
 * and when they are queried, so without a querier a stream lasts this long.
 */
export function groupMembershipInterval(
  robustness: number = ROBUSTNESS,
  queryInterval: number = QUERY_INTERVAL,
  responseInterval: number = QUERY_RESPONSE_INTERVAL,
): number {
  return robustness * queryInterval + responseInterval;
}

/** How long a group is still sent to the last one that has left it, in seconds (RFC 3376 §8.8 to §8.10). */
export function lastMemberQueryTime(
  robustness: number = ROBUSTNESS,
  lastMemberQueryInterval: number = LAST_MEMBER_QUERY_INTERVAL,
): number {
  return robustness * lastMemberQueryInterval;
}

/** How long after the last query of a better querier another one takes over (RFC 3376 §8.5). */
export function otherQuerierPresentInterval(
  robustness: number = ROBUSTNESS,
  queryInterval: number = QUERY_INTERVAL,
  responseInterval: number = QUERY_RESPONSE_INTERVAL,
): number {
  return robustness * queryInterval + responseInterval / 2;
}

/** The time between the first queries after a querier starts (RFC 3376 §8.6). */
export function startupQueryInterval(queryInterval: number = QUERY_INTERVAL): number {
  return queryInterval / 4;
}

/**
 * Which of several queriers in a VLAN is elected: the one with the lowest address (RFC 3376 §6.6.2), except 0.0.0.0
 * (RFC 4541 §2.1.1(4), read). `undefined` if none is left.
 */
export function electedQuerier(addresses: readonly number[]): number | undefined {
  const candidates = addresses.filter((address) => address !== 0);
  return candidates.length === 0 ? undefined : Math.min(...candidates);
}
