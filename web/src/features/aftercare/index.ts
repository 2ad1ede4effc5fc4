export { default as Aftercare } from './Aftercare.svelte';
