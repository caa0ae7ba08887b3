package org.limbspan.platform.access;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;

/** What tells a browser's requests from a program's, and its way back after a login. */
final class Browser {

  static final String WAY_BACK = "to";

  private static final String MODE = "Sec-Fetch-Mode";

  private Browser() {}

  /** Whether a person waits for a page (Fetch Metadata; older browsers by what they accept). */
  static boolean opensPage(HttpServletRequest request) {
    String mode = request.getHeader(MODE);
    String accept = request.getHeader(HttpHeaders.ACCEPT);
    return request.getMethod().equals("GET")
        && (mode == null || mode.equals("navigate"))
        && accept != null
        && accept.contains(MediaType.TEXT_HTML_VALUE);
  }

  /** Whether a page's script asks, for which a browser must not ask for a password by itself. */
  static boolean isScript(HttpServletRequest request) {
    return request.getHeader(MODE) != null;
  }

  /** The login page that leads back to what was asked for. */
  static String loginFor(HttpServletRequest request) {
    String query = request.getQueryString();
    return loginFor(request.getRequestURI() + (query == null ? "" : "?" + query), "");
  }

  static String loginFor(@Nullable String wayBack, String more) {
    return AccessRules.LOGIN
        + "?"
        + WAY_BACK
        + "="
        + URLEncoder.encode(wayBack(wayBack), StandardCharsets.UTF_8)
        + more;
  }

  /** A path of this service, or its first page: the way back never leads to another host. */
  static String wayBack(@Nullable String asked) {
    if (asked == null || !asked.matches("/(?:[^/\\\\\\p{Cntrl}][^\\\\\\p{Cntrl}]*)?")) {
      return "/";
    }
    try {
      URI uri = URI.create(asked);
      boolean ours = uri.getScheme() == null && uri.getRawAuthority() == null;
      return ours && !asked.startsWith(AccessRules.LOGIN) ? asked : "/";
    } catch (IllegalArgumentException unreadable) {
      return "/";
    }
  }

  /** Leads a browser on by path alone: names and ports are the proxy's. */
  static void lead(HttpServletResponse response, String path) {
    response.setStatus(HttpServletResponse.SC_FOUND);
    response.setHeader(HttpHeaders.LOCATION, path);
  }
}
