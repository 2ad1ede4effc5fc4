export { default as Incident } from './Incident.svelte';
export { default as StoppedNow } from './StoppedNow.svelte';
