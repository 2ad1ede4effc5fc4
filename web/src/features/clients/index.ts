export { default as Client } from './Client.svelte';
export { default as Clients } from './Clients.svelte';
