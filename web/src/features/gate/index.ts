export { default as Cautions } from './Cautions.svelte';
export { default as Gate } from './Gate.svelte';
