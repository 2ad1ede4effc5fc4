export { default as Plan } from './Plan.svelte';
export { lanesOf } from './lanes';
