export { default as BookingSheet } from './BookingSheet.svelte';
export { default as Day } from './Day.svelte';
