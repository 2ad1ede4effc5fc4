export { default as Plan } from './Plan.svelte';
export { lanesOf } from './lanes';
export { nameOf } from './ways';
export { mixWords, productWords } from './recipe';
