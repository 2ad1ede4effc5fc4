export { default as Bowl } from './Bowl.svelte';
