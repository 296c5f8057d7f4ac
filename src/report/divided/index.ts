export { type CheckedShare, shareFrom } from './checked-share.ts';
export { inspectShare, type ShareOptions } from './inspect-share.ts';
export { type Joined, type JoinFault, joinShares, type NamedShare } from './join-shares.ts';
export { type ShareNumber, shareOut } from './share-out.ts';
export { type Sign, type SignedFiles, signOf } from './sign.ts';
