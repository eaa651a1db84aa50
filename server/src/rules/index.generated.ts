// Made from the files of the folders beside it; `npm run generate` writes it anew.

import { duplicateKey } from './text/duplicate-key.ts';
import { keyNotOfKind } from './text/key-not-of-kind.ts';
import { malformedValue } from './text/malformed-value.ts';
import { missingKey } from './text/missing-key.ts';
import { outOfRange } from './text/out-of-range.ts';
import { quantity } from './text/quantity.ts';
import { repeatedValue } from './text/repeated-value.ts';
import { unknownKey } from './text/unknown-key.ts';
import { unreadableFile } from './text/unreadable-file.ts';
import { valueNotAllowed } from './text/value-not-allowed.ts';
import { wrongType } from './text/wrong-type.ts';
import { yamlSyntax } from './text/yaml-syntax.ts';
import { duplicateName } from './names/duplicate-name.ts';
import { hostNameClash } from './names/host-name-clash.ts';
import { noSuchPort } from './names/no-such-port.ts';
import { portNotNamed } from './names/port-not-named.ts';
import { unknownName } from './names/unknown-name.ts';
import { unknownRule } from './names/unknown-rule.ts';
import { addressApart } from './addresses/address-apart.ts';
import { addressInDhcpPool } from './addresses/address-in-dhcp-pool.ts';
import { addressNotCarried } from './addresses/address-not-carried.ts';
import { addressOutsideSubnet } from './addresses/address-outside-subnet.ts';
import { addressReserved } from './addresses/address-reserved.ts';
import { cablesSwapped } from './addresses/cables-swapped.ts';
import { dhcpPoolOutsideSubnet } from './addresses/dhcp-pool-outside-subnet.ts';
import { dhcpPoolTooSmall } from './addresses/dhcp-pool-too-small.ts';
import { duplicateAddress } from './addresses/duplicate-address.ts';
import { duplicateMac } from './addresses/duplicate-mac.ts';
import { gatewayWithoutAddress } from './addresses/gateway-without-address.ts';
import { interfaceName } from './addresses/interface-name.ts';
import { macReserved } from './addresses/mac-reserved.ts';
import { overlappingSubnets } from './addresses/overlapping-subnets.ts';
import { reservedWithoutMac } from './addresses/reserved-without-mac.ts';
import { subnetHostBits } from './addresses/subnet-host-bits.ts';
import { subnetPublic } from './addresses/subnet-public.ts';
import { twoPortsOneSubnet } from './addresses/two-ports-one-subnet.ts';
import { unfilled } from './addresses/unfilled.ts';
import { vlanId } from './addresses/vlan-id.ts';
import { accessAndTrunk } from './links/access-and-trunk.ts';
import { aggregationLoad } from './links/aggregation-load.ts';
import { aggregationMismatch } from './links/aggregation-mismatch.ts';
import { cableLength } from './links/cable-length.ts';
import { cableNotForEnds } from './links/cable-not-for-ends.ts';
import { cableSpeed } from './links/cable-speed.ts';
import { cableToItself } from './links/cable-to-itself.ts';
import { copperBetweenBuildings } from './links/copper-between-buildings.ts';
import { internetLoad } from './links/internet-load.ts';
import { labelTwice } from './links/label-twice.ts';
import { linkLoad } from './links/link-load.ts';
import { loop } from './links/loop.ts';
import { mediumMismatch } from './links/medium-mismatch.ts';
import { patchPanelAsEnd } from './links/patch-panel-as-end.ts';
import { portCabledTwice } from './links/port-cabled-twice.ts';
import { portSpeedMismatch } from './links/port-speed-mismatch.ts';
import { portWithoutVlan } from './links/port-without-vlan.ts';
import { rootByChance } from './links/root-by-chance.ts';
import { singlePointOfFailure } from './links/single-point-of-failure.ts';
import { speedUnknown } from './links/speed-unknown.ts';
import { standbyPath } from './links/standby-path.ts';
import { throughNotPanel } from './links/through-not-panel.ts';
import { vlanCutOff } from './links/vlan-cut-off.ts';
import { vlanMerged } from './links/vlan-merged.ts';
import { vlanMismatch } from './links/vlan-mismatch.ts';
import { vlanMissing } from './links/vlan-missing.ts';
import { leadTooShort } from './racks/lead-too-short.ts';
import { rackDepth } from './racks/rack-depth.ts';
import { rackHeight } from './racks/rack-height.ts';
import { rackOverlap } from './racks/rack-overlap.ts';
import { rackWeight } from './racks/rack-weight.ts';
import { unitWithoutRack } from './racks/unit-without-rack.ts';
import { poeBudgetMissing } from './power/poe-budget-missing.ts';
import { poeBudget } from './power/poe-budget.ts';
import { poeClass } from './power/poe-class.ts';
import { poeMissing } from './power/poe-missing.ts';
import { poeOfSwitch } from './power/poe-of-switch.ts';
import { poeOverFibre } from './power/poe-over-fibre.ts';
import { poePassedOn } from './power/poe-passed-on.ts';
import { poePowerOverClass } from './power/poe-power-over-class.ts';
import { powerFiguresContradict } from './power/power-figures-contradict.ts';
import { powerLoop } from './power/power-loop.ts';
import { powerSource } from './power/power-source.ts';
import { powerSplit } from './power/power-split.ts';
import { powerUndeclared } from './power/power-undeclared.ts';
import { runtimeTooShort } from './power/runtime-too-short.ts';
import { upsOverload } from './power/ups-overload.ts';
import { noMulticastRoute } from './routes/no-multicast-route.ts';
import { routeGateway } from './routes/route-gateway.ts';
import { routeMissing } from './routes/route-missing.ts';
import { routeRefused } from './routes/route-refused.ts';
import { routeWithoutCarrier } from './routes/route-without-carrier.ts';
import { carriedNotReceived } from './streams/carried-not-received.ts';
import { carriesItself } from './streams/carries-itself.ts';
import { keyframeBelowFrame } from './streams/keyframe-below-frame.ts';
import { keyframeFar } from './streams/keyframe-far.ts';
import { muxRateTooLow } from './streams/mux-rate-too-low.ts';
import { noReceivers } from './streams/no-receivers.ts';
import { notDecodable } from './streams/not-decodable.ts';
import { packetSize } from './streams/packet-size.ts';
import { peakBelowBitrate } from './streams/peak-below-bitrate.ts';
import { portBeyondLast } from './streams/port-beyond-last.ts';
import { portClash } from './streams/port-clash.ts';
import { portMissing } from './streams/port-missing.ts';
import { rateMissing } from './streams/rate-missing.ts';
import { rateNotOfCodec } from './streams/rate-not-of-codec.ts';
import { rateTooHigh } from './streams/rate-too-high.ts';
import { rateTooLow } from './streams/rate-too-low.ts';
import { receivesItself } from './streams/receives-itself.ts';
import { rtspAddressShared } from './streams/rtsp-address-shared.ts';
import { sampleRateNotOfCodec } from './streams/sample-rate-not-of-codec.ts';
import { sentTwice } from './streams/sent-twice.ts';
import { sourceWithoutAddress } from './streams/source-without-address.ts';
import { tooManySessions } from './streams/too-many-sessions.ts';
import { trafficUnreached } from './streams/traffic-unreached.ts';
import { transportCodec } from './streams/transport-codec.ts';
import { transportMismatch } from './streams/transport-mismatch.ts';
import { transportMissing } from './streams/transport-missing.ts';
import { airtime } from './multicast/airtime.ts';
import { flooding } from './multicast/flooding.ts';
import { groupAlwaysFlooded } from './multicast/group-always-flooded.ts';
import { groupClash } from './multicast/group-clash.ts';
import { groupMacShared } from './multicast/group-mac-shared.ts';
import { groupNotMulticast } from './multicast/group-not-multicast.ts';
import { groupReserved } from './multicast/group-reserved.ts';
import { groupScopeRelative } from './multicast/group-scope-relative.ts';
import { groupSeveralPorts } from './multicast/group-several-ports.ts';
import { groupTable } from './multicast/group-table.ts';
import { groupWithoutSource } from './multicast/group-without-source.ts';
import { noQuerier } from './multicast/no-querier.ts';
import { querierAbsent } from './multicast/querier-absent.ts';
import { querierAddress } from './multicast/querier-address.ts';
import { querierFar } from './multicast/querier-far.ts';
import { rtcpOverlap } from './multicast/rtcp-overlap.ts';
import { rtpPort } from './multicast/rtp-port.ts';
import { ttlTooSmall } from './multicast/ttl-too-small.ts';
import { unintendedEgress } from './multicast/unintended-egress.ts';
import { unreachedReceiver } from './multicast/unreached-receiver.ts';
import { unshownFlooded } from './multicast/unshown-flooded.ts';
import { aerialEarth } from './television/aerial-earth.ts';
import { aerialUnused } from './television/aerial-unused.ts';
import { aerialsCombined } from './television/aerials-combined.ts';
import { amplifierAfterLoss } from './television/amplifier-after-loss.ts';
import { amplifierCascade } from './television/amplifier-cascade.ts';
import { amplifierNotNeeded } from './television/amplifier-not-needed.ts';
import { amplifierOverdriven } from './television/amplifier-overdriven.ts';
import { amplifierReversed } from './television/amplifier-reversed.ts';
import { amplifierUnpowered } from './television/amplifier-unpowered.ts';
import { carrierToNoise } from './television/carrier-to-noise.ts';
import { channelClash } from './television/channel-clash.ts';
import { channelFrequency } from './television/channel-frequency.ts';
import { coaxBetweenBuildings } from './television/coax-between-buildings.ts';
import { coaxLengthMissing } from './television/coax-length-missing.ts';
import { coaxLoop } from './television/coax-loop.ts';
import { frequencyNotPassed } from './television/frequency-not-passed.ts';
import { frequencyOutOfBand } from './television/frequency-out-of-band.ts';
import { gainReversed } from './television/gain-reversed.ts';
import { inputReceivesNothing } from './television/input-receives-nothing.ts';
import { lnbCableLoss } from './television/lnb-cable-loss.ts';
import { lnbControlBlocked } from './television/lnb-control-blocked.ts';
import { lnbPlane } from './television/lnb-plane.ts';
import { mobileBand } from './television/mobile-band.ts';
import { multiplexParameters } from './television/multiplex-parameters.ts';
import { multiplexRate } from './television/multiplex-rate.ts';
import { outletIsolation } from './television/outlet-isolation.ts';
import { outletLevelHigh } from './television/outlet-level-high.ts';
import { outletLevelLow } from './television/outlet-level-low.ts';
import { planesSwapped } from './television/planes-swapped.ts';
import { powerIntoAerial } from './television/power-into-aerial.ts';
import { serviceMultiplex } from './television/service-multiplex.ts';
import { slope } from './television/slope.ts';
import { splitterOpen } from './television/splitter-open.ts';
import { supplyCurrent } from './television/supply-current.ts';
import { supplyDrop } from './television/supply-drop.ts';
import { supplyVoltage } from './television/supply-voltage.ts';
import { tapOrder } from './television/tap-order.ts';
import { tunerLevelLow } from './television/tuner-level-low.ts';
import { tunerNotCabled } from './television/tuner-not-cabled.ts';
import { tunerOverload } from './television/tuner-overload.ts';
import { tunerPluggedNowhere } from './television/tuner-plugged-nowhere.ts';
import { tunerShortage } from './television/tuner-shortage.ts';
import { tunerSystem } from './television/tuner-system.ts';
import { usbLoad } from './television/usb-load.ts';
import { wholeMultiplex } from './television/whole-multiplex.ts';
import { fileFormat } from './recording/file-format.ts';
import { fileNameCollision } from './recording/file-name-collision.ts';
import { filePattern } from './recording/file-pattern.ts';
import { keepBelowSegment } from './recording/keep-below-segment.ts';
import { keepMissing } from './recording/keep-missing.ts';
import { recordedTwice } from './recording/recorded-twice.ts';
import { recorderNotReceiving } from './recording/recorder-not-receiving.ts';
import { repeatedHour } from './recording/repeated-hour.ts';
import { retention } from './recording/retention.ts';
import { segmentKeyframe } from './recording/segment-keyframe.ts';
import { unknownConversion } from './recording/unknown-conversion.ts';
import { volumeDisks } from './recording/volume-disks.ts';
import { volumeFill } from './recording/volume-fill.ts';
import { volumePathShared } from './recording/volume-path-shared.ts';
import { volumePath } from './recording/volume-path.ts';
import { writeRate } from './recording/write-rate.ts';
import { notMade } from './make/not-made.ts';
import { policyThreshold } from './policies/policy-threshold.ts';
import { reasonMissing } from './lint/reason-missing.ts';
import { unusedAcceptance } from './lint/unused-acceptance.ts';
import type { AcceptanceRule, Rule } from '../lint/rule.ts';

