/** The calendar file, asked for once an event; it waits in its own chunk, beside the book that it is made of. */
export { calendarOf } from '../../app/index.ts';
