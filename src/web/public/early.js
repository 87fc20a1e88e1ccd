// On a device that was never here, asks the server for what the page shows first while its own script is still on the way (src/web/book/opening.ts).
try {
  if (localStorage.getItem('kartwright.place') === null) globalThis.earlyOpening = fetch('/api/opening?kart=');
} catch {
  // A browser that forbids its storage: the page asks by itself.
}
