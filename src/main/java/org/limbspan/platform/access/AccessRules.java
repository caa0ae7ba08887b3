package org.limbspan.platform.access;

import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.limbspan.platform.Visitor;

/**
 * Who may send what where a login is asked for: anybody asks for health, for the login page with
 * its styles, and chooses a page's light, which is kept in his own browser; a rig key sends what
 * its rig measured and does nothing else; a guest looks at one rig's ledger and at what follows
 * from it, and is told neither where it stands nor when somebody will be there; the owner does
 * everything.
 */
final class AccessRules {

  static final String OWNER = Visitor.OWNER_ROLE;
  static final String RIG = "ROLE_RIG";
  static final String GUEST = Visitor.GUEST_ROLE;

  static final String LOGIN = "/login";
  static final String LOGOUT = "/logout";
  static final String LIGHT = "/light";

  private static final Set<String> READING = Set.of("GET", "HEAD");

  private static final Set<String> OPEN =
      Set.of(
          "/actuator/health",
          "/actuator/health/liveness",
          "/actuator/health/readiness",
          LOGIN,
          "/limb.svg",
          "/log-worker.js");

  /** Styles and scripts; the guard refuses paths with dots that lead elsewhere. */
  private static final Pattern OPEN_FILES = Pattern.compile("/(?:css|js|webjars)/[A-Za-z0-9./_-]+");

  private static final Pattern INTAKE =
      Pattern.compile("/api/rigs/([a-z0-9-]{1,40})/(?:readings|photos|calibrations)");

  private static final Pattern GUESTS =
      Pattern.compile(
          "/rigs/([a-z0-9-]{1,40})"
              + "(?:/(?:cycle|nights|conclusions|alerts|live|readings/[0-9a-f-]+|figure/[A-Za-z0-9-]+\\.json"
              + "|drawing/(?:evidence/)?[A-Za-z0-9-]+\\.json))?");

  private static final Pattern GUESTS_DATA =
      Pattern.compile(
          "/api/rigs/([a-z0-9-]{1,40})/"
              + "(?:readings|calibrations|setups|cycle|nights|hypotheses|conclusions|alerts"
              + "|photos(?:/[0-9a-f-]+/(?:image|overlay\\.svg))?)");

  private static final Pattern GUEST_LINK = Pattern.compile("/guest/[A-Za-z0-9_-]{20,100}");

  private AccessRules() {}

  static boolean isOpen(String method, String path) {
    return READING.contains(method)
        ? OPEN.contains(path)
            || OPEN_FILES.matcher(path).matches()
            || GUEST_LINK.matcher(path).matches()
        : method.equals("POST") && (path.equals(LIGHT) || path.equals(LOGIN));
  }

  static boolean mayRig(String slug, String method, String path) {
    Matcher intake = INTAKE.matcher(path);
    return method.equals("POST") && intake.matches() && intake.group(1).equals(slug);
  }

  static boolean mayGuest(String slug, String method, String path) {
    return READING.contains(method)
        && (isOf(slug, GUESTS.matcher(path)) || isOf(slug, GUESTS_DATA.matcher(path)));
  }

  private static boolean isOf(String slug, Matcher path) {
    return path.matches() && path.group(1).equals(slug);
  }
}
