export { default as Agree } from './Agree.svelte';
export { askedOf } from './offer';
