export { default as Assess } from './Assess.svelte';
