export { default as Beside } from './Beside.svelte';
