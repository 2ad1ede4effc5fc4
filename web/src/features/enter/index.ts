export { default as Enter } from './Enter.svelte';
export { default as FirstStart } from './FirstStart.svelte';
export { default as Founding } from './Founding.svelte';
export { default as NewPassphrase } from './NewPassphrase.svelte';
export { default as Pair } from './Pair.svelte';
