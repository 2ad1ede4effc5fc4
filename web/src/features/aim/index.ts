export { default as Aim } from './Aim.svelte';
