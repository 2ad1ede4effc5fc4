export { default as Ending } from './Ending.svelte';
