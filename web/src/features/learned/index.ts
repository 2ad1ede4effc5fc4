export { default as Learned } from './Learned.svelte';
