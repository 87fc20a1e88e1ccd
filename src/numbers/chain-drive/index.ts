/** The chain: sizes, links, wear, slack, pull. */
export { chainDrive } from './chain-drive.ts';
export {
  type ChainWear,
  chainPull,
  chainSpeed,
  chainWear,
  moveForSlack,
  ORDER_AT,
  ownPull,
  REPLACE_AT,
  ripple,
  SLACK,
  SLACK_SHARES,
  stretchLimit,
} from './condition.ts';
export {
  centreFor,
  chainLinks,
  type Links,
  lengthOnCircles,
  linksAround,
  linksAroundShort,
  pitchCircle,
  wrapOf,
} from './length.ts';
export { CHAIN_SIZES, CHAINS, type ChainName, type ChainSize, seemToFit } from './sizes.ts';
