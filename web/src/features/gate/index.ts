export { default as Cautions } from './Cautions.svelte';
export { default as SkinTest } from './SkinTest.svelte';
export { default as Verdicts } from './Verdicts.svelte';
export { default as Gate } from './Gate.svelte';
