export { default as Alarms } from './Alarms.svelte';
export { default as Clock } from './Clock.svelte';
export { default as Frozen } from './Frozen.svelte';
export { default as Mixes } from './Mixes.svelte';
export { default as Stopped } from './Stopped.svelte';
