export { default as Agree } from './Agree.svelte';
