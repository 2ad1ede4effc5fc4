export { default as Stock } from './Stock.svelte';
export { default as Report } from './Report.svelte';
