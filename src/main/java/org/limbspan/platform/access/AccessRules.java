package org.limbspan.platform.access;

import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Who may send what where a login is asked for: anybody asks for health; a rig key sends what its
 * rig measured and does nothing else; the owner does everything.
 */
final class AccessRules {

  static final String OWNER = "ROLE_OWNER";
  static final String RIG = "ROLE_RIG";

  private static final Set<String> OPEN =
      Set.of("/actuator/health", "/actuator/health/liveness", "/actuator/health/readiness");

  private static final Pattern INTAKE =
      Pattern.compile("/api/rigs/([a-z0-9-]{1,40})/(?:readings|photos|calibrations)");

  private AccessRules() {}

  static boolean isOpen(String method, String path) {
    return OPEN.contains(path) && Set.of("GET", "HEAD").contains(method);
  }

  static boolean mayRig(String slug, String method, String path) {
    Matcher intake = INTAKE.matcher(path);
    return method.equals("POST") && intake.matches() && intake.group(1).equals(slug);
  }
}