export const rules: readonly Rule[] = [
  duplicateKey,
  keyNotOfKind,
  malformedValue,
  missingKey,
  outOfRange,
  quantity,
  repeatedValue,
  unknownKey,
  unreadableFile,
  valueNotAllowed,
  wrongType,
  yamlSyntax,
  duplicateName,
  hostNameClash,
  noSuchPort,
  portNotNamed,
  unknownName,
  unknownRule,
  addressApart,
  addressInDhcpPool,
  addressNotCarried,
  addressOutsideSubnet,
  addressReserved,
  cablesSwapped,
  dhcpPoolOutsideSubnet,
  dhcpPoolTooSmall,
  duplicateAddress,
  duplicateMac,
  gatewayWithoutAddress,
  interfaceName,
  macReserved,
  overlappingSubnets,
  reservedWithoutMac,
  subnetHostBits,
  subnetPublic,
  twoPortsOneSubnet,
  unfilled,
  vlanId,
  accessAndTrunk,
  aggregationLoad,
  aggregationMismatch,
  cableLength,
  cableNotForEnds,
  cableSpeed,
  cableToItself,
  copperBetweenBuildings,
  internetLoad,
  labelTwice,
  linkLoad,
  loop,
  mediumMismatch,
  patchPanelAsEnd,
  portCabledTwice,
  portSpeedMismatch,
  portWithoutVlan,
  rootByChance,
  singlePointOfFailure,
  speedUnknown,
  standbyPath,
  throughNotPanel,
  vlanCutOff,
  vlanMerged,
  vlanMismatch,
  vlanMissing,
  leadTooShort,
  rackDepth,
  rackHeight,
  rackOverlap,
  rackWeight,
  unitWithoutRack,
  poeBudgetMissing,
  poeBudget,
  poeClass,
  poeMissing,
  poeOfSwitch,
  poeOverFibre,
  poePassedOn,
  poePowerOverClass,
  powerFiguresContradict,
  powerLoop,
  powerSource,
  powerSplit,
  powerUndeclared,
  runtimeTooShort,
  upsOverload,
  noMulticastRoute,
  routeGateway,
  routeMissing,
  routeRefused,
  routeWithoutCarrier,
  carriedNotReceived,
  carriesItself,
  keyframeBelowFrame,
  keyframeFar,
  muxRateTooLow,
  noReceivers,
  notDecodable,
  packetSize,
  peakBelowBitrate,
  portBeyondLast,
  portClash,
  portMissing,
  rateMissing,
  rateNotOfCodec,
  rateTooHigh,
  rateTooLow,
  receivesItself,
  rtspAddressShared,
  sampleRateNotOfCodec,
  sentTwice,
  sourceWithoutAddress,
  tooManySessions,
  trafficUnreached,
  transportCodec,
  transportMismatch,
  transportMissing,
  airtime,
  flooding,
  groupAlwaysFlooded,
  groupClash,
  groupMacShared,
  groupNotMulticast,
  groupReserved,
  groupScopeRelative,
  groupSeveralPorts,
  groupTable,
  groupWithoutSource,
  noQuerier,
  querierAbsent,
  querierAddress,
  querierFar,
  rtcpOverlap,
  rtpPort,
  ttlTooSmall,
  unintendedEgress,
  unreachedReceiver,
  unshownFlooded,
  aerialEarth,
  aerialUnused,
  aerialsCombined,
  amplifierAfterLoss,
  amplifierCascade,
  amplifierNotNeeded,
  amplifierOverdriven,
  amplifierReversed,
  amplifierUnpowered,
  carrierToNoise,
  channelClash,
  channelFrequency,
  coaxBetweenBuildings,
  coaxLengthMissing,
  coaxLoop,
  frequencyNotPassed,
  frequencyOutOfBand,
  gainReversed,
  inputReceivesNothing,
  lnbCableLoss,
  lnbControlBlocked,
  lnbPlane,
  mobileBand,
  multiplexParameters,
  multiplexRate,
  outletIsolation,
  outletLevelHigh,
  outletLevelLow,
  planesSwapped,
  powerIntoAerial,
  serviceMultiplex,
  slope,
  splitterOpen,
  supplyCurrent,
  supplyDrop,
  supplyVoltage,
  tapOrder,
  tunerLevelLow,
  tunerNotCabled,
  tunerOverload,
  tunerPluggedNowhere,
  tunerShortage,
  tunerSystem,
  usbLoad,
  wholeMultiplex,
  fileFormat,
  fileNameCollision,
  filePattern,
  keepBelowSegment,
  keepMissing,
  recordedTwice,
  recorderNotReceiving,
  repeatedHour,
  retention,
  segmentKeyframe,
  unknownConversion,
  volumeDisks,
  volumeFill,
  volumePathShared,
  volumePath,
  writeRate,
  notMade,
  policyThreshold,
  reasonMissing,
];

export const acceptanceRules: readonly AcceptanceRule[] = [
  unusedAcceptance,
];
