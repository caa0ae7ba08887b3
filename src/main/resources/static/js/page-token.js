// What a page's own requests carry where there is a login: a word out of the cookie of this service,
// which no page of another site can read. Taken at the last moment: a page may be older than a login.
const COOKIE = "limbspan-page=";

/** Headers with the word among them, if there is one. */
export function withToken(headers) {
  const found = document.cookie.split("; ").find((cookie) => cookie.startsWith(COOKIE));
  return found ? { ...headers, "X-Page-Token": decodeURIComponent(found.slice(COOKIE.length)) } : headers;
}
