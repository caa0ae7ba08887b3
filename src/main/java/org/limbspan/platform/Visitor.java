package org.limbspan.platform;

import java.util.List;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.context.SecurityContextHolder;

/** Who looks at a page. */
public enum Visitor {
  /** Somebody at this computer, where no login is asked for. */
  AT_HOME,
  /** The owner, logged in. */
  OWNER,
  /** Somebody with a link, who looks at one rig and writes nothing. */
  GUEST,
  /** Nobody known: sees the login page only. */
  STRANGER;

  public static final String OWNER_ROLE = "ROLE_OWNER";
  public static final String GUEST_ROLE = "ROLE_GUEST";

  /** Whether this one enters and changes what the ledger holds. */
  public boolean mayWrite() {
    return this == AT_HOME || this == OWNER;
  }

  /**
   * The one of this request.
   *
   * @param loginAsked whether the service asks for a login at all
   */
  public static Visitor now(boolean loginAsked) {
    if (!loginAsked) {
      return AT_HOME;
    }
    Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
    List<String> roles =
        authentication == null
            ? List.of()
            : authentication.getAuthorities().stream().map(GrantedAuthority::getAuthority).toList();
    if (roles.contains(OWNER_ROLE)) {
      return OWNER;
    }
    return roles.contains(GUEST_ROLE) ? GUEST : STRANGER;
  }
}
