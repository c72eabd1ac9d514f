// Fetched when asked for, though a lesson that opens with it has it at once.
export { default } from '../StripView.svelte';
