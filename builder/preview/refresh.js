// Renews this page once the preview says that it would look different now.
const own = document.currentScript.dataset;
const heard = new EventSource(`/_preview/events?at=${encodeURIComponent(own.at)}&seen=${own.seen}`);
heard.addEventListener("changed", () => { heard.close(); location.reload(); });
heard.addEventListener("ended", () => heard.close());
addEventListener("pagehide", () => heard.close());
